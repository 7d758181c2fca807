using Underturf.Networks.Hydraulics;
using Underturf.Networks.Hydraulics.Emptying;

namespace Underturf.Tests.Networks;

/// <summary>How much water runs to an opening and for how long. All values invented but the tank, which is exact.</summary>
public sealed class EmptyingTests
{
    private const double Foot = 0.3048;
    private static readonly Water water = new(288.15);
    private static readonly Friction plastic = Friction.HazenWilliams(150);

    [Fact]
    public void An_upright_pipe_empties_as_the_tank_of_its_size()
    {
        // Exact: radius 2 ft, 6 ft of water, a hole of 1 in radius, Cd = 1: 144 sqrt 6 s with g = 32 ft/s2.
        var (network, bottom, top) = Line((0, 0), (6 * Foot, 6 * Foot), diameterMetres: 4 * Foot);
        var stored = StoredWater.Above(network, bottom, [top]).Value;
        var empty = Opening.Hole(Foot / 6, 1, 1).Empty(stored);
        var exact = 144 * Math.Sqrt(6) * Math.Sqrt(32 * Foot / Water.GravityMetresPerSecondSquared);
        Assert.Equal(exact, empty.LeastSeconds, 1e-9 * exact);
        Assert.Equal(exact, empty.MostSeconds, 1e-9 * exact);
        Assert.Equal(Math.PI * 4 * 6 * Foot * Foot * Foot, empty.MostCubicMetres, 1e-9);
    }

    [Fact]
    public void Water_behind_a_crest_comes_only_if_it_is_siphoned()
    {
        // Opening at 0, a crest of 3 m, behind it down to 1 m and up to 5 m, where air comes in.
        var (network, opening, top) = Line((0, 0), (10, 3), (20, 1), (30, 5));
        var stored = StoredWater.Above(network, opening, [top, 1]).Value;
        var perMetre = HoleDischarge.AreaSquareMetres(0.05) * 10;
        Assert.Equal(perMetre * 3, stored.MostCubicMetres, 1e-9);
        Assert.Equal(perMetre * (1 + (2 / 4.0)), stored.LeastCubicMetres, 1e-9);
    }

    [Fact]
    public void Water_that_no_air_can_follow_may_stay_up()
    {
        var (network, opening, top) = Line((0, 0), (10, 4));
        Assert.Equal(0, StoredWater.Above(network, opening, []).Value.LeastCubicMetres);
        Assert.True(StoredWater.Above(network, opening, []).Value.MostCubicMetres > 0);
        Assert.Equal(StoredWater.Above(network, opening, [top]).Value.MostCubicMetres, StoredWater.Above(network, opening, [top]).Value.LeastCubicMetres, 1e-12);
    }

    [Fact]
    public void Lower_pipes_and_those_behind_a_shut_valve_keep_their_water()
    {
        var (network, opening, _) = Line((0, 0), (10, -2), (20, -3));
        Assert.Equal(0, StoredWater.Above(network, opening, []).Value.MostCubicMetres);
        var (up, bottom, top) = Line((0, 0), (10, 2), (20, 3));
        var whole = StoredWater.Above(up, bottom, [top]).Value.MostCubicMetres;
        var half = StoredWater.Above(up.WithClosed(1, true), bottom, [top]).Value.MostCubicMetres;
        Assert.Equal(whole / 2, half, 1e-9);
    }

    [Fact]
    public void A_supply_that_still_runs_to_the_opening_is_named()
    {
        var (network, opening, top) = Line((0, 0), (10, 2));
        network.Add(PipeElement.Isolation("street gate", network.AddReservoir("street", 50), top, 0.05, 0.2));
        Assert.Equal("supply 'street'", StoredWater.Above(network, opening, []).Problem!.Place);
        Assert.True(StoredWater.Above(network.WithClosed(network.Elements.Count - 1, true), opening, []).Succeeded);
    }

    [Fact]
    public void A_pump_takes_what_stands_higher_in_its_own_time()
    {
        var (network, opening, top) = Line((0, 0), (10, 2));
        var stored = StoredWater.Above(network, opening, [top]).Value;
        var pumped = Opening.Pump(1e-4, 2e-4).Empty(stored);
        Assert.Equal(stored.MostCubicMetres / 1e-4, pumped.MostSeconds, 1e-9);
        Assert.Equal(stored.LeastCubicMetres / 2e-4, pumped.LeastSeconds, 1e-9);
    }

    [Fact]
    public void Two_timed_levels_bound_the_time_by_the_pump_and_by_seeping()
    {
        // 0.40 to 0.30 m in 20 min, read to 5 mm: evenly 60 min, by its weight 129 min, seeping down to 5 mm 285 min.
        var until = TimedLevels.UntilDry(0.40, 0.30, 1200, 0.005, 0.2, 0.3).Value;
        Assert.InRange(until.LeastSeconds, 3000, 3600);
        var byWeight = Math.Sqrt(0.30) * 1200 / (Math.Sqrt(0.40) - Math.Sqrt(0.30));
        Assert.True(until.LeastSeconds < byWeight && byWeight < until.MostSeconds);
        Assert.Equal(1200 * Math.Log(0.305 / 0.005) / Math.Log(0.395 / 0.305), until.MostSeconds, 1e-6);
        Assert.Equal((0.2 * 0.295, 0.3 * 0.305), (until.LeastCubicMetres, until.MostCubicMetres));
    }

