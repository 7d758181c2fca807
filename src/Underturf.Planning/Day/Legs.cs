namespace Underturf.Planning.Day;

/// <summary>One stop on the way to a job: a valve to shut, or to open again.</summary>
internal sealed record Call(Shutter Valve, bool Opens, double WalkMinutes, double Minutes);

/// <summary>The way to a job: what is opened again first, what is shut then, and the last walk.</summary>
internal sealed record Leg(IReadOnlyList<Call> Calls, double WalkMinutes)
{
    public double Minutes => Calls.Sum(c => c.WalkMinutes + c.Minutes) + WalkMinutes;
}

/// <summary>Ways from job to job. Water is shut for a job right before it, stays shut for the next one that needs it shut too, and is let in again before one that does not.</summary>
internal sealed class Legs(Grounds grounds, string start)
{
    public Leg First(Job job) => Way(start, [], job);

    public Leg Between(Job before, Job job) => Way(before.Place, before.Shut, job);

    /// <summary>All that is still shut is opened.</summary>
    public Leg End(Job last)
    {
        var (calls, _) = Calls(last.Place, last.Shut, [], null);
        return new Leg(calls, 0);
    }

    private Leg Way(string from, IReadOnlyList<Shutter> shut, Job job)
    {
        var (calls, at) = Calls(from, shut, job.Shut, job);
        return new Leg(calls, Walk(at, job.Place));
    }

    private (List<Call> Calls, string At) Calls(string from, IReadOnlyList<Shutter> shut, IReadOnlyList<Shutter> needed, Job? job)
    {
        var calls = new List<Call>();
        var at = Visit(calls, from, shut.Where(s => !needed.Any(n => n.Id == s.Id)), opens: true);
        return (calls, job is null ? at : Visit(calls, at, needed.Where(n => !shut.Any(s => s.Id == n.Id)), opens: false));
    }

    /// <summary>Always the nearest next; the filling is counted at the last one that is opened.</summary>
    private string Visit(List<Call> calls, string at, IEnumerable<Shutter> valves, bool opens)
    {
        var left = valves.ToList();
        while (left.Count > 0)
        {
            var next = left.MinBy(v => Walk(at, v.Id))!;
            left.Remove(next);
            calls.Add(new Call(next, opens, Walk(at, next.Id), next.TurnMinutes + (opens && left.Count == 0 ? grounds.Numbers.RefillMinutes : 0)));
            at = next.Id;
        }

        return at;
    }

    private double Walk(string from, string to) => grounds.Notebook.WalkMinutes(from, to);
}
