using Underturf.Reasoning.Diagnosis;

namespace Underturf.Planning.Day.Interim;

/// <summary>What may run tonight, as people say it: the same on screen, on paper and in the terminal.</summary>
public static class InterimWords
{
    public static string Of(Tonight what) => what switch
    {
        Tonight.MustNot => "must not run",
        Tonight.ByHand => "by hand only",
        Tonight.StaysDry => "stays dry",
        _ => "can run",
    };

    /// <summary>All reasons in one sentence; empty where there is none.</summary>
    public static string Why(StationTonight station) => string.Join("; ", station.Why.Select(w => $"{w.Say} ({Say.Share(w.Chance)}{(w.Told is { } told ? $"; {told} was told" : string.Empty)})"));
}
