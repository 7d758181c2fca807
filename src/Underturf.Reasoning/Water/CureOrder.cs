namespace Underturf.Reasoning.Water;

/// <summary>
/// What it costs until the right cure is found, when cures are tried in the best order: by probability over cost (Heckerman, Breese and
/// Rommelse, CACM 38(3), 1995). What none of them cures costs something more at the end.
/// </summary>
/// <param name="Minutes">Of each cure.</param>
/// <param name="Uncured">Minutes that are lost where no cure was right.</param>
internal sealed record CureOrder(IReadOnlyList<double> Minutes, double Uncured)
{
    /// <param name="belief">Of each thing that its cure would end; what is missing to one is ended by none.</param>
    public double Loss(IReadOnlyList<double> belief)
    {
        var (open, loss) = (1.0, 0.0);
        foreach (var k in Enumerable.Range(0, belief.Count).OrderByDescending(k => belief[k] / Minutes[k]))
        {
            // One is tried as long as it is worth more than giving up.
            if (belief[k] * Uncured < Minutes[k] * open)
            {
                break;
            }

            loss += Minutes[k] * open;
            open -= belief[k];
        }

        return loss + (Uncured * open);
    }

    /// <summary>Minutes of loss that knowing the outcome of a test saves on average.</summary>
    /// <param name="chances">Of each outcome, given each thing; the last row for what no cure ends.</param>
    public double Worth(IReadOnlyList<double> belief, IReadOnlyList<double[]> chances)
    {
        var after = 0.0;
        for (var outcome = 0; outcome < chances[0].Length; outcome++)
        {
            double[] joint = [.. belief.Select((b, k) => b * chances[k][outcome])];
            var all = joint.Sum() + ((1 - belief.Sum()) * chances[^1][outcome]);
            if (all > 0)
            {
                after += all * Loss([.. joint.Select(j => j / all)]);
            }
        }

        return Loss(belief) - after;
    }

    /// <summary>What to try first.</summary>
    public int First(IReadOnlyList<double> belief) => Enumerable.Range(0, belief.Count).MaxBy(k => belief[k] / Minutes[k]);
}
