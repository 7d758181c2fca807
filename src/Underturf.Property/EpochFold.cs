using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>Makes one value of all notes about a thing, those of the asked epoch of that thing having the last word.</summary>
internal sealed class EpochFold
{
    private readonly Identity identity;
    private readonly Moment? asked;
    private readonly ILookup<string, Moment> worksByThing;

    public EpochFold(PropertyHistory history, int epoch)
    {
        identity = history.Facts.Identity;
        asked = epoch == 0 ? null : history.WorkTimes[epoch - 1];
        worksByThing = history.Facts.Works
            .Where(w => w.Fact.Target is not null)
            .ToLookup(w => identity.Of(w.Fact.Target!), w => w.Moment);
    }

    public SortedDictionary<string, T> Things<T>(IEnumerable<Observed<T>> notes, Func<T, string> id, Func<T, T, T> overlay)
        where T : Fact
    {
        var things = new SortedDictionary<string, T>(StringComparer.Ordinal);
        foreach (var group in notes.GroupBy(n => identity.Of(id(n.Fact))))
        {
            things[group.Key] = Value(group.Key, [.. group], overlay);
        }

        return things;
    }

    private T Value<T>(string thing, List<Observed<T>> notes, Func<T, T, T> overlay)
        where T : Fact
    {
        var works = worksByThing[thing].Order().ToList();
        var epoch = works.Count(w => asked is { } moment && w <= moment);
        return notes
            .OrderBy(n => works.Count(w => w <= n.Moment) == epoch)
            .Select(n => n.Fact)
            .Aggregate(overlay);
    }
}
