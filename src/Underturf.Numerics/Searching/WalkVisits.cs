namespace Underturf.Numerics;

/// <summary>Visits put in or left out: the one change that gains most while the minutes of the others stay.</summary>
internal sealed class WalkVisits
{
    private readonly WalkDraft draft;
    private readonly double loss;

    /// <summary>Chance missing before each visit and after the last, and minutes from the first until then.</summary>
    private readonly double[] missing;
    private readonly double[] minutesAt;

    private (double Loss, int At, int Stop, double Minutes) best;

    private WalkVisits(WalkDraft draft, double loss)
    {
        (this.draft, this.loss, best) = (draft, loss, (loss, 0, -1, 0));
        (missing, minutesAt) = (new double[draft.Count + 1], new double[draft.Count + 1]);
        missing[0] = 1;
        for (var k = 0; k < draft.Count; k++)
        {
            missing[k + 1] = missing[k] - draft.Bouts[k].Found;
            minutesAt[k + 1] = minutesAt[k] + draft.TravelMinutes(k) + draft.Minutes[k];
        }
    }

    public static bool Improve(WalkDraft draft, double loss)
    {
        var visits = new WalkVisits(draft, loss);
        visits.TryWithout();
        for (var stop = 0; stop < draft.Errand.Count && draft.Count < draft.MostVisits; stop++)
        {
            visits.TryWith(stop);
        }

        return visits.Make();
    }

    private void TryWithout()
    {
        for (var at = 0; at < draft.Count; at++)
        {
            var without = draft.Copy();
            without.RemoveAt(at);
            Consider(without.LossMinutes(), at, -1, 0);
        }
    }

    private void TryWith(int stop)
    {
        var spent = 0.0;
        for (var at = 0; at <= draft.Count; at++)
        {
            spent += at > 0 && draft.Stops[at - 1] == stop ? draft.Minutes[at - 1] : 0;
            if ((at == 0 || draft.Stops[at - 1] != stop) && (at == draft.Count || draft.Stops[at] != stop))
            {
                TryWith(stop, at, spent);
            }
        }
    }

    private void TryWith(int stop, int at, double spent)
    {
        var (curve, next) = (draft.Errand.Stop(stop), draft.NextAt(stop, at));
        var way = draft.Errand.TravelMinutes(at == 0 ? -1 : draft.Stops[at - 1], stop);
        var longer = at == draft.Count ? 0 : draft.Errand.TravelMinutes(stop, draft.Stops[at]) - draft.TravelMinutes(at);
        if (next < 0)
        {
            var rest = minutesAt[^1] - minutesAt[at] + longer + draft.Errand.WorthMinutes;
            var minutes = curve.StopMinutes(rest, missing[at], spent) - spent;
            var bout = new SearchBout(curve, spent, minutes);
            Consider(loss + (missing[at] * (way + minutes + longer)) - bout.SparedMinutes - (bout.Found * rest), at, stop, minutes);
        }
        else
        {
            var minutes = Math.Min(WalkEfforts.Shared(draft, stop, at, next) - spent, draft.Minutes[next]);
            var (bout, then, rest) = (new SearchBout(curve, spent, minutes), draft.Bouts[next], draft.Minutes[next] - minutes);
            var between = minutesAt[next] - minutesAt[at] + draft.TravelMinutes(next) + longer;
            var later = new SearchBout(curve, spent + minutes, rest);
            Consider(
                loss + (missing[at] * (way + minutes + longer)) - bout.SparedMinutes - (bout.Found * (between + rest)) - later.SparedMinutes - (missing[next] * minutes) + then.SparedMinutes,
                at,
                stop,
                minutes);
        }
    }

    private void Consider(double now, int at, int stop, double minutes) => best = now < best.Loss && (stop < 0 || minutes > 0) ? (now, at, stop, minutes) : best;

    private bool Make()
    {
        if (!(best.Loss < loss * (1 - WalkSearch.LeastOfVisit)))
        {
            return false;
        }

        if (best.Stop < 0)
        {
            draft.RemoveAt(best.At);
        }
        else
        {
            if (draft.NextAt(best.Stop, best.At) is >= 0 and var next)
            {
                draft.Minutes[next] = Math.Max(0, draft.Minutes[next] - best.Minutes);
            }

            draft.Insert(best.At, best.Stop, best.Minutes);
        }

        return true;
    }
}
