using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Reasoning.Water;

namespace Underturf.Tests.Reasoning.Water;

/// <summary>The same thing read more than once: its error is shared in part, and what there was to read is one. All readings are invented.</summary>
public sealed class RepeatedTests
{
    private const double Apart = 1e-9;

    [Theory]
    [InlineData(10.0, 10.2, 9.9)]
    [InlineData(13.0, 13.1, 13.3)]
    [InlineData(6.0, 6.6, 6.1)]
    public void The_chance_of_repeats_is_the_sum_over_what_there_was_to_read_and_over_the_bias(params double[] shown)
    {
        var (usual, own, shared) = (new LogNormal(9, 0.2), 0.25, 0.03);
        var mean = shown.Average();
        var sum = 0.0;
        const int Steps = 400;
        for (var a = 0; a < Steps; a++)
        {
            var amount = 9 * Math.Exp(0.2 * (-6 + (12 * (a + 0.5) / Steps)));
            for (var b = 0; b < Steps; b++)
            {
                var z = -6 + (12 * (b + 0.5) / Steps);
                sum += Math.Exp(Normal.LogDensity(Math.Log(amount / 9) / 0.2) + Normal.LogDensity(z) + shown.Sum(s => Normal.LogDensity((s - amount - (shared * mean * z)) / own) - Math.Log(own))) * Math.Pow(12.0 / Steps, 2);
            }
        }

        Read[] read = [.. shown.Select(s => new Read(s, double.Hypot(own, shared * s), own, shared))];
        Assert.Equal(Math.Log(sum), new Amount(usual).LogDensity(read, Apart), 0.02);
    }

    [Fact]
    public void Readings_with_one_gauge_have_the_covariance_of_a_common_bias()
    {
        var probe = PracticeBook.Default.Water.ProbeOf(WaterMeasure.StaticPressure)!;
        WaterReading Gauge(double si, double own) => new(Moment.Last, probe, null, si, 0, string.Empty, new HashSet<string>()) { Own = own, Shared = 0.02 };
        double[] stood = [410, 385];
        var (one, two) = (Gauge(400, 5), Gauge(390, 7));
        var (a, b) = (one.Si - stood[0], two.Si - stood[1]);
        var (aa, bb, ab) = (25 + Math.Pow(0.02 * 400, 2), 49 + Math.Pow(0.02 * 390, 2), 0.02 * 400 * 0.02 * 390);
        var determinant = (aa * bb) - (ab * ab);
        var exact = (-0.5 * (((bb * a * a) + (aa * b * b) - (2 * ab * a * b)) / determinant)) - (0.5 * Math.Log(determinant)) - Math.Log(2 * Math.PI);
        Assert.Equal(exact, new GaugeReadings([one, two]).LogDensity(r => r == one ? stood[0] : stood[1]), 1e-9);
    }

    [Fact]
    public void A_flow_that_was_read_four_times_says_hardly_more_than_read_once()
    {
        var (once, four) = (Sound(Heads().Meter("19.6 gpm", "s1")), Sound(Heads().Meter("19.6 gpm", "s1").Meter("19.5 gpm", "s1").Meter("19.7 gpm", "s1").Meter("19.6 gpm", "s1")));
        Assert.InRange(once, 0.3, 0.97);
        Assert.InRange(Odds(four) / Odds(once), 0.5, 2);
        Assert.True(Odds(Sound(Heads().Meter("19.6 gpm", "s1").Watch("s1", "broken outlet"))) < 0.5 * Odds(once));
    }

    [Fact]
    public void Times_and_pressures_that_were_read_again_are_of_one_valve()
    {
        var (once, thrice) = (Share(Orchard.Unpiped().Read("closing time", "24 s", "s2"), "port-blocked"), Share(Orchard.Unpiped().Read("closing time", "24 s", "s2").Read("closing time", "25 s", "s2").Read("closing time", "23 s", "s2"), "port-blocked"));
        Assert.InRange(Odds(thrice) / Odds(once), 0.5, 2);
    }

    [Fact]
    public void After_a_repair_it_is_read_anew()
    {
        var mended = Heads().Meter("26 gpm", "s1").Watch("s1", "broken outlet").With(new WorkFact { Did = "outlet replaced", Target = "s1" }).Meter("15.8 gpm", "s1").Watch("s1");
        Assert.Null(mended.Question("water-s1"));
    }

    [Fact]
    public void Somebody_who_drew_water_during_one_of_two_readings_is_not_taken_for_a_leak()
    {
        var orchard = Heads().Meter("0 gpm").Meter("15.8 gpm", "s1").Meter("22 gpm", "s1");
        Assert.Null(orchard.Question("water-idle"));
        Assert.Contains(orchard.Problems(), p => p.Reason.Contains("cannot both be right", StringComparison.Ordinal));
    }

    [Fact]
    public void The_rows_of_repeats_add_up_to_what_they_say_together()
    {
        var question = Heads().Meter("32 gpm", "s1").Meter("32.2 gpm", "s1").Meter("31.8 gpm", "s1").Watch("s1", "bubbling").Question("water-s1")!;
        var rows = question.Explanations[0].Evidence.Where(e => e.What.StartsWith("meter flow", StringComparison.Ordinal)).Select(e => e.Weight).ToList();
        Assert.Equal(3, rows.Count);
        Assert.True(Math.Abs(rows[1]) + Math.Abs(rows[2]) < 0.5, string.Join(", ", rows));
    }

    private static double Odds(double share) => share / (1 - share);

    private static double Sound(Orchard orchard) => orchard.Notebook().Water()!.Stations.Single(s => s.Station == "s1").States.Where(s => s.Faults.Count == 0).Sum(s => s.Probability);

    private static double Share(Orchard orchard, string fault) => orchard.Notebook().Water()!.Stations.Single(s => s.Station == "s2").States.Where(s => s.Faults.Contains(fault)).Sum(s => s.Probability);

    private static Orchard Heads() => Orchard.Unpiped().With(new OutletFact { Id = "heads", Station = "s1", What = "spray head", Count = 10 });
}
