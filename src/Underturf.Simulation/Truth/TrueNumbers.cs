using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Simulation;

/// <summary>
/// The numbers of a made-up property that its technician does not know: true lengths, coils, soil, supply and the bias of the meter. Each is
/// drawn once, by name, so that the order of asking does not matter.
/// </summary>
public sealed class TrueNumbers(PracticeBook book, ulong seed)
{
    private readonly SeededGenerator root = new(seed);

    public double SoilKelvins => book.Wire.SoilKelvins + (book.Wire.SoilSpreadCelsius * Draw("soil"));

    /// <summary>Ohms of the property's usual coil.</summary>
    public double UsualCoilOhms => book.Coil.Ohms * Math.Exp(book.Coil.LevelSpread * Math.Clamp(Draw("usual coil"), -2, 2));

    /// <summary>Relative error of a meter, the same in all its readings.</summary>
    public double MeterBias(string instrument) => 0.5 * book.Instruments.First(i => i.Name == instrument).Accuracy * Draw($"bias {instrument}");

    public double LengthMetres(Leg leg) => leg.LengthMetres * Math.Exp(leg.LogSpread * Draw($"length {leg.Id} {leg.To}"));

    public double CoilOhms(string coil, double? notedOhms) => notedOhms is { } noted
        ? noted * Math.Exp(book.Coil.Noted * Draw($"coil {coil}"))
        : UsualCoilOhms * Math.Exp(book.Coil.Differ * Draw($"coil {coil}"));

    public double PullInVolts(string coil) => book.Coil.PullInVolts + (book.Coil.PullInSpread * Draw($"pull-in {coil}"));

    public double BranchMetres(string branch) => book.Wire.BranchMetres * Math.Exp(book.Wire.BranchSpread * Draw($"branch {branch}"));

    public double LeakOhms(string station) => book.Wire.SoundLeakOhms * Math.Exp(book.Wire.SoundLeakSpread * Draw($"leak {station}"));

    /// <summary>A number between 0 and 1 that belongs to the name.</summary>
    public double Even(string name) => root.Fork(name).NextDouble();

    /// <summary>Numbers between 0 and 1, one after the other, that belong to the name.</summary>
    public Func<double> Stream(string name) => root.Fork(name).NextDouble;

    /// <summary>A standard normal number that belongs to the name.</summary>
    public double Draw(string name) => root.Fork(name).NextNormal();
}
