namespace Underturf.Reasoning.Water;

/// <summary>What is lost in a day while something runs that should not: nine times in ten between these.</summary>
/// <param name="LeastMoney">In the owner's money, where a price was noted.</param>
public sealed record WaterLoss(double LeastCubicMetresADay, double MostCubicMetresADay, double? LeastMoney, double? MostMoney)
{
    private const double Tail = 0.05;
    private const double SecondsADay = 86400;

    /// <summary>Null where most likely nothing runs.</summary>
    internal static WaterLoss? Of(WaterBelief belief)
    {
        if (1 - belief.Running[0] < 0.5)
        {
            return null;
        }

        var (low, high) = (Quantile(belief, Tail) * SecondsADay, Quantile(belief, 1 - Tail) * SecondsADay);
        var price = belief.Owner.View.WaterSupplies.Values.Where(s => s.Price is > 0 && s.PriceOf is { CubicMetres: > 0 }).Select(s => s.Price!.Value / s.PriceOf!.Value.CubicMetres).ToList();
        double? each = price.Count > 0 ? price[0] : null;
        return new WaterLoss(low, high, low * each, high * each);
    }

    /// <summary>Of the amounts, given that something runs.</summary>
    private static double Quantile(WaterBelief belief, double share)
    {
        var (wanted, sum) = (share * (1 - belief.Running[0]), 0.0);
        for (var place = 1; place < AmountGrid.Count; place++)
        {
            sum += belief.Running[place];
            if (sum >= wanted)
            {
                return AmountGrid.At(place);
            }
        }

        return AmountGrid.At(AmountGrid.Count - 1);
    }

    /// <summary>"2,400 to 2,800 gal a day, 15 to 17 in money".</summary>
    public string Say(WaterSay say) => $"{say.Volume(LeastCubicMetresADay, MostCubicMetresADay)} a day"
        + (LeastMoney is { } least ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $", {least:0} to {MostMoney:0} in money a day") : string.Empty);
}
