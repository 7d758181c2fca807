namespace Underturf.Planning.Day.Ordering;

/// <summary>A job as plain numbers.</summary>
/// <param name="Minutes">At its place.</param>
/// <param name="Worth">Minutes of loss that it saves.</param>
/// <param name="After">Jobs that must be done before it, by number.</param>
/// <param name="NotAfter">Jobs after which it cannot be done any more.</param>
/// <param name="Earliest">Minutes from the beginning before which it does not begin.</param>
/// <param name="Latest">From here on it does not begin any more.</param>
public sealed record Errand(double Minutes, double Worth, IReadOnlyList<int> After, IReadOnlyList<int> NotAfter, double Earliest = 0, double Latest = double.PositiveInfinity);

/// <summary>Jobs of which some are to be done in some order, within the minutes that there are.</summary>
/// <param name="First">Minutes from where one is to each job, with what has to be shut on the way.</param>
/// <param name="Between">From one job to another, with what is opened again and shut on the way.</param>
/// <param name="End">Minutes that it takes to leave all as it was after each job, where it is the last.</param>
/// <param name="Minutes">That there are.</param>
/// <param name="BrokenOffMinutes">Mean time until something breaks the day off: a job that is to be done at time t is done with chance exp(-t / this).</param>
public sealed record ErrandDay(IReadOnlyList<Errand> Errands, double[] First, double[,] Between, double[] End, double Minutes, double BrokenOffMinutes)
{
    /// <summary>When an errand is done that is begun as soon as may be; nothing where it cannot be done then.</summary>
    /// <param name="before">The job before it; below nothing where there is none.</param>
    public double? DoneAt(int errand, int before, double at)
    {
        var job = Errands[errand];
        var start = Math.Max(at + (before < 0 ? First[errand] : Between[before, errand]), job.Earliest);
        var done = start + job.Minutes;
        return start < job.Latest && done + End[errand] <= Minutes ? done : null;
    }

    public double Saved(int errand, double done) => Errands[errand].Worth * Math.Exp(-done / BrokenOffMinutes);

    /// <summary>Whether it can be done once these are.</summary>
    public bool IsOpen(int errand, ulong done) =>
        (done >> errand & 1) == 0
        && Errands[errand].After.All(a => (done >> a & 1) == 1)
        && Errands[errand].NotAfter.All(a => (done >> a & 1) == 0);

    /// <summary>What an order saves, its own minutes taken off; nothing where it breaks a rule or takes too long.</summary>
    public double? Value(IReadOnlyList<int> order)
    {
        var (saved, at, done, last) = (0.0, 0.0, 0UL, -1);
        foreach (var errand in order)
        {
            if (!IsOpen(errand, done) || DoneAt(errand, last, at) is not { } end)
            {
                return null;
            }

            (saved, at, done, last) = (saved + Saved(errand, end), end, done | (1UL << errand), errand);
        }

        return saved - at - (last < 0 ? 0 : End[last]);
    }
}

/// <summary>An order of errands.</summary>
/// <param name="Value">Minutes of loss that it is expected to save, its own minutes taken off.</param>
/// <param name="Bound">No order saves more.</param>
public sealed record ErrandOrder(IReadOnlyList<int> Order, double Value, double Bound)
{
    public bool IsBest => Bound <= Value + 1e-6;
}
