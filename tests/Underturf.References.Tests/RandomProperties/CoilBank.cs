using Underturf.Networks.Wiring;

namespace Underturf.References.Tests.RandomProperties;

/// <summary>
/// The coils of a property: one kind with some spread, plunger out or in, now and then with shorted turns (ohms by the share left, henries by
/// its square), two in series, several side by side. Values invented, in the range of practice.
/// </summary>
internal sealed class CoilBank(WiringNetwork network, Draws draws)
{
    private readonly List<ValveCoil> coils = [];
    private readonly double ohms = draws.Between(22, 55);
    private readonly double henries = draws.Between(0.04, 0.12);

    internal IReadOnlyList<ValveCoil> All => coils;

    internal Traits Traits { get; private set; }

    /// <summary>Valves between a lead in a box and the common there.</summary>
    /// <param name="allowed">Coils that are left to place, one or more.</param>
    /// <returns>How many were placed.</returns>
    internal int AddValves(string name, int lead, int common, int allowed)
    {
        if (allowed >= 2 && draws.OneIn(12))
        {
            Traits |= Traits.CoilsInSeries;
            var between = network.Node($"{name} between coils");
            AddCoil($"{name} first of two", lead, between);
            AddCoil($"{name} second of two", between, common);
            return 2;
        }

        var count = draws.OneIn(5) ? Math.Min(allowed, 2 + draws.Below(3)) : 1;
        Traits |= count > 1 ? Traits.CoilsInParallel : Traits.None;
        for (var coil = 0; coil < count; coil++)
        {
            var end = network.Node($"{name} coil lead {coil}");
            network.AddResistor($"{name} coil splice {coil}", lead, end, draws.SpliceOhms());
            AddCoil($"{name} coil {coil}", end, common);
        }

        return count;
    }

    internal void AddCoil(string name, int a, int b, double timesOhms = 1)
    {
        var left = 1.0;
        if (draws.OneIn(25))
        {
            Traits |= Traits.ShortedTurns;
            left = draws.Between(0.15, 0.8);
        }

        var inrush = henries * timesOhms * left * left * draws.Between(0.95, 1.05);
        var element = network.AddCoil(name, a, b, ohms * timesOhms * left * draws.Between(0.96, 1.04), inrush);
        coils.Add(new ValveCoil(element, inrush, inrush * draws.Between(1.5, 2.3), draws.Between(15, 19), draws.Between(7, 12)));
    }
}
