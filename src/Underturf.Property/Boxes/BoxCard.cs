using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>What one box holds, as a technician sees it when the lid is off.</summary>
/// <param name="Size">In the writer's words.</param>
/// <param name="Grade">How the box itself is known.</param>
/// <param name="Joints">Conductor ends, those that were seen joined together; a loose end stands alone.</param>
/// <param name="Runs">Runs of wire that are known or said to come in here.</param>
/// <param name="Found">What was odd when somebody looked, oldest first.</param>
/// <param name="Done">Work done here, oldest first.</param>
/// <param name="LeftAs">The state in which it was left last.</param>
public sealed record BoxCard(
    string Id,
    string Name,
    string? Size,
    Position? Position,
    Grade Grade,
    string? Remark,
    IReadOnlyList<Joint> Joints,
    IReadOnlyList<BoxValve> Valves,
    IReadOnlyList<BoxRun> Runs,
    IReadOnlyList<BoxFinding> Found,
    IReadOnlyList<BoxWork> Done,
    Observed<LeftAsFact>? LeftAs)
{
    public int EndCount => Joints.Sum(j => j.Ends.Count);

    public int SpliceCount => Joints.Count(j => j.IsJoined || j.Ends.Count == 0);

    /// <summary>The cards of all boxes in the order people count.</summary>
    public static IReadOnlyList<BoxCard> All(PropertyHistory history) =>
        [.. history.Now.Boxes.Keys.OrderBy(history.Now.Name, NaturalOrder.Instance).ThenBy(id => id, StringComparer.Ordinal).Select(id => new BoxReader(history, id).Card())];

    /// <summary>The conductor ends at any place, those that were seen joined together.</summary>
    public static IReadOnlyList<Joint> JointsAt(PropertyView view, string place) => new JointFinder(view, view.Identity.Of(place)).Joints();

    /// <summary>The card of one box; nothing where nobody noted it.</summary>
    public static BoxCard? Of(PropertyHistory history, string box) =>
        history.Now.Identity.Of(box) is var id && history.Now.Boxes.ContainsKey(id) ? new BoxReader(history, id).Card() : null;
}

/// <summary>Conductor ends that are one at this place.</summary>
/// <param name="Connector">What joins them, in the writer's words.</param>
/// <param name="Elsewhere">How many more are said to be joined to them that nobody noted at this place.</param>
public sealed record Joint(IReadOnlyList<ConductorEnd> Ends, string? Connector, int Elsewhere)
{
    public bool IsJoined => Ends.Count + Elsewhere > 1 || Connector is not null;
}

/// <summary>One conductor end.</summary>
/// <param name="Gauge">"18 AWG", or its area.</param>
/// <param name="Carries">The station that it carries, or that it is a common; nothing where that is not known.</param>
/// <param name="CarriesGrade">Inferred where only a mate or the far end says it.</param>
/// <param name="Station">Id of that station.</param>
/// <param name="GoesTo">Where its other end is, where that is known.</param>
public sealed record ConductorEnd(
    string Id, string Name, string? Colour, string? Gauge, Grade Grade, string? Carries, Grade CarriesGrade, string? Station, string? GoesTo, string? Remark);

/// <summary>A valve in the box.</summary>
/// <param name="Station">Its station's number, where it is known.</param>
/// <param name="Facts">Size, body, screws, make, plate of the coil: what is known of it, each in a few words.</param>
public sealed record BoxValve(string Id, string Name, string? Station, string? Waters, Grade Grade, IReadOnlyList<string> Facts);

/// <summary>A run of wire from here to another place.</summary>
/// <param name="Facts">Length, sizes, number of conductors, what it carries: what is known of it, each in a few words.</param>
public sealed record BoxRun(string Id, string To, Grade Grade, IReadOnlyList<string> Facts);

/// <summary>Something odd that was seen here, by its name in the practice book.</summary>
/// <param name="Stations">Numbers of the stations whose wires it is about; none where it may be any.</param>
public sealed record BoxFinding(string Name, IReadOnlyList<string> Stations, DateTimeOffset At, Grade Grade);

/// <summary>Work done here.</summary>
/// <param name="On">What was worked on, where the note names it.</param>
public sealed record BoxWork(string Did, string? On, DateTimeOffset At);
