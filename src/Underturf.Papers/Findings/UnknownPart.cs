using Underturf.Property;

namespace Underturf.Papers;

/// <summary>What is not known and what nobody tested: the honest part, which saves the next visit.</summary>
internal static class UnknownPart
{
    private const int MostProblems = 12;

    public static IEnumerable<Block> Blocks(PageForm form, PaperMatter matter) =>
    [
        .. Section(form, "What is not known", Unknown(matter)),
        .. Section(form, "What was not tested", Untested(matter)),
        .. Section(form, "What is odd in the notes themselves", Problems(matter)),
    ];

    private static IEnumerable<(string Title, string Text)> Unknown(PaperMatter matter)
    {
        var (stock, view) = (matter.Stock, matter.View);
        yield return ("Stations whose valve nobody has found", Runs(stock.StationsWithoutValve.Select(view.StationNumber)));
        yield return ("Valves that no station is known to run", Join(stock.ValvesWithoutStation.Select(v => view.Valves[v].Box is { } box ? $"{view.Name(v)} in {view.Name(box)}" : view.Name(v))));
        yield return ("Conductor ends without a mate", Join(stock.EndsWithoutMate.Select(e => $"{view.Name(e)} ({view.Ends[e].Colour ?? "colour unknown"}) in {view.Name(view.Ends[e].Place)}")));
        yield return ("Readings without an explanation", Join(matter.Answers.Questions.Where(q => q.Unexplained).Select(q => q.Symptom)));
        yield return ("Asked and not answered", Join(stock.Asked.Select(q => q.Fact.Text)));
    }

    private static IEnumerable<(string Title, string Text)> Untested(PaperMatter matter)
    {
        var (facts, view) = (matter.Facts, matter.View);
        var read = facts.Readings.SelectMany(r => r.Fact.Stations).Select(view.Identity.Of).ToHashSet(StringComparer.Ordinal);
        var run = facts.Tests.Select(t => view.Identity.Of(t.Fact.Station)).ToHashSet(StringComparer.Ordinal);
        var opened = facts.Looks.Select(l => view.Identity.Of(l.Fact.Place)).Concat(view.Ends.Values.Select(e => view.Identity.Of(e.Place))).ToHashSet(StringComparer.Ordinal);
        yield return ("Stations without any reading", Runs(view.Stations.Keys.Where(s => !read.Contains(s)).Select(view.StationNumber)));
        yield return ("Stations that nobody ran and watched", Runs(view.Stations.Keys.Where(s => !run.Contains(s)).Select(view.StationNumber)));
        yield return ("Boxes whose wires nobody looked at", Join(view.Boxes.Keys.Where(b => !opened.Contains(b)).Select(view.Name).Order(NaturalOrder.Instance)));
    }

    private static IEnumerable<(string Title, string Text)> Problems(PaperMatter matter)
    {
        var all = matter.Notebook.Problems;
        foreach (var problem in all.Take(MostProblems))
        {
            yield return (problem.Place, $"{problem.Reason}. {problem.Remedy}");
        }

        if (all.Count > MostProblems)
        {
            yield return ("And more", $"{all.Count - MostProblems} more, which `underturf check` lists");
        }
    }

    private static IEnumerable<Block> Section(PageForm form, string heading, IEnumerable<(string Title, string Text)> lines)
    {
        var said = lines.Where(l => l.Text.Length > 0).ToList();
        return said.Count == 0 ? [] :
        [
            .. Paragraph.Heading(form, heading),
            .. said.SelectMany(l => (IEnumerable<Block>)
            [
                .. Paragraph.Of(form, Sentence.Upper(l.Title), Styles.Strong, 7, 0, true),
                .. Paragraph.Of(form, Sentence.Ended(l.Text), Styles.Body),
            ]),
        ];
    }

    private static string Runs(IEnumerable<string> numbers) => string.Join(", ", NumberRuns.Of(numbers));

    private static string Join(IEnumerable<string> items) => string.Join("; ", items);
}
