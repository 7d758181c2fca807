using System.Text.Json.Serialization;
using Underturf.FieldLog;

namespace Underturf.Reasoning;

/// <summary>Where taped distances put things.</summary>
/// <param name="Engine">Version of the program.</param>
/// <param name="Book">Version of the practice book.</param>
public sealed record TieAnswer(string Engine, string Book, IReadOnlyList<TiedPlace> Things);

/// <summary>How far the ties of a thing place it.</summary>
public enum TieState
{
    /// <summary>Nothing was taped.</summary>
    NotTied,

    /// <summary>No tie starts at a point that is known.</summary>
    NoMark,

    /// <summary>One tie: it lies on a ring about the mark.</summary>
    Ring,

    /// <summary>Two ties, and nothing that tells the place from its mirror.</summary>
    TwoPlaces,

    Placed,
}

/// <summary>What the ties of one thing say.</summary>
/// <param name="Thing">Its id.</param>
/// <param name="Spots">Where it can be, the likeliest first: one where it is placed, two where nothing decides.</param>
/// <param name="Grade">The least sure of the ties and marks that were used.</param>
/// <param name="Decided">What tells the place from its mirror, in words: "its place on the plan decides"; nothing where the ties alone do.</param>
/// <param name="NotedAt">Where the plan has it, by hand or by the box that holds it.</param>
/// <param name="Doubts">Ties that the others speak against.</param>
public sealed record TiedPlace(
    string Thing,
    string Name,
    [property: JsonConverter(typeof(JsonStringEnumConverter<TieState>))] TieState State,
    IReadOnlyList<TiedSpot> Spots,
    [property: JsonConverter(typeof(JsonStringEnumConverter<Grade>))] Grade Grade,
    string? Decided,
    Position? NotedAt,
    IReadOnlyList<TieLine> Ties,
    IReadOnlyList<TieDoubt> Doubts)
{
    /// <summary>The two marks from which a tape places it best; nothing where no place is known or fewer are in reach.</summary>
    public MarkPair? BestMarks { get; init; }

    /// <summary>The mark that tells two places apart best.</summary>
    public MarkPoint? Deciding { get; init; }

    /// <summary>Where it stands, if that is decided.</summary>
    public TiedSpot? Spot => State == TieState.Placed ? Spots[0] : null;
}

/// <summary>A place with the ellipse in which it lies 95 times in 100.</summary>
/// <param name="LongMetres">Half the longer axis.</param>
/// <param name="ShortMetres">Half the shorter one.</param>
/// <param name="LongBearingDegrees">Where the longer one points, from north by east, below 180.</param>
public sealed record TiedSpot(Position At, double Probability, double LongMetres, double ShortMetres, double LongBearingDegrees)
{
    private const int Corners = 48;

    /// <summary>The ellipse as a closed line.</summary>
    public IReadOnlyList<Position> Edge()
    {
        var (east, north) = (Math.Sin(LongBearingDegrees * Math.PI / 180), Math.Cos(LongBearingDegrees * Math.PI / 180));
        return [.. Enumerable.Range(0, Corners + 1).Select(i => Math.Tau * i / Corners).Select(turn =>
        {
            var (along, across) = (LongMetres * Math.Cos(turn), ShortMetres * Math.Sin(turn));
            return new Position(At.EastMetres + (along * east) + (across * north), At.NorthMetres + (along * north) - (across * east));
        })];
    }
}

/// <summary>One tie of a thing.</summary>
/// <param name="Mark">Id of the mark.</param>
/// <param name="From">"the north-east corner of tool shed".</param>
/// <param name="FromAt">The point; nothing where nobody knows it, and then it places nothing.</param>
/// <param name="SpreadMetres">Standard deviation of the tape and of the mark's place together.</param>
/// <param name="OffMetres">Taped less what the place says.</param>
/// <param name="LeftOut">True where the others speak against it and it was not used.</param>
public sealed record TieLine(string Mark, string From, Position? FromAt, double DistanceMetres, double SpreadMetres, [property: JsonConverter(typeof(JsonStringEnumConverter<Grade>))] Grade Grade, double? OffMetres, bool LeftOut);

/// <summary>Something that does not agree, in words.</summary>
public sealed record TieDoubt(string Reason, string Remedy);

/// <summary>A point that one can tape from.</summary>
/// <param name="Mark">Id of what it belongs to.</param>
/// <param name="Name">"the north-east corner of tool shed".</param>
/// <param name="DistanceMetres">What the tape should show about.</param>
public sealed record MarkPoint(string Mark, string Name, Position At, double DistanceMetres);

/// <summary>Two marks, and the ellipse that taping from both would leave.</summary>
public sealed record MarkPair(MarkPoint First, MarkPoint Second, double LongMetres, double ShortMetres);
