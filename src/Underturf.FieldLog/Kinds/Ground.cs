using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>The property itself: its name, zone, the units its people use, and where its datum lies on the earth.</summary>
public sealed record PropertyFact : Fact
{
    public required string Name { get; init; }

    /// <summary>IANA time zone, for example "America/Denver".</summary>
    public required string Zone { get; init; }

    /// <summary>"us" or "si": the units shown to people.</summary>
    public string Units { get; init; } = "us";

    public double? Latitude { get; init; }

    public double? Longitude { get; init; }

    public Area? Area { get; init; }
}

/// <summary>Something on the surface: hardscape, bed, lawn, building, wall, tree, water, the mark of a utility.</summary>
public sealed record GroundFact : Fact
{
    public required string Id { get; init; }

    /// <summary>hardscape, bed, lawn, building, wall, tree, water, utility mark (what a utility painted on the ground: a point or a line) or other.</summary>
    public required string What { get; init; }

    public string? Label { get; init; }

    /// <summary>A point (one position), a line (two or more) or an outline (closed by the reader).</summary>
    public required IReadOnlyList<Position> Shape { get; init; }

    /// <summary>Trunk diameter of a tree.</summary>
    public Length? Trunk { get; init; }
}

/// <summary>A taped distance from a fixed mark to a thing: what finds a buried thing again when everything else has grown over.</summary>
public sealed record TieFact : Fact
{
    /// <summary>The thing that is tied.</summary>
    public required string Thing { get; init; }

    /// <summary>The mark it was taped from: something on the surface, a box or a controller.</summary>
    public required string Mark { get; init; }

    /// <summary>The point of the mark, where the mark is larger than a point: a corner of a building.</summary>
    public Position? Corner { get; init; }

    public required Length Distance { get; init; }

    /// <summary>How far the distance may be off, as one standard deviation.</summary>
    public Length? Spread { get; init; }
}
