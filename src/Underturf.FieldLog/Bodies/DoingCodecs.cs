namespace Underturf.FieldLog;

/// <summary>Work, states, questions, and entries about other entries.</summary>
internal static class DoingCodecs
{
    public static IReadOnlyList<KindCodec> All { get; } =
    [
        KindCodec.Standard(Work, Work),
        KindCodec.Standard(Step, Step),
        KindCodec.Standard(LeftAs, LeftAs),
        KindCodec.Standard(SameAs, SameAs),
        KindCodec.Standard(Opened, Opened),
        KindCodec.Standard(Closed, Closed),
        KindCodec.Standard(Strike, Strike),
        KindCodec.Standard(Restore, Restore),
        KindCodec.Standard(Issued, Issued),
    ];

    private static WorkFact Work(Fields f) => new()
    {
        Did = f.Text("did"),
        Place = f.OptionalText("place"),
        Target = f.OptionalText("target"),
        Minutes = f.OptionalNumber("minutes"),
    };

    private static void Work(BodyWriter w, WorkFact fact)
    {
        w.Text("did", fact.Did);
        w.Text("place", fact.Place);
        w.Text("target", fact.Target);
        w.Number("minutes", fact.Minutes);
    }

    private static StepFact Step(Fields f) => new()
    {
        Job = f.Text("job"),
        Place = f.Text("place"),
        Step = f.Text("step"),
        Target = f.OptionalText("target"),
    };

    private static void Step(BodyWriter w, StepFact fact)
    {
        w.Text("job", fact.Job);
        w.Text("place", fact.Place);
        w.Text("step", fact.Step);
        w.Text("target", fact.Target);
    }

    private static LeftAsFact LeftAs(Fields f) => new() { Place = f.Text("place"), State = f.Text("state"), Told = f.OptionalText("told"), Stations = f.Texts("stations") };

    private static void LeftAs(BodyWriter w, LeftAsFact fact)
    {
        w.Text("place", fact.Place);
        w.Text("state", fact.State);
        w.Text("told", fact.Told);
        w.Texts("stations", fact.Stations);
    }

    private static SameAsFact SameAs(Fields f) => new() { A = f.Text("a"), B = f.Text("b") };

    private static void SameAs(BodyWriter w, SameAsFact fact)
    {
        w.Text("a", fact.A);
        w.Text("b", fact.B);
    }

    private static QuestionOpenedFact Opened(Fields f) => new()
    {
        Id = f.Text("id"),
        Text = f.Text("text"),
        About = f.OptionalText("about"),
    };

    private static void Opened(BodyWriter w, QuestionOpenedFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("text", fact.Text);
        w.Text("about", fact.About);
    }

    private static QuestionClosedFact Closed(Fields f) => new() { Id = f.Text("id"), Answer = f.Text("answer") };

    private static void Closed(BodyWriter w, QuestionClosedFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("answer", fact.Answer);
    }

    private static StrikeFact Strike(Fields f) => new() { Entry = f.Text("entry"), Reason = f.OptionalText("reason") };

    private static void Strike(BodyWriter w, StrikeFact fact)
    {
        w.Text("entry", fact.Entry);
        w.Text("reason", fact.Reason);
    }

    private static RestoreFact Restore(Fields f) => new() { Entry = f.Text("entry"), Reason = f.OptionalText("reason") };

    private static void Restore(BodyWriter w, RestoreFact fact)
    {
        w.Text("entry", fact.Entry);
        w.Text("reason", fact.Reason);
    }

    private static PaperIssuedFact Issued(Fields f) => new()
    {
        Paper = f.Text("paper"),
        Hash = f.Hash("hash"),
        Engine = f.Text("engine"),
        Book = f.Text("book"),
    };

    private static void Issued(BodyWriter w, PaperIssuedFact fact)
    {
        w.Text("paper", fact.Paper);
        w.Text("hash", fact.Hash);
        w.Text("engine", fact.Engine);
        w.Text("book", fact.Book);
    }
}