    [Fact]
    public void Levels_that_rise_or_hardly_differ_say_what_to_do()
    {
        Assert.Contains("rise", TimedLevels.UntilDry(0.3, 0.4, 600, 0.005, 0.2, 0.3).Problem!.Reason, StringComparison.Ordinal);
        Assert.Contains("no more than they can be read", TimedLevels.UntilDry(0.3, 0.295, 600, 0.005, 0.2, 0.3).Problem!.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Low_head_drainage_is_what_stands_higher_than_the_lowest_outlet_of_the_station()
    {
        var (network, bottom, _) = Line((0, 0), (10, 2), (20, 3));
        var valve = network.Add(PipeElement.Isolation("valve", network.AddReservoir("street", 50), bottom, 0.05, 0.2, isClosed: true));
        var outlets = new[] { 1, 2 }.Select(node => network.AddOutlet("outlet", node, Outlet.At(1e-4, 2e5, 0.5))).ToArray();
        var drainage = LowHeadDrainage.Of(network, bottom).Value;
        Assert.Equal(outlets[0], drainage.LowestOutlet);
        Assert.Equal(HoleDischarge.AreaSquareMetres(0.05) * 10, drainage.Water.LeastCubicMetres, 1e-9);
        Assert.Contains("no outlet", LowHeadDrainage.Of(network, network.Elements[valve].A).Problem!.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_slope_runs_out_of_its_lowest_outlet_in_the_time_of_the_hand_formula()
    {
        // Exact: A = a L / H for each metre of height, Q = k (rho g z)^x: t = A / k (rho g)^-x H^(1 - x) / (1 - x).
        const double Height = 3, K = 2e-7;
        foreach (var x in new[] { 0.5, 0.25, 0 })
        {
            var (network, low, high) = Line((0, 0), (20, Height));
            network.AddOutlet("low", low, new Outlet(K, x));
            network.AddOutlet("high", high, new Outlet(K, x));
            var drainage = LowHeadDrainage.Of(network, high).Value;
            var empty = drainage.Empty(water, 0.5);
            var area = HoleDischarge.AreaSquareMetres(0.05) * 20 / Height;
            var exact = area / K * Math.Pow(water.PascalsPerMetre, -x) * Math.Pow(Height, 1 - x) / (1 - x);
            Assert.Equal(Height, drainage.HeadMetres, 1e-9);
            Assert.Equal(exact, empty.LeastSeconds, 1e-3 * exact);
            Assert.Equal(exact / 0.5, empty.MostSeconds, 1e-3 * exact / 0.5);
            Assert.Equal(area * Height, empty.LeastCubicMetres, 1e-9);
        }
    }

    [Fact]
    public void Outlets_between_help_while_the_water_stands_over_them()
    {
        var (network, low, high) = Line((0, 0), (10, 1), (20, 3));
        int[] outlets = [.. new[] { low, 1, high }.Select(node => network.AddOutlet("outlet", node, new Outlet(2e-7, 0.5)))];
        var drainage = LowHeadDrainage.Of(network, high).Value;
        Assert.Equal(outlets, drainage.Outlets.Select(o => o.Number));
        Assert.Equal([0, 1, 3], drainage.Outlets.Select(o => o.AboveMetres));
        var empty = drainage.Empty(water, 1);
        Assert.True(empty.LeastSeconds < 0.95 * empty.MostSeconds);
    }

    [Fact]
    public void A_valve_that_shuts_within_a_wave_s_way_there_and_back_makes_the_whole_surge()
    {
        // Exact by Joukowsky: rho a v; and a hundred metres at 1,000 m/s are 0.2 s there and back.
        var whole = water.DensityKilogramsPerCubicMetre * 1000 * 1.5;
        Assert.Equal(whole, Surge.RisePascals(water, 1.5, 1000, 100, 0.05), 1e-6);
        Assert.Equal(whole, Surge.RisePascals(water, 1.5, 1000, 100, 0.2), 1e-6);
        Assert.Equal(whole / 10, Surge.RisePascals(water, 1.5, 1000, 100, 2), 1e-6);
    }

    [Fact]
    public void A_wave_is_slower_in_plastic_than_in_a_pipe_that_does_not_give()
    {
        // 1,400 to 1,500 m/s in a stiff pipe (from memory), 400 to 500 in PVC of SDR 21.
        Assert.InRange(Surge.WaveMetresPerSecond(water, 0.05, 0.01, 1e15), 1400, 1500);
        Assert.InRange(Surge.WaveMetresPerSecond(water, 0.0546, 0.00287, 2.8e9), 350, 500);
    }

    /// <summary>Pipes of 10 m one behind the other through points of (metres along, height); the first node is the opening.</summary>
    private static (PipeNetwork Network, int First, int Last) Line(params (double Along, double Height)[] points) => Line(points, 0.05);

    private static (PipeNetwork Network, int First, int Last) Line((double Along, double Height) from, (double Along, double Height) to, double diameterMetres) =>
        Line([from, to], diameterMetres);

    private static (PipeNetwork Network, int First, int Last) Line((double Along, double Height)[] points, double diameterMetres)
    {
        var network = new PipeNetwork(water);
        for (var k = 0; k < points.Length; k++)
        {
            var node = network.AddJunction($"point {k}", points[k].Height);
            if (k > 0)
            {
                network.Add(PipeElement.Pipe($"pipe {k}", node - 1, node, points[k].Along - points[k - 1].Along, diameterMetres, plastic));
            }
        }

        return (network, 0, points.Length - 1);
    }
}
