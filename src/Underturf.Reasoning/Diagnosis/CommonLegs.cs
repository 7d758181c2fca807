using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Where faults of a common lie on the way of a station.</summary>
internal static class CommonLegs
{
    /// <summary>The index of the leg whose common a fault of a common concerns; -1 where the station does not return by it.</summary>
    public static int LegOfCommon(this StationPath path, Suspect suspect) => suspect.Common != path.Common ? -1
        : suspect.Seat.IsForAll ? path.LegTo(suspect.Place!)
        : suspect.Seat.Beyond is not { } last ? path.IndexOf(suspect.Leg!.Value)
        : suspect.Place != last && path.IndexOf(suspect.Leg!.Value) is var stretch and >= 0 ? stretch
        : path.LegBefore(last);

    /// <summary>Whether a station may or may not return by the place of a fault: its valve, which nobody found, may lie in the box that nobody found.</summary>
    public static bool MayReturnBy(this StationPath path, Suspect suspect) =>
        suspect.Seat.Beyond is { } last && path.LegOfCommon(suspect) is var leg and >= 0 && (suspect.Place == last || path.Legs[leg].Key != suspect.Leg);
}
