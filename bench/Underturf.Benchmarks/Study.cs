namespace Underturf.Benchmarks;

/// <summary>A long run that answers one question about the tool; too slow for the tests.</summary>
/// <param name="Name">What `./prove NAME` is called with.</param>
/// <param name="Question">The question it answers, in one line.</param>
/// <param name="Run">Writes its result to the writer; the arguments are those after the name. Returns the exit code.</param>
internal sealed record Study(string Name, string Question, Func<TextWriter, IReadOnlyList<string>, int> Run);
