using Underturf.Networks.Wiring;

namespace Underturf.Tests.Networks;

/// <summary>A transformer by its plate. Values invented.</summary>
public sealed class TransformerRatingTests
{
    [Fact]
    public void At_rated_load_a_transformer_gives_its_rated_volts_and_volt_amperes()
    {
        // 40 VA at 24 V is 14.4 ohm; 15 % of regulation is 27.6 V open (exact).
        var rating = TransformerRating.WithRegulation(24, 40, 0.15);
        var network = new WiringNetwork();
        var (hot, common) = (network.Node("hot"), network.Node("common"));
        rating.AddTo(network, "transformer", hot, common);
        var load = network.AddResistor("load", hot, common, 14.4);
        var solution = network.SolveAc(60).Value;

        Assert.InRange(solution.KirchhoffResidualAmperes, 0, 1e-12);
        Assert.Equal(27.6, rating.OpenVolts, 1e-12);
        Assert.Equal(24, solution.VoltageBetween(hot, common).Value.Magnitude, 1e-12);
        Assert.Equal(40, 24 * solution.Current(load).Value.Magnitude, 1e-11);
    }

    [Fact]
    public void A_plate_with_less_volts_open_than_loaded_is_refused_by_name()
    {
        var network = new WiringNetwork();
        new TransformerRating(24, 40, 23).AddTo(network, "odd transformer", network.Node("hot"), network.Node("common"));

        Assert.Equal("source 'odd transformer'", network.SolveAc(60).Problem!.Place);
    }

    [Fact]
    public void Each_station_more_that_is_on_takes_volts_from_all()
    {
        var rating = TransformerRating.WithRegulation(24, 20, 0.15);
        var before = rating.OpenVolts;
        for (var on = 1; on <= 5; on++)
        {
            var network = new WiringNetwork();
            var (hot, common) = (network.Node("hot"), network.Node("common"));
            rating.AddTo(network, "transformer", hot, common);
            for (var coil = 0; coil < on; coil++)
            {
                network.AddCoil($"coil {coil}", hot, common, 30, 0.15);
            }

            var solution = network.SolveAc(50).Value;
            Assert.InRange(solution.KirchhoffResidualAmperes, 0, 1e-12);
            var volts = solution.VoltageBetween(hot, common).Value.Magnitude;
            Assert.InRange(volts, 0, before - 0.1);
            before = volts;
        }
    }
}
