namespace Underturf.Property.Practice;

/// <summary>What must hold between the numbers of finding what is hidden.</summary>
internal static class LocatingCheck
{
    private static readonly string[] Grounds = ["hardscape", "bed", "lawn", "building", "wall", "tree", "water", "utility mark", "other", "controller", "cable", "found", "watered", "route", "last"];

    public static IEnumerable<(bool Holds, string Place, string Reason)> Of(LocatingPractice book) =>
        Numbers(book).Concat(Marks(book)).Concat(Signs(book)).Concat(Ways(book)).Concat(Names(book));

    private static IEnumerable<(bool Holds, string Place, string Reason)> Numbers(LocatingPractice book)
    {
        foreach (var (place, value) in new (string, double)[]
        {
            ("anywhere", book.Anywhere), ("none", book.None), ("furtherNone", book.FurtherNone),
        })
        {
            yield return (value is > 0 and < 1, $"locating.{place}", "must be a chance between 0 and 1");
        }

        foreach (var (place, value) in new (string, double)[]
        {
            ("weightSpread", book.WeightSpread), ("cellMetres", book.CellMetres), ("alongSpread", book.AlongSpread), ("stopMetres", book.StopMetres),
            ("unfoundMinutes", book.UnfoundMinutes),
        })
        {
            yield return (value > 0, $"locating.{place}", "must be more than zero");
        }

        yield return (book.MarginMetres >= 0, "locating.marginMetres", "must be zero or more");
        yield return (book.StopMetres >= book.CellMetres, "locating.stopMetres", "must not be less than cellMetres");
        yield return (book.Things.Count > 0, "locating.things", "must name at least one");
    }

    private static IEnumerable<(bool Holds, string Place, string Reason)> Marks(LocatingPractice book)
    {
        foreach (var mark in book.Marks)
        {
            var place = $"ground mark {mark.Name}";
            yield return (Grounds.Contains(mark.Of), place, $"is of '{mark.Of}'; use one of: {string.Join(", ", Grounds)}");
            yield return (mark.By == GroundMeasure.Inside || mark.ReachMetres > 0, place, "needs reachMetres above zero");
            yield return (mark.By == GroundMeasure.Away == mark.Spread > 0, place, "needs a spread above zero where it is Away, and none elsewhere");
            yield return (mark.For is null || mark.For.All(book.Things.Contains), place, "holds for a thing that is not among the things");
        }
    }

    private static IEnumerable<(bool Holds, string Place, string Reason)> Signs(LocatingPractice book)
    {
        foreach (var sign in book.Signs)
        {
            var place = $"sign {sign.Name}";
            yield return (sign.Hit is > 0 and < 1, place, "needs a chance of a hit between 0 and 1");
            yield return (sign.Form == SignForm.Along || sign.SpreadMetres > 0, place, "needs spreadMetres above zero");
            yield return (sign.Form != SignForm.Perceived || (sign.Imagined is > 0 and < 1 && sign.Otherwise is not null), place, "is perceived or not: it needs a chance to be imagined, between 0 and 1, and the name for otherwise");
            yield return (sign.Minutes >= 0, place, "needs minutes of zero or more");
        }
    }

    private static IEnumerable<(bool Holds, string Place, string Reason)> Ways(LocatingPractice book)
    {
        foreach (var way in book.Tracing)
        {
            yield return (way is { ReadyMinutes: >= 0, MetresPerMinute: > 0, SpreadMetres: > 0, Noticed: > 0 and < 1 }, $"way of tracing {way.Name}", "needs minutes of zero or more, speed and spread above zero, and a chance to notice between 0 and 1");
        }

        foreach (var end in book.Ends)
        {
            yield return (end is { Hit: > 0 and < 1, SpreadMetres: > 0, Share: > 0 }, $"end of a trace {end.Name}", "needs a chance of a hit between 0 and 1, a spread and a share above zero");
        }

        foreach (var way in book.Searching)
        {
            yield return (way is { SquareMetresPerMinute: > 0, Sees: > 0 and < 1, Careful: > 0 and <= 1 }, $"way of searching {way.Name}", "needs ground per minute above zero, a share that it can see between 0 and 1, and a share of its speed where one is careful above 0, at most 1");
        }
    }

    private static IEnumerable<(bool Holds, string Place, string Reason)> Names(LocatingPractice book)
    {
        foreach (var (place, names) in new (string, IEnumerable<string>)[]
        {
            ("marks", book.Marks.Select(m => m.Name)), ("signs", book.Signs.SelectMany(s => new[] { s.Name, s.Otherwise }).OfType<string>()), ("tracing", book.Tracing.Select(t => t.Name)),
            ("ends", book.Ends.Select(e => e.Name)), ("searching", book.Searching.Select(s => s.Name)), ("things", book.Things),
        })
        {
            yield return (names.Distinct().Count() == names.Count(), $"locating.{place}", "has a name twice");
        }
    }
}
