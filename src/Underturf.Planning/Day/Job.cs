namespace Underturf.Planning.Day;

/// <summary>What a job of the day is.</summary>
public enum JobKind
{
    /// <summary>A reading, a run or a look that tells explanations apart.</summary>
    FindOut,

    /// <summary>Naming conductor ends.</summary>
    Name,

    Repair,

    /// <summary>Giving valves their own stations.</summary>
    Rework,

    /// <summary>Ending a state in which a place was left for a time.</summary>
    Close,

    /// <summary>Looking again at work that was done.</summary>
    Recheck,
}

/// <summary>One job at one place: what all that is to be done has in common, wherever it comes from.</summary>
/// <param name="Key">Its name among the jobs.</param>
/// <param name="Say">What to do.</param>
/// <param name="Place">Id of the place.</param>
/// <param name="Minutes">There; the way and what has to be shut for it are counted apart.</param>
/// <param name="SpreadMinutes">Standard deviation of them; zero where nobody knows.</param>
/// <param name="Worth">Minutes of loss that it saves.</param>
/// <param name="Stations">Numbers of the stations that it is for.</param>
internal sealed record Job(string Key, JobKind Kind, string Say, string Place, double Minutes, double SpreadMinutes, double Worth, IReadOnlyList<string> Stations)
{
    public IReadOnlyList<DayStep> Steps { get; init; } = [];

    /// <summary>Keys of jobs that come before it.</summary>
    public IReadOnlyList<string> After { get; init; } = [];

    /// <summary>What has to be shut while it is done, in walking order.</summary>
    public IReadOnlyList<Shutter> Shut { get; init; } = [];

    /// <summary>Numbers of the stations that have no water meanwhile.</summary>
    public IReadOnlyList<string> Dry { get; init; } = [];

    /// <summary>Ground is dug for it.</summary>
    public bool Digs { get; init; }

    /// <summary>Whose word it needs.</summary>
    public IReadOnlyList<Consent> Consents { get; init; } = [];

    /// <summary>Things besides its place under which tickets, approvals and parts for it may be noted.</summary>
    public IReadOnlyList<string> Things { get; init; } = [];

    /// <summary>What to take along.</summary>
    public IReadOnlyList<string> Load { get; init; } = [];
}

/// <summary>A valve to be shut.</summary>
internal sealed record Shutter(string Id, string Name, double TurnMinutes);

/// <summary>Somebody who has to agree before a job is done.</summary>
internal sealed record Consent(WantKind Of, string Say, string Why);
