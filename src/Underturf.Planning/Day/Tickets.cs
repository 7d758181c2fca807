using System.Globalization;
using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Planning.Day;

/// <summary>Locate tickets: which one lets somebody dig at a place and when, and what to mind there.</summary>
/// <param name="minutes">That the day has.</param>
internal sealed class Tickets(Grounds grounds, double minutes)
{
    private const string Marks = "have utilities marked and wait the legal notice; note the ticket with its number, from when it is good and when it expires";

    public const string Caution = "Private lines are not marked.";

    /// <summary>The ticket that covers a job, by its place or by what it is for, and is good longest from the beginning on.</summary>
    public LocateTicketFact? For(Job job) => Covering(job).Where(t => !(t.Expires <= grounds.Begin)).OrderBy(t => t.From is null && t.Expires is null).ThenByDescending(t => t.Expires ?? DateTimeOffset.MaxValue).FirstOrDefault();

    /// <summary>Minutes from the beginning between which a job may begin; nothing where no ticket lets it today.</summary>
    public (double Earliest, double Latest)? Window(Job job) => For(job) is { From: { } from, Expires: { } expires }
        && (Math.Max(0, (from - grounds.Begin).TotalMinutes), (expires - grounds.Begin).TotalMinutes - job.Minutes - grounds.Numbers.MarksMinutes) is var (earliest, latest) && earliest < latest && earliest + job.Minutes + grounds.Numbers.MarksMinutes <= minutes
        ? (earliest, latest)
        : null;

    /// <summary>What is missing, and the remedy.</summary>
    public Want Missing(Job job)
    {
        var (say, remedy) = For(job) switch
        {
            { From: null } or { Expires: null } => ($"ticket {Number(For(job)!)}: nobody noted from when until when it is good", "note it again with from and expires"),
            { } ticket when ticket.From > grounds.Begin => ($"ticket {Number(ticket)}: good from {Day(ticket.From!.Value)} on", "dig then"),
            { } ticket => ($"ticket {Number(ticket)}: it expires {Day(ticket.Expires!.Value)}, before this could be done", "renew the ticket"),
            null when Covering(job).OrderBy(t => t.Expires).LastOrDefault() is { } old => ($"a locate ticket: {Number(old)} expired {Day(old.Expires!.Value)}", "renew the ticket; have the marks refreshed"),
            null => ("a locate ticket for this place", Marks),
        };
        return new Want(WantKind.Ticket, say, remedy, job.Place, (For(job) ?? Covering(job).LastOrDefault())?.Id);
    }

    /// <summary>What to mind while digging under it.</summary>
    public IEnumerable<string> Cautions(Job job)
    {
        if (For(job) is not { } ticket)
        {
            yield break;
        }

        yield return ticket.Marked.Count > 0
            ? $"Ticket {Number(ticket)}: marks of {string.Join(", ", ticket.Marked)}. Dig by hand within {Say.Length(grounds.Numbers.HandDigMetres, grounds.Facts.UsesUsUnits)} of a mark. {Caution}"
            : ticket.Clear.Count > 0 ? $"Ticket {Number(ticket)}: {string.Join(", ", ticket.Clear)} answered that nothing is there; nobody noted a mark. {Caution}"
            : $"Ticket {Number(ticket)}: nobody noted a mark or an answer. Look for marks before anybody digs, and by hand within {Say.Length(grounds.Numbers.HandDigMetres, grounds.Facts.UsesUsUnits)} of one. {Caution}";
    }

    public IReadOnlyList<TicketState> All() =>
    [
        .. grounds.View.Tickets.Values.OrderBy(t => t.Expires ?? DateTimeOffset.MaxValue).ThenBy(t => t.Id, StringComparer.Ordinal)
            .Select(t => new TicketState(Number(t), Where(t), Told(t.From), Told(t.Expires), t.Marked, t.Clear, Stands(t), t.From <= grounds.Begin && t.Expires > grounds.Begin)),
    ];

    private string Stands(LocateTicketFact ticket) => ticket switch
    {
        { From: null } or { Expires: null } => "nobody noted from when until when it is good",
        _ when ticket.Expires <= grounds.Begin => $"expired {Day(ticket.Expires.Value)}",
        _ when ticket.From > grounds.Begin => $"good from {Day(ticket.From.Value)} on",
        _ => $"good until {Day(ticket.Expires.Value)}",
    };

    private IEnumerable<LocateTicketFact> Covering(Job job) => grounds.View.Tickets.Values
        .Where(t => t.Places.Select(grounds.View.Identity.Of).Any(p => p == job.Place || job.Things.Contains(p)) || (grounds.Notebook.Tied.View.PositionOf(job.Place) is { } at && GroundShape.Outline(t.Area).Contains(at)));

    private string Where(LocateTicketFact ticket) => ticket.Places.Count > 0 ? string.Join(", ", ticket.Places.Select(grounds.View.Name)) : ticket.Area.Count > 0 ? "the ground that it outlines" : "nowhere that is noted";

    private static string Number(LocateTicketFact ticket) => ticket.Number ?? ticket.Id;

    private DateTimeOffset? Told(DateTimeOffset? moment) => moment is { } at ? grounds.Facts.Zone.Told(at) : null;

    private string Day(DateTimeOffset at) => grounds.Facts.Zone.Told(at).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
}
