namespace Underturf.Reasoning;

/// <summary>Somebody who waits for an answer.</summary>
/// <param name="Progress">Told how much is done, from 0 to 1 and never backwards, on the thread that asks.</param>
/// <param name="Cancellation">Gives the answer up: asking then ends with <see cref="OperationCanceledException"/>.</param>
public sealed record Waiting(IProgress<double>? Progress = null, CancellationToken Cancellation = default);
