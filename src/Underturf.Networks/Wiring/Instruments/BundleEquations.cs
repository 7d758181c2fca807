using System.Numerics;
using Underturf.Numerics;

namespace Underturf.Networks.Wiring.Instruments;

/// <summary>Admittances and currents of a bundle in flat arrays, row by row.</summary>
internal sealed class BundleEquations
{
    private readonly int count;
    private readonly Complex[] siemens;
    private readonly Complex[] amperes;

    internal BundleEquations(Bundle bundle, IReadOnlyList<BundleDrive> drives, double hertz)
    {
        count = bundle.Conductors.Count;
        siemens = new Complex[count * count];
        amperes = new Complex[count];
        for (var i = 0; i < count; i++)
        {
            AddConductor(bundle, i, 2 * Math.PI * hertz);
        }

        foreach (var drive in drives)
        {
            Add(drive.From, drive.To, 1 / drive.SourceOhms);
            Send(drive.From, drive.Volts / drive.SourceOhms);
            Send(drive.To, -drive.Volts / drive.SourceOhms);
        }
    }

    /// <returns>Null where the equations are singular.</returns>
    internal Complex[]? Solve()
    {
        var factor = new DenseFactor<Complex>(count);
        for (var i = 0; i < siemens.Length; i++)
        {
            factor[i / count, i % count] = siemens[i];
        }

        if (factor.Factor() == 0)
        {
            return null;
        }

        var volts = (Complex[])amperes.Clone();
        factor.Solve(volts);
        return volts;
    }

    /// <summary>Largest imbalance of currents, amperes.</summary>
    internal double Residual(Complex[] volts)
    {
        var worst = 0.0;
        for (var i = 0; i < count; i++)
        {
            var sum = -amperes[i];
            for (var j = 0; j < count; j++)
            {
                sum += siemens[(i * count) + j] * volts[j];
            }

            worst = Math.Max(worst, sum.Magnitude);
        }

        return worst;
    }

    private void AddConductor(Bundle bundle, int number, double radiansPerSecond)
    {
        var conductor = bundle.Conductors[number];
        var soil = new Complex(0, radiansPerSecond * bundle.LengthMetres * bundle.EarthFaradsPerMetre);
        var pair = new Complex(0, radiansPerSecond * bundle.LengthMetres * bundle.PairFaradsPerMetre);
        Add(number, Bundle.Earth, soil + (1 / conductor.EarthOhms));
        if (!double.IsPositiveInfinity(conductor.CoilOhms))
        {
            Add(number, bundle.CommonNumber, 1 / new Complex(conductor.CoilOhms, radiansPerSecond * conductor.CoilHenries));
        }

        for (var earlier = 0; earlier < number; earlier++)
        {
            Add(number, earlier, pair);
        }
    }

    private void Add(int a, int b, Complex each)
    {
        foreach (var (row, column) in new[] { (a, b), (b, a) })
        {
            if (row != Bundle.Earth)
            {
                siemens[(row * count) + row] += each;
                if (column != Bundle.Earth)
                {
                    siemens[(row * count) + column] -= each;
                }
            }
        }
    }

    private void Send(int conductor, double current)
    {
        if (conductor != Bundle.Earth)
        {
            amperes[conductor] += current;
        }
    }
}
