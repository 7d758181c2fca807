namespace Underturf.Networks.Wiring.HalfWave;

/// <summary>Everything the last period needs to be told again: volts of merged nodes, currents of coils and of diodes, step by step.</summary>
internal sealed class PeriodRecord
{
    private readonly InstantFactor linear;
    private readonly double[] peakVolts;
    private readonly double[] sines;
    private readonly double[][] volts;
    private readonly double[][] known;
    private readonly int[] coils;
    private readonly int[] diodes;

    internal PeriodRecord(int steps, InstantFactor linear, int[] coils, Diode[] diodes, double[] peakVolts)
    {
        this.linear = linear;
        this.coils = coils;
        this.peakVolts = peakVolts;
        this.diodes = [.. diodes.Select(d => d.Element)];
        sines = new double[steps];
        for (var n = 0; n < steps; n++)
        {
            sines[n] = Math.Sin(2 * Math.PI * n / steps);
        }

        volts = Rows(linear.NodeCount, steps);
        known = new double[peakVolts.Length][];
        foreach (var e in this.coils.Concat(this.diodes))
        {
            known[e] = new double[steps];
        }
    }

    internal int Steps => sines.Length;

    /// <summary>The sine of the sources at a step; sample 0 is the instant at which they rise through zero.</summary>
    internal double Phase(int step) => sines[step % sines.Length];

    internal void Keep(int step, double[] nodes, double[] coilAmperes, double[] diodeAmperes)
    {
        var n = step % sines.Length;
        for (var k = 0; k < nodes.Length; k++)
        {
            volts[k][n] = nodes[k];
        }

        for (var c = 0; c < coils.Length; c++)
        {
            known[coils[c]][n] = coilAmperes[c];
        }

        for (var d = 0; d < diodes.Length; d++)
        {
            known[diodes[d]][n] = diodeAmperes[d];
        }
    }

    /// <summary>Volts of a merged node against the reference of its part.</summary>
    internal double Volts(int merged, int sample) => volts[merged][sample];

    /// <summary>Amperes through an element by its own equation; zero for joints and opens.</summary>
    internal double Amperes(int element, int sample) => known[element] is { } kept
        ? kept[sample]
        : linear.Siemens[element] * (volts[linear.From[element]][sample] - volts[linear.To[element]][sample] - (sines[sample] * peakVolts[element]));

    /// <summary>Largest change of a coil's current since the same step of the period before.</summary>
    internal double Difference(int step, double[] coilAmperes)
    {
        var (n, most) = (step % sines.Length, 0.0);
        for (var c = 0; c < coils.Length; c++)
        {
            most = Math.Max(most, Math.Abs(coilAmperes[c] - known[coils[c]][n]));
        }

        return most;
    }

    /// <summary>Largest imbalance of currents at a merged node at any step.</summary>
    internal double Imbalance()
    {
        var most = 0.0;
        var left = new double[volts.Length];
        for (var n = 0; n < sines.Length; n++)
        {
            Array.Clear(left);
            for (var e = 0; e < peakVolts.Length; e++)
            {
                var amperes = Amperes(e, n);
                left[linear.From[e]] -= amperes;
                left[linear.To[e]] += amperes;
            }

            foreach (var amperes in left)
            {
                most = Math.Max(most, Math.Abs(amperes));
            }
        }

        return most;
    }

    private static double[][] Rows(int count, int length)
    {
        var rows = new double[count][];
        for (var k = 0; k < count; k++)
        {
            rows[k] = new double[length];
        }

        return rows;
    }
}
