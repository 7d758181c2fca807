using Underturf.Networks.Wiring;

namespace Underturf.References.Tests.RandomProperties;

/// <summary>
/// A transformer by its rating, now and then a sensor between it and the common terminal, and the commons that start there. Ratings and
/// regulation invented, in the range of small transformers.
/// </summary>
internal sealed class Supply
{
    private static readonly double[] ratings = [20, 30, 40, 50, 80];
    private readonly List<Trunk> trunks = [];

    internal Supply(WiringNetwork network, CableTree tree, Draws draws, int number)
    {
        (Hot, Return) = (network.Node($"hot {number}"), network.Node($"return {number}"));
        var ratedVoltAmperes = draws.Of(ratings);
        var transformer = new Transformer(24 * (1 + draws.Between(0.04, 0.2)), 24, ratedVoltAmperes);
        network.AddSource($"transformer {number}", Hot, Return, transformer.OpenVolts, transformer.InnerOhms);
        Common = draws.OneIn(3) ? AddSensor(network, draws, number) : Return;
        for (var trunk = draws.OneIn(3) ? 1 + draws.Below(3) : 0; trunk >= 0; trunk--)
        {
            var start = network.Node($"common {number} {trunk}");
            network.AddResistor($"common screw {number} {trunk}", Common, start, draws.OneIn(2) ? 0 : draws.Between(0.002, 0.02));
            trunks.Add(new Trunk(network, tree, $"common {number} {trunk}", start));
        }
    }

    internal int Hot { get; }

    internal int Return { get; }

    /// <summary>Where the field commons are screwed on: behind the sensor, if there is one.</summary>
    internal int Common { get; }

    internal IReadOnlyList<Trunk> Trunks => trunks;

    internal Traits Traits { get; private set; }

    private int AddSensor(WiringNetwork network, Draws draws, int number)
    {
        var (trait, ohms) = draws.Below(8) switch
        {
            0 => (Traits.SensorOpen, double.PositiveInfinity),
            < 4 => (Traits.SensorResistive, draws.Decades(0, 2.3)),
            _ => (Traits.SensorClosed, draws.SpliceOhms()),
        };
        Traits |= trait;
        var common = network.Node($"common terminal {number}");
        network.AddResistor($"sensor {number}", Return, common, ohms);
        return common;
    }
}
