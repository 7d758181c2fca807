using Underturf.FieldLog;
using Underturf.Networks.Wiring.HalfWave;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Simulation;
using Underturf.Simulation.Engines;
using Underturf.Simulation.SecondEngine;

namespace Underturf.References.Tests;

/// <summary>Made-up properties read by ngspice in place of our own solver.</summary>
public sealed class SecondEngineTests(ITestOutputHelper output)
{
    private static readonly NgspiceEngine Engine = NgspiceEngine.Start().Value;

    /// <summary>Asked for is 0.1 %; the floor is 10 microohm, microvolt or microampere.</summary>
    private const double Relative = 1e-3, Floor = 1e-5;

    [Fact]
    public void Both_engines_agree_on_the_same_true_network()
    {
        var judge = new Judge();
        for (var seed = 1UL; seed <= 12; seed++)
        {
            WorldGenerator.Make(seed, PracticeBook.Default, WorldShape.Small with { SecondEngineShare = 1, Faults = 6 }, judge);
        }

        output.WriteLine($"ngspice, made-up properties: {judge.Compared} readings, worst {judge.Worst:P4}; {judge.Open} over range in both.");
        Assert.True(judge.Compared > 200 && judge.Open > 5 && judge.Worst < Relative);
    }

    [Fact]
    public void Both_engines_agree_where_half_wave_devices_are()
    {
        var judge = new Judge();
        var book = PracticeBook.Default;
        var devices = book with { Faults = [.. book.Faults.Where(f => f.DcSeriesOhms is not null).Select(f => f with { MoreCoils = 0.3 })] };
        for (var seed = 1UL; seed <= 12; seed++)
        {
            WorldGenerator.Make(seed, devices, WorldShape.Small with { SecondEngineShare = 1, Faults = 6 }, judge);
        }

        output.WriteLine($"ngspice, half-wave devices in made-up properties: {judge.WithDiodes} readings, worst {judge.WorstWithDiodes:P3}; {judge.Open} over range in both.");
        Assert.True(judge.WithDiodes > 60 && judge.WorstWithDiodes < Relative);
    }

    [Fact]
    public void Its_share_of_the_readings_is_listed_in_the_truth()
    {
        var shape = WorldShape.Small with { SecondEngineShare = 0.3 };
        var world = WorldGenerator.Make(7, PracticeBook.Default, shape, Engine).Value;
        var solved = world.Log.Entries.Count(e => e.Fact is ReadingFact { How: not ("earth ohms" or "idle volts") });
        Assert.InRange(world.BySecondEngine.Count, solved * 0.1, solved * 0.5);
        Assert.All(world.BySecondEngine, id => Assert.IsType<ReadingFact>(world.Log.Entries.Single(e => e.Id == id).Fact));
        var truth = System.Text.Encoding.UTF8.GetString(world.TruthBytes(7));
        Assert.All(world.BySecondEngine, id => Assert.Contains($"\"{id}\"", truth, StringComparison.Ordinal));
    }

    [Fact]
    public void What_the_engine_cannot_do_ends_the_making_with_its_words()
    {
        var made = WorldGenerator.Make(7, PracticeBook.Default, WorldShape.Small with { SecondEngineShare = 1 }, new Broken());
        Assert.Equal("invented", made.Problem?.Reason);
    }

    private sealed class Broken : ICircuitEngine
    {
        private static readonly Problem Words = new("engine", "invented", "Nothing to do");

        public Outcome<double> Ohms(DiodeNetwork circuit, int red, int black, TestDrive? drive) => Words;

        public Outcome<double> Volts(DiodeNetwork circuit, int a, int b, FedMeter meter) => Words;

        public Outcome<double> Amperes(DiodeNetwork circuit, int element, FedMeter meter) => Words;
    }

    /// <summary>Asks both and hands on ngspice's answer.</summary>
    private sealed class Judge : ICircuitEngine
    {
        private readonly OwnEngine own = OwnEngine.Instance;

        public int Compared { get; private set; }

        public int WithDiodes { get; private set; }

        public int Open { get; private set; }

        public double Worst { get; private set; }

        public double WorstWithDiodes { get; private set; }

        public Outcome<double> Ohms(DiodeNetwork circuit, int red, int black, TestDrive? drive) =>
            Compare(circuit, own.Ohms(circuit, red, black, drive), Engine.Ohms(circuit, red, black, drive));

        public Outcome<double> Volts(DiodeNetwork circuit, int a, int b, FedMeter meter) =>
            Compare(circuit, own.Volts(circuit, a, b, meter), Engine.Volts(circuit, a, b, meter));

        public Outcome<double> Amperes(DiodeNetwork circuit, int element, FedMeter meter) =>
            Compare(circuit, own.Amperes(circuit, element, meter), Engine.Amperes(circuit, element, meter));

        private Outcome<double> Compare(DiodeNetwork circuit, Outcome<double> ours, Outcome<double> theirs)
        {
            Assert.Equal(double.IsInfinity(ours.Value), double.IsInfinity(theirs.Value));
            if (double.IsInfinity(ours.Value))
            {
                Open++;
                return theirs;
            }

            // Where diodes are, ties of 1e12 ohm at every node lie beside what leaks above ten megohms; the display is over range there.
            var apart = circuit.Diodes.Count > 0 && ours.Value > 1e7 && theirs.Value > 1e7 ? 0 : Math.Abs(ours.Value - theirs.Value) / (Math.Abs(theirs.Value) + Floor);
            if (circuit.Diodes.Count > 0)
            {
                (WithDiodes, WorstWithDiodes) = (WithDiodes + 1, Math.Max(WorstWithDiodes, apart));
            }
            else
            {
                (Compared, Worst) = (Compared + 1, Math.Max(Worst, apart));
            }

            return theirs;
        }
    }
}
