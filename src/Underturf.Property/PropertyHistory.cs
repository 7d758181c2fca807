using System.Collections.Concurrent;
using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>
/// What stood when, as a pure fold of the log. Work done opens a new epoch; what is seen holds for its own epoch first and, where an epoch
/// has nothing better, for the others too, because wires do not change by being looked at.
/// </summary>
public sealed class PropertyHistory
{
    /// <summary>Those that were asked for; also of a longer history that shows the same, so several askers may come at once.</summary>
    private readonly ConcurrentDictionary<int, PropertyView> views;

    private readonly Moment? latest;

    private PropertyHistory(Facts facts, Moment? latest, ConcurrentDictionary<int, PropertyView> views)
    {
        (Facts, this.latest, this.views) = (facts, latest, views);
        WorkTimes = [.. facts.Works.Select(w => w.Moment).Order()];
    }

    public Facts Facts { get; }

    /// <summary>The moments at which an epoch begins; the first epoch has no beginning.</summary>
    public IReadOnlyList<Moment> WorkTimes { get; }

    /// <summary>The property as it stands after the last entry.</summary>
    public PropertyView Now => View(WorkTimes.Count);

    /// <summary>Folds entries that stand (struck ones left out), whatever their order.</summary>
    public static PropertyHistory Fold(IEnumerable<Entry> standing)
    {
        var inOrder = standing.OrderBy(e => e.Moment).ToList();
        var zone = PropertyZone.Of(inOrder.FindLast(e => e.Fact is PropertyFact)?.Fact is PropertyFact property ? property.Zone : null);
        return new PropertyHistory(Facts.None with { Zone = zone }, null, new()).Folded(inOrder, new());
    }

    /// <summary>This history with an entry more: folded on where it was so after all others and leaves the clock as it is, else nothing, and all are to be folded again.</summary>
    public PropertyHistory? With(Entry entry) =>
        latest is { } before && before.CompareTo(entry.Moment) < 0 && (entry.Fact is not PropertyFact property || property.Zone == Facts.Zone.Name)
            ? Folded([entry], IsSeen(entry.Fact) ? views : new())
            : null;

    /// <summary>What was seen or done leaves every thing as the views have it, unless it is work, which begins an epoch.</summary>
    private static bool IsSeen(Fact? fact) => fact is ReadingFact or TestFact or LookFact or WatchFact or CatchFact or ToldFact;

    private PropertyHistory Folded(IEnumerable<Entry> inOrder, ConcurrentDictionary<int, PropertyView> shown)
    {
        var (facts, last) = (Facts, latest);
        foreach (var entry in inOrder)
        {
            (facts, last) = (facts.Evolve(entry), entry.Moment);
        }

        return new PropertyHistory(facts, last, shown);
    }

    /// <summary>How many epochs had begun at a moment: 0 before any work.</summary>
    public int EpochAt(Moment moment) => WorkTimes.Count(t => t <= moment);

    public PropertyView At(Moment moment) => View(EpochAt(moment));

    private PropertyView View(int epoch) => views.GetOrAdd(epoch, static (asked, history) => PropertyView.Of(history, asked), this);
}
