namespace Underturf.Reasoning.Location;

/// <summary>
/// Where the things of a group lie, jointly: a sum over the ways in which the notes can have come about, in each of which the things lie
/// independently of each other. For one thing it is exact; for several, ways of little weight are dropped.
/// </summary>
internal sealed class LocationBelief
{
    /// <summary>Ways that are followed.</summary>
    private const int MostWays = 16;

    private LocationBelief(IReadOnlyList<double[]> shares, IReadOnlyList<double> none) => (Shares, None) = (shares, none);

    /// <summary>For each thing its chance in each cell; with the chance that there is none they add up to one.</summary>
    public IReadOnlyList<double[]> Shares { get; }

    public IReadOnlyList<double> None { get; }

    /// <param name="priors">For each thing its chance in each cell beforehand, adding up to one.</param>
    /// <param name="none">For each thing the chance that there is none.</param>
    public static LocationBelief Of(IReadOnlyList<double[]> priors, IReadOnlyList<double> none, IReadOnlyList<Clue> clues)
    {
        if (priors.Count == 1)
        {
            return OfOne(priors[0], none[0], clues);
        }

        var ways = new List<Way> { Way.Begin(priors, none) };
        foreach (var clue in clues.OrderBy(c => c.Cases.Count))
        {
            var next = ways.SelectMany(w => clue.Cases.Select(w.Take)).OrderByDescending(w => Math.Abs(w.Weight)).ToList();
            ways = [.. next.Take(MostWays).Where(w => w.Weight != 0).Select(w => w.Scaled(1 / Math.Abs(next[0].Weight)))];
        }

        return ways.Count == 0 ? Of(priors, none, []) : Sum(ways, priors.Count);
    }

    /// <summary>The same on ground cut into larger squares.</summary>
    public LocationBelief On(CoarserGround ground) => new([.. Shares.Select(ground.Sums)], None);

    /// <summary>One thing: all ways are one layer, and its row is weighed in place.</summary>
    private static LocationBelief OfOne(double[] prior, double none, IReadOnlyList<Clue> clues)
    {
        var shares = new double[prior.Length];
        Numerics.RowMath.AddTimes(shares, 1 - none, prior);
        foreach (var clue in clues.OrderBy(c => c.Cases.Count))
        {
            var layer = clue.Cases is [{ Weight: 1 } only] ? only.Layers[0] : Layer.Sum([.. clue.Cases.Select(c => (c.Weight, c.Layers[0]))], shares.Length);
            if (layer is not null)
            {
                none = Weigh(shares, none, layer);
            }
        }

        for (var c = 0; c < shares.Length; c++)
        {
            shares[c] = Math.Max(0, shares[c]);
        }

        return new LocationBelief([shares], [none]);
    }

    /// <summary>Chance that there is none, afterwards; where a note is impossible both stay as they were.</summary>
    private static double Weigh(double[] shares, double none, Layer layer)
    {
        var sum = (none * layer.None) + Numerics.RowMath.Dot(shares, layer.Cells);
        for (var c = 0; c < shares.Length && sum > 0; c++)
        {
            shares[c] = shares[c] * layer.Cells[c] / sum;
        }

        return sum > 0 ? none * layer.None / sum : none;
    }

    private static LocationBelief Sum(List<Way> ways, int things)
    {
        var total = ways.Sum(w => w.Weight);
        var (shares, none) = (new double[things][], new double[things]);
        for (var t = 0; t < things; t++)
        {
            shares[t] = new double[ways[0].Shares[t].Length];
            foreach (var way in ways)
            {
                Numerics.RowMath.AddTimes(shares[t], way.Weight / total, way.Shares[t]);
                none[t] += way.Weight / total * way.None[t];
            }

            for (var c = 0; c < shares[t].Length; c++)
            {
                shares[t][c] = Math.Max(0, shares[t][c]);
            }
        }

        return new LocationBelief(shares, none);
    }

    /// <summary>One way in which all notes can have come about.</summary>
    private sealed record Way(double Weight, double[][] Shares, double[] None)
    {
        public static Way Begin(IReadOnlyList<double[]> priors, IReadOnlyList<double> none) =>
            new(1, [.. priors.Select((p, t) => p.Select(s => (1 - none[t]) * s).ToArray())], [.. none]);

        public Way Scaled(double factor) => this with { Weight = Weight * factor };

        public Way Take(ClueCase told)
        {
            var (weight, shares, none) = (Weight * told.Weight, Shares.ToArray(), None.ToArray());
            foreach (var (t, layer) in told.Layers.Index())
            {
                if (layer is not null && weight != 0)
                {
                    (shares[t], none[t], var sum) = Times(shares[t], none[t], layer);
                    weight *= sum;
                }
            }

            return new Way(weight, shares, none);
        }

        private static (double[] Shares, double None, double Sum) Times(double[] shares, double none, Layer layer)
        {
            var (next, sum) = (new double[shares.Length], none * layer.None);
            for (var c = 0; c < next.Length; c++)
            {
                sum += next[c] = shares[c] * layer.Cells[c];
            }

            for (var c = 0; c < next.Length && sum > 0; c++)
            {
                next[c] /= sum;
            }

            return (next, sum > 0 ? none * layer.None / sum : none, sum);
        }
    }
}
