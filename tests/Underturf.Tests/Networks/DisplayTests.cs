using Underturf.Networks.Wiring.Instruments;
using Underturf.Numerics;

namespace Underturf.Tests.Networks;

/// <summary>Figures that a display can show. Ranges, errors and values are invented.</summary>
public sealed class DisplayTests
{
    private static readonly Display display = new(
    [
        new DisplayRange { MostSi = 19.99, StepSi = 0.01, GainSpreadShare = 0.01, OffsetSpreadSi = 0.02 },
        new DisplayRange { MostSi = 199.9, StepSi = 0.1, GainSpreadShare = 0.01, OffsetSpreadSi = 0.2 },
    ]);

    [Theory]
    [InlineData(3.14159, 3.14, false)]
    [InlineData(-3.14159, -3.14, false)]
    [InlineData(19.994, 19.99, false)]
    [InlineData(19.996, 20, false)]
    [InlineData(123.46, 123.5, false)]
    [InlineData(199.96, 199.9, true)]
    [InlineData(-500, -199.9, true)]
    [InlineData(double.PositiveInfinity, 199.9, true)]
    public void The_finest_range_that_holds_a_value_shows_it(double value, double figure, bool over)
    {
        var shown = display.Show(value);

        Assert.Equal(figure, shown.Si, 1e-9);
        Assert.Equal(over, shown.IsOverRange);
    }

    [Fact]
    public void A_meter_that_is_off_shows_its_gain_and_its_offset() =>
        Assert.Equal(10.35, display.Show(10, new MeterError(0.03, 0.05)).Si, 1e-9);

    [Theory]
    [InlineData(0, 0)]
    [InlineData(12, 0.5)]
    [InlineData(19.9, 0.3)]
    [InlineData(199, 3)]
    [InlineData(-20, 1)]
    public void The_chances_of_all_figures_add_up_to_one(double value, double spread)
    {
        var fine = Enumerable.Range(-1999, 3999).Select(k => new Shown(k * 0.01, 0.01, false));
        var coarse = Enumerable.Range(200, 1800).SelectMany(k => new[] { new Shown(k * 0.1, 0.1, false), new Shown(k * -0.1, 0.1, false) });
        var over = new[] { new Shown(199.9, 0.1, true), new Shown(-199.9, 0.1, true) };

        Assert.Equal(1, fine.Concat(coarse).Concat(over).Sum(s => Math.Exp(display.LogProbability(s, value, spread))), 1e-10);
    }

    [Fact]
    public void The_stated_spread_is_that_of_drawn_meters()
    {
        const int Draws = 20_000;
        var random = new SeededGenerator(54);
        var squares = 0.0;
        for (var k = 0; k < Draws; k++)
        {
            var value = 80 + random.NextDouble();
            squares += Math.Pow(display.Show(value, new MeterError(0.01 * random.Draw(), 0.2 * random.Draw())).Si - value, 2);
        }

        Assert.InRange(display.SpreadSi(display.Show(80.5)) / Math.Sqrt(squares / Draws), 0.98, 1.02);
        Assert.Equal(double.PositiveInfinity, display.SpreadSi(display.Show(1000)));
    }

    [Fact]
    public void An_exact_meter_is_certain_of_its_figure_and_an_open_of_over_range()
    {
        var exact = new Display([new DisplayRange { MostSi = 100, StepSi = 1 }]);

        Assert.Equal(0, exact.LogProbability(exact.Show(41.7), 41.7));
        Assert.Equal(double.NegativeInfinity, exact.LogProbability(exact.Show(43), 41.7));
        Assert.Equal(0, display.LogProbability(display.Show(double.PositiveInfinity), double.PositiveInfinity));
    }

    [Fact]
    public void Ranges_out_of_order_are_a_bug_of_the_caller()
    {
        Assert.Throws<ArgumentException>(() => new Display([]));
        Assert.Throws<ArgumentException>(() => new Display([display.Ranges[1], display.Ranges[0]]));
        Assert.Throws<ArgumentException>(() => new Display([new DisplayRange { MostSi = 1, StepSi = 0 }]));
    }
}
