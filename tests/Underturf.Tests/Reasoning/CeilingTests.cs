using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;
using Underturf.Simulation;

namespace Underturf.Tests.Reasoning;

/// <summary>What lets states be dropped before all their notes are weighed: no circuit makes a display likelier than its ceiling.</summary>
public sealed class CeilingTests
{
    private static readonly PracticeBook book = PracticeBook.Default;

    [Fact]
    public void No_mean_and_no_spread_make_a_display_likelier_than_its_ceiling()
    {
        var chance = new SeededGenerator(71);
        foreach (var display in Displays())
        {
            Assert.InRange(display.LogChanceUnmodelled(), double.NegativeInfinity, display.LogCeiling);
            Assert.InRange(display.LogChance(Prediction.Open(true), Outlook.Prior(3, 0, 0.1)), double.NegativeInfinity, display.LogCeiling);
            for (var i = 0; i < 2000; i++)
            {
                var mean = Math.Exp(-3 + (20 * chance.NextDouble()));
                var own = Math.Sqrt(display.Instrument.OwnVariance(mean));
                var sigma = double.Hypot(own, i % 2 == 0 ? 0 : mean * Math.Exp(-8 + (9 * chance.NextDouble())));
                Assert.InRange(display.LogChance((mean, sigma)), double.NegativeInfinity, display.LogCeiling + 1e-9);
            }
        }
    }

    [Fact]
    public void A_note_at_its_own_figure_comes_close_to_its_ceiling()
    {
        var ordinary = Displays().First(d => d.LogCeiling < -1);
        var best = Enumerable.Range(1, 4000).Max(i => ordinary.LogChance((i / 40.0, Math.Sqrt(ordinary.Instrument.OwnVariance(i / 40.0)))));
        Assert.InRange(ordinary.LogCeiling - best, 0, 1.5);
    }

    private static IEnumerable<Display> Displays() =>
        from seed in new ulong[] { 51, 52, 53 }
        from reading in new Case(PropertyHistory.Fold(WorldGenerator.Make(seed, book).Log.Standing), book).Evidence.OfType<ReadingEvidence>()
        select reading.Display;
}
