namespace Underturf.FieldLog;

/// <summary>What a job waits for: tickets, approvals, parts.</summary>
internal static class PermitCodecs
{
    public static IReadOnlyList<KindCodec> All { get; } =
    [
        KindCodec.Standard(Ticket, Ticket),
        KindCodec.Standard(Approval, Approval),
        KindCodec.Standard(Parts, Parts),
    ];

    private static LocateTicketFact Ticket(Fields f)
    {
        var ticket = new LocateTicketFact
        {
            Id = f.Text("id"),
            Number = f.OptionalText("number"),
            Places = f.Texts("places"),
            Area = f.Positions("area"),
            From = f.OptionalTime("from"),
            Expires = f.OptionalTime("expires"),
            Marked = f.Texts("marked"),
            Clear = f.Texts("clear"),
        };
        if (ticket.Expires <= ticket.From)
        {
            f.Wrong("expires", "is not after 'from'", "Write when the ticket begins and when it ends");
        }

        if (ticket.Area.Count is 1 or 2)
        {
            f.Wrong("area", $"has {ticket.Area.Count} positions", "Give three corners or more, or name the places");
        }

        return ticket;
    }

    private static void Ticket(BodyWriter w, LocateTicketFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("number", fact.Number);
        w.Texts("places", fact.Places);
        w.Positions("area", fact.Area);
        w.Time("from", fact.From);
        w.Time("expires", fact.Expires);
        w.Texts("marked", fact.Marked);
        w.Texts("clear", fact.Clear);
    }

    private static ApprovalFact Approval(Fields f) => new()
    {
        Id = f.Text("id"),
        About = f.Text("about"),
        Of = f.Choice("of", ApprovalFact.Askers),
        State = f.Choice("state", ApprovalFact.States),
        What = f.OptionalText("what"),
    };

    private static void Approval(BodyWriter w, ApprovalFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("about", fact.About);
        w.Text("of", fact.Of);
        w.Text("state", fact.State);
        w.Text("what", fact.What);
    }

    private static PartsFact Parts(Fields f) => new()
    {
        Id = f.Text("id"),
        What = f.OptionalText("what"),
        For = f.Text("for"),
        State = f.Choice("state", PartsFact.States),
        Due = f.OptionalTime("due"),
    };

    private static void Parts(BodyWriter w, PartsFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("what", fact.What);
        w.Text("for", fact.For);
        w.Text("state", fact.State);
        w.Time("due", fact.Due);
    }
}
