namespace Underturf.FieldLog;

/// <summary>Work done: it opens a new epoch for what it touched.</summary>
public sealed record WorkFact : Fact
{
    /// <summary>What was done: the name of a repair in the practice book, or the user's own words.</summary>
    public required string Did { get; init; }

    /// <summary>The place where it was done.</summary>
    public string? Place { get; init; }

    /// <summary>The thing that was worked on: a station, valve, cable, splice or box.</summary>
    public string? Target { get; init; }

    public double? Minutes { get; init; }
}

/// <summary>
/// A step of a longer job at a place, done. It changes no wiring and speaks for no explanation: what a step changed or showed is noted by
/// its own kind beside it.
/// </summary>
public sealed record StepFact : Fact
{
    /// <summary>The job, for example "box rebuild".</summary>
    public required string Job { get; init; }

    public required string Place { get; init; }

    /// <summary>What was done, for example "tagged".</summary>
    public required string Step { get; init; }

    /// <summary>The thing it was done to, where it is done to one after the other.</summary>
    public string? Target { get; init; }
}

/// <summary>The state in which a place was left.</summary>
public sealed record LeftAsFact : Fact
{
    public required string Place { get; init; }

    public required string State { get; init; }

    /// <summary>Who was told.</summary>
    public string? Told { get; init; }

    /// <summary>The stations that it concerns; all of the place where nothing is said.</summary>
    public IReadOnlyList<string> Stations { get; init; } = [];
}

/// <summary>Two ids are one thing.</summary>
public sealed record SameAsFact : Fact
{
    public required string A { get; init; }

    public required string B { get; init; }
}

/// <summary>Somebody wants to know something.</summary>
public sealed record QuestionOpenedFact : Fact
{
    public required string Id { get; init; }

    public required string Text { get; init; }

    public string? About { get; init; }
}

/// <summary>A question was settled.</summary>
public sealed record QuestionClosedFact : Fact
{
    public required string Id { get; init; }

    public required string Answer { get; init; }
}

/// <summary>An earlier entry is taken back.</summary>
public sealed record StrikeFact : Fact
{
    /// <summary>The id of the entry, "writer/seq".</summary>
    public required string Entry { get; init; }

    public string? Reason { get; init; }
}

/// <summary>A struck entry counts again.</summary>
public sealed record RestoreFact : Fact
{
    public required string Entry { get; init; }

    public string? Reason { get; init; }
}

/// <summary>A paper was handed out: what it was and what it was made with.</summary>
public sealed record PaperIssuedFact : Fact
{
    public required string Paper { get; init; }

    /// <summary>SHA-256 of the file.</summary>
    public required string Hash { get; init; }

    public required string Engine { get; init; }

    public required string Book { get; init; }
}
