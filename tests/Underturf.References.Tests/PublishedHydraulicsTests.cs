using Underturf.Networks.Hydraulics;
using Underturf.Quantities;

namespace Underturf.References.Tests;

/// <summary>Values of pipes from outside; each names its source.</summary>
public sealed class PublishedHydraulicsTests
{
    private const double Foot = 0.3048;
    private const double Inch = 0.0254;
    private const double CubicFoot = Foot * Foot * Foot;

    [Fact]
    public void Hazen_Williams_has_the_same_answer_in_feet_and_in_metres()
    {
        // 4.727 L C^-1.852 d^-4.871 Q^1.852 in cfs and ft, 10.667 in SI (seen); the arithmetic is exact.
        var feet = 4.727 * 1000 * Math.Pow(130, -1.852) * Math.Pow(0.5, -4.871) * Math.Pow(1.5, 1.852);
        var metres = 10.667 * 1000 * Foot * Math.Pow(130, -1.852) * Math.Pow(0.5 * Foot, -4.871) * Math.Pow(1.5 * CubicFoot, 1.852);
        var ours = HazenWilliams.HeadLossMetres(1000 * Foot, 0.5 * Foot, 130, 1.5 * CubicFoot);
        Assert.Equal(feet * Foot, ours, 1e-9 * ours);
        Assert.Equal(metres, ours, 1e-4 * ours);
    }

    [Fact]
    public void Maurer_loses_5_72_feet_in_two_miles_of_20_inches()
    {
        // Maurer, hydraulics vignette, 2025 (seen): 4 cfs, 20 in, 10560 ft, ks .0005 ft, 60 F: Re 248625, f .0173, hf 5.72 ft. The viscosity is the
        // one that its Re says (ours at 60 F is 2 % less), and its g 32.2 ft/s2, by which its loss is 5.7206 ft.
        var viscosity = 4 * 4 * CubicFoot / (Math.PI * 20 * Inch * 248_625);
        var re = DarcyWeisbach.ReynoldsNumber(20 * Inch, 4 * CubicFoot, viscosity);
        Assert.Equal(.0173, FrictionFactor.ColebrookFactor(re, .0005 * 12 / 20), 0.00005);
        var loss = DarcyWeisbach.HeadLossMetres(10_560 * Foot, 20 * Inch, .0005 * Foot, 4 * CubicFoot, viscosity) / Foot;
        Assert.Equal(5.72, loss * Water.GravityMetresPerSecondSquared / (32.2 * Foot), 0.005);
        Assert.Equal(viscosity, new Water(Units.From(60, "F")).KinematicViscositySquareMetresPerSecond, 0.02 * viscosity);
    }

    [Fact]
    public void Maurer_needs_1_85_feet_for_37_5_cubic_feet_a_second()
    {
        // The same (seen): 37.5 cfs, hf 215 ft, L 8000 ft, ks .0008 ft, 68 F: D 1.85 ft, f .0164.
        var viscosity = new Water(Units.From(68, "F")).KinematicViscositySquareMetresPerSecond;
        var diameter = DarcyWeisbach.InsideDiameterMetres(215 * Foot, 8000 * Foot, .0008 * Foot, 37.5 * CubicFoot, viscosity);
        Assert.Equal(1.85, diameter / Foot, 0.005);
        Assert.Equal(.0164, FrictionFactor.ColebrookFactor(DarcyWeisbach.ReynoldsNumber(diameter, 37.5 * CubicFoot, viscosity), .0008 * Foot / diameter), 0.00005);
    }

    [Fact]
    public void Friction_factors_are_those_of_an_open_library()
    {
        // Open library "fluids" (seen), Re 1e5, relative roughness 1e-4. It writes the 5.74 of Swamee and Jain as 6.97^0.9, a millionth less.
        Assert.Equal(.01851386607747, FrictionFactor.ColebrookFactor(1e5, 1e-4), 1e-13);
        Assert.Equal(.0184524244, FrictionFactor.SwameeJainFactor(1e5, 1e-4), 2e-6 * .0184524244);
        Assert.Equal(.0182650530, FrictionFactor.HaalandFactor(1e5, 1e-4), 5e-11);
    }

