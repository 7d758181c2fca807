using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>A locate ticket that is being typed, as it is read from the locating service's answer. It stays as it is until it is stored.</summary>
public sealed class TicketDraft
{
    public string Number { get; set; } = "";

    /// <summary>By the property's clock.</summary>
    public DateTime? From { get; set; }

    public DateTime? Expires { get; set; }

    public string Marked { get; set; } = "";

    public string Clear { get; set; } = "";

    /// <summary>What the note says, or what is still missing.</summary>
    /// <param name="known">Id of the ticket that it adds to.</param>
    /// <param name="offset">Of the clock by which days are meant.</param>
    public Outcome<Fact> ToFact(string place, string? known, TimeSpan offset)
    {
        var number = Number.Trim();
        var missing = known is null && (From is null || Expires is null) ? "Give from when until when it is good"
            : From >= Expires ? "It expires before it is good: correct one of the two"
            : known is null && number.Length == 0 ? "Give its number" : null;
        return missing is not null ? new Problem("ticket", "is not given yet", missing) : new LocateTicketFact
        {
            Id = known ?? $"ticket-{number}",
            Number = number.Length > 0 ? number : null,
            Places = [place],
            From = At(From, offset),
            Expires = At(Expires, offset),
            Marked = Names(Marked),
            Clear = Names(Clear),
        };
    }

    private static DateTimeOffset? At(DateTime? local, TimeSpan offset) => local is { } at ? new DateTimeOffset(DateTime.SpecifyKind(at, DateTimeKind.Unspecified), offset) : null;

    private static string[] Names(string text) => text.Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}
