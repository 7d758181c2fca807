namespace Underturf.Tests.Reasoning.BruteForce;

/// <summary>What every station reads with nothing of its own wrong, beside given faults that stations share.</summary>
internal sealed class Ground(Row[][] rows, double levelSpread, double[] about)
{
    /// <summary>What all stations but these say.</summary>
    public DenseUnknowns Without(params ReadOnlySpan<int> some)
    {
        var others = new DenseUnknowns(levelSpread, about);
        for (var s = 0; s < rows.Length; s++)
        {
            foreach (var row in some.Contains(s) ? [] : rows[s])
            {
                others.Absorb(row);
            }
        }

        return others;
    }

    /// <summary>log of the chance of all.</summary>
    public double LogChance()
    {
        var all = new DenseUnknowns(levelSpread, about);
        return rows.SelectMany(r => r).Sum(all.Absorb);
    }

    /// <summary>
    /// The values of all unknowns that most stations say together, and those stations that do not fit in: the worst is left out until all others lie within
    /// four spreads.
    /// </summary>
    public static (double[] About, int[] Odd) Agree(Row[][] rows, int unknowns, double levelSpread)
    {
        var (about, odd) = (new double[unknowns], new List<int>());
        while (true)
        {
            var ground = new Ground(rows, levelSpread, about);
            var before = about[0];
            about = ground.Without([.. odd]).Mean;
            var (station, away) = Enumerable.Range(0, rows.Length).Except(odd).Select(s => (s, ground.Away(s, odd))).MaxBy(s => s.Item2);
            if (away > 4)
            {
                odd.Add(station);
            }
            else if (Math.Abs(about[0] - before) < 1e-9)
            {
                return (about, [.. odd]);
            }
        }
    }

    /// <summary>How many spreads a station's oddest reading lies off, by what the others say.</summary>
    private double Away(int station, List<int> odd)
    {
        var others = Without([.. odd, station]);
        return rows[station].Select(r => Foreseen.Of(r, others)).Select(f => Math.Abs(f.Row.Shown - f.Mean) / Math.Sqrt(f.Variance)).DefaultIfEmpty(0).Max();
    }
}
