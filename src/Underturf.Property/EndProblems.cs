using Underturf.Quantities;

namespace Underturf.Property;

/// <summary>Conductor ends that were noted twice, or of which two notes cannot both be right.</summary>
internal static class EndProblems
{
    public static IEnumerable<Problem> Of(PropertyHistory history) => Twice(history.Now).Concat(Changed(history));

    private static IEnumerable<Problem> Twice(PropertyView view) =>
        from same in view.Ends.Where(e => e.Value.Label is not null).GroupBy(e => (Place: view.Identity.Of(e.Value.Place), Label: e.Value.Label!.Trim().ToLowerInvariant()))
        where same.Count() > 1
        select new Problem(
            $"ends {string.Join(", ", same.Select(e => $"'{e.Key}'"))}",
            $"at {view.Name(same.Key.Place)} have the same name, {Problem.Quote(same.First().Value.Label!)}",
            "Say that they are the same (same-as), or give one of them another label",
            Severity.Notice);

    /// <summary>A conductor keeps its colour where it is seen: one of the notes is of another end, or wrong.</summary>
    private static IEnumerable<Problem> Changed(PropertyHistory history)
    {
        foreach (var end in history.Facts.Ends.Where(e => e.Fact.Colour is not null).GroupBy(e => history.Facts.Identity.Of(e.Fact.Id)))
        {
            var (first, last) = (end.First(), end.Last());
            if (!string.Equals(first.Fact.Colour!.Trim(), last.Fact.Colour!.Trim(), StringComparison.OrdinalIgnoreCase))
            {
                yield return new Problem(
                    last.Entry.ToString(),
                    $"says that {history.Now.Name(end.Key)} is {last.Fact.Colour}, but {first.Entry} says {first.Fact.Colour}",
                    "Look again; strike the note that is wrong, or note the other end by an id of its own",
                    Severity.Notice);
            }
        }
    }
}
