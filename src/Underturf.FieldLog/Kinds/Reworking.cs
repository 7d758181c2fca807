namespace Underturf.FieldLog;

/// <summary>A step of giving the valves of a shared station their own conductors, and how it turned out.</summary>
public sealed record ReworkStepFact : Fact
{
    /// <summary>The station that is shared, or whose valve got its own.</summary>
    public required string Station { get; init; }

    /// <summary>What was done: one of <see cref="ReworkDeeds"/>.</summary>
    public required string Did { get; init; }

    /// <summary>The place where it was done.</summary>
    public string? Place { get; init; }

    /// <summary>The conductor it was done with: its end at the controller.</summary>
    public string? Wire { get; init; }

    /// <summary>The terminal that it sits on now.</summary>
    public int? Terminal { get; init; }
}

/// <summary>A valve got another number. Such entries are kept for ever: they tell what an old chart means.</summary>
public sealed record RenumberedFact : Fact
{
    /// <summary>The station that runs it now.</summary>
    public required string Station { get; init; }

    /// <summary>The station that ran it before.</summary>
    public required string From { get; init; }

    /// <summary>Its number before.</summary>
    public required string Was { get; init; }

    /// <summary>Its number now.</summary>
    public required string Now { get; init; }

    public string? Valve { get; init; }

    /// <summary>What it waters.</summary>
    public string? Waters { get; init; }
}

/// <summary>What a step of a rework can have been.</summary>
public static class ReworkDeeds
{
    /// <summary>A conductor was found at the place and carries a coil there.</summary>
    public const string Proven = "proven";

    /// <summary>A conductor is not at the place, or does not carry a coil there.</summary>
    public const string Useless = "useless";

    /// <summary>A conductor was put on a terminal.</summary>
    public const string Landed = "landed";

    /// <summary>The station did alone what was said beforehand.</summary>
    public const string Passed = "passed";

    /// <summary>The station did not.</summary>
    public const string Failed = "failed";

    /// <summary>The valves stay together, on purpose.</summary>
    public const string Kept = "kept";

    internal static string[] All { get; } = [Proven, Useless, Landed, Passed, Failed, Kept];
}
