using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Location;

/// <summary>Notes about hidden things that belief cannot use, each with what to write instead.</summary>
internal sealed class LocationProblems(PropertyHistory history, PropertyView view, PracticeBook practice)
{
    private readonly LocatingPractice book = practice.Locating;

    public IEnumerable<Problem> All() => new SoughtFinder(history, view, practice, []).Problems().Concat(Spots()).Concat(Traces()).Concat(Signs()).Concat(Searches());

    private IEnumerable<Problem> Spots() =>
        from note in history.Facts.Spots
        from mark in note.Fact.Beside
        where book.Marks.All(m => m.Name != mark)
        select Refused(note.Entry, "beside", $"is {Problem.Quote(mark)}, which is no ground mark of the practice book", book.Marks.Select(m => m.Name));

    private IEnumerable<Problem> Traces()
    {
        foreach (var (fact, entry) in history.Facts.Traces.Select(t => (t.Fact, t.Entry)))
        {
            if (book.TracingBy(fact.How) is null)
            {
                yield return Refused(entry, "how", $"is {Problem.Quote(fact.How)}, which is no way of tracing in the practice book", book.Tracing.Select(t => t.Name));
            }

            if (book.End(fact.Ended) is null)
            {
                yield return Refused(entry, "ended", $"is {Problem.Quote(fact.Ended)}, which is no end of a trace in the practice book", book.Ends.Select(e => e.Name));
            }

            if (fact.Of.Count == 0)
            {
                yield return new Problem($"{entry}, field 'of'", "is missing: nobody knows what was traced", "Strike it and note it again with the stations or things that carried the signal");
            }

            foreach (var problem in Unplaced(entry, fact.Route, fact.Spots, "route"))
            {
                yield return problem;
            }
        }
    }

    private IEnumerable<Problem> Signs()
    {
        foreach (var (fact, entry) in history.Facts.Signs.Select(s => (s.Fact, s.Entry)))
        {
            if (book.Sign(fact.How) is not var (sign, _))
            {
                yield return Refused(entry, "how", $"is {Problem.Quote(fact.How)}, which is no sign of the practice book", book.Signs.SelectMany(s => new[] { s.Name, s.Otherwise }).OfType<string>());
            }
            else if (sign.Form == SignForm.Along && (fact.Distance is not { Metres: > 0 } || fact.From is not { } from || view.PositionOf(from) is null))
            {
                yield return new Problem($"{entry}, field 'from'", "or 'distance' is missing, or the place has no position, so that it says nothing", "Give the place that the distance counts from, with its position, and the distance");
            }
            else if (sign.Form == SignForm.Order && Math.Max(fact.Where.Count, fact.Spots.Count) == 1)
            {
                yield return new Problem($"{entry}, field 'where'", "holds one position, which is no order", "Give all, the first to fill first");
            }
            else if (sign.Form != SignForm.Along)
            {
                foreach (var problem in Unplaced(entry, fact.Where, fact.Spots, "where"))
                {
                    yield return problem;
                }
            }
        }
    }

    private IEnumerable<Problem> Searches()
    {
        foreach (var (fact, entry) in history.Facts.Searches.Select(s => (s.Fact, s.Entry)))
        {
            if (book.SearchBy(fact.How) is null)
            {
                yield return Refused(entry, "how", $"is {Problem.Quote(fact.How)}, which is no way of searching in the practice book", book.Searching.Select(s => s.Name));
            }

            if (fact.Minutes is not > 0 && fact.Found.Count == 0)
            {
                yield return new Problem($"{entry}, field 'minutes'", "is missing or zero, so that nobody knows how thorough it was; it counts for nothing", "Strike it and note it again with the minutes that it took");
            }

            foreach (var problem in Unplaced(entry, fact.Where, fact.Spots, "where"))
            {
                yield return problem;
            }
        }
    }

    private static IEnumerable<Problem> Unplaced(EntryId entry, IReadOnlyList<Position> where, IReadOnlyList<string> spots, string field)
    {
        if (where.Count == 0 && spots.Count == 0)
        {
            yield return new Problem($"{entry}, field '{field}'", "is missing, and so is 'spots': it says nothing of where", "Strike it and note it again with positions, or spots where there is no plan");
        }
    }

    private static Problem Refused(EntryId entry, string field, string reason, IEnumerable<string> names) =>
        new($"{entry}, field '{field}'", $"{reason}; it counts for nothing", $"Use one of: {string.Join(", ", names)}");
}
