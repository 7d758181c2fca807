using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>Something that lies hidden and is looked for. The valve of a station that nobody has found needs no such note.</summary>
public sealed record SoughtFact : Fact
{
    public required string Id { get; init; }

    /// <summary>What it is: a name in the practice book, for example "valve", "box" or "splice".</summary>
    public required string What { get; init; }

    public string? Label { get; init; }

    /// <summary>The station it belongs to.</summary>
    public string? Station { get; init; }

    /// <summary>The cable it lies on.</summary>
    public string? Cable { get; init; }
}

/// <summary>A piece of ground with a name, where there is no plan: "hedge by the gate", or so many paces along a line.</summary>
public sealed record SpotFact : Fact
{
    public required string Id { get; init; }

    public string? Label { get; init; }

    /// <summary>What holds there: names of ground marks in the practice book, for example "edge of paving".</summary>
    public IReadOnlyList<string> Beside { get; init; } = [];

    /// <summary>The line it lies on; spots of one line are told apart by how far along they are.</summary>
    public string? Line { get; init; }

    /// <summary>How far along the line.</summary>
    public Length? Along { get; init; }

    /// <summary>How far it reaches across.</summary>
    public Length? Across { get; init; }
}

/// <summary>A signal on a conductor was followed over the ground.</summary>
public sealed record TraceFact : Fact
{
    /// <summary>The way it was followed: a name in the practice book.</summary>
    public required string How { get; init; }

    /// <summary>What carried the signal: stations, or things that are sought.</summary>
    public IReadOnlyList<string> Of { get; init; } = [];

    /// <summary>The path, from where it was taken up to where it ended.</summary>
    public IReadOnlyList<Position> Route { get; init; } = [];

    /// <summary>Spots that the path ran through, the last where it ended, where there is no plan.</summary>
    public IReadOnlyList<string> Spots { get; init; } = [];

    /// <summary>How it ended: a name in the practice book, for example "swell".</summary>
    public required string Ended { get; init; }
}

/// <summary>Something seen, heard or told that says where a thing may lie.</summary>
public sealed record SignFact : Fact
{
    /// <summary>What kind of sign: a name in the practice book, for example "heard" or "wet ground".</summary>
    public required string How { get; init; }

    /// <summary>The thing that is sought, or the station whose valve it is.</summary>
    public string? About { get; init; }

    /// <summary>Where: one position, or several in order where the order tells.</summary>
    public IReadOnlyList<Position> Where { get; init; } = [];

    /// <summary>The same as spots, where there is no plan.</summary>
    public IReadOnlyList<string> Spots { get; init; } = [];

    /// <summary>The place from which a distance was worked out.</summary>
    public string? From { get; init; }

    /// <summary>Distance along the conductor from there.</summary>
    public Length? Distance { get; init; }

    /// <summary>How far position or distance may be off, as one standard deviation; the practice book's where nothing is said.</summary>
    public Length? Spread { get; init; }
}

/// <summary>A piece of ground was searched.</summary>
public sealed record SearchFact : Fact
{
    /// <summary>The way: a name in the practice book, for example "probe rod".</summary>
    public required string How { get; init; }

    /// <summary>What was looked for, or the station whose valve it is; everything hidden where nothing is said.</summary>
    public string? About { get; init; }

    /// <summary>The middle of what was searched, or its outline.</summary>
    public IReadOnlyList<Position> Where { get; init; } = [];

    /// <summary>How far from the middle.</summary>
    public Length? Within { get; init; }

    /// <summary>Spots that were searched, where there is no plan.</summary>
    public IReadOnlyList<string> Spots { get; init; } = [];

    public double? Minutes { get; init; }

    /// <summary>Ids of what was found; leave out where nothing was.</summary>
    public IReadOnlyList<string> Found { get; init; } = [];
}
