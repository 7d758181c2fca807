using System.Collections.Immutable;
using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>The standing facts of a log sorted by kind, in the order of when they were so: the state that the fold carries.</summary>
public sealed record Facts
{
    public static Facts None { get; } = new();

    public PropertyFact? Property { get; init; }

    /// <summary>What people call the property.</summary>
    public string Title => Property?.Name ?? "A property without a name";

    /// <summary>What people are shown: US customary units, where nothing else was said, or SI.</summary>
    public bool UsesUsUnits => Property?.Units != "si";

    /// <summary>The clock by which every moment is told.</summary>
    public PropertyZone Zone { get; init; } = PropertyZone.None;

    public Identity Identity { get; init; } = Identity.None;

    public ImmutableList<Observed<SameAsFact>> SameAs { get; init; } = [];

    public ImmutableList<Observed<GroundFact>> Ground { get; init; } = [];

    public ImmutableList<Observed<TieFact>> Ties { get; init; } = [];

    public ImmutableList<Observed<ControllerFact>> Controllers { get; init; } = [];

    public ImmutableList<Observed<StationFact>> Stations { get; init; } = [];

    public ImmutableList<Observed<BoxFact>> Boxes { get; init; } = [];

    public ImmutableList<Observed<ValveFact>> Valves { get; init; } = [];

    public ImmutableList<Observed<CoilFact>> Coils { get; init; } = [];

    public ImmutableList<Observed<EndFact>> Ends { get; init; } = [];

    public ImmutableList<Observed<SpliceFact>> Splices { get; init; } = [];

    public ImmutableList<Observed<CableFact>> Cables { get; init; } = [];

    public ImmutableList<Observed<ReadingFact>> Readings { get; init; } = [];

    public ImmutableList<Observed<TestFact>> Tests { get; init; } = [];

    public ImmutableList<Observed<LookFact>> Looks { get; init; } = [];

    public ImmutableList<Observed<TouchFact>> Touches { get; init; } = [];

    public ImmutableList<Observed<ResistorFact>> Resistors { get; init; } = [];

    public ImmutableList<Observed<SoughtFact>> Sought { get; init; } = [];

    public ImmutableList<Observed<SpotFact>> Spots { get; init; } = [];

    public ImmutableList<Observed<TraceFact>> Traces { get; init; } = [];

    public ImmutableList<Observed<SignFact>> Signs { get; init; } = [];

    public ImmutableList<Observed<SearchFact>> Searches { get; init; } = [];

    public ImmutableList<Observed<WaterSupplyFact>> WaterSupplies { get; init; } = [];

    public ImmutableList<Observed<FittingFact>> Fittings { get; init; } = [];

    public ImmutableList<Observed<PipeFact>> Pipes { get; init; } = [];

    public ImmutableList<Observed<IsolationValveFact>> IsolationValves { get; init; } = [];

    public ImmutableList<Observed<OutletFact>> Outlets { get; init; } = [];

    public ImmutableList<Observed<SettingFact>> Settings { get; init; } = [];

    public ImmutableList<Observed<WatchFact>> Watches { get; init; } = [];

    public ImmutableList<Observed<CatchFact>> Catches { get; init; } = [];

    public ImmutableList<Observed<WorkFact>> Works { get; init; } = [];

    public ImmutableList<Observed<StepFact>> Steps { get; init; } = [];

    public ImmutableList<Observed<ReworkStepFact>> ReworkSteps { get; init; } = [];

    /// <summary>Every change of a number, oldest first.</summary>
    public ImmutableList<Observed<RenumberedFact>> Renumbered { get; init; } = [];

    public ImmutableList<Observed<LeftAsFact>> LeftAs { get; init; } = [];

    public ImmutableList<Observed<LocateTicketFact>> Tickets { get; init; } = [];

    public ImmutableList<Observed<ApprovalFact>> Approvals { get; init; } = [];

    public ImmutableList<Observed<PartsFact>> Parts { get; init; } = [];

    public ImmutableList<Observed<ToldFact>> Told { get; init; } = [];

    public ImmutableList<Observed<PhotoFact>> Photos { get; init; } = [];

    /// <summary>Facts of any kind that have photos.</summary>
    public ImmutableList<Observed<Fact>> Pictured { get; init; } = [];

    public ImmutableList<Observed<QuestionOpenedFact>> QuestionsOpened { get; init; } = [];

    public ImmutableList<Observed<QuestionClosedFact>> QuestionsClosed { get; init; } = [];

