using Underturf.FieldLog;
using Underturf.Reasoning;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Papers;

/// <summary>One open question: symptom, explanations, how many valves, evidence, moves.</summary>
internal static class QuestionPart
{
    private const int MostPlaces = 6, MostMoves = 6, LongestHead = 90;

    /// <summary>Places less likely than this are said to be "under 1 %".</summary>
    private const double LeastPlace = 0.005;

    /// <summary>The symptom's subject, for a heading, and what was seen of it.</summary>
    public static (string Head, string Seen) Name(OpenQuestion question)
    {
        var at = question.Symptom.IndexOf(": ", StringComparison.Ordinal);
        return at is > 0 and <= LongestHead
            ? (question.Symptom[..at], question.Symptom[(at + 2)..])
            : (question.Stations.Count > 0 ? $"stations {string.Join(", ", question.Stations.Take(8))}" : "a reading", question.Symptom);
    }

    public static IEnumerable<Block> Blocks(PageForm form, PaperMatter matter, OpenQuestion question, int number)
    {
        var (head, seen) = Name(question);
        return
        [
            .. Paragraph.Heading(form, $"{number}. {Sentence.Upper(head)}"),
            .. Paragraph.Of(form, Sentence.Upper(Sentence.Ended(seen)) + (question.Settled ? " Enough is known to repair." : string.Empty), Styles.Body, 3, 0, true),
            .. Repeats(form, question),
            .. Explanations(form, question),
            .. Change(form, question),
            .. Valves(form, question),
            .. EvidencePart.Blocks(form, matter, question),
            .. Moves(form, question),
        ];
    }

    /// <summary>Before any explanation: what cannot all be right has to be taken again.</summary>
    private static IEnumerable<Block> Repeats(PageForm form, OpenQuestion question) => question.Repeats.SelectMany(r => Paragraph.Of(
        form,
        $"Take again: {r.What}, at {r.Where}. {r.Why}. Until then no explanation is more than a guess.",
        Styles.Strong,
        6));

    private static IEnumerable<Block> Change(PageForm form, OpenQuestion question) => question.Overturn is { } overturn
        ? [.. Paragraph.Minor(form, "What would change the answer"), .. Paragraph.Of(form, Sentence.Upper(Sentence.Ended(overturn.Say)), Styles.Body, 2)]
        : [];

    private static IEnumerable<Block> Explanations(PageForm form, OpenQuestion question)
    {
        var table = new Table(form.LeftPoints, [new(string.Empty, 86), new(string.Empty, 66), new(string.Empty, form.InnerWidthPoints - 152)], false);
        var rows = question.Explanations.Where(e => !e.RuledOut).Select((explanation, i) => (IReadOnlyList<Cell>)
        [
            Cell.Bar(explanation.Probability),
            Cell.Of(Say.Share(explanation.Probability), i == 0 ? Styles.Strong : Styles.Body),
            new Cell(
                (Sentence.Upper(explanation.Summary), i == 0 ? Styles.Strong : Styles.Body),
                (Alike(explanation), Styles.Small),
                (Places(explanation), Styles.Small),
                (explanation.Repair.Length > 0 ? $"What would cure it: {explanation.Repair}." : string.Empty, Styles.Small)) { Grade = Grade.Inferred },
        ]);
        return [.. Paragraph.Minor(form, "What would explain it"), .. table.Blocks(rows), .. RuledOut(form, question)];
    }

    private static IEnumerable<Block> RuledOut(PageForm form, OpenQuestion question)
    {
        var named = question.Explanations.Where(e => e.RuledOut).Select(e => e.Summary).ToList();
        return named.Count == 0 ? [] : Paragraph.Of(form, $"Thought of and ruled out, each under 1 %: {string.Join("; ", named)}.", Styles.Small, 4);
    }

    private static string Alike(Explanation explanation) =>
        string.Join("; ", explanation.Alike.Select(a => $"{a.Summary} {Say.Share(a.Probability)}")) is { Length: > 0 } each ? Sentence.Ended(Sentence.Upper(each)) : string.Empty;

    private static string Places(Explanation explanation)
    {
        var places = explanation.Places.Where(p => p.Probability >= LeastPlace).ToList();
        if (places.Count < 2)
        {
            return string.Empty;
        }

        var more = places.Count > MostPlaces ? $" and {places.Count - MostPlaces} more places" : string.Empty;
        return $"Where: {string.Join(", ", places.Take(MostPlaces).Select(p => $"{p.Label} {Say.Share(p.Probability)}"))}{more}.";
    }

    private static IEnumerable<Block> Valves(PageForm form, OpenQuestion question)
    {
        if (question.Valves.Count == 0)
        {
            return [];
        }

        var table = new Table(form.LeftPoints, [new(string.Empty, 86), new(string.Empty, 66), new(string.Empty, form.InnerWidthPoints - 152)], false);
        var rows = question.Valves.Where(v => v.Probability >= 0.0005).Select(v => (IReadOnlyList<Cell>)
            [Cell.Bar(v.Probability), Cell.Of(Say.Share(v.Probability), Styles.Body), Cell.Of(v.Count == 1 ? "one valve" : $"{v.Count} valves", Styles.Body, Grade.Inferred)]);
        return [.. Paragraph.Minor(form, "How many valves it runs"), .. table.Blocks(rows)];
    }

    private static IEnumerable<Block> Moves(PageForm form, OpenQuestion question)
    {
        if (question.Moves.Count == 0)
        {
            return [.. Paragraph.Minor(form, "What to do next"), .. Paragraph.Of(form, "No move that the practice book knows would tell more.", Styles.Body, 2)];
        }

        var table = new Table(form.LeftPoints, [new("Move", 150), new("Where", 76), new("Takes", 46, true), new("Saves", 48, true), new("Caution", form.InnerWidthPoints - 320)]);
        var rows = question.Moves.Take(MostMoves).Select((m, i) => (IReadOnlyList<Cell>)
        [
            Cell.Of(Sentence.Upper(m.Action), i == 0 ? Styles.StrongCell : Styles.Cell), Cell.Of(m.Where),
            Cell.Of(PaperMatter.Minutes(m.Minutes)), Cell.Of(PaperMatter.Minutes(m.Worth)), Cell.Of(m.Caution),
        ]);
        var more = question.Moves.Count > MostMoves ? Paragraph.Of(form, $"{question.Moves.Count - MostMoves} more moves are worth less.", Styles.Small, 3) : [];
        return [.. Paragraph.Minor(form, "What to do next"), .. table.Blocks(rows), .. more];
    }
}
