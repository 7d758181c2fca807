using System.Numerics;
using System.Text;
using Underturf.Networks.Wiring.Instruments;
using Underturf.Numerics;
using Underturf.Simulation.SecondEngine;

namespace Underturf.References.Tests;

/// <summary>Volts that reach conductors by capacitance, against ngspice in its small-signal analysis. All values invented.</summary>
public sealed class CoupledVoltsAgainstNgspiceTests(ITestOutputHelper output)
{
    private const double Relative = 1e-6;

    [Theory]
    [InlineData(60, 10e6, 0, double.PositiveInfinity)]
    [InlineData(60, 10e6, 100e-12, double.PositiveInfinity)]
    [InlineData(50, 3e3, 0, double.PositiveInfinity)]
    [InlineData(60, 10e6, 50e-12, 40e3)]
    public void Phantom_volts_on_an_open_conductor_agree(double hertz, double meterOhms, double meterFarads, double leakOhms)
    {
        var wire = new PhantomVolts { LengthMetres = 120, LiveFaradsPerMetre = 45e-12, CommonFaradsPerMetre = 60e-12, LeakOhms = leakOhms };
        var meter = new Voltmeter(new Display([new DisplayRange { MostSi = 60, StepSi = 0.01 }]), meterOhms, meterFarads);
        var text = new StringBuilder()
            .Line("V1 live 0 dc 0 ac 26")
            .Line($"C1 live open {SpiceText.Number(120 * 45e-12)}")
            .Line($"C2 open 0 {SpiceText.Number((120 * 60e-12) + meterFarads)}")
            .Line($"R1 open 0 {SpiceText.Number(meterOhms)}")
            .Line($"R2 open 0 {SpiceText.Number(double.IsInfinity(leakOhms) ? 1e15 : leakOhms)}")
            .ToString();
        var reference = Ngspice.Run(text, $"ac lin 1 {hertz} {hertz}")["v(open)"].Magnitude;
        var ours = wire.Under(meter, 26, hertz);

        output.WriteLine($"{hertz} Hz, {meterOhms} ohm, {meterFarads} F, leak {leakOhms} ohm: {ours:0.000000} V, ngspice {reference:0.000000} V");
        Assert.Equal(reference, ours, Relative * reference);
    }

    [Fact]
    public void Every_volt_of_random_bundles_agrees()
    {
        var random = new SeededGenerator(61);
        var (compared, worst) = (0, 0.0);
        for (var n = 0; n < 30; n++)
        {
            var (bundle, drives, hertz) = Make(random);
            var state = BundleState.Solve(bundle, drives, hertz).Value;
            Assert.InRange(state.KirchhoffResidualAmperes, 0, 1e-12);
            var reference = Ngspice.Run(Netlist(bundle, drives), $"ac lin 1 {SpiceText.Number(hertz)} {SpiceText.Number(hertz)}");
            for (var i = 0; i < bundle.Conductors.Count; i++)
            {
                var (ours, theirs) = (state.Volts(i), reference[$"v(c{i})"]);
                var off = (new Complex(ours.Real, ours.Imaginary) - theirs).Magnitude;
                Assert.True(off <= Relative * (theirs.Magnitude + 1e-3), $"bundle {n}, conductor {i}: {ours} against {theirs}");
                worst = Math.Max(worst, off / (theirs.Magnitude + 1e-3));
                compared++;
            }
        }

        output.WriteLine($"ngspice, bundles: {compared} complex volts compared, worst relative difference {worst:0.0e0}");
        Assert.True(compared > 150);
    }

    private static (Bundle Bundle, BundleDrive[] Drives, double Hertz) Make(SeededGenerator random)
    {
        var count = 2 + random.NextInt(12);
        var bundle = new Bundle
        {
            LengthMetres = 20 + (300 * random.NextDouble()),
            PairFaradsPerMetre = 30e-12 * random.NextDouble(),
            EarthFaradsPerMetre = 20e-12 + (60e-12 * random.NextDouble()),
            CommonNumber = 0,
            Conductors = [.. Enumerable.Range(0, count).Select(i => new BundleConductor
            {
                Name = $"c{i}",
                EarthOhms = random.NextDouble() < 0.3 ? Math.Pow(10, 3 + (4 * random.NextDouble())) : double.PositiveInfinity,
                CoilOhms = i > 0 && random.NextDouble() < 0.6 ? 20 + (40 * random.NextDouble()) : double.PositiveInfinity,
                CoilHenries = 0.1 * random.NextDouble(),
            })],
        };
        var to = random.NextDouble() < 0.5 ? Bundle.Earth : 0;
        return (bundle, [new BundleDrive(1, to, 26, 1 + (500 * random.NextDouble()))], random.NextDouble() < 0.5 ? 60 : 500 + (1000 * random.NextDouble()));
    }

    private static string Netlist(Bundle bundle, BundleDrive[] drives)
    {
        var text = new StringBuilder();
        string Node(int conductor) => conductor == Bundle.Earth ? "0" : $"c{conductor}";
        for (var i = 0; i < bundle.Conductors.Count; i++)
        {
            var conductor = bundle.Conductors[i];
            text.Line($"Ce{i} c{i} 0 {SpiceText.Number(bundle.LengthMetres * bundle.EarthFaradsPerMetre)}");
            text.Line($"Re{i} c{i} 0 {SpiceText.Number(double.IsInfinity(conductor.EarthOhms) ? 1e15 : conductor.EarthOhms)}");
            for (var j = 0; j < i; j++)
            {
                text.Line($"Cp{i}x{j} c{i} c{j} {SpiceText.Number(bundle.LengthMetres * bundle.PairFaradsPerMetre)}");
            }

            if (!double.IsInfinity(conductor.CoilOhms))
            {
                text.Line($"Rk{i} c{i} k{i} {SpiceText.Number(conductor.CoilOhms)}").Line($"Lk{i} k{i} {Node(bundle.CommonNumber)} {SpiceText.Number(conductor.CoilHenries)}");
            }
        }

        foreach (var drive in drives)
        {
            text.Line($"Vd s {Node(drive.To)} dc 0 ac {SpiceText.Number(drive.Volts)}").Line($"Rd s {Node(drive.From)} {SpiceText.Number(drive.SourceOhms)}");
        }

        return text.ToString();
    }
}
