using Underturf.Networks.Wiring.FaultDistance;
using Underturf.Networks.Wiring.Instruments;
using Underturf.Numerics;
using Underturf.Quantities;

namespace Underturf.Tests.Networks;

/// <summary>An invented run that changes gauge half way, and runs drawn around it as its spreads allow.</summary>
internal static class SampledRuns
{
    internal static Run Run { get; } = new()
    {
        TemperatureSpreadKelvins = 3,
        CapacitanceSpreadShare = 0.04,
        Stretches =
        [
            Stretch("box 1 to box 2", 70, 18, 16, 288, 62e-12),
            Stretch("box 2 to box 3", 50, 14, 16, 286, 71e-12),
            Stretch("box 3 to valve", 90, 14, 18, 289, 71e-12),
        ],
    };

    /// <summary>A standard normal number, by its quantile.</summary>
    internal static double Draw(this SeededGenerator random) => Normal.Quantile(random.NextDouble());

    internal static MeasuredOhms Draw(this SeededGenerator random, MeasuredOhms around) => new(around.Ohms + (around.SpreadOhms * random.Draw()), 0);

    internal static MeasuredFarads Draw(this SeededGenerator random, MeasuredFarads around) =>
        new(around.Farads + (around.SpreadFarads * random.Draw()), 0);

    /// <summary>The same run with its lengths, temperature and capacitance as they might be.</summary>
    internal static Run Draw(this SeededGenerator random, Run around)
    {
        var warmer = around.TemperatureSpreadKelvins * random.Draw();
        var factor = Math.Exp(around.CapacitanceSpreadShare * random.Draw());
        return new Run
        {
            Stretches =
            [
                .. around.Stretches.Select(s => s with
                {
                    LengthMetres = s.LengthMetres * Math.Exp(s.LengthSpreadShare * random.Draw()),
                    LengthSpreadShare = 0,
                    TemperatureKelvins = s.TemperatureKelvins + warmer,
                    FaradsPerMetre = s.FaradsPerMetre * factor,
                }),
            ],
        };
    }

    private static Stretch Stretch(string name, double metres, int gauge, int back, double kelvins, double farads) => new()
    {
        Name = name,
        LengthMetres = metres,
        LengthSpreadShare = 0.02,
        Size = WireSize.FromAwg(gauge),
        ReturnSize = WireSize.FromAwg(back),
        TemperatureKelvins = kelvins,
        FaradsPerMetre = farads,
    };
}
