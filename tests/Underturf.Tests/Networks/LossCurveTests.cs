using Underturf.Networks.Hydraulics;

namespace Underturf.Tests.Networks;

/// <summary>Curves made of one known point. All values invented.</summary>
public sealed class LossCurveTests
{
    private static readonly LossCurve meter = LossCurve.Through(1e-3, 8, 0);
    private static readonly LossCurve device = LossCurve.Through(1e-3, 8, 5);

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.5)]
    [InlineData(1)]
    public void It_grows_with_the_square_of_the_flow_over_its_spring(double share)
    {
        Assert.InRange(meter.LossMetres(share * 1e-3) - (8 * share * share), 0, 0.0801);
        Assert.InRange(device.LossMetres(share * 1e-3) - (5 + (3 * share * share)), 0, 0.0301);
    }

    [Fact]
    public void Nothing_is_lost_where_nothing_runs_and_the_spring_as_soon_as_something_does()
    {
        Assert.Equal(0, device.LossMetres(0));
        Assert.Equal(5, device.LossMetres(1e-9), 1e-3);
    }

    [Fact]
    public void A_network_loses_what_the_curve_says()
    {
        var network = new PipeNetwork(new Water(288.15));
        var at = network.AddSupply("street", 0, new SupplyCurve(40, 0));
        var behind = network.AddJunction("behind", 0, withdrawnCubicMetresPerSecond: 1e-3);
        network.Add(PipeElement.Backflow("device", at, behind, device));
        Assert.Equal(32, network.Solve().Value.PressurePascals(behind)!.Value / network.Water.PascalsPerMetre, 1e-4);
    }
}
