using System.Text.Json.Serialization;
using Underturf.FieldLog;
using Underturf.Planning.Rework;
using Underturf.Reasoning.Water;

namespace Underturf.Planning.Repair;

/// <summary>How one thing is repaired: what is wrong with it, what can be done with minutes and money, what it takes, and the steps.</summary>
/// <param name="Engine">Version of the program.</param>
/// <param name="Book">Version of the practice book.</param>
/// <param name="Money">What prices are in.</param>
/// <param name="Thing">Id of the valve or box.</param>
/// <param name="Name">As people call it.</param>
/// <param name="Where">Where one stands to repair it: its box, or itself.</param>
/// <param name="Place">Id of that.</param>
/// <param name="Stations">Numbers of the stations that need it.</param>
/// <param name="Chance">That something is wrong with it, as belief has it; nothing where no question is about it.</param>
/// <param name="Causes">What it would be, given that something is wrong with it; shares sum to one. Empty for a box.</param>
/// <param name="Options">What can be done: possible ones first, of those the cheapest expected first. The first is chosen.</param>
/// <param name="Roots">Trees whose protected ground reaches here.</param>
/// <param name="Shut">What has to be shut, and what goes dry; nothing where no water is opened.</param>
/// <param name="Hole">Water in the hole: wait, pump or work wet, as far as it is known.</param>
/// <param name="Donors">Valves whose insides may fit, the best first.</param>
/// <param name="Joints">Of a box: each joint with its connector.</param>
/// <param name="Fit">The box that fits.</param>
/// <param name="Steps">What is left to do, in order.</param>
/// <param name="Permissions">Tickets and approvals that it waits for.</param>
/// <param name="Unknown">What nobody has noted and what would make the plan surer.</param>
public sealed record RepairAnswer(
    string Engine,
    string Book,
    string Money,
    string Thing,
    string Name,
    RepairThing Kind,
    string Where,
    string Place,
    IReadOnlyList<string> Stations,
    double? Chance,
    IReadOnlyList<CauseShare> Causes,
    IReadOnlyList<RepairOption> Options,
    IReadOnlyList<RootZone> Roots,
    ShutNeed? Shut,
    HoleAnswer? Hole,
    IReadOnlyList<DonorMatch> Donors,
    IReadOnlyList<JointPlan> Joints,
    BoxFit? Fit,
    Estimate Estimate,
    IReadOnlyList<RepairStep> Steps,
    IReadOnlyList<Permission> Permissions,
    IReadOnlyList<string> Unknown)
{
    [JsonIgnore]
    public RepairOption Choice => Options[0];

    /// <summary>The next best that is possible.</summary>
    [JsonIgnore]
    public RepairOption? RunnerUp => Options.Skip(1).FirstOrDefault(o => o.IsPossible);

    /// <summary>Nothing of it is left to do.</summary>
    public bool IsDone => Steps.Count == 0;
}

public enum RepairThing
{
    Valve,
    Box,
}

public enum RepairKind
{
    /// <summary>A new coil and nothing else.</summary>
    Coil,

    /// <summary>Open it, clean it, put it back with its own parts.</summary>
    Clean,

    /// <summary>Every part that comes out is new; the body stays.</summary>
    Rebuild,

    /// <summary>The inside of a valve that fits, in place of its own.</summary>
    Donor,

    /// <summary>A new valve in its place.</summary>
    Replace,

    /// <summary>A new valve elsewhere, clear of roots and hardscape.</summary>
    Move,

    /// <summary>Of a box: the joints that belief points at, and no others.</summary>
    Joint,

    /// <summary>Of a box: every joint, housed anew.</summary>
    Box,
}

/// <summary>What may be wrong inside a valve.</summary>
/// <param name="Name">As the practice book names it.</param>
/// <param name="Seen">Somebody saw it.</param>
public sealed record CauseShare(string Name, string Say, double Share, bool Seen);

/// <summary>One thing that can be done.</summary>
/// <param name="Cost">If it goes well; its lines add up.</param>
/// <param name="SpreadMinutes">Standard deviation of its minutes.</param>
/// <param name="SpreadPrice">The same of its price.</param>
/// <param name="Cures">Chance that it cures what is wrong.</param>
/// <param name="Expected">Its price with what follows where it does not.</param>
/// <param name="Then">What follows then.</param>
/// <param name="Why">What speaks against it, or why it cannot be.</param>
/// <param name="Parts">What to lay out before anything is opened.</param>
public sealed record RepairOption(
    RepairKind Kind,
    string Say,
    CostSheet Cost,
    decimal SpreadMinutes,
    decimal SpreadPrice,
    double Cures,
    decimal Expected,
    string Then,
    bool IsPossible,
    string? Why,
    IReadOnlyList<PartLine> Parts)
{
    /// <summary>Among roots an air lance digs cheaper than hands.</summary>
    [JsonIgnore]
    public bool Air { get; init; }
}

/// <summary>A part of the catalogue.</summary>
/// <param name="Price">Of all of them.</param>
public sealed record PartLine(string What, decimal Count, string Unit, decimal Each, decimal Price);

/// <summary>Protected ground of a tree.</summary>
/// <param name="Tree">Id.</param>
/// <param name="RadiusMetres">By the local rule, from the diameter of its trunk.</param>
/// <param name="DistanceMetres">From the trunk to the place.</param>
/// <param name="Air">Cheaper with an air lance than by hand.</param>
public sealed record RootZone(string Tree, string Name, double TrunkMetres, double RadiusMetres, double DistanceMetres, bool Air);

