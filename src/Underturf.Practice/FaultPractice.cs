namespace Underturf.Property.Practice;

/// <summary>What kind of part a fault sits on.</summary>
public enum FaultScope
{
    Conductor,
    Splice,
    Coil,
    Branch,
    Run,
    Station,
    Pair,
    CommonConductor,
    CommonSplice,
    Sensor,
    Supply,
    Everywhere,
    Note,
    Unmodelled,
}

/// <summary>A positive quantity that is not known well: its median, and the standard deviation of its logarithm.</summary>
public sealed record Spread(double Median, [property: System.Text.Json.Serialization.JsonPropertyName("spread")] double LogSpread);

/// <summary>
/// One fault of the trade as data: where it can sit, how often it does, and what it does to the circuit and to the water.
/// Reasoning reads the effects and never asks for the id.
/// </summary>
public sealed record FaultPractice
{
    public required string Id { get; init; }

    public required string Source { get; init; }

    public required string Say { get; init; }

    public required FaultScope Scope { get; init; }

    /// <summary>Chance that one part of its scope has it. For a pair it is shared out over the pairs of a station.</summary>
    public required double Rate { get; init; }

    /// <summary>The repair that cures it; empty where none is known, or none is needed.</summary>
    public required string Repair { get; init; }

    /// <summary>Nothing is to be mended: a sound part is another than was thought.</summary>
    public bool AsksNothing => Repair.Length == 0 && Scope != FaultScope.Unmodelled;

    /// <summary>The part does not conduct.</summary>
    public bool Open { get; init; }

    /// <summary>Ohms in series with the part.</summary>
    public Spread? SeriesOhms { get; init; }

    /// <summary>Ohms of diodes in series with the part, as an ohmmeter's test current sees them.</summary>
    public Spread? DcSeriesOhms { get; init; }

    /// <summary>Of what has diodes: what a meter shows of the running amperes, as a share of those of the same coils without diodes.</summary>
    public Spread? HalfWaveAmps { get; init; }

    /// <summary>Likewise of the volts at a coil behind the diodes.</summary>
    public Spread? HalfWaveVolts { get; init; }

    /// <summary>Of what has diodes: chance that only one half of the wave comes through, so that one polarity of the meter reads open and one place waters.</summary>
    public double OneWay { get; init; }

    /// <summary>Of what has diodes: chance that one is lost, so that the meter finds plain ohms and all places water.</summary>
    public double LostDiode { get; init; }

    /// <summary>The part hangs on another common: open to its own.</summary>
    public bool OtherCommon { get; init; }

    /// <summary>Of what hangs on another common: chance that this comes from the same controller, so that the valve runs all the same.</summary>
    public double OtherLive { get; init; }

    /// <summary>The coil has this share of its ohms left.</summary>
    public Spread? CoilFactor { get; init; }

    /// <summary>The coil is another than the others of its box: its ohms against theirs.</summary>
    public Spread? CoilRatio { get; init; }

    /// <summary>Ohms of a run's copper against those that follow from what was noted of it.</summary>
    public Spread? RunRatio { get; init; }

    /// <summary>Metres by which a valve that nobody has found lies beyond the last place where its wire was seen.</summary>
    public Spread? MoreMetres { get; init; }

    /// <summary>Ohms from the part to earth.</summary>
    public Spread? EarthOhms { get; init; }

    /// <summary>Ohms from the part to the common beside it.</summary>
    public Spread? ToCommonOhms { get; init; }

    /// <summary>Whether it touches the common somewhere inside a stretch, not at an end of it.</summary>
    public bool TouchesInside => Scope == FaultScope.Conductor && ToCommonOhms is not null;

    /// <summary>Ohms in series with the transformer.</summary>
    public Spread? SourceOhms { get; init; }

    /// <summary>More coils in parallel at the place: chance that each further one is there, given the one before.</summary>
    public double? MoreCoils { get; init; }

    /// <summary>This many coils in series in place of one.</summary>
    public int? SeriesCoils { get; init; }

    /// <summary>The part of a station is joined to another station's.</summary>
    public bool Joins { get; init; }

    /// <summary>Two stations have each other's conductor.</summary>
    public bool Swaps { get; init; }

    /// <summary>A place more than the station's own waters for each further coil, or one where there is none.</summary>
    public bool ExtraPlaces { get; init; }

    /// <summary>Chance that the valve stays shut though its coil is fed.</summary>
    public double StaysShut { get; init; }

    /// <summary>Relative change of its ohms from one reading to the next.</summary>
    public double Drift { get; init; }

    /// <summary>Chance that the display would not settle, where the fault is in the measured path.</summary>
    public double Drifting { get; init; }

    /// <summary>Chance to see it when looking at its place.</summary>
    public double Seen { get; init; }

    /// <summary>The name under which a look reports it; the id where nothing is said.</summary>
    public string? Finding { get; init; }

    public string FindingName => Finding ?? Id;

    /// <summary>The quantity of its effect that is not known well; nothing where there is none.</summary>
    public Spread? Unknown => Spreads.FirstOrDefault();

    internal IEnumerable<Spread> Spreads => new[] { SeriesOhms, DcSeriesOhms, CoilFactor, CoilRatio, RunRatio, MoreMetres, EarthOhms, ToCommonOhms, SourceOhms }.OfType<Spread>();

    internal IEnumerable<Spread> HalfWaves => new[] { HalfWaveAmps, HalfWaveVolts }.OfType<Spread>();
}

/// <summary>What it takes to cure a fault once its place is known.</summary>
/// <param name="Name">As work done is noted: "splice remade".</param>
/// <param name="Say">As a proposal: "remake the splice".</param>
/// <param name="Minutes">At the place, walking not included.</param>
/// <param name="Placed">It cures only at the right place.</param>
public sealed record RepairPractice(string Name, string Source, string Say, double Minutes, string Caution, bool Placed = false);

/// <summary>What is expected of a reading that no fault of the book explains.</summary>
/// <param name="OverRange">Share of such ohm readings that show over-range.</param>
/// <param name="DriftImagined">Chance that a sound display was noted as not settling.</param>
/// <param name="Anothers">Share of wrong notes that show what another station shows.</param>
public sealed record UnmodelledPractice(string Source, double OverRange, double DriftImagined, double Anothers);

/// <summary>Words and repair where nothing is broken.</summary>
/// <param name="WeakRepair">What helps where a sound run cannot feed its valve.</param>
public sealed record AsBuiltPractice(string Source, string Say, string WeakRepair);

/// <summary>What it costs to be wrong, in minutes.</summary>
/// <param name="SettledRegretMinutes">Below this expected regret one repairs instead of testing.</param>
public sealed record LossPractice(string Source, double WrongRepairMinutes, double SettledRegretMinutes);

/// <summary>When a question is opened and how much of it is shown.</summary>
/// <param name="OpenBelow">A station whose chance of being sound falls below this opens a question.</param>
/// <param name="ShowAbove">Explanations less likely than this are summed up.</param>
/// <param name="DisagreeSpreads">Two readings of one thing further apart than this many spreads of the instrument cannot both be right.</param>
public sealed record QuestionPractice(string Source, double OpenBelow, double ShowAbove, int ListMoves, double DisagreeSpreads);
