using Underturf.Property;

namespace Underturf.Reasoning.Water;

/// <summary>Stations without water, in words.</summary>
public static class DryWords
{
    /// <summary>"every station on this supply: 1 to 40"; "station 3, 4"; "no station".</summary>
    /// <param name="every">Everything is shut that water comes in by.</param>
    public static string Certain(IReadOnlyCollection<string> numbers, bool every) =>
        numbers.Count == 0 ? "no station" : $"{(every ? "every station on this supply:" : "station")} {NumberRuns.Say(numbers)}";

    /// <summary>"station 5 to 9, as nobody has noted what feeds them"; nothing where there are none.</summary>
    public static string? Perhaps(IReadOnlyCollection<string> numbers) =>
        numbers.Count == 0 ? null : $"station {NumberRuns.Say(numbers)}, as nobody has noted what feeds {(numbers.Count == 1 ? "it" : "them")}";
}
