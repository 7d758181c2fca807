namespace Underturf.Planning.Choosing;

/// <summary>
/// Prices for things that are scarce, such that each need by itself, paying them, would take no more than is there: by subgradient steps. For any
/// prices p the sum over needs of min (cost + p of what is taken) minus p times the stock is no more than the least cost (Lagrange).
/// </summary>
internal static class StockPrices
{
    private const int Rounds = 200;

    /// <summary>Each step is this share of the one before, or more.</summary>
    private const double Slower = 0.97;

    public static double[] Of(ChoiceProgram program)
    {
        var (prices, best) = (new double[program.Stock.Count], new double[program.Stock.Count]);
        var (most, step) = (double.NegativeInfinity, FirstStep(program));
        for (var round = 0; round < Rounds; round++, step *= Slower)
        {
            var (bound, taken) = Bound(program, prices);
            if (bound > most)
            {
                (most, best) = (bound, [.. prices]);
            }

            for (var t = 0; t < prices.Length; t++)
            {
                prices[t] = Math.Max(0, prices[t] + (step * (taken[t] - program.Stock[t])));
            }
        }

        return best;
    }

    private static double FirstStep(ChoiceProgram program) =>
        program.Needs.Select(n => n.Max(o => (double)o.Cost) - n.Min(o => o.Cost)).DefaultIfEmpty(0).Max() / 4;

    private static (double Bound, int[] Taken) Bound(ChoiceProgram program, double[] prices)
    {
        var (bound, taken) = (0.0, new int[prices.Length]);
        for (var t = 0; t < prices.Length; t++)
        {
            bound -= prices[t] * program.Stock[t];
        }

        foreach (var need in program.Needs)
        {
            var cheapest = need.MinBy(o => Priced(o, prices))!;
            bound += Priced(cheapest, prices);
            foreach (var thing in cheapest.Uses)
            {
                taken[thing]++;
            }
        }

        return (bound, taken);
    }

    public static double Priced(ChoiceOption option, double[] prices)
    {
        var cost = (double)option.Cost;
        foreach (var thing in option.Uses)
        {
            cost += prices[thing];
        }

        return cost;
    }
}
