using Underturf.Networks.Wiring;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Circuits;

/// <summary>
/// How far a reading may be off, by the exact slopes of the solution: for each unknown the change of the reading when it is off by one
/// standard deviation; the changes of different unknowns add as squares. Unknowns are the supply's volts, the usual coil, the soil's
/// temperature, each length (shared by all conductors in it), the coils of each box and each coil.
/// </summary>
internal sealed class CircuitSpread(IReadOnlyList<Part> parts, Supply supply, CoilLevel level, PracticeBook book)
{
    private const int SupplyVolts = 0, UsualCoil = 1, Soil = 2, First = 3;

    private readonly int lengths = parts.Select(p => p.Length).DefaultIfEmpty(-1).Max() + 1;
    private readonly int batches = parts.Select(p => p.Batch).DefaultIfEmpty(-1).Max() + 1;

    public double Of(AcReading reading) => Length(Effects(reading));

    /// <summary>Of what an ohmmeter reads.</summary>
    public double Of(OhmsReading reading) => Length(Effects(0, reading.Sensitivity));

    /// <summary>Of the product of two readings, volts and amperes.</summary>
    public double OfProduct(AcReading a, AcReading b) =>
        Length(Effects(a).Zip(Effects(b), (inA, inB) => (inA * b.Magnitude) + (inB * a.Magnitude)));

    /// <summary>One source, so that all volts and amperes go with its volts.</summary>
    private double[] Effects(AcReading reading) => Effects(reading.Magnitude * supply.VoltsSpread / supply.Volts, reading.Sensitivity);

    private double[] Effects(double bySupply, Func<int, Outcome<double>> slopeOf)
    {
        var effects = new double[First + lengths + batches + parts.Count];
        effects[SupplyVolts] = bySupply;
        for (var i = 0; i < parts.Count; i++)
        {
            var part = parts[i];
            var slope = slopeOf(part.Element);
            var change = slope.Succeeded ? slope.Value * part.Ohms : 0;
            effects[part.Length >= 0 ? First + part.Length : First + lengths + batches + i] += change * part.LogSpread;
            if (part.Batch >= 0)
            {
                effects[First + lengths + part.Batch] += change * book.Coil.BatchSpread;
            }

            effects[UsualCoil] += part.Kind == PartKind.LevelCoil ? change * level.LogSpread : 0;
            effects[Soil] += part.Kind == PartKind.Wire ? change * SoilSpreadShare : 0;
        }

        return effects;
    }

    /// <summary>Share by which copper's ohms are off when the soil is warmer by one standard deviation.</summary>
    private double SoilSpreadShare => book.Wire.SoilSpreadCelsius * CopperWire.PerKelvinAt20C
        / (1 + (CopperWire.PerKelvinAt20C * (book.Wire.SoilKelvins - CopperWire.BaseKelvins)));

    private static double Length(IEnumerable<double> effects) => Math.Sqrt(effects.Sum(e => e * e));
}
