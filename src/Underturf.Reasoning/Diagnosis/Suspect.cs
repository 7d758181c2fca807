using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// One thing that could be wrong, at one place, with one value of what is not known about it. A fault whose ohms are not known is several
/// suspects, one for each stratum of its ohms.
/// </summary>
public sealed record Suspect
{
    /// <summary>What all amounts of the fault at this place have in common: a large property has a hundred thousand suspects, and most differ in the amount alone.</summary>
    public required SuspectSeat Seat { get; init; }

    /// <summary>A fault of this rate, with no amount or with all of them.</summary>
    internal static Suspect Of(SuspectSeat seat, double rate) => new() { Seat = seat, Weight = rate / (1 - rate) };

    /// <summary>The fault.</summary>
    public FaultPractice Fault => Seat.Fault;

    /// <summary>The station it belongs to; nothing where it is on the common, the supply or the whole property.</summary>
    public string? Station => Seat.Station;

    /// <summary>The second station of a pair.</summary>
    public string? Other => Seat.Other;

    /// <summary>For a fault of a common the label of that common; nothing for the usual one.</summary>
    public string? Common => Seat.Common;

    /// <summary>The leg it sits in or at whose far end it sits: the leg's id and far place.</summary>
    public LegKey? Leg => Seat.Leg;

    /// <summary>Where one would dig or look; nothing where it has no place.</summary>
    public string? Place => Seat.Place;

    /// <summary>The stratum's ohms, or its share of a coil's ohms.</summary>
    public double Amount { get; init; }

    /// <summary>Standard deviation of the logarithm of the amount within its stratum.</summary>
    public double AmountLogSpread { get; init; }

    /// <summary>Spread of ohms in series: what the stratum leaves open, and drift from one reading to the next.</summary>
    public double SeriesLogSpread => Math.Sqrt((AmountLogSpread * AmountLogSpread) + (Fault.Drift * Fault.Drift));

    /// <summary>It and nothing else, as it is asked for again and again.</summary>
    internal Suspect[] Alone => field is [var one] && ReferenceEquals(one, this) ? field : field = [this];

    /// <summary>What its diodes let through; all where it has none.</summary>
    public Passes Passes => Seat.Passes;

    /// <summary>Coils more than were noted.</summary>
    public int MoreCoils => Seat.MoreCoils;

    /// <summary>The note that is wrong.</summary>
    public EntryId? Note => Seat.Note;

    /// <summary>Prior odds against everything being sound.</summary>
    public required double Weight { get; init; }

    /// <summary>True where it lies on the common or on all stations.</summary>
    public bool IsShared => Fault.Scope is FaultScope.Run or FaultScope.CommonConductor or FaultScope.CommonSplice or FaultScope.Sensor
        or FaultScope.Supply or FaultScope.Everywhere;

    /// <summary>A suspect is itself and no other: two strata that look alike are two suspects.</summary>
    public bool Equals(Suspect? other) => ReferenceEquals(this, other);

    public override int GetHashCode() => System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(this);

    /// <summary>Whether it sits somewhere inside a stretch, not at an end of it.</summary>
    public bool IsInside => Fault.TouchesInside || Seat.IsUnfound;

    public bool IsPair => Fault.Scope == FaultScope.Pair;

    /// <summary>Whether it is a pair that holds the station.</summary>
    public bool Concerns(string station) => IsPair && (Station == station || Other == station);
}

/// <summary>A fault at one place, whatever its amount.</summary>
/// <param name="Fault">The fault.</param>
/// <param name="Station">The station it belongs to; nothing where it is on the common, the supply or the whole property.</param>
/// <param name="Leg">The leg it sits in or at whose far end it sits: the leg's id and far place.</param>
/// <param name="Place">Where one would dig or look; nothing where it has no place.</param>
public sealed record SuspectSeat(FaultPractice Fault, string? Station = null, LegKey? Leg = null, string? Place = null)
{
    /// <summary>The second station of a pair.</summary>
    public string? Other { get; init; }

    /// <summary>For a fault of a common the label of that common; nothing for the usual one.</summary>
    public string? Common { get; init; }

    /// <summary>What its diodes let through; all where it has none.</summary>
    public Passes Passes { get; init; }

    /// <summary>Coils more than were noted.</summary>
    public int MoreCoils { get; init; }

    /// <summary>The note that is wrong.</summary>
    public EntryId? Note { get; init; }

    /// <summary>Of what hangs on another common: that common comes from the same controller.</summary>
    public bool IsLive { get; init; }

    /// <summary>Of a common: all cables that end in the place have one there, so that all stations that pass it return by it, whichever leg they come by.</summary>
    public bool IsForAll { get; init; }

    /// <summary>
    /// Of a common in a box that nobody has found: the last place on the way to it that is known. What ends there by what was seen of it may in truth end in that box, each
    /// station by itself as likely as not.
    /// </summary>
    public string? Beyond { get; init; }

    /// <summary>
    /// In a box that nobody has found, inside the stretch that ends at the place; for a pair inside the two stretches that go on from the place where both were last
    /// seen.
    /// </summary>
    public bool IsUnfound { get; init; }
}

/// <summary>What diodes let through.</summary>
public enum Passes
{
    /// <summary>Both halves of the wave, each to its own valve.</summary>
    Both,

    /// <summary>The half that an ohmmeter drives with its leads as usual.</summary>
    Forward,

    /// <summary>The half that it drives with its leads swapped.</summary>
    Backward,

    /// <summary>Everything: a diode is lost.</summary>
    All,
}
