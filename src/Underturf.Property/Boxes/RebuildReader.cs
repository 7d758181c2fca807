using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>Reads from the log how far the rebuild of a box is.</summary>
internal sealed class RebuildReader(PropertyHistory history, BoxCard card)
{
    private readonly Identity identity = history.Now.Identity;

    public BoxRebuild Read()
    {
        var round = Round();
        var works = round.Count == 0 ? [] : history.Facts.Works.Where(w => w.Moment > round[0].Moment && IsRemaking(w.Fact)).ToList();
        var freed = round.Where(s => s.Fact.Step == BoxRebuild.Named(RebuildStep.Free)).Select(s => s.Fact.Target).OfType<string>().Select(identity.Of).ToHashSet(StringComparer.Ordinal);
        var remade = card.Joints.Where(j => works.Exists(w => Touches(w.Fact, j))).SelectMany(j => j.Ends).Select(e => e.Id).ToHashSet(StringComparer.Ordinal);
        var done = round.Where(s => s.Fact.Target is null).GroupBy(s => s.Fact.Step).ToDictionary(g => g.Key, g => g.Last().At);
        AddWhenAll(done, RebuildStep.Free, card.Joints.SelectMany(j => j.Ends), freed, round.Select(s => s.At));
        AddWhenAll(done, RebuildStep.Remake, card.Joints.Where(j => j.IsJoined).SelectMany(j => j.Ends), remade, works.Select(w => w.At));
        var last = round.Select(s => s.Moment).Concat(works.Select(w => w.Moment)).DefaultIfEmpty().Max();
        return new BoxRebuild(
            BoxRebuild.Steps.Where(step => done.ContainsKey(BoxRebuild.Named(step))).ToDictionary(step => step, step => done[BoxRebuild.Named(step)]),
            freed,
            remade,
            round.Count == 0 ? null : history.Facts.LeftAs.LastOrDefault(l => IsHere(l.Fact.Place) && l.Moment > last));
    }

    /// <summary>The steps since the box was housed the time before.</summary>
    private List<Observed<StepFact>> Round()
    {
        var steps = history.Facts.Steps.Where(s => s.Fact.Job == BoxRebuild.Job && IsHere(s.Fact.Place)).OrderBy(s => s.Moment).ToList();
        var housed = steps.SkipLast(1).ToList().FindLastIndex(s => s.Fact.Step == BoxRebuild.Named(RebuildStep.House));
        return steps[(housed + 1)..];
    }

    /// <summary>What is done to one after the other is done when it is done to all.</summary>
    private static void AddWhenAll(Dictionary<string, DateTimeOffset> done, RebuildStep step, IEnumerable<ConductorEnd> ends, HashSet<string> reached, IEnumerable<DateTimeOffset> times)
    {
        if (reached.Count > 0 && ends.All(end => reached.Contains(end.Id)))
        {
            done.TryAdd(BoxRebuild.Named(step), times.Max());
        }
    }

    private bool IsHere(string? place) => place is not null && identity.Of(place) == card.Id;

    private bool IsRemaking(WorkFact work) => work.Did == BoxRebuild.Remaking && (IsHere(work.Place) || work.Place is null);

    /// <summary>Work on one of its ends, or on the station that one of them carries, or on the box as a whole.</summary>
    private bool Touches(WorkFact work, Joint joint) => (work.Target ?? work.Place) is { } target
        && (IsHere(target) || joint.Ends.Any(end => end.Id == identity.Of(target) || end.Station == identity.Of(target)));
}
