namespace Underturf.Numerics;

/// <summary>The best minutes at each visit of a walk whose order is given: coordinate descent, every step the exact least of its coordinate.</summary>
/// <remarks>
/// The last visit to a stop: a minute more costs everybody who still searches a minute, and spares those who find it the rest of the walk and the worth. An earlier one: minutes
/// taken over from the stop's next visit delay the visits between and spare those who find it now the time between; best at the rate found between over minutes between.
/// </remarks>
internal static class WalkEfforts
{
    public const int MostSweeps = 30;

    /// <summary>Near enough while the order still changes.</summary>
    public const int FewSweeps = 3;

    /// <summary>Of the loss: a sweep that gains less is the last.</summary>
    private const double Least = 1e-7;

    public static double Settle(WalkDraft draft, int sweeps)
    {
        draft.Refresh();
        var loss = draft.LossMinutes();
        for (var sweep = 0; sweep < sweeps; sweep++)
        {
            Sweep(draft);
            draft.Refresh();
            var now = draft.LossMinutes();
            if (!(now < loss * (1 - Least)))
            {
                return now;
            }

            loss = now;
        }

        return loss;
    }

    /// <summary>From the last visit to the first: what follows decides what is worth finding early.</summary>
    private static void Sweep(WalkDraft draft)
    {
        for (var visit = draft.Count - 1; visit >= 0; visit--)
        {
            var (stop, spent) = (draft.Stops[visit], draft.SpentBefore(visit));
            var next = draft.NextAt(stop, visit + 1);
            if (next < 0)
            {
                var rest = draft.LastsMinutes(visit + 1, draft.Count) + draft.Errand.WorthMinutes;
                Set(draft, visit, draft.Errand.Stop(stop).StopMinutes(rest, 1 - draft.Found(0, visit), spent) - spent);
            }
            else
            {
                var both = draft.Minutes[visit] + draft.Minutes[next];
                Set(draft, visit, Math.Clamp(Shared(draft, stop, visit + 1, next) - spent, 0, both));
                Set(draft, next, both - draft.Minutes[visit]);
            }
        }
    }

    /// <summary>Minutes of a stop that are best spent before the visits between two of its own, if the rest comes after them.</summary>
    public static double Shared(WalkDraft draft, int stop, int from, int next)
    {
        var between = draft.LastsMinutes(from, next) + draft.TravelMinutes(next);
        return between > 0 && draft.Found(from, next) is > 0 and var found ? draft.Errand.Stop(stop).MinutesUntilRate(found / between) : double.PositiveInfinity;
    }

    private static void Set(WalkDraft draft, int visit, double minutes)
    {
        draft.Minutes[visit] = minutes;
        draft.Bouts[visit] = new SearchBout(draft.Errand.Stop(draft.Stops[visit]), draft.SpentBefore(visit), minutes);
    }
}
