namespace Underturf.FieldApp;

/// <summary>What was said for the order of the day, and tickets that are being typed.</summary>
public sealed class DayDraft
{
    public bool IsOpen { get; set; }

    /// <summary>Id of the place where one is; the controller where nothing is said.</summary>
    public string? At { get; set; }

    /// <summary>Minutes that one has; a day of the practice book where nothing is said.</summary>
    public double? Minutes { get; set; }

    /// <summary>By the place that they are for.</summary>
    public Dictionary<string, TicketDraft> Tickets { get; init; } = [];

    public TicketDraft TicketFor(string place) => Tickets.TryGetValue(place, out var begun) ? begun : Tickets[place] = new TicketDraft();

    /// <summary>The same without the tickets for places: what it is once those are stored.</summary>
    public DayDraft Without(IReadOnlyList<string> places) => new() { IsOpen = IsOpen, At = At, Minutes = Minutes, Tickets = Tickets.Where(ticket => !places.Contains(ticket.Key)).ToDictionary() };
}
