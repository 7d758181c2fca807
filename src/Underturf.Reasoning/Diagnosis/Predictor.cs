using Underturf.Networks.Wiring;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Solves a bench and carries what is not known of its parts to the reading by the exact slopes of the solution (docs/models/wiring.md).</summary>
internal sealed class Predictor(PracticeBook book, Unknowns unknowns)
{
    public Prediction Predict(Bench bench, Variation? variation)
    {
        var (network, parts) = (variation?.Network() ?? bench.Network, variation?.Parts ?? bench.Parts);
        return bench.Setup.IsFed ? Fed(bench, network, parts, variation is not null).On(variation?.HalfWave) : Dead(bench, network, parts, variation is not null);
    }

    private Prediction Dead(Bench bench, WiringNetwork network, IReadOnlyList<Part> parts, bool touched)
    {
        var reading = network.Ohms(bench.Plus, bench.Minus).Value;
        return reading.IsOpen ? Prediction.Open(touched) : Spread(bench, reading.Ohms, parts, e => reading.Sensitivity(e), touched);
    }

    private Prediction Fed(Bench bench, WiringNetwork network, IReadOnlyList<Part> parts, bool touched)
    {
        var solution = network.SolveAc(bench.Setup.Supply.Hertz).Value;
        var reading = bench.Setup.Measures == Measure.StationAmps
            ? solution.AmperesReading(bench.Through)
            : solution.VoltsReading(bench.Plus, bench.Minus);
        return !reading.Succeeded || reading.Value.Magnitude < Nothing
            ? Prediction.Nothing(touched)
            : Spread(bench, reading.Value.Magnitude, parts, e => reading.Value.Sensitivity(e), touched);
    }

    /// <summary>Volts or amperes so small that they are rounding of the solution.</summary>
    private const double Nothing = 1e-9;

    private Prediction Spread(Bench bench, double mean, IReadOnlyList<Part> parts, Func<int, Outcome<double>> slopeOf, bool touched)
    {
        var (level, copper, own) = (0.0, 0.0, 0.0);
        var shared = new SortedDictionary<int, double>();
        void Share(int unknown, double slope) => shared[unknown] = shared.GetValueOrDefault(unknown) + slope;
        foreach (var part in parts)
        {
            var slope = slopeOf(part.Element);
            var change = slope.Succeeded ? slope.Value * part.Ohms : 0;
            level += part.Kind == PartKind.LevelCoil ? change : 0;
            copper += part.Kind == PartKind.Wire ? change : 0;
            if (part.Batch >= 0)
            {
                Share(part.Batch, change * book.Coil.BatchSpread);
            }

            if (part.Length >= 0)
            {
                Share(part.Length, change * part.LogSpread);
            }
            else
            {
                own += change * part.LogSpread * change * part.LogSpread;
            }
        }

        var supply = bench.Setup.Supply;
        shared[Unknowns.Soil] = copper * CopperWire.PerKelvinAt20C * book.Wire.SoilSpreadCelsius;
        shared[Unknowns.Supply] = bench.Setup.IsFed ? mean * supply.VoltsSpread / supply.Volts : 0;
        if (!bench.Setup.Inrush && book.InstrumentOf(bench.Setup.Measures) is { } instrument)
        {
            shared[unknowns.Bias(instrument)] = mean * instrument.Bias;
        }

        return new Prediction(mean, level, own, false, touched, [.. shared.Keys], [.. shared.Values]);
    }
}
