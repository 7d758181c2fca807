namespace Underturf.Planning.Day;

/// <summary>Places that were left in a state for a time: what ends it, and work that is due to be looked at again.</summary>
internal sealed class LeftJobs(Grounds grounds)
{
    public const string Prefix = "close ";

    public IEnumerable<Job> Find() => Closing().Concat(Rechecks());

    /// <summary>A day more of it is what it saves.</summary>
    private IEnumerable<Job> Closing() => grounds.Temporary.Select(t => new Job($"{Prefix}{t.Place}", JobKind.Close, t.State.Say, t.Place, t.State.Minutes, 0, t.State.Minutes + t.State.DayLoss, [.. t.Left.Fact.Stations.Select(grounds.View.StationNumber)])
    {
        Steps = [new DayStep(t.State.Say, t.State.Minutes, $"Left as: {t.Left.Fact.State}{(t.Left.Fact.Told is { } told ? $"; {told} was told" : "; nobody was told")}.")],
    });

    /// <summary>Work of which nobody has seen since whether it holds.</summary>
    private IEnumerable<Job> Rechecks() => grounds.Facts.Works
        .Where(w => w.At.AddDays(grounds.Numbers.RecheckDays) <= grounds.Begin)
        .Select(w => (Work: w, Stations: StationsOf(w.Fact)))
        .Where(w => w.Stations.Count > 0 && !w.Stations.All(s => IsSeenAgain(s, w.Work.At)))
        .GroupBy(w => string.Join(' ', w.Stations))
        .Select(g => g.Last())
        .Select(w => Recheck(w.Work.Fact, w.Work.At, w.Stations));

    private Job Recheck(FieldLog.WorkFact work, DateTimeOffset on, IReadOnlyList<string> stations)
    {
        var (run, numbers) = (grounds.Book.Run, stations.Select(grounds.View.StationNumber).ToList());
        var say = $"run station {string.Join(", ", numbers)} again: does \"{work.Did}\" of {on:yyyy-MM-dd} hold?";
        var place = work.Place is { } noted && grounds.IsFound(grounds.View.Identity.Of(noted)) ? grounds.View.Identity.Of(noted) : grounds.View.Identity.Of(grounds.View.Stations[stations[0]].Controller);
        return new Job($"recheck {string.Join(' ', stations)}", JobKind.Recheck, say, place, run.Minutes * stations.Count, 0, grounds.Numbers.RecheckFails * grounds.WrongMinutes * stations.Count, numbers)
        {
            Steps = [new DayStep(say, run.Minutes * stations.Count, run.Caution)],
        };
    }

    /// <summary>The station that was worked on, or that of the valve.</summary>
    private IReadOnlyList<string> StationsOf(FieldLog.WorkFact work)
    {
        var target = work.Target is { } t ? grounds.View.Identity.Of(t) : null;
        return target is null ? []
            : grounds.View.Stations.ContainsKey(target) ? [target]
            : grounds.View.Valves.TryGetValue(target, out var valve) && valve.Station is { } station && grounds.View.Stations.ContainsKey(grounds.View.Identity.Of(station)) ? [grounds.View.Identity.Of(station)]
            : [];
    }

    /// <summary>Run once the days were over.</summary>
    private bool IsSeenAgain(string station, DateTimeOffset work) => grounds.Facts.Tests.Any(t => grounds.View.Identity.Of(t.Fact.Station) == station && t.At >= work.AddDays(grounds.Numbers.RecheckDays));
}
