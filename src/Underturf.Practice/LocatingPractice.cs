namespace Underturf.Property.Practice;

/// <summary>How near something on the ground is taken to be.</summary>
public enum GroundMeasure
{
    /// <summary>Nearness to its edge or line.</summary>
    Edge,

    /// <summary>Nearness to a corner of it.</summary>
    Corner,

    /// <summary>In it or not.</summary>
    Inside,

    /// <summary>At about a distance from it, nearer and farther falling off alike as ratios.</summary>
    Away,
}

/// <summary>Something on the ground that makes hidden things near it likelier or less likely.</summary>
/// <param name="Say">As part of a sentence: "by the edge of paving".</param>
/// <param name="Of">What it is: a kind of ground, or controller, cable, found (what was found elsewhere), or of its station: watered, route, last (the last place that its conductor is known to pass).</param>
/// <param name="Weight">Natural logarithm of how many times likelier a thing is right there.</param>
/// <param name="ReachMetres">Distance at which the weight has fallen to a third; of what lies away, the distance at which it is greatest.</param>
/// <param name="Spread">Of what lies away: standard deviation of the natural logarithm of the distance.</param>
/// <param name="For">The things it holds for; all where nothing is said.</param>
public sealed record GroundMark(string Name, string Source, string Say, string Of, GroundMeasure By, double Weight, double ReachMetres = 0, double Spread = 0, IReadOnlyList<string>? For = null)
{
    /// <summary>Found things teach its weight; where cables run is known by what was found, so that it would teach itself.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public bool IsLearned => Of is not ("cable" or "route" or "last");

    public bool HoldsFor(string thing) => For is null || For.Contains(thing);
}

/// <summary>How a sign tells where a thing lies.</summary>
public enum SignForm
{
    /// <summary>It is left near the thing.</summary>
    Near,

    /// <summary>It is perceived or not at a point that was chosen.</summary>
    Perceived,

    /// <summary>Points in the order of their distance from it.</summary>
    Order,

    /// <summary>A distance along the conductor.</summary>
    Along,
}

/// <summary>A kind of sign.</summary>
/// <param name="Otherwise">Of what is perceived: the name under which one notes that it was not.</param>
/// <param name="Hit">Chance that it has to do with the thing; of what is perceived, the chance to perceive it right there.</param>
/// <param name="SpreadMetres">How far it is from the thing, as one standard deviation; of an order, the difference of distances that tells.</param>
/// <param name="Imagined">Of what is perceived: chance to perceive it where nothing is.</param>
/// <param name="Minutes">To take it on purpose; zero where one can only come upon it.</param>
public sealed record LocatingSign(string Name, string Source, string Say, SignForm Form, double Hit, double SpreadMetres = 0, double Imagined = 0, string? Otherwise = null, double Minutes = 0, bool Owned = false, string Caution = "");

/// <summary>A way to follow a signal.</summary>
/// <param name="SpreadMetres">Error of a position on the path.</param>
/// <param name="Noticed">Chance that a coil that is passed is noticed.</param>
public sealed record TracingWay(string Name, string Source, string Say, bool Owned, double ReadyMinutes, double MetresPerMinute, double SpreadMetres, double Noticed, string Caution);

/// <summary>How a trace ends.</summary>
/// <param name="Hit">Chance that the thing is at the end.</param>
/// <param name="SpreadMetres">How far from the end it then is.</param>
/// <param name="Share">How often a trace ends so.</param>
public sealed record TraceEnd(string Name, string Source, string Say, double Hit, double SpreadMetres, double Share)
{
    /// <summary>Standard deviation of the distance from the noted end to the thing, for a path followed in one way.</summary>
    public double SpreadMetresBy(TracingWay way) => Math.Sqrt((SpreadMetres * SpreadMetres) + (way.SpreadMetres * way.SpreadMetres));
}

/// <summary>A way to search a piece of ground.</summary>
/// <param name="SquareMetresPerMinute">Ground covered once, with detection falling off exponentially for what is not.</param>
/// <param name="Sees">Share of hidden things that can be found in this way at all.</param>
/// <param name="NotNearMarks">It is not used so near a utility mark that one digs by hand.</param>
/// <param name="Careful">Share of its speed that it has there otherwise, and in the protected ground of trees.</param>
public sealed record SearchWay(string Name, string Source, string Say, bool Owned, double SquareMetresPerMinute, double Sees, string Caution, bool NotNearMarks = false, double Careful = 1);

/// <summary>Finding what is hidden: what is likely beforehand, what tells, ways to search, and what it is worth.</summary>
/// <param name="Things">What can be looked for; the first is what a station lacks.</param>
/// <param name="WeightSpread">How far a weight differs from property to property, as one standard deviation.</param>
/// <param name="Anywhere">Chance that a thing lies without regard to any mark.</param>
/// <param name="None">Chance that a thing that is looked for is not there.</param>
/// <param name="FurtherNone">The same of each further valve of a station that waters several places.</param>
/// <param name="CellMetres">Side of a cell of ground.</param>
/// <param name="MarginMetres">Ground beyond what was noted.</param>
/// <param name="AlongSpread">Error of a distance along a conductor, as a share.</param>
/// <param name="StopMetres">Side of the piece of ground that is searched at one stop.</param>
/// <param name="UnfoundMinutes">What it costs to leave a thing hidden.</param>
public sealed record LocatingPractice(
    string Source,
    IReadOnlyList<string> Things,
    IReadOnlyList<GroundMark> Marks,
    IReadOnlyList<LocatingSign> Signs,
    IReadOnlyList<TracingWay> Tracing,
    IReadOnlyList<TraceEnd> Ends,
    IReadOnlyList<SearchWay> Searching,
    double WeightSpread,
    double Anywhere,
    double None,
    double FurtherNone,
    double CellMetres,
    double MarginMetres,
    double AlongSpread,
    double StopMetres,
    double UnfoundMinutes)
{
    /// <summary>The sign of a name, and whether it was perceived.</summary>
    public (LocatingSign Sign, bool Perceived)? Sign(string name) =>
        Signs.FirstOrDefault(s => s.Name == name) is { } sign ? (sign, true)
        : Signs.FirstOrDefault(s => s.Otherwise == name) is { } other ? (other, false)
        : null;

    public TracingWay? TracingBy(string name) => Tracing.FirstOrDefault(t => t.Name == name);

    public TraceEnd? End(string name) => Ends.FirstOrDefault(e => e.Name == name);

    public SearchWay? SearchBy(string name) => Searching.FirstOrDefault(s => s.Name == name);
}
