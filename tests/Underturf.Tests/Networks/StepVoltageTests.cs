using Underturf.Networks.Wiring.FaultDistance;
using Underturf.Networks.Wiring.Instruments;
using Underturf.Numerics;

namespace Underturf.Tests.Networks;

/// <summary>Step voltage over a buried leak. Soil, current, depth and place are invented.</summary>
public sealed class StepVoltageTests(ITestOutputHelper output)
{
    private const double SoilOhmMetres = 60;
    private const double Amperes = 0.05;
    private const double FaultMetres = 41.3;
    private const double DepthMetres = 0.45;
    private const double PinsMetres = 1;
    private const double NoiseVolts = 0.02;

    [Fact]
    public void The_volts_reverse_over_the_leak_and_are_those_of_Coulomb()
    {
        // Exact: rho I / (2 pi) (1 / r1 - 1 / r2) with a 3-4-5 triangle at one pin and the leak under the other.
        Assert.Equal(100 * 2 / (2 * Math.PI) * ((1 / 3.0) - (1 / 5.0)), StepVoltage.Volts(100, 2, 2, 4, 3), 1e-12);
        Assert.Equal(0, StepVoltage.Volts(SoilOhmMetres, Amperes, 0, PinsMetres, DepthMetres), 1e-15);
        Assert.Equal(-At(0.3), At(-0.3), 1e-15);
        Assert.True(At(0.3) > 0);
    }

    [Theory]
    [InlineData(0.01, 0.5)]
    [InlineData(1, 0.45)]
    [InlineData(3, 0.6)]
    public void The_volts_peak_where_it_is_said(double pins, double depth)
    {
        var peak = StepVoltage.PeakFromFaultMetres(pins, depth);
        double Volts(double from) => StepVoltage.Volts(SoilOhmMetres, Amperes, from, pins, depth);

        Assert.True(Volts(peak) >= Volts(peak - 0.001) && Volts(peak) >= Volts(peak + 0.001));
        if (pins < 0.1)
        {
            Assert.Equal(depth / Math.Sqrt(2), peak, 1e-4);
        }
    }

    [Fact]
    public void Readings_without_noise_give_back_place_depth_and_strength()
    {
        var found = Survey(_ => 0).Locate().Value;

        Assert.Equal(FaultMetres, found.Place.Metres, 1e-6);
        Assert.Equal(SoilOhmMetres * Amperes / (2 * Math.PI), found.StrengthVoltMetres, 0.02);
        Assert.Equal(DepthMetres, found.DistanceMetres, 0.02);
    }

    [Fact]
    public void Where_the_tape_begins_moves_the_place_with_it()
    {
        var sharp = Survey(_ => 0).Locate().Value.Place;
        var found = (Survey(_ => 0) with { StartSpreadMetres = 0.3 }).Locate().Value.Place;

        Assert.Equal(double.Hypot(0.3, sharp.SpreadMetres), found.SpreadMetres, 1e-12);
        Assert.Equal("start of the tape", found.Sources[0].Name);
    }

    [Fact]
    public void The_linearised_spread_of_the_place_is_that_of_its_draws()
    {
        const int Draws = 4000;
        var random = new SeededGenerator(52);
        var (misses, stated, misfit) = (0.0, 0.0, 0.0);
        for (var k = 0; k < Draws; k++)
        {
            var found = Survey(_ => NoiseVolts * random.Draw(), Math.Exp(0.2 * random.Draw())).Locate().Value;
            misses += Math.Pow(found.Place.Metres - FaultMetres, 2);
            stated += found.Place.SpreadMetres * found.Place.SpreadMetres;
            misfit += found.MisfitRatio * found.MisfitRatio;
        }

        output.WriteLine($"step voltage: linearised spread {Math.Sqrt(stated / Draws):0.0000} m, of {Draws} draws {Math.Sqrt(misses / Draws):0.0000} m, chi squared a degree {misfit / Draws:0.000}");
        Assert.InRange(Math.Sqrt(stated / misses), 0.96, 1.04);
        Assert.InRange(misfit / Draws, 0.95, 1.05);
    }

    [Fact]
    public void A_survey_that_never_reverses_or_shows_nothing_is_refused()
    {
        var shortSurvey = Survey(_ => 0);
        shortSurvey = shortSurvey with { Readings = [.. shortSurvey.Readings.Where(r => r.MiddleMetres < FaultMetres - 1)] };

        Assert.Contains("no reversal", shortSurvey.Locate().Problem!.Reason, StringComparison.Ordinal);
        Assert.Contains("3 or more", (shortSurvey with { Readings = [] }).Locate().Problem!.Remedy, StringComparison.Ordinal);
        Assert.Contains("pin spacing", (shortSurvey with { PinSpacingMetres = 0 }).Locate().Problem!.Reason, StringComparison.Ordinal);
        Assert.Contains("do not stand out", Silent(new SeededGenerator(53)).Locate().Problem!.Reason, StringComparison.Ordinal);
        Assert.Contains("do not stand out", Silent(null).Locate().Problem!.Reason, StringComparison.Ordinal);
    }

    private static double At(double from) => StepVoltage.Volts(SoilOhmMetres, Amperes, from, PinsMetres, DepthMetres);

    private static StepSurvey Silent(SeededGenerator? random)
    {
        var survey = Survey(_ => 0);
        return survey with { Readings = [.. survey.Readings.Select(r => r with { Volts = new MeasuredVolts(NoiseVolts * (random?.Draw() ?? 0), NoiseVolts) })] };
    }

    private static StepSurvey Survey(Func<double, double> noise, double depthFactor = 1) => new()
    {
        PinSpacingMetres = PinsMetres,
        DistanceMetres = DepthMetres * depthFactor,
        DistanceSpreadShare = 0.2,
        Readings =
        [
            .. Enumerable.Range(0, 13).Select(k => 38 + (0.5 * k))
                .Select(s => new StepReading(s, new MeasuredVolts(At(s - FaultMetres) + noise(s), NoiseVolts))),
        ],
    };
}