    public ImmutableList<Observed<PaperIssuedFact>> Papers { get; init; } = [];

    /// <summary>Takes in one entry.</summary>
    public Facts Evolve(Entry entry) => entry.Fact is { Photos.Count: > 0 } fact
        ? Sorted(entry) with { Pictured = Pictured.Add(See(fact, entry)) }
        : Sorted(entry);

    /// <summary>By its kind. Those that say nothing of the property leave it as it is.</summary>
    private Facts Sorted(Entry entry) => entry.Fact switch
    {
        PropertyFact f => this with { Property = Property is null ? f : Overlay.Of(Property, f) },
        SameAsFact f => this with { Identity = Identity.Join(f.A, f.B), SameAs = SameAs.Add(See(f, entry)) },
        GroundFact f => this with { Ground = Ground.Add(See(f, entry)) },
        TieFact f => this with { Ties = Ties.Add(See(f, entry)) },
        ControllerFact f => this with { Controllers = Controllers.Add(See(f, entry)) },
        StationFact f => this with { Stations = Stations.Add(See(f, entry)) },
        BoxFact f => this with { Boxes = Boxes.Add(See(f, entry)) },
        ValveFact f => this with { Valves = Valves.Add(See(f, entry)) },
        CoilFact f => this with { Coils = Coils.Add(See(f, entry)) },
        EndFact f => this with { Ends = Ends.Add(See(f, entry)) },
        SpliceFact f => this with { Splices = Splices.Add(See(f, entry)) },
        CableFact f => this with { Cables = Cables.Add(See(f, entry)) },
        ReadingFact f => this with { Readings = Readings.Add(See(f, entry)) },
        TestFact f => this with { Tests = Tests.Add(See(f, entry)) },
        LookFact f => this with { Looks = Looks.Add(See(f, entry)) },
        TouchFact f => this with { Touches = Touches.Add(See(f, entry)) },
        ResistorFact f => this with { Resistors = Resistors.Add(See(f, entry)) },
        SoughtFact f => this with { Sought = Sought.Add(See(f, entry)) },
        SpotFact f => this with { Spots = Spots.Add(See(f, entry)) },
        TraceFact f => this with { Traces = Traces.Add(See(f, entry)) },
        SignFact f => this with { Signs = Signs.Add(See(f, entry)) },
        SearchFact f => this with { Searches = Searches.Add(See(f, entry)) },
        WaterSupplyFact f => this with { WaterSupplies = WaterSupplies.Add(See(f, entry)) },
        FittingFact f => this with { Fittings = Fittings.Add(See(f, entry)) },
        PipeFact f => this with { Pipes = Pipes.Add(See(f, entry)) },
        IsolationValveFact f => this with { IsolationValves = IsolationValves.Add(See(f, entry)) },
        OutletFact f => this with { Outlets = Outlets.Add(See(f, entry)) },
        SettingFact f => this with { Settings = Settings.Add(See(f, entry)) },
        WatchFact f => this with { Watches = Watches.Add(See(f, entry)) },
        CatchFact f => this with { Catches = Catches.Add(See(f, entry)) },
        WorkFact f => this with { Works = Works.Add(See(f, entry)) },
        StepFact f => this with { Steps = Steps.Add(See(f, entry)) },
        ReworkStepFact f => this with { ReworkSteps = ReworkSteps.Add(See(f, entry)) },
        RenumberedFact f => this with { Renumbered = Renumbered.Add(See(f, entry)) },
        LeftAsFact f => this with { LeftAs = LeftAs.Add(See(f, entry)) },
        LocateTicketFact f => this with { Tickets = Tickets.Add(See(f, entry)) },
        ApprovalFact f => this with { Approvals = Approvals.Add(See(f, entry)) },
        PartsFact f => this with { Parts = Parts.Add(See(f, entry)) },
        ToldFact f => this with { Told = Told.Add(See(f, entry)) },
        PhotoFact f => this with { Photos = Photos.Add(See(f, entry)) },
        QuestionOpenedFact f => this with { QuestionsOpened = QuestionsOpened.Add(See(f, entry)) },
        QuestionClosedFact f => this with { QuestionsClosed = QuestionsClosed.Add(See(f, entry)) },
        PaperIssuedFact f => this with { Papers = Papers.Add(See(f, entry)) },
        _ => this,
    };

    private Observed<T> See<T>(T fact, Entry entry)
        where T : Fact => new(fact, entry.Moment with { At = Zone.Told(entry.At) });
}
