using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;
using Underturf.Simulation;
using Underturf.Tests.Reasoning.Spreads;
using Factor = Underturf.Reasoning.Diagnosis.Site;

namespace Underturf.Tests.Reasoning;

/// <summary>What all stations share: one run's length, the usual coil, the soil, the meter. Sites made up.</summary>
public sealed class SharedUnknownsTests
{
    private static readonly PracticeBook book = PracticeBook.Default;

    [Fact]
    public void A_site_taken_in_and_out_again_leaves_the_outlook_as_it_was()
    {
        var chance = new SeededGenerator(61);
        var outlook = Outlook.Prior(6, 0.1, 0.3);
        var probe = new Direction([0, 2, 5], [1, -2, 0.5]);
        for (var i = 0; i < 50; i++)
        {
            var before = (outlook.Mean(probe), outlook.Covariance(probe, probe));
            var factor = new Factor(new Direction([0, 1, 2, 3], [chance.NextDouble(), chance.NextDouble(), 1, -1]), 0.1 + chance.NextDouble(), chance.NextDouble());
            var first = outlook.Absorb(factor);
            Assert.Equal(0, first + outlook.Absorb(factor, -1), 1e-9);
            Assert.Equal(before.Item1, outlook.Mean(probe), 1e-9);
            Assert.Equal(before.Item2, outlook.Covariance(probe, probe), 1e-9);
            outlook.Absorb(factor);
        }
    }

    [Fact]
    public void An_outlook_without_a_few_sites_is_what_taking_them_out_of_a_copy_leaves()
    {
        var chance = new SeededGenerator(63);
        var outlook = Outlook.Prior(6, 0.1, 0.3);
        Factor[] factors = [.. Enumerable.Range(0, 8).Select(_ => new Factor(new Direction([0, 1, 3, 4], [chance.NextDouble(), 1, -chance.NextDouble(), 2]), chance.NextDouble(), chance.NextDouble()))];
        outlook.Absorb(factors);
        var (copy, without) = (outlook.Clone(), outlook.Without(factors[..2]).Without(factors[2..4]));
        copy.Absorb(factors[..4], -1);
        without.Absorb(factors[0]);
        copy.Absorb(factors[0]);
        var (a, b) = (new Direction([0, 2, 4], [1, -2, 0.5]), new Direction([1, 3, 5], [1, 3, 0.5]));
        Assert.Equal(copy.Mean(a), without.Mean(a), 1e-9);
        Assert.Equal(copy.Covariance(a, b), without.Covariance(a, b), 1e-9);
        Assert.Equal(copy.LogLevelSpread, without.LogLevelSpread, 1e-9);
        var (one, other) = (new Prediction(30, 20, 1, false, false, [1, 4], [2, 0.3]), new Prediction(50, 25, 1, false, false, [4, 5], [1, 0.3]));
        Assert.Equal(copy.Variance(one), without.Variance(one), 1e-9);
        Assert.Equal(copy.Covariance(one, other), without.Covariance(one, other), 1e-9);
    }

    /// <summary>Every unknown drawn 20000 times, the stations weighed as if it were known: no normal factor in it.</summary>
    [Theory]
    [InlineData("38.6 ohm", 1)]
    [InlineData("41.5 ohm", 1)]
    [InlineData("18.9 ohm", 1)]
    [InlineData("over range", 1)]
    [InlineData("38.6 ohm", 3)]
    [InlineData("39.6 ohm", 3)]
    public void What_the_factors_say_of_a_station_is_what_drawing_says(string odd, int times)
    {
        var site = Site.Bare();
        site.Add(new BoxFact { Id = "b1", Position = new Position(120, 0) });
        site.Station(1).Station(2).Station(3).Station(4);
        site.Add(new CableFact { Id = "k1", From = "c", To = "b1", Carries = ["s1", "s2", "s3", "s4"], Length = new Length(120), Gauge = WireSize.FromAwg(18), CommonGauge = WireSize.FromAwg(14), Sure = Grade.Estimated });
        site.Read("station ohms", "36.0 ohm", "s1").Read("station ohms", "36.9 ohm", "s2").Read("station ohms", "35.2 ohm", "s3");
        for (var i = 0; i < times; i++)
        {
            site.Read("station ohms", odd, "s4");
        }

        var matter = new Case(PropertyHistory.Fold(site.Log().Standing), book);
        var (clusters, count) = (new ClusterBuilder(matter).Build("c"), matter.Unknowns("c").Count);
        var fit = OutlookFit.Of(matter, clusters, Outlook.Prior(count, 0, Level), null);
        var drawn = Drawn(matter, clusters, count);
        for (var k = 0; k < clusters.Count; k++)
        {
            Assert.InRange(fit.States(k).AsksNothing - drawn[k], -0.04, 0.04);
        }
    }

    [Fact]
    public void A_long_run_shows_on_all_its_stations_and_only_the_odd_one_is_asked_about()
    {
        var site = Site.Bare();
        site.Add(new BoxFact { Id = "b1", Position = new Position(200, 0) });
        for (var s = 1; s <= 8; s++)
        {
            site.Station(s);
        }

        site.Add(new CableFact { Id = "k1", From = "c", To = "b1", Carries = [.. Enumerable.Range(1, 8).Select(s => $"s{s}")] });
        for (var s = 1; s <= 8; s++)
        {
            site.Read("station ohms", s == 8 ? "90.0 ohm" : "43.0 ohm", $"s{s}");
        }

        Assert.Equal(["8"], Assert.Single(site.Answer().Questions).Stations);
    }

    [Fact]
    public void What_is_left_out_is_bounded_and_little()
    {
        for (ulong seed = 41; seed < 45; seed++)
        {
            var matter = new Case(PropertyHistory.Fold(WorldGenerator.Make(seed, book).Log.Standing), book);
            Assert.InRange(BeliefEngine.Of(matter, "c").LeftOut, 0, 1e-3);
        }
    }

    private const double Level = 0.1;

    private static double[] Drawn(Case matter, IReadOnlyList<Cluster> clusters, int count)
    {
        var (chance, finder, sound, total) = (new SeededGenerator(62), new StateFinder(matter), new double[clusters.Count], 0.0);
        for (var n = 0; n < 20000; n++)
        {
            var values = Enumerable.Range(0, count).Select(i => chance.DrawNormal() * (i == Unknowns.Level ? Level : 1)).ToArray();
            var states = clusters.Select(c => finder.Find(c, [], Outlook.At(values), deep: false)).ToList();
            var weight = Math.Exp(states.Sum(s => s.LogTotal));
            total += weight;
            for (var k = 0; k < clusters.Count; k++)
            {
                sound[k] += weight * states[k].AsksNothing;
            }
        }

        return [.. sound.Select(s => s / total)];
    }
}
