namespace Underturf.Numerics;

/// <summary>Builds a walk by the rule of the best rate: always on to the stop that finds most for its minutes, the way there counted.</summary>
internal static class WalkStart
{
    private const int MostRounds = 12;

    /// <summary>Stops by rate as seen from a place, the best first.</summary>
    public static List<(int Stop, double Minutes, double RatePerMinute)> Ranked(WalkDraft draft)
    {
        var (errand, at) = (draft.Errand, draft.Count == 0 ? -1 : draft.Stops[^1]);
        var missing = 1 - draft.Found(0, draft.Count);
        var ranked = new List<(int Stop, double Minutes, double RatePerMinute)>();
        for (var stop = 0; stop < errand.Count; stop++)
        {
            var spent = draft.SpentBefore(draft.Count, stop);
            if (stop != at && Pays(errand, at, stop, missing, spent))
            {
                var (minutes, rate) = BestRate(errand, at, stop, spent);
                ranked.Add((stop, minutes, rate));
            }
        }

        ranked.Sort((a, b) => a.RatePerMinute != b.RatePerMinute ? b.RatePerMinute.CompareTo(a.RatePerMinute) : a.Stop.CompareTo(b.Stop));
        return ranked;
    }

    public static WalkDraft From(SearchErrand errand, int first, double minutes)
    {
        var draft = new WalkDraft(errand);
        draft.Insert(0, first, minutes);
        while (draft.Count < draft.MostVisits && Ranked(draft) is [var best, ..])
        {
            draft.Insert(draft.Count, best.Stop, best.Minutes);
        }

        return draft;
    }

    /// <summary>Is going there and giving up then better than giving up here?</summary>
    private static bool Pays(SearchErrand errand, int at, int stop, double missing, double spent)
    {
        var minutes = errand.Stop(stop).StopMinutes(errand.WorthMinutes, missing, spent) - spent;
        var bout = new SearchBout(errand.Stop(stop), spent, minutes);
        return (missing * (errand.TravelMinutes(at, stop) + minutes)) - bout.SparedMinutes < bout.Found * errand.WorthMinutes;
    }

    /// <summary>The minutes whose chance over minutes is highest, by Dinkelbach's method: on until the rate has fallen to the average. A way out belongs to a stop as the way in does.</summary>
    private static (double Minutes, double RatePerMinute) BestRate(SearchErrand errand, int at, int stop, double spent)
    {
        var (curve, ways) = (errand.Stop(stop), errand.TravelMinutes(at, stop) + WayOut(errand, stop));
        var (minutes, rate) = (curve.StopMinutes(errand.WorthMinutes, 1, spent) - spent, curve.RatePerMinute(spent));
        for (var round = 0; round < MostRounds && ways + minutes > 0; round++)
        {
            rate = new SearchBout(curve, spent, minutes).Found / (ways + minutes);
            minutes = ways > 0 ? Math.Max(0, curve.MinutesUntilRate(rate) - spent) : minutes;
        }

        return (minutes, rate);
    }

    private static double WayOut(SearchErrand errand, int stop)
    {
        var least = double.PositiveInfinity;
        for (var other = 0; other < errand.Count; other++)
        {
            least = other == stop ? least : Math.Min(least, errand.TravelMinutes(stop, other));
        }

        return double.IsPositiveInfinity(least) ? 0 : least;
    }
}
