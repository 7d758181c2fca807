using System.Text.Json.Serialization;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>What a log lets one say, and what in it could not be used.</summary>
public sealed record OpenedLog(Answers Answers, IReadOnlyList<Problem> Problems)
{
    /// <summary>For each move of the answers, for each of its steps: what is noted afterwards, as a body of the log without what will be seen.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Asked { get; init; } = [];

    /// <summary>What lies hidden, by name.</summary>
    public IReadOnlyList<HiddenName> Hidden { get; init; } = [];

    /// <summary>Every reading beside its prediction with nothing broken.</summary>
    public IReadOnlyList<PredictedReading> Readings { get; init; } = [];

    /// <summary>The same by entry.</summary>
    [JsonIgnore]
    public IReadOnlyDictionary<string, string> Predicted => field ??= Readings.ToDictionary(r => r.Entry, r => r.Predicted, StringComparer.Ordinal);
}

/// <summary>A reading beside its prediction with nothing broken.</summary>
/// <param name="Entry">The entry that says it, as "writer/seq".</param>
public sealed record PredictedReading(string Entry, string Predicted);
