using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Reasoning.Circuits;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Translation;

namespace Underturf.Tests.Reasoning.Spreads;

/// <summary>
/// Draws everything that a prediction leaves open, as the practice book says how far it may be off, and writes it into paths, supply and
/// book. Circuits are then laid anew from those, so that what is shared is shared by itself and not by the formula under test.
/// </summary>
internal sealed class Draws(SeededGenerator random, PracticeBook book)
{
    private readonly Dictionary<LegKey, double> lengths = [];
    private readonly Dictionary<string, double> batches = new(StringComparer.Ordinal);
    private double level;

    /// <summary>A book with the soil as warm as it may be; the unknowns that all share begin anew with it.</summary>
    public PracticeBook Next(CoilLevel around)
    {
        lengths.Clear();
        batches.Clear();
        level = around.Log + (around.LogSpread * random.DrawNormal());
        return book with { Wire = book.Wire with { SoilCelsius = book.Wire.SoilCelsius + (book.Wire.SoilSpreadCelsius * random.DrawNormal()) } };
    }

    public Supply Draw(Supply supply) => supply with { Volts = supply.Volts + (supply.VoltsSpread * random.DrawNormal()) };

    /// <summary>The coil's ohms are noted, so that they no longer follow the usual coil; a leg has one length whoever runs in it.</summary>
    public StationPath Draw(StationPath path) => path with
    {
        Legs = [.. path.Legs.Select(l => l with { LengthMetres = l.LengthMetres * Length(l) })],
        Valves = [.. path.Valves.Select(v => v with { NotedOhms = Ohms(v) })],
    };

    public double Around(double median, double logSpread) => median * Math.Exp(logSpread * random.DrawNormal());

    private double Ohms(ValveEnd end)
    {
        var model = CoilModel.Of(end.NotedOhms, book);
        return Around(model.OnLevel ? model.Ohms * Math.Exp(level) * Batch(end.Place) : model.Ohms, model.LogSpread);
    }

    private double Batch(string place)
    {
        if (!batches.TryGetValue(place, out var factor))
        {
            batches[place] = factor = Around(1, book.Coil.BatchSpread);
        }

        return factor;
    }

    private double Length(Leg leg)
    {
        var key = new LegKey(leg.Id, leg.To);
        if (!lengths.TryGetValue(key, out var factor))
        {
            lengths[key] = factor = Around(1, leg.LogSpread);
        }

        return factor;
    }
}

/// <summary>Mean and standard deviation of what was drawn, and how they compare with what is stated.</summary>
internal sealed class Sampled(string what)
{
    public const int Count = 4000;

    private double sum, squares;
    private int count;

    public void Add(double value)
    {
        count++;
        sum += value;
        squares += value * value;
    }

    public double Mean => sum / count;

    public double Spread => Math.Sqrt((squares - (sum * sum / count)) / (count - 1));

    /// <summary>Differences beyond what 4000 draws leave open by chance: of the mean as a share of it, of the spread as a share of it.</summary>
    public (string What, double Mean, double Spread) Against(double mean, double spread) => (what, (Mean / mean) - 1, (Spread / spread) - 1);

    /// <summary>Four standard errors of a mean, as a share of it.</summary>
    public double MeanChance => 4 * Spread / Math.Sqrt(count) / Math.Abs(Mean);

    /// <summary>Four standard errors of a standard deviation, as a share of it.</summary>
    public double SpreadChance => 4 / Math.Sqrt(2.0 * count);
}

internal static class NormalDraw
{
    /// <summary>A standard normal number, by its quantile.</summary>
    public static double DrawNormal(this SeededGenerator random) => Normal.Quantile(random.NextDouble());
}
