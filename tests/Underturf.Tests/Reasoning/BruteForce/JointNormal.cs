namespace Underturf.Tests.Reasoning.BruteForce;

/// <summary>The chance of all readings of a property by their one covariance matrix.</summary>
internal static class JointNormal
{
    /// <param name="rows">Of each station.</param>
    public static double LogChance(Row[][] rows, double levelSpread, double[] about)
    {
        var prior = new DenseUnknowns(levelSpread, about);
        var all = rows.SelectMany((some, s) => some.Select(r => (Row: r, Station: s))).ToList();
        var (count, log) = (all.Count, 0.0);
        var factor = new double[count, count];
        var score = new double[count];
        for (var i = 0; i < count; i++)
        {
            var away = all[i].Row.Shown - prior.MeanOf(all[i].Row);
            for (var j = 0; j <= i; j++)
            {
                var sum = prior.Along(all[i].Row, prior.Look(all[j].Row))
                    + (all[i].Station == all[j].Station ? all[i].Row.LocalWith(all[j].Row) : 0)
                    + (i == j ? prior.Noise(all[i].Row) : 0);
                for (var k = 0; k < j; k++)
                {
                    sum -= factor[i, k] * factor[j, k];
                }

                factor[i, j] = i == j ? Math.Sqrt(sum) : sum / factor[j, j];
                away -= i == j ? 0 : factor[i, j] * score[j];
            }

            score[i] = away / factor[i, i];
            log += Math.Log(all[i].Row.Step / factor[i, i]) - (0.5 * ((score[i] * score[i]) + Math.Log(2 * Math.PI)));
        }

        return log;
    }
}
