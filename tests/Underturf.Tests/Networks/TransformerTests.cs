using Underturf.Networks.Wiring;
using Underturf.Numerics;

namespace Underturf.Tests.Networks;

/// <summary>Open volts, rated load and inner ohms say the same thing. Values invented; the closed forms are exact.</summary>
public sealed class TransformerTests
{
    [Fact]
    public void A_transformer_of_40_VA_that_falls_from_26_5_to_24_V_has_one_and_a_half_ohm()
    {
        var transformer = new Transformer(26.5, 24, 40);
        Assert.Equal(1.5, transformer.InnerOhms);
        Assert.Equal(2.5 / 26.5, transformer.RegulationShare, 1e-15);
        Assert.Equal(1.5, Transformer.Of(26.5, 2.5 / 26.5, 40).InnerOhms, 1e-12);
    }

    [Fact]
    public void Twice_the_rating_at_the_same_regulation_is_half_the_ohms() =>
        Assert.Equal(Transformer.Of(28, 0.1, 50).InnerOhms / 2, Transformer.Of(28, 0.1, 100).InnerOhms, 1e-12);

    [Fact]
    public void At_rated_load_a_network_shows_the_rated_volts()
    {
        var random = new SeededGenerator(811);
        for (var n = 0; n < 50; n++)
        {
            var transformer = Transformer.Of(20 + (10 * random.NextDouble()), 0.3 * random.NextDouble(), 10 + (190 * random.NextDouble()));
            var (volts, amperes) = Loaded(transformer, transformer.RatedVolts / transformer.RatedAmperes, 0);
            Assert.Equal(transformer.RatedVolts, volts, 1e-9);
            Assert.Equal(transformer.RatedVoltAmperes, volts * amperes, 1e-7);
        }
    }

    [Fact]
    public void Two_readings_give_back_the_inner_ohms_whatever_the_load()
    {
        var random = new SeededGenerator(812);
        for (var n = 0; n < 50; n++)
        {
            var transformer = Transformer.Of(24 + (5 * random.NextDouble()), 0.02 + (0.2 * random.NextDouble()), 40);
            var (ohms, reactance) = (5 + (60 * random.NextDouble()), 120 * random.NextDouble());
            var (volts, amperes) = Loaded(transformer, ohms, reactance / (2 * Math.PI * 60));
            var found = Transformer.InnerOhmsOf(transformer.OpenVolts, volts, amperes, ohms / Math.Sqrt((ohms * ohms) + (reactance * reactance)));
            Assert.Equal(transformer.InnerOhms, found.Value, 1e-8);
        }
    }

    [Theory]
    [InlineData(24, 26, 1, 1, "more volts loaded than idle")]
    [InlineData(26, 24, 0, 1, "cannot be")]
    [InlineData(26, 24, 1, 1.2, "cannot be")]
    [InlineData(double.NaN, 24, 1, 1, "cannot be")]
    public void Readings_that_cannot_both_be_right_are_told(double idle, double loaded, double amperes, double powerFactor, string reason) =>
        Assert.Contains(reason, Transformer.InnerOhmsOf(idle, loaded, amperes, powerFactor).Problem!.Reason, StringComparison.Ordinal);

    private static (double Volts, double Amperes) Loaded(Transformer transformer, double ohms, double henries)
    {
        var network = new WiringNetwork();
        var (hot, common) = (network.Node("hot"), network.Node("common"));
        network.AddSource("supply", hot, common, transformer.OpenVolts, transformer.InnerOhms);
        var load = network.AddCoil("load", hot, common, ohms, henries);
        var solution = network.SolveAc(60).Value;
        Assert.InRange(solution.KirchhoffResidualAmperes, 0, 1e-12);
        return (solution.VoltageBetween(hot, common).Value.Magnitude, solution.Current(load).Value.Magnitude);
    }
}
