using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>
/// What counts after all strikes and restores, taken in the order of entries: for each entry the last word counts. A strike
/// speaks of a fact, never of another strike; to take a strike back, restore what it struck.
/// </summary>
internal sealed class Standing
{
    private readonly List<Problem> problems;
    private readonly ILookup<string, Entry> byId;
    private readonly HashSet<Entry> struck = new(ReferenceEqualityComparer.Instance);

    private Standing(IReadOnlyList<Entry> entries, List<Problem> problems)
    {
        this.problems = problems;
        byId = entries.ToLookup(e => e.Id.ToString(), StringComparer.Ordinal);
    }

    /// <param name="entries">Entries of one property in order.</param>
    public static List<Entry> Of(IReadOnlyList<Entry> entries, List<Problem> problems)
    {
        var standing = new Standing(entries, problems);
        foreach (var entry in entries)
        {
            standing.Apply(entry);
        }

        return [.. entries.Where(e => e.Fact is not (null or StrikeFact or RestoreFact) && !standing.struck.Contains(e))];
    }

    private void Apply(Entry entry)
    {
        switch (entry.Fact)
        {
            case StrikeFact strike:
                foreach (var target in Targets(entry, strike.Entry, "strikes"))
                {
                    struck.Add(target);
                }

                break;
            case RestoreFact restore:
                foreach (var target in Targets(entry, restore.Entry, "restores").Where(target => !struck.Remove(target)))
                {
                    problems.Add(new Problem(
                        entry.Id.ToString(),
                        $"restores {target.Id}, which was not struck",
                        "Nothing needs doing",
                        Severity.Notice));
                }

                break;
        }
    }

    private List<Entry> Targets(Entry entry, string id, string does)
    {
        List<Entry> named = [.. byId[id]];
        if (named.Count == 0)
        {
            return Refuse(entry, $"{does} {id}, which is not in this log", "Merge the log that has it, or name the entry as writer/number");
        }

        if (named.Find(e => e.Fact is StrikeFact or RestoreFact) is { Fact: var word })
        {
            var aim = word is StrikeFact strike ? strike.Entry : ((RestoreFact)word!).Entry;
            return Refuse(
                entry,
                $"{does} {id}, which is itself a strike or restore",
                $"Strike or restore {aim} itself: the last word on an entry counts");
        }

        var before = named.FindAll(e => EntryOrder.Instance.Compare(e, entry) < 0);
        return before.Count > 0
            ? before
            : Refuse(entry, $"{does} {id}, which was noted later", "Strike or restore it again with a new entry; this one has no effect");
    }

    private List<Entry> Refuse(Entry entry, string reason, string remedy)
    {
        problems.Add(new Problem(entry.Id.ToString(), reason, remedy));
        return [];
    }
}
