using System.Text.Json.Serialization;
using Underturf.FieldLog;

namespace Underturf.Reasoning;

/// <summary>Where hidden things lie, as far as the notes tell, and where to look first.</summary>
/// <param name="Engine">Version of the program.</param>
/// <param name="Book">Version of the practice book.</param>
/// <param name="Things">Each hidden thing.</param>
/// <param name="Learned">What this property teaches beyond the practice book, strongest first.</param>
/// <param name="Found">How many found things that rests on.</param>
/// <param name="Route">Where to search in which order, walking counted; nothing where it is worth no search.</param>
/// <param name="Choices">What to do next, by expected minutes until all is found or given up, best first.</param>
public sealed record LocationAnswer(
    string Engine, string Book, IReadOnlyList<HiddenThing> Things, IReadOnlyList<MarkEffect> Learned, int Found, SearchRoute? Route, IReadOnlyList<SearchChoice> Choices)
{
    /// <summary>The heat of all things together, to be drawn; nothing where there is no plan.</summary>
    [JsonIgnore]
    public HeatMap? Heat { get; init; }
}

/// <summary>What lies hidden, by name: one thing, or those of a station that notes do not tell apart.</summary>
/// <param name="Id">Of the first of them: what the notebook is asked with.</param>
/// <param name="Station">The station it belongs to.</param>
/// <param name="LastNoted">When something was last noted about looking for it; nothing where nobody has begun.</param>
public sealed record HiddenName(string Id, string Name, string What, string? Station, int Count, DateTimeOffset? LastNoted)
{
    /// <summary>What the practice book calls a fault that the diagnosis puts into the ground.</summary>
    public const string Fault = "fault";

    /// <summary>What a note of looking for it is about.</summary>
    [JsonIgnore]
    public string About => Station ?? Id;
}

/// <summary>One thing that is looked for.</summary>
/// <param name="None">Chance that there is none.</param>
/// <param name="Places">Where it is likeliest, best first.</param>
/// <param name="Credible">Smallest ground that holds it with a probability, if it is there at all.</param>
/// <param name="Notes">What each note says of the best place.</param>
public sealed record HiddenThing(string Id, string What, string Name, string? Station, double None, IReadOnlyList<LikelyPlace> Places, IReadOnlyList<CredibleGround> Credible, IReadOnlyList<PlaceNote> Notes)
{
    /// <summary>Its own heat, to be drawn; nothing where there is no plan.</summary>
    [JsonIgnore]
    public HeatMap? Heat { get; init; }
}

/// <summary>A piece of ground where it may lie.</summary>
/// <param name="At">Its middle; nothing for a spot.</param>
/// <param name="Where">In words.</param>
/// <param name="AcrossMetres">Side of the piece.</param>
/// <param name="Probability">That it lies in it.</param>
/// <param name="Spot">Id of the spot, where there is no plan.</param>
public sealed record LikelyPlace(Position? At, string Where, double AcrossMetres, double Probability, string? Spot);

/// <summary>The smallest ground that holds a thing with a probability.</summary>
public sealed record CredibleGround(double Probability, double SquareMetres);

/// <summary>What notes say of the best place of a thing.</summary>
/// <param name="Entries">Their ids.</param>
/// <param name="Weight">log10 of how much likelier it makes that place than it was.</param>
public sealed record PlaceNote(IReadOnlyList<string> Entries, string Say, double Weight);

/// <summary>How a mark of the practice book shows on this property.</summary>
/// <param name="Mark">Name of the mark.</param>
/// <param name="Say">"by the edge of paving".</param>
/// <param name="Usual">Weight of the practice book.</param>
/// <param name="Here">Weight as learned.</param>
/// <param name="Spread">Its standard deviation.</param>
/// <param name="FoundNear">Found things within its reach.</param>
/// <param name="GroundNear">Share of all ground within its reach.</param>
public sealed record MarkEffect(string Mark, string Say, double ReachMetres, double Usual, double Here, double Spread, int FoundNear, double GroundNear);

/// <summary>Probability over a grid of ground.</summary>
/// <param name="Corner">South-west corner.</param>
/// <param name="SideMetres">Of a cell.</param>
/// <param name="Wide">Cells in a row.</param>
/// <param name="Shares">Expected number of things in each cell, row by row from the south-west.</param>
/// <param name="Limits">Share of a cell above which it belongs to the ground that holds the thing with 50, 80 and 95 %.</param>
public sealed record HeatMap(Position Corner, double SideMetres, int Wide, double[] Shares, IReadOnlyList<(double Probability, double Share)> Limits)
{
    public int Deep => Shares.Length / Wide;

    /// <summary>What lies within a distance of a point.</summary>
    public double Within(Position at, double metres) => Shares.Where((_, k) => Middle(k).DistanceMetresTo(at) <= metres).Sum();

    /// <summary>The middle of a cell.</summary>
    public Position Middle(int cell) => new(Corner.EastMetres + (((cell % Wide) + 0.5) * SideMetres), Corner.NorthMetres + (((cell / Wide) + 0.5) * SideMetres));
}

/// <summary>A walk from piece to piece of ground.</summary>
/// <param name="Found">Chance that it is found on the way.</param>
/// <param name="TravelMinutes">Of walking until it is found or given up, on average.</param>
/// <param name="EffortMinutes">Of searching, the same.</param>
/// <param name="LossMinutes">Both, and what it costs to leave it hidden.</param>
/// <param name="LeastMinutes">The least that this could be if no way took time.</param>
public sealed record SearchRoute(IReadOnlyList<SearchStep> Steps, double Found, double TravelMinutes, double EffortMinutes, double LossMinutes, double LeastMinutes)
{
    /// <summary>A stop that finds it with less than this share of what the best one does is a glance in passing.</summary>
    private const double Glance = 0.25;

    /// <summary>The stops that are worth telling, in their order.</summary>
    [JsonIgnore]
    public IReadOnlyList<SearchStep> Told => [.. Steps.Where(s => s.Found >= Glance * Steps.Max(best => best.Found))];
}

/// <summary>One piece of ground searched.</summary>
/// <param name="At">Its middle; nothing for a spot.</param>
/// <param name="AcrossMetres">Side of a square as large.</param>
/// <param name="Found">Chance that it is found here, as seen from the start.</param>
public sealed record SearchStep(Position? At, string Where, double AcrossMetres, double WalkMinutes, IReadOnlyList<SearchEffort> Efforts, double Found)
{
    public double Minutes => Efforts.Sum(e => e.Minutes);

    /// <summary>Id of the spot, where there is no plan.</summary>
    public string? Spot { get; init; }
}

/// <summary>Minutes spent in one way of searching.</summary>
public sealed record SearchEffort(string How, string Say, double Minutes, string Caution)
{
    /// <summary>Middles of the cells that are searched so, with the minutes in each.</summary>
    [JsonIgnore]
    public IReadOnlyList<(Position At, double Minutes)> Cells { get; init; } = [];
}

/// <summary>Something to do next.</summary>
/// <param name="How">Name in the practice book.</param>
/// <param name="Minutes">That it takes itself.</param>
/// <param name="LossMinutes">Expected minutes until all is found or given up, this and what is left hidden counted in.</param>
/// <param name="At">Where, where that matters.</param>
public sealed record SearchChoice(string How, string Say, double Minutes, double LossMinutes, string? At, string Caution);
