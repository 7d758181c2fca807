using Underturf.Networks.Wiring;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// Solves a bench and carries the spreads of its parts to the reading by the exact slopes of the solution:
/// variance = sum over groups of (sum of d(reading)/d(log ohms) * spread)^2.
/// </summary>
internal sealed class Predictor(PracticeBook book)
{
    public Prediction Predict(Bench bench, Variation? variation)
    {
        return bench.Setup.IsFed
            ? Fed(bench, variation?.Network() ?? bench.Network, variation?.Parts ?? bench.Parts, variation is not null)
            : PredictDead(bench, variation).Prediction;
    }

    /// <summary>The reading of an unfed bench, kept with its solution so that ohms in series can be added without solving again.</summary>
    public DeadReading PredictDead(Bench bench, Variation? variation)
    {
        var network = variation?.Network() ?? bench.Network;
        var reading = network.Ohms(bench.Plus, bench.Minus).Value;
        var touched = variation is not null;
        var prediction = reading.IsOpen
            ? new Prediction(double.PositiveInfinity, 0, 0, true, touched)
            : Spread(reading.Ohms, variation?.Parts ?? bench.Parts, e => reading.Sensitivity(e), 0, touched);
        return new DeadReading(prediction, reading);
    }

    private Prediction Fed(Bench bench, WiringNetwork network, IReadOnlyList<Part> parts, bool touched)
    {
        var solution = network.SolveAc(bench.Setup.Supply.Hertz).Value;
        var reading = bench.Setup.Measures == Measure.StationAmps
            ? solution.AmperesReading(bench.Through)
            : solution.VoltsReading(bench.Plus, bench.Minus);
        if (!reading.Succeeded || reading.Value.Magnitude < Nothing)
        {
            return new Prediction(0, 0, 0, false, touched);
        }

        var shown = reading.Value;
        var supply = shown.Magnitude * bench.Setup.Supply.VoltsSpread / bench.Setup.Supply.Volts;
        return Spread(shown.Magnitude, parts, e => shown.Sensitivity(e), supply * supply, touched);
    }

    /// <summary>Volts or amperes so small that they are rounding of the solution.</summary>
    private const double Nothing = 1e-9;

    private Prediction Spread(double mean, IReadOnlyList<Part> parts, Func<int, Outcome<double>> slopeOf, double variance, bool touched)
    {
        var (level, copper) = (0.0, 0.0);
        Span<double> groups = stackalloc double[MostGroups];
        foreach (var part in parts)
        {
            var slope = slopeOf(part.Element);
            var change = slope.Succeeded ? slope.Value * part.Ohms : 0;
            level += part.Kind == PartKind.LevelCoil ? change : 0;
            copper += part.Kind == PartKind.Wire ? change : 0;
            if (part.Group is >= 0 and < MostGroups)
            {
                groups[part.Group] += change * part.LogSpread;
            }
            else
            {
                variance += change * part.LogSpread * change * part.LogSpread;
            }
        }

        foreach (var sum in groups)
        {
            variance += sum * sum;
        }

        var soil = copper * CopperWire.PerKelvinAt20C * book.Wire.SoilSpreadCelsius;
        return new Prediction(mean, level, variance + (soil * soil), false, touched);
    }

    /// <summary>Legs in one bench beyond this vary alone, which only a property of absurd depth would notice.</summary>
    private const int MostGroups = 128;
}
