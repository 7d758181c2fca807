namespace Underturf.Reasoning;

/// <summary>Which wire each conductor end of a place is, and what to touch next.</summary>
/// <param name="Engine">Version of the program.</param>
/// <param name="Book">Version of the practice book.</param>
/// <param name="Place">Label of the place.</param>
/// <param name="Ends">Every end, those that are joined together as one.</param>
/// <param name="Next">The next round; nothing where every end has its name or nothing can tell more.</param>
/// <param name="Plans">Every plan that the instruments allow, cheapest first, by expected loss.</param>
/// <param name="Sheet">All rounds of the best plan as they would be written down beforehand.</param>
/// <param name="Doubts">Notes that the others speak against.</param>
/// <param name="Wires">Each wire of the controllers that was found at this place, or is likely here.</param>
/// <param name="Spares">Wires that carry nothing, with what is proven of each.</param>
/// <param name="Exact">False where there are so many ends that shares were sampled.</param>
public sealed record NamingAnswer(
    string Engine,
    string Book,
    string Place,
    IReadOnlyList<EndNaming> Ends,
    NamingRound? Next,
    IReadOnlyList<NamingPlan> Plans,
    NamingSheet? Sheet,
    IReadOnlyList<NamingDoubt> Doubts,
    IReadOnlyList<WireFound> Wires,
    IReadOnlyList<SpareProof> Spares,
    bool Exact)
{
    /// <summary>With a portable source: ends that come from no controller, each with the valves that may click when it is put there.</summary>
    public IReadOnlyList<OnwardTest> Onward { get; init; } = [];

    /// <summary>Minutes that wrong and missing names would still cost.</summary>
    public required double MinutesAtStake { get; init; }

    /// <summary>Every plan is expected to take longer than all that it saves.</summary>
    public required bool IsNotWorthIt { get; init; }

    /// <summary>How far the shares can be off where they were sampled, as it is tested; empty where they are exact.</summary>
    public string Precision => Exact ? string.Empty : "So many ends that shares are sampled: each may be off by two in a hundred.";

    /// <summary>Why the first plan is followed, and what the next best would cost; empty where nothing is left to do.</summary>
    public string Why => Identification.PlanReason.Of(Plans);

    /// <summary>Another round, or every plan to its end, takes longer than all that it could save.</summary>
    public bool EnoughKnown => Next is null || IsNotWorthIt || Next.Minutes > MinutesAtStake;
}

/// <summary>One end, or several that are joined.</summary>
/// <param name="Ids">Ids of the ends.</param>
/// <param name="Name">What people call it: "end 3", "end 3 and end 4".</param>
/// <param name="Looks">Colour and gauge.</param>
/// <param name="Named">True where the likeliest is sure enough to be written down.</param>
/// <param name="Shares">What it may be, likeliest first.</param>
public sealed record EndNaming(IReadOnlyList<string> Ids, string Name, string Looks, bool Named, IReadOnlyList<NameShare> Shares)
{
    /// <summary>Stations of whose conductors it may be the far part, cut off from the controller; contained in the share of no wire of a controller.</summary>
    public IReadOnlyList<NameShare> FarPartOf { get; init; } = [];
}

/// <summary>An end that comes from no controller may be the far part of a conductor that is cut: a source put on it makes a valve click.</summary>
/// <param name="How">Name of the way in the practice book.</param>
/// <param name="End">Id of the end.</param>
/// <param name="Valves">Stations that have no end here yet, the likeliest first.</param>
/// <param name="Among">The same in words: "stations 3, 7 to 9".</param>
public sealed record OnwardTest(string How, string End, string Name, string Say, string Caution, IReadOnlyList<NameShare> Valves, string Among);

/// <summary>What an end may be.</summary>
/// <param name="Wire">Id of the station, controller (its common) or loose end; nothing where it is a wire of no controller.</param>
public sealed record NameShare(string? Wire, string Name, double Probability);

