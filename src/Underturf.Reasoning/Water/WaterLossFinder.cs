using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>Finds what is lost in a day while something runs that should not.</summary>
internal static class WaterLossFinder
{
    private const double Tail = 0.05;
    private const double SecondsADay = 86400;

    /// <summary>Null where most likely nothing runs.</summary>
    public static WaterLoss? Of(WaterBelief belief)
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

    /// <summary>Of the amounts, given that something runs, evenly within each place of the grid; what the meter shows too much or too little it shows each time.</summary>
    private static double Quantile(WaterBelief belief, double share)
    {
        var (wanted, sum) = (share * (1 - belief.Running[0]), 0.0);
        var place = 1;
        while (place < AmountGrid.Count - 1 && sum + belief.Running[place] < wanted)
        {
            sum += belief.Running[place++];
        }

        var within = belief.Running[place] > 0 ? Math.Clamp((wanted - sum) / belief.Running[place], 0, 1) : 0.5;
        var meter = belief.Owner.Water.Instrument(belief.Owner.Water.ProbeOf(WaterMeasure.MeterFlow)!);
        return AmountGrid.Between(place, within) * Math.Exp(Normal.Quantile(share) * meter.Accuracy);
    }
}
