namespace Underturf.Numerics;

/// <summary>Improves walks until no small change is better.</summary>
internal static class WalkSearch
{
    /// <summary>Of the loss: a visit that gains less is not worth walking.</summary>
    public const double LeastOfVisit = 1e-4;

    /// <summary>First stops that are tried, and walks that are improved to the end.</summary>
    private const int MostStarts = 6;

    private const int MostImproved = 2;

    private const int MostRounds = 60;

    /// <summary>Of the loss: a change that gains less is rounding.</summary>
    private const double Least = 1e-7;

    public static WalkDraft Best(SearchErrand errand)
    {
        var none = new WalkDraft(errand);
        var starts = new List<(WalkDraft Draft, double Loss)>();
        foreach (var (stop, minutes, _) in WalkStart.Ranked(none).Take(MostStarts))
        {
            var draft = WalkStart.From(errand, stop, minutes);
            starts.Add((draft, WalkEfforts.Settle(draft, WalkEfforts.FewSweeps)));
        }

        return starts.OrderBy(start => start.Loss).Take(MostImproved)
            .Select(start => (start.Draft, Loss: Improve(start.Draft, start.Loss)))
            .Append((Draft: none, Loss: errand.WorthMinutes))
            .MinBy(walk => walk.Loss).Draft;
    }

    /// <summary>Is a loss less by more than rounding?</summary>
    public static bool Gains(double now, double before) => now < before * (1 - Least);

    private static double Improve(WalkDraft draft, double loss)
    {
        for (var round = 0; round < MostRounds && (WalkOrders.Improve(draft, loss) || WalkVisits.Improve(draft, loss)); round++)
        {
            loss = WalkEfforts.Settle(draft, WalkEfforts.FewSweeps);
        }

        return WalkEfforts.Settle(draft, WalkEfforts.MostSweeps);
    }
}