    [Fact]
    public void Crane_gets_137_gallons_through_two_sizes_of_pipe()
    {
        // Crane TP-410, 7.19 (seen quoted): 11.5 ft of head, 10 ft of 3 in and 20 ft of 2 in Schedule 40 with entrance .78, mitre bend 60 ft,
        // gate valve 8 ft/d and exit 1 by its friction factors at full turbulence .017 and .019 (those losses from memory): 137 gpm.
        var (three, two) = (PipeSize.InsideDiameterMetres(PipeSeries.Schedule40, "3").Value, PipeSize.InsideDiameterMetres(PipeSeries.Schedule40, "2").Value);
        var network = new PipeNetwork(new Water(Units.From(60, "F")));
        var (tank, joint, end) = (network.AddReservoir("tank", 11.5 * Foot), network.AddJunction("contraction", 0), network.AddReservoir("open end", 0));
        var friction = Friction.DarcyWeisbach(0.00015 * Foot);
        network.Add(PipeElement.Pipe("3 in", tank, joint, 10 * Foot, three, friction, minorLossFactor: 0.5 + (60 * .017)));
        var narrowing = 0.5 * (1 - (two * two / (three * three)));
        var pipe = network.Add(PipeElement.Pipe("2 in", joint, end, 20 * Foot, two, friction, minorLossFactor: (8 * .019) + narrowing + 1));
        Assert.Equal(137, Units.In(network.Solve().Value.FlowCubicMetresPerSecond(pipe), "gpm"), 0.03 * 137);
    }

    [Theory]
    [InlineData(2, .639)]
    [InlineData(3, .534)]
    [InlineData(4, .485)]
    [InlineData(5, .457)]
    [InlineData(10, .402)]
    [InlineData(20, .376)]
    public void Christiansen_s_factor_is_the_exact_sum(int outlets, double factor) =>
        Assert.Equal(factor, MultipleOutlets.ChristiansenFactor(outlets, 1.852), 0.0005);

    [Fact]
    public void A_tank_empties_in_352_73_seconds()
    {
        // Exact: radius 2 ft, 6 ft of water, a hole of 1 in radius, g = 32, no loss: 144 sqrt 6.
        var seconds = HoleDischarge.EmptyingSeconds(Math.PI * 4, Math.PI / 144, 6, 1, gravityMetresPerSecondSquared: 32);
        Assert.Equal(144 * Math.Sqrt(6), seconds, 1e-9);
        Assert.Equal(352.73, seconds, 0.005);
    }

    [Theory]
    [InlineData(1 / 32.0, 6_000)]
    [InlineData(1 / 16.0, 25_000)]
    [InlineData(1 / 8.0, 100_000)]
    [InlineData(1 / 4.0, 400_000)]
    public void A_hole_loses_what_the_municipal_table_says_in_a_month(double inches, double gallons)
    {
        // The table at 60 psi (seen quoted), rounded to its first figure; a coefficient of about .6 gives it. gpm = 29.84 Cd d^2 sqrt(psi).
        var water = new Water(Units.From(60, "F"));
        var flow = Outlet.Hole(water, inches * Inch, 0.6).FlowCubicMetresPerSecond(Units.From(60, "psi"));
        var gpm = Units.In(flow, "gpm");
        Assert.Equal(29.84 * 0.6 * inches * inches * Math.Sqrt(60), gpm, 0.002 * gpm);
        Assert.Equal(gallons, gpm * 60 * 24 * 30, 0.08 * gallons);
        Assert.Equal(flow, HoleDischarge.FlowCubicMetresPerSecond(inches * Inch, Units.From(60, "psi") / water.PascalsPerMetre, 0.6), 1e-9 * flow);
    }

    [Theory]
    [InlineData(PipeSeries.Schedule40, new[] { .622, .824, 1.049, 1.380, 1.610, 2.067, 2.469, 3.068, 4.026 })]
    [InlineData(PipeSeries.Sdr21, new[] { double.NaN, .930, 1.189, 1.502, 1.720, 2.149, 2.601, 3.166, 4.072 })]
    [InlineData(PipeSeries.Sdr26, new[] { double.NaN, double.NaN, 1.195, 1.532, 1.754, 2.193, 2.655, 3.230, 4.154 })]
    public void Inside_diameters_are_those_of_the_standards(PipeSeries series, double[] inches)
    {
        // ASTM D1785 and D2241: outside less two walls at their least (seen quoted).
        string[] sizes = ["1/2", "3/4", "1", "1 1/4", "1 1/2", "2", "2 1/2", "3", "4"];
        for (var k = 0; k < sizes.Length; k++)
        {
            var inside = PipeSize.InsideDiameterMetres(series, sizes[k]);
            Assert.Equal(!double.IsNaN(inches[k]), inside.Succeeded);
            Assert.Equal(inches[k], inside.Succeeded ? inside.Value / Inch : double.NaN, 1e-12);
        }
    }

    [Fact]
    public void Water_at_20_C_has_the_density_and_viscosity_of_the_tables()
    {
        // 998.20 kg/m3 and 1.0016 mPa s (from memory).
        var water = new Water(293.15);
        Assert.Equal(998.20, water.DensityKilogramsPerCubicMetre, 0.01);
        Assert.Equal(1.0016e-3, water.ViscosityPascalSeconds, 1e-7);
    }
}
