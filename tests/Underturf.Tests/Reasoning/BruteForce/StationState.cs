using Underturf.Reasoning.Diagnosis;

namespace Underturf.Tests.Reasoning.BruteForce;

/// <summary>What may be wrong with one station alone, beside given faults that it shares with others.</summary>
/// <param name="Key">Its faults and theirs in words, amounts left out.</param>
/// <param name="LogFactor">log of its odds, and of the chance of those of its notes that no other note can say anything about.</param>
internal sealed record StationState(Suspect[] Own, string Key, double LogFactor, Row[] Rows)
{
    public int Count => Own.Length;

    public static string KeyOf(IEnumerable<Suspect> suspects) => string.Join(" + ", suspects.Select(KeyOf).Order(StringComparer.Ordinal));

    private static string KeyOf(Suspect s) => $"{s.Fault!.Id} {s.Note}{s.Place} {s.Leg?.Id} {s.Station} {s.Other} {s.Common}";
}
