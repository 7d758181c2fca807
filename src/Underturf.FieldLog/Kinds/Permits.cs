namespace Underturf.FieldLog;

/// <summary>A locate ticket: utilities were asked to mark what they have in the ground. Noted again under its id it says more of the same ticket.</summary>
public sealed record LocateTicketFact : Fact
{
    public required string Id { get; init; }

    /// <summary>The number that the locating service gave.</summary>
    public string? Number { get; init; }

    /// <summary>The places or stations that it is for.</summary>
    public IReadOnlyList<string> Places { get; init; } = [];

    /// <summary>The ground that it is for: a closed outline.</summary>
    public IReadOnlyList<Position> Area { get; init; } = [];

    /// <summary>Before this nobody digs.</summary>
    public DateTimeOffset? From { get; init; }

    /// <summary>From here on it is no good any more.</summary>
    public DateTimeOffset? Expires { get; init; }

    /// <summary>Utilities whose marks were seen on the ground.</summary>
    public IReadOnlyList<string> Marked { get; init; } = [];

    /// <summary>Utilities that answered that they have nothing there.</summary>
    public IReadOnlyList<string> Clear { get; init; } = [];
}

/// <summary>Somebody was asked whether work may be done, and what he said. Noted again under its id it says how that came out.</summary>
public sealed record ApprovalFact : Fact
{
    public required string Id { get; init; }

    /// <summary>The place, station or thing that it is about.</summary>
    public required string About { get; init; }

    /// <summary>Who is asked: one of <see cref="Askers"/>.</summary>
    public required string Of { get; init; }

    /// <summary>"asked", "granted" or "refused".</summary>
    public required string State { get; init; }

    /// <summary>What was asked.</summary>
    public string? What { get; init; }

    internal static string[] Askers { get; } = ["owner", "arborist", "other"];

    internal static string[] States { get; } = ["asked", "granted", "refused"];
}

/// <summary>Parts for a job. Noted again under its id it says where they are now.</summary>
public sealed record PartsFact : Fact
{
    public required string Id { get; init; }

    /// <summary>What they are.</summary>
    public string? What { get; init; }

    /// <summary>The place, station or thing that they are for.</summary>
    public required string For { get; init; }

    /// <summary>"needed", "ordered" or "at hand".</summary>
    public required string State { get; init; }

    /// <summary>When ordered parts are due.</summary>
    public DateTimeOffset? Due { get; init; }

    internal static string[] States { get; } = ["needed", "ordered", "at hand"];
}
