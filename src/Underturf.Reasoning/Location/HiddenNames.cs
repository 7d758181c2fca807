using Underturf.Property;

namespace Underturf.Reasoning.Location;

/// <summary>Names what lies hidden, with when somebody last noted anything of looking for it.</summary>
internal static class HiddenNames
{
    public static IReadOnlyList<HiddenName> Of(PropertyHistory history, IReadOnlyList<SoughtGroup> groups)
    {
        var last = LastNoted(history);
        return
        [
            .. groups.Select(group => new HiddenName(
                group.Things[0].Id,
                group.Name,
                group.Things[0].What,
                group.Things[0].Station,
                group.Things.Count,
                group.Things.SelectMany(t => new[] { t.Id, t.Station }).OfType<string>().Where(last.ContainsKey).Select(id => (DateTimeOffset?)last[id]).Max())),
        ];
    }

    private static Dictionary<string, DateTimeOffset> LastNoted(PropertyHistory history)
    {
        var (facts, identity) = (history.Facts, history.Now.Identity);
        var about = facts.Sought.Select(s => (Id: (string?)s.Fact.Id, s.At))
            .Concat(facts.Traces.SelectMany(t => t.Fact.Of, (t, of) => (Id: (string?)of, t.At)))
            .Concat(facts.Signs.Select(s => (Id: s.Fact.About, s.At)))
            .Concat(facts.Searches.Select(s => (Id: s.Fact.About, s.At)));
        return about.Where(note => note.Id is not null).GroupBy(note => identity.Of(note.Id!)).ToDictionary(g => g.Key, g => g.Max(note => note.At), StringComparer.Ordinal);
    }
}
