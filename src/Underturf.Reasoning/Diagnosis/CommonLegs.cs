using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Where faults of a common lie on the way of a station.</summary>
internal static class CommonLegs
{
    /// <summary>The index of the leg whose common a fault of a common concerns; -1 where the station does not return by it.</summary>
    public static int LegOfCommon(this StationPath path, Suspect suspect) => suspect.Common != path.Common ? -1
        : suspect.Seat.IsForAll ? path.LegTo(suspect.Place!)
        : path.IndexOf(suspect.Leg!.Value);
}
