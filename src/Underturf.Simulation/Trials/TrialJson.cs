using System.Text.Json;
using System.Text.Json.Serialization;
using Underturf.Property.Practice;

namespace Underturf.Simulation.Trials;

/// <summary>Trials as JSON for other programs.</summary>
public static class TrialJson
{
    public static string Write(IReadOnlyList<TrialResult> trials, PracticeBook book) =>
        JsonSerializer.Serialize(trials.Select(t => new Line(t, t.LossMinutes(book))).ToList(), TrialJsonContext.Default.ListLine);

    /// <param name="LossMinutes">Minutes worked, and the cost of wrong repairs and of faults left.</param>
    internal sealed record Line(TrialResult Trial, double LossMinutes);
}

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    WriteIndented = true,
    UseStringEnumConverter = true,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(List<TrialJson.Line>))]
internal sealed partial class TrialJsonContext : JsonSerializerContext;
