namespace Underturf.Planning.Day;

/// <summary>All jobs, those that can be begun today apart from those that wait.</summary>
internal sealed record JobQueue(IReadOnlyList<Job> Ready, IReadOnlyList<WaitingJob> Waiting)
{
    public static JobQueue Of(Grounds grounds, Tickets tickets)
    {
        IReadOnlyList<Job> jobs = [.. new MoveJobs(grounds).Find().Concat(new RepairJobs(grounds).Find()).Concat(new ReworkJobs(grounds).Find()).Concat(new LeftJobs(grounds).Find()).DistinctBy(j => j.Key)];
        var permits = new Permits(grounds, tickets);
        var missing = jobs.ToDictionary(j => j.Key, permits.Missing);
        var held = missing.Where(m => m.Value.Count > 0).Select(m => m.Key).ToHashSet(StringComparer.Ordinal);
        var behind = Behind(jobs, held);
        return new JobQueue(
            [.. jobs.Where(j => !held.Contains(j.Key) && !behind.Contains(j.Key))],
            [.. jobs.Where(j => held.Contains(j.Key) && !behind.Contains(j.Key)).OrderByDescending(j => j.Worth).Select(j => Told(grounds, jobs, j, missing[j.Key]))]);
    }

    private static WaitingJob Told(Grounds grounds, IReadOnlyList<Job> jobs, Job job, IReadOnlyList<Want> missing)
    {
        var following = Behind(jobs, [job.Key]);
        return new WaitingJob(job.Say, grounds.View.Name(job.Place), job.Place, missing, job.Worth + jobs.Where(j => following.Contains(j.Key)).Sum(j => j.Worth), following.Count);
    }

    /// <summary>Those that come after one that is held.</summary>
    private static HashSet<string> Behind(IReadOnlyList<Job> jobs, HashSet<string> held)
    {
        var behind = new HashSet<string>(StringComparer.Ordinal);
        while (jobs.FirstOrDefault(j => !behind.Contains(j.Key) && j.After.Any(a => held.Contains(a) || behind.Contains(a))) is { } next)
        {
            behind.Add(next.Key);
        }

        return behind;
    }
}
