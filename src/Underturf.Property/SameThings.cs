using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Property;

/// <summary>Ids that cannot stand for what they are said to stand for: one id for two kinds of thing, two things that cannot be the same.</summary>
internal static class SameThings
{
    public static IEnumerable<Problem> Problems(Facts facts)
    {
        var kinds = Kinds(facts).Distinct().ToLookup(k => k.Id, k => k.Kind, StringComparer.Ordinal);
        return Twofold(kinds).Concat(facts.SameAs.Select(s => Joined(s, kinds, facts)).OfType<Problem>());
    }

    private static IEnumerable<Problem> Twofold(ILookup<string, string> kinds) =>
        from id in kinds
        where id.Count() > 1
        select new Problem($"id '{id.Key}'", $"is used for {string.Join(" and for ", id.Select(k => $"a {k}"))}", "Strike one and note it again under an id of its own");

    private static Problem? Joined(Observed<SameAsFact> note, ILookup<string, string> kinds, Facts facts)
    {
        var (place, a, b) = (note.Entry.ToString(), note.Fact.A, note.Fact.B);
        foreach (var id in new[] { a, b })
        {
            if (!kinds.Contains(id))
            {
                return new Problem(place, $"names '{id}', which nobody has noted", $"Note '{id}', or strike this entry");
            }
        }

        return !kinds[a].Intersect(kinds[b]).Any() ? new Problem(place, $"says that {kinds[a].First()} '{a}' and {kinds[b].First()} '{b}' are the same", "Strike this entry")
            : Terminal(a, facts) is { } one && Terminal(b, facts) is { } other && one != other
                ? new Problem(place, $"says that stations on terminals {one} and {other} are the same", "Strike this entry, or correct a terminal")
            : null;
    }

    private static int? Terminal(string station, Facts facts) => facts.Stations.LastOrDefault(s => s.Fact.Id == station)?.Fact.Terminal;

    private static IEnumerable<(string Id, string Kind)> Kinds(Facts facts) =>
        facts.Controllers.Select(f => (f.Fact.Id, "controller"))
            .Concat(facts.Stations.Select(f => (f.Fact.Id, "station")))
            .Concat(facts.Boxes.Select(f => (f.Fact.Id, "box")))
            .Concat(facts.Valves.Select(f => (f.Fact.Id, "valve")))
            .Concat(facts.Coils.Select(f => (f.Fact.Id, "coil")))
            .Concat(facts.Ends.Select(f => (f.Fact.Id, "conductor end")))
            .Concat(facts.Splices.Select(f => (f.Fact.Id, "splice")))
            .Concat(facts.Cables.Select(f => (f.Fact.Id, "cable")))
            .Concat(facts.Ground.Select(f => (f.Fact.Id, "ground feature")));
}