/// <summary>One round of touches.</summary>
/// <param name="How">Name of the way in the practice book.</param>
/// <param name="Say">What to do, in a technician's words.</param>
/// <param name="Put">Ids of the wires that carry it.</param>
/// <param name="On">The same in words: "stations 1 to 4".</param>
/// <param name="Touch">Ids of one end of each that is to be touched, in order.</param>
/// <param name="TouchNames">Their names.</param>
/// <param name="UntilOne">True where the first that answers ends it.</param>
/// <param name="Against">Id of the end that the other lead is clipped to, taken for the common.</param>
/// <param name="AgainstName">Its name.</param>
/// <param name="Fit">Known resistors that have to be fitted first.</param>
/// <param name="Minutes">Walk, putting on, touching.</param>
/// <param name="Bits">Information that it is expected to bring.</param>
public sealed record NamingRound(
    string How, string Say, IReadOnlyList<string> Put, string On, IReadOnlyList<string> Touch, IReadOnlyList<string> TouchNames, bool UntilOne, string? Against, string? AgainstName, IReadOnlyList<ResistorFit> Fit, double Minutes, double Bits, string Caution)
{
    /// <summary>True where it is put on at the place and what is touched are wires at the controller: then <see cref="Put"/> are ends, <see cref="Touch"/> wires, and resistors go on wires.</summary>
    public bool FromPlace { get; init; }
}

/// <summary>A known resistor that goes between an end and the common.</summary>
/// <param name="End">Id of the end.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Sign">"220 ohm".</param>
public sealed record ResistorFit(string End, string Name, string Sign, double Ohms);

/// <summary>What a plan is expected to take until every end has its name.</summary>
/// <param name="Way">"test coil, by halves".</param>
/// <param name="OrMore">True where it was not followed to its end, being out of the question.</param>
/// <param name="Unnamed">Expected number of ends left without a name.</param>
/// <param name="Loss">Minutes with what missing and wrong names cost.</param>
public sealed record NamingPlan(string Way, double Minutes, bool OrMore, double Rounds, double Unnamed, double Loss);

/// <summary>A plan written down beforehand.</summary>
/// <param name="Way">"test coil, by halves".</param>
/// <param name="Rounds">For each round what carries it.</param>
/// <param name="Keys">How to read it off: for each wire its pattern of answers, or its ohms.</param>
/// <param name="Fitted">For known resistors: what goes on each end.</param>
public sealed record NamingSheet(string Way, string Say, string Caution, IReadOnlyList<SheetRound> Rounds, IReadOnlyList<SheetKey> Keys, IReadOnlyList<SheetKey> Fitted)
{
    /// <summary>True where it is put on at the place: rounds are of ends, what is touched or fitted are wires at the controller.</summary>
    public bool FromPlace { get; init; }
}

/// <summary>One round of a sheet.</summary>
/// <param name="On">What carries it, in words.</param>
public sealed record SheetRound(string On);

/// <summary>What stands for what.</summary>
public sealed record SheetKey(string Name, string Sign);

/// <summary>A note of touches that the others speak against.</summary>
/// <param name="Entry">Its id.</param>
/// <param name="Why">In one sentence, with the likelier reading.</param>
public sealed record NamingDoubt(string Entry, string Why);

/// <summary>A wire and the end that it is.</summary>
/// <param name="End">Name of the end; nothing where none has its name.</param>
public sealed record WireFound(string Wire, string Name, string? End, double Probability);

/// <summary>What is proven of a wire that carries nothing.</summary>
/// <param name="Wire">Id of its loose end at the controller.</param>
/// <param name="From">The controller.</param>
/// <param name="To">The place to which all of it holds, and no farther.</param>
/// <param name="Missing">What is not proven yet, in words.</param>
public sealed record SpareProof(string Wire, string Name, string From, string To, bool Found, bool Continuous, bool Insulated, bool CarriesCoil, IReadOnlyList<string> Missing)
{
    public bool Proven => Missing.Count == 0;
}
