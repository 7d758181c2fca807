using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Circuits;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Translation;
using Underturf.Simulation;

namespace Underturf.Tests.Reasoning.Spreads;

/// <summary>Spreads of single readings, by which belief weighs, against 4000 draws of what they leave open. Properties made up.</summary>
public sealed class PredictionSpreadTests(ITestOutputHelper output)
{
    private const double Curvature = 0.03;

    /// <summary>Of the usual coil.</summary>
    private static readonly CoilLevel level = new(0, 0.05);

    /// <summary>Without the bias of instruments, which is no matter of the circuit.</summary>
    private static readonly PracticeBook book = PracticeBook.Default with { Instruments = [.. PracticeBook.Default.Instruments.Select(i => i with { Bias = 0 })] };

    [Theory]
    [InlineData(nameof(Measure.StationOhms), false)]
    [InlineData(nameof(Measure.BetweenStationsOhms), false)]
    [InlineData(nameof(Measure.CoilVolts), true)]
    [InlineData(nameof(Measure.TerminalVolts), false)]
    [InlineData(nameof(Measure.StationAmps), false)]
    public void A_prediction_spreads_as_its_draws_do(string measure, bool inrush)
    {
        var measures = Enum.Parse<Measure>(measure);
        var worst = (Mean: 0.0, Spread: 0.0);
        for (ulong seed = 11; seed < 17; seed++)
        {
            var (mean, spread) = Compare(measures, inrush, seed);
            worst = (Math.Max(worst.Mean, Math.Abs(mean)), Math.Max(worst.Spread, Math.Abs(spread)));
        }

        output.WriteLine($"{measure}: largest difference of a mean {worst.Mean:P2}, of a spread {worst.Spread:P2}");
    }

    private static (double Mean, double Spread) Compare(Measure measures, bool inrush, ulong seed)
    {
        var random = new SeededGenerator(seed);
        var history = PropertyHistory.Fold(WorldGenerator.Make(seed, book).Log.Standing);
        var known = book.Wire.LengthSpread;
        var paths = new PathFinder(history.Now, book).All()
            .Select(p => p with { Legs = [.. p.Legs.Select((l, i) => l with { LogSpread = i % 2 == 0 ? known.Told : known.Estimated })] })
            .Take(measures == Measure.BetweenStationsOhms ? 2 : 1).ToList();
        var supply = new Supplies(history, book).Of(history.Now, paths[0].Controller, 0);
        var unknowns = new Unknowns(book);
        var stated = new Predictor(book, unknowns).Predict(BenchLayout.Of(new BenchSetup(paths, measures, null, supply, inrush), book, unknowns), null);
        var sampled = new Sampled(measures.ToString());
        var draws = new Draws(random, book);
        for (var n = 0; n < Sampled.Count; n++)
        {
            var drawn = draws.Next(level);
            sampled.Add(Read(BenchLayout.Of(new BenchSetup([.. paths.Select(draws.Draw)], measures, null, draws.Draw(supply), inrush), drawn, unknowns)));
        }

        var outlook = Outlook.Prior(unknowns.Count, level.Log, level.LogSpread);
        var difference = sampled.Against(outlook.Mean(stated), Math.Sqrt(outlook.Variance(stated)));
        Assert.True(Math.Abs(difference.Mean) < Curvature + sampled.MeanChance && Math.Abs(difference.Spread) < Curvature + sampled.SpreadChance, $"seed {seed}: {difference}");
        return (difference.Mean, difference.Spread);
    }

    private static double Read(Bench bench)
    {
        if (!bench.Setup.IsFed)
        {
            return bench.Network.Ohms(bench.Plus, bench.Minus).Value.Ohms;
        }

        var solution = bench.Network.SolveAc(bench.Setup.Supply.Hertz).Value;
        Assert.InRange(solution.KirchhoffResidualAmperes, 0, 1e-9);
        return (bench.Setup.Measures == Measure.StationAmps ? solution.AmperesReading(bench.Through) : solution.VoltsReading(bench.Plus, bench.Minus)).Value.Magnitude;
    }
}
