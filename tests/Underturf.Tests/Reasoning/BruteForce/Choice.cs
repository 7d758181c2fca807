namespace Underturf.Tests.Reasoning.BruteForce;

/// <summary>Beside given faults that stations share: every choice of up to so many faults that stations have for themselves.</summary>
internal sealed class Choice
{
    private readonly List<StationState>[] states;
    private readonly Ground ground;
    private readonly double logSound;
    private readonly double scale;
    private readonly double[][] sums;

    /// <param name="logSound">log of the chance of all notes with nothing of any station's own wrong.</param>
    /// <param name="scale">log of a weight that is told as one.</param>
    public Choice(List<StationState>[] states, Ground ground, double logSound, int budget, double scale)
    {
        (this.states, this.ground, this.logSound, this.scale, Best) = (states, ground, logSound, scale, logSound);
        sums = [.. states.Select(s => new double[s.Count])];
        BySize = new double[budget + 1];
        BySize[0] = Math.Exp(logSound - scale);
        Count = 1;
        for (var a = 0; a < states.Length && budget > 0; a++)
        {
            Over(budget, a);
            for (var b = a + 1; b < states.Length && budget > 1; b++)
            {
                Over(budget, a, b);
                for (var c = b + 1; c < states.Length && budget > 2; c++)
                {
                    Over(budget, a, b, c);
                }
            }
        }
    }

    public long Count { get; private set; }

    /// <summary>log of the weight of the likeliest.</summary>
    public double Best { get; private set; }

    /// <summary>Weight of sets by how many faults of single stations they hold.</summary>
    public double[] BySize { get; }

    /// <summary>For each station the weight of what may be wrong with it.</summary>
    public IEnumerable<(int Station, string Key, double Weight)> Sums()
    {
        for (var s = 0; s < states.Length; s++)
        {
            yield return (s, states[s][0].Key, BySize.Sum() - sums[s].Sum());
            for (var i = 1; i < sums[s].Length; i++)
            {
                yield return (s, states[s][i].Key, sums[s][i]);
            }
        }
    }

    /// <summary>Sets with a fault in each of these stations and in no other.</summary>
    private void Over(int budget, params int[] some)
    {
        var others = ground.Without(some);
        var most = budget - some.Length + 1;
        var foreseen = some.Select(s => states[s].TakeWhile(state => state.Count <= most).Select(state => state.Rows.Select(r => Foreseen.Of(r, others)).ToArray()).ToArray()).ToArray();
        var chain = new Chain(others);
        var log = logSound - some.Select((s, i) => chain.Push(foreseen[i][0], s) + states[s][0].LogFactor).Sum();
        chain.Depth = 0;
        Descend(some, foreseen, chain, new int[some.Length], 0, budget, log);
    }

    private double Descend(int[] some, Foreseen[][][] foreseen, Chain chain, int[] chosen, int at, int budget, double log)
    {
        if (at == some.Length)
        {
            var weight = Math.Exp(log - scale);
            Best = Math.Max(Best, log);
            BySize[BySize.Length - 1 - budget] += weight;
            Count++;
            return weight;
        }

        var (s, depth, all) = (some[at], chain.Depth, 0.0);
        for (var i = 1; i < foreseen[at].Length && states[s][i].Count <= budget - (some.Length - 1 - at); i++)
        {
            var state = states[s][i];
            chosen[at] = i;
            var sum = Descend(some, foreseen, chain, chosen, at + 1, budget - state.Count, log + state.LogFactor + chain.Push(foreseen[at][i], s));
            chain.Depth = depth;
            sums[s][i] += sum;
            all += sum;
        }

        return all;
    }
}
