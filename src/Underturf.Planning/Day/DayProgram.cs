using Underturf.Planning.Day.Ordering;

namespace Underturf.Planning.Day;

/// <summary>The jobs that can be begun today as plain numbers, and the ways between them.</summary>
internal sealed class DayProgram
{
    private readonly Leg[] first;
    private readonly Leg[,] between;
    private readonly Leg[] end;

    public DayProgram(Grounds grounds, Tickets tickets, IReadOnlyList<Job> ready, string at, double minutes)
    {
        Jobs = Most(ready);
        var (legs, count) = (new Legs(grounds, at), Jobs.Count);
        (first, end, between) = ([.. Jobs.Select(legs.First)], [.. Jobs.Select(legs.End)], new Leg[count, count]);
        var ways = new double[count, count];
        foreach (var (i, j) in from i in Enumerable.Range(0, count) from j in Enumerable.Range(0, count) where i != j select (i, j))
        {
            between[i, j] = legs.Between(Jobs[i], Jobs[j]);
            ways[i, j] = between[i, j].Minutes;
        }

        var numbers = Jobs.Select((j, k) => (j.Key, k)).ToDictionary(p => p.Key, p => p.k, StringComparer.Ordinal);
        Errands = new ErrandDay([.. Jobs.Select(j => Errand(grounds, tickets, j, numbers))], [.. first.Select(l => l.Minutes)], ways, [.. end.Select(l => l.Minutes)], minutes, grounds.Numbers.BrokenOffMinutes);
    }

    public IReadOnlyList<Job> Jobs { get; }

    public ErrandDay Errands { get; }

    public Leg Way(int before, int job) => before < 0 ? first[job] : between[before, job];

    public Leg Home(int last) => end[last];

    /// <summary>Whether it would be done if it were alone in the day.</summary>
    public bool IsWorthIt(Job job) => Jobs.ToList().IndexOf(job) is var k && (k < 0 || job.After.Count > 0 || job.Worth > first[k].Minutes + job.Minutes + end[k].Minutes);

    private static Errand Errand(Grounds grounds, Tickets tickets, Job job, Dictionary<string, int> numbers)
    {
        var (earliest, latest) = job.Digs && tickets.Window(job) is { } window ? window : (0, double.PositiveInfinity);
        var closing = job.Key.StartsWith(LeftJobs.Prefix, StringComparison.Ordinal);
        return new Errand(
            job.Minutes + (job.Digs ? grounds.Numbers.MarksMinutes : 0),
            job.Worth,
            [.. job.After.Where(numbers.ContainsKey).Select(a => numbers[a])],
            closing ? [] : [.. numbers.Where(n => n.Key == LeftJobs.Prefix + job.Place).Select(n => n.Value)],
            earliest,
            latest);
    }

    /// <summary>More than can be ordered are cut to those that save most for their minutes, each with what comes before it.</summary>
    private static IReadOnlyList<Job> Most(IReadOnlyList<Job> ready)
    {
        var kept = new HashSet<string>(StringComparer.Ordinal);
        foreach (var job in ready.OrderByDescending(j => j.Worth / Math.Max(j.Minutes, 1)))
        {
            var with = Before(ready, job).Where(k => !kept.Contains(k)).ToList();
            if (kept.Count + with.Count <= DayOrder.MostErrands)
            {
                kept.UnionWith(with);
            }
        }

        return [.. ready.Where(j => kept.Contains(j.Key))];
    }

    private static IEnumerable<string> Before(IReadOnlyList<Job> all, Job job) =>
        job.After.SelectMany(a => all.Where(j => j.Key == a)).SelectMany(j => Before(all, j)).Append(job.Key).Distinct();
}
