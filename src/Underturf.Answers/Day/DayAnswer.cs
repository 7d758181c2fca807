using Underturf.Planning.Day.Interim;

namespace Underturf.Planning.Day;

/// <summary>What to do today and in which order, what waits and for what, how places were left, and what may run tonight.</summary>
/// <param name="Engine">Version of the program.</param>
/// <param name="Book">Version of the practice book.</param>
/// <param name="At">Where one stands at the beginning.</param>
/// <param name="Minutes">That there are.</param>
/// <param name="Rows">In order, the shutting and opening of water among them.</param>
/// <param name="Saved">Minutes of loss that the order is expected to save, its own minutes taken off.</param>
/// <param name="Bound">No order saves more.</param>
/// <param name="Load">What to take along, for all of it.</param>
/// <param name="Waiting">Jobs that cannot be begun today, with what they wait for.</param>
/// <param name="Later">Jobs that could be, but not today.</param>
/// <param name="Left">Places that were left in a state for a time, oldest first.</param>
/// <param name="Tickets">Locate tickets, the one that expires first first.</param>
/// <param name="Tonight">What may run tonight.</param>
public sealed record DayAnswer(
    string Engine,
    string Book,
    DateTimeOffset Begin,
    string At,
    double Minutes,
    IReadOnlyList<DayRow> Rows,
    double Saved,
    double Bound,
    IReadOnlyList<string> Load,
    IReadOnlyList<WaitingJob> Waiting,
    IReadOnlyList<LaterJob> Later,
    IReadOnlyList<LeftPlace> Left,
    IReadOnlyList<TicketState> Tickets,
    InterimAnswer Tonight)
{
    /// <summary>True where no order saves more.</summary>
    public bool IsBest => Bound <= Saved + 1e-6;
}

public enum RowKind
{
    FindOut,
    Name,
    Repair,
    Rework,
    Close,
    Recheck,

    /// <summary>Water is shut for the jobs that follow.</summary>
    Shut,

    /// <summary>It is let in again.</summary>
    Open,
}

/// <summary>One line of the day.</summary>
/// <param name="Start">When one is there.</param>
/// <param name="WalkMinutes">From the line before.</param>
/// <param name="Minutes">There.</param>
/// <param name="SpreadMinutes">Standard deviation of when it ends, all lines before counted in.</param>
/// <param name="Place">Id of the place.</param>
/// <param name="Worth">Minutes of loss that it saves; zero for water that is shut or opened.</param>
/// <param name="Stations">Numbers of the stations that it is for, or that are dry from here on.</param>
public sealed record DayRow(RowKind Kind, string Say, string Where, string Place, DateTimeOffset Start, double WalkMinutes, double Minutes, double SpreadMinutes, double Worth, IReadOnlyList<string> Stations, IReadOnlyList<DayStep> Steps, IReadOnlyList<string> Cautions)
{
    public DateTimeOffset End => Start.AddMinutes(Minutes);
}

/// <summary>One thing to do at a place.</summary>
public sealed record DayStep(string Say, double Minutes, string Caution);

/// <summary>A job that waits.</summary>
/// <param name="Wants">What it waits for.</param>
/// <param name="Worth">Minutes of loss that it would save.</param>
/// <param name="Following">Jobs that come after it and wait with it.</param>
public sealed record WaitingJob(string Say, string Where, string Place, IReadOnlyList<Want> Wants, double Worth, int Following);

public enum WantKind
{
    Ticket,
    Owner,
    Arborist,
    Parts,
}

/// <summary>Something that a job waits for.</summary>
/// <param name="Say">What is missing.</param>
/// <param name="Remedy">How to get it.</param>
/// <param name="About">Id of the place or thing under which it is noted once it is there.</param>
/// <param name="Id">Of the note that it would add to; nothing where there is none.</param>
public sealed record Want(WantKind Kind, string Say, string Remedy, string About, string? Id = null);

/// <summary>A job for another day.</summary>
public sealed record LaterJob(string Say, string Where, string Place, double Minutes, double Worth, string Why);

/// <summary>A place that was left in a state for a time.</summary>
/// <param name="Told">Who was told; nothing where nobody was.</param>
/// <param name="Ends">What ends it.</param>
/// <param name="Today">It is ended today.</param>
public sealed record LeftPlace(string Place, string Where, string State, DateTimeOffset Since, string? Told, string Ends, bool Today);

/// <summary>A locate ticket.</summary>
/// <param name="Stands">How it stands when the day begins, in words.</param>
/// <param name="IsValid">One may dig under it when the day begins.</param>
public sealed record TicketState(string Number, string Where, DateTimeOffset? From, DateTimeOffset? Expires, IReadOnlyList<string> Marked, IReadOnlyList<string> Clear, string Stands, bool IsValid);
