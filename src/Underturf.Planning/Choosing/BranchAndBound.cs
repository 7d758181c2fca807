namespace Underturf.Planning.Choosing;

/// <summary>
/// Depth first over the needs, those with most to lose first, cut where what is left cannot cost less than the best found. Exact within its number of
/// nodes; beyond that it tells the bound that holds all the same. Runs anywhere: no native code.
/// </summary>
public sealed class BranchAndBound(int mostNodes = 400_000) : IChoiceSolver
{
    public ChoiceResult Solve(ChoiceProgram program)
    {
        program.Check();
        var search = new Search(program, StockPrices.Of(program), mostNodes);
        return search.Run();
    }

    private sealed class Search
    {
        /// <summary>Prices are numbers with rounding; costs are whole.</summary>
        private const double Rounding = 1e-6;

        private readonly ChoiceProgram program;
        private readonly int[] order;
        private readonly int[][] ranked;
        private readonly double[] rest;
        private readonly double[] prices;
        private readonly int[] left;
        private readonly int[] chosen;
        private readonly int mostNodes;
        private int[] best = [];
        private long bestCost = long.MaxValue;
        private int nodes;

        public Search(ChoiceProgram program, double[] prices, int mostNodes)
        {
            (this.program, this.prices, this.mostNodes) = (program, prices, mostNodes);
            left = [.. program.Stock];
            chosen = new int[program.Needs.Count];
            ranked = [.. program.Needs.Select(n => Enumerable.Range(0, n.Count).OrderBy(j => StockPrices.Priced(n[j], prices)).ThenBy(j => j).ToArray())];
            order = [.. Enumerable.Range(0, program.Needs.Count).OrderByDescending(Regret).ThenBy(i => i)];
            rest = new double[order.Length + 1];
            for (var at = order.Length - 1; at >= 0; at--)
            {
                rest[at] = rest[at + 1] + StockPrices.Priced(program.Needs[order[at]][ranked[order[at]][0]], prices);
            }
        }

        public ChoiceResult Run()
        {
            var root = Whole(rest[0] - Enumerable.Range(0, prices.Length).Sum(t => prices[t] * program.Stock[t]));
            Visit(0, 0);
            return new ChoiceResult(best, bestCost, nodes > mostNodes ? Math.Min(root, bestCost) : bestCost);
        }

        /// <summary>Past its number of nodes each need takes the first option that is there, so that there is an answer.</summary>
        private void Visit(int at, long cost)
        {
            nodes++;
            if (at == order.Length)
            {
                if (cost < bestCost)
                {
                    (bestCost, best) = (cost, [.. chosen]);
                }

                return;
            }

            if (cost + Whole(rest[at] - Worth()) >= bestCost)
            {
                return;
            }

            foreach (var j in ranked[order[at]])
            {
                var option = program.Needs[order[at]][j];
                if (option.Uses.Count == 0 || IsThere(option))
                {
                    Take(option, -1);
                    chosen[order[at]] = j;
                    Visit(at + 1, cost + option.Cost);
                    Take(option, 1);
                    if (nodes > mostNodes && bestCost < long.MaxValue)
                    {
                        return;
                    }
                }
            }
        }

        private bool IsThere(ChoiceOption option)
        {
            foreach (var thing in option.Uses)
            {
                if (left[thing] < option.Uses.Count(u => u == thing))
                {
                    return false;
                }
            }

            return true;
        }

        private void Take(ChoiceOption option, int step)
        {
            foreach (var thing in option.Uses)
            {
                left[thing] += step;
            }
        }

        private double Worth()
        {
            var worth = 0.0;
            for (var t = 0; t < left.Length; t++)
            {
                worth += prices[t] * left[t];
            }

            return worth;
        }

        private double Regret(int need) => ranked[need].Length < 2 ? double.MaxValue
            : StockPrices.Priced(program.Needs[need][ranked[need][1]], prices) - StockPrices.Priced(program.Needs[need][ranked[need][0]], prices);

        private static long Whole(double bound) => (long)Math.Ceiling(bound - Rounding - (Math.Abs(bound) * 1e-12));
    }
}