/// <summary>What has to be shut.</summary>
/// <param name="Say">In words, with what stands shut already.</param>
/// <param name="Ids">Ids of what is still to be shut, in walking order.</param>
/// <param name="Names">The same as people call it.</param>
/// <param name="Minutes">Until all is shut.</param>
/// <param name="Holds">Chance that all of it holds.</param>
/// <param name="Dry">Numbers of the stations without water meanwhile.</param>
public sealed record ShutNeed(string Say, IReadOnlyList<string> Ids, IReadOnlyList<string> Names, double Minutes, double Holds, IReadOnlyList<string> Dry)
{
    /// <summary>Those that may have none either: nobody has noted what feeds them.</summary>
    public IReadOnlyList<string> MayGoDry { get; init; } = [];

    /// <summary>Everything is shut that water comes in by.</summary>
    public bool EveryStationDry { get; init; }

    [JsonIgnore]
    public string SayDry => DryWords.Certain(Dry, EveryStationDry) + (DryWords.Perhaps(MayGoDry) is { } may ? $"; perhaps {may}" : string.Empty);
}

/// <summary>A valve beside the one to repair.</summary>
/// <param name="Fits">Chance that its inside fits.</param>
/// <param name="Spare">It can be taken: it is in stock, or was left out of use. Otherwise it only tells which parts to order.</param>
/// <param name="Same">What is the same, what differs and what is not known of either, in words.</param>
public sealed record DonorMatch(string Id, string Name, double Fits, bool Spare, IReadOnlyList<string> Same, IReadOnlyList<string> Differs, IReadOnlyList<string> Unknown);

/// <summary>A joint of a box.</summary>
/// <param name="Name">What it carries.</param>
/// <param name="Ends">Names of the conductors.</param>
/// <param name="Gauges">Their sizes, those that are taken as usual in brackets.</param>
/// <param name="Connectors">What joins them; empty where the catalogue has nothing that does.</param>
/// <param name="Trouble">Why it has none.</param>
public sealed record JointPlan(string Name, IReadOnlyList<string> Ends, IReadOnlyList<string> Gauges, IReadOnlyList<PartLine> Connectors, bool Suspected, string? Trouble);

/// <summary>The box that fits what it has to hold.</summary>
/// <param name="Noted">As noted; nothing where nobody did.</param>
/// <param name="Needed">The smallest of the catalogue that fits.</param>
/// <param name="IsEnough">The noted one is no smaller; nothing where nobody noted one of the catalogue.</param>
/// <param name="Why">What has to fit.</param>
public sealed record BoxFit(string? Noted, string? Needed, bool? IsEnough, string Why);

/// <summary>A price to agree on: hours, parts, and what may come on top.</summary>
public sealed record Estimate(decimal Hours, decimal Work, decimal Parts, decimal Contingency, decimal Total);

public enum PermissionKind
{
    /// <summary>Utilities are marked before anybody digs.</summary>
    LocateTicket,

    /// <summary>Somebody who knows trees has to look at it.</summary>
    Arborist,

    /// <summary>The owner agrees to the price, or to stations without water.</summary>
    Owner,
}

/// <summary>Something to wait for before the repair begins.</summary>
/// <param name="Price">What it costs, where it costs something.</param>
public sealed record Permission(PermissionKind Kind, string Say, string Why, decimal Price);

/// <summary>One instruction.</summary>
/// <param name="Key">As the log names the step.</param>
/// <param name="Caution">What can hurt at this step.</param>
/// <param name="Expect">What must be seen; nothing where nothing is checked.</param>
/// <param name="Passed">Notes to be written when it is done, or when what was expected is seen.</param>
/// <param name="Failed">Notes to be written when it is not seen; empty where nothing is checked.</param>
public sealed record RepairStep(string Key, string Say, string Where, decimal Minutes, string Caution, string? Expect, [property: JsonIgnore] IReadOnlyList<Fact> Passed, [property: JsonIgnore] IReadOnlyList<Fact> Failed)
{
    public bool IsCheck => Failed.Count > 0;

    /// <summary>What may be seen when it is done, each with the notes of it.</summary>
    public IReadOnlyList<RepairSight> Sights { get; init; } = [];
}

/// <summary>Something that an opened valve shows.</summary>
public sealed record RepairSight(string Name, string Say, [property: JsonIgnore] IReadOnlyList<Fact> Notes);

/// <summary>All that wants repair, what saves most loss for its minutes first.</summary>
public sealed record RepairListAnswer(string Engine, string Book, string Money, IReadOnlyList<RepairItem> Items)
{
    public decimal Minutes => Items.Sum(i => i.Minutes);

    public decimal Price => Items.Sum(i => i.Price);
}

/// <summary>One thing that wants repair.</summary>
/// <param name="Thing">Id; of what is neither valve nor box the place where one goes.</param>
/// <param name="Question">Id of the open question that it answers.</param>
/// <param name="Chance">That it is this.</param>
/// <param name="Worth">Minutes of loss that it saves, expected.</param>
/// <param name="Plan">The whole plan; nothing where the book has minutes only.</param>
public sealed record RepairItem(string Thing, string Name, string Say, string Question, IReadOnlyList<string> Stations, double Chance, decimal Minutes, decimal SpreadMinutes, decimal Price, double Worth, [property: JsonIgnore] RepairAnswer? Plan)
{
    /// <summary>What of the job its minutes hold, in words, where they leave the most of it out; otherwise empty.</summary>
    public string LeavesOut { get; init; } = string.Empty;
}
