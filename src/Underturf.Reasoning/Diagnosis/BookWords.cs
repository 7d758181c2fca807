using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Notes in words of their own where the practice book has names that belief reads: kept and shown, but nothing follows from them.</summary>
internal static class BookWords
{
    public static IEnumerable<Problem> Problems(PropertyHistory history, PracticeBook book) => Findings(history, book).Concat(Repairs(history, book));

    private static IEnumerable<Problem> Findings(PropertyHistory history, PracticeBook book)
    {
        var names = book.Findings;
        return Unnamed(history, names).Concat(
            from look in history.Facts.Looks
            from found in look.Fact.Found
            where !names.Contains(found, StringComparer.Ordinal)
            select new Problem(
                look.Entry.ToString(),
                $"{Problem.Quote(found)} is no finding of the practice book, so it bears on no explanation",
                $"Leave it as a remark, or strike it and use one of: {string.Join(", ", names)}",
                Severity.Notice));
    }

    /// <summary>A finding that names no station weakly bears on all that pass, and opens a question of none.</summary>
    private static IEnumerable<Problem> Unnamed(PropertyHistory history, IReadOnlyList<string> names) =>
        from look in history.Facts.Looks
        where look.Fact.Stations.Count == 0 && look.Fact.Found.Intersect(names, StringComparer.Ordinal).Any()
        select new Problem(
            look.Entry.ToString(),
            "names no station, so what was found may belong to any that passes there",
            "Strike it and note it again with 'stations' as soon as you know whose it is",
            Severity.Notice);

    private static IEnumerable<Problem> Repairs(PropertyHistory history, PracticeBook book) =>
        from work in history.Facts.Works
        where book.Repair(work.Fact.Did) is null
        select new Problem(
            work.Entry.ToString(),
            $"{Problem.Quote(work.Fact.Did)} is no repair of the practice book, so it cures no explanation",
            $"Leave it as a remark, or strike it and use one of: {string.Join(", ", book.Repairs.Select(r => r.Name))}",
            Severity.Notice);
}
