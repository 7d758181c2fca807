using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Tests.Reasoning;

/// <summary>Several readings of one station. Numbers made up.</summary>
public sealed class JointReadingsTests
{
    private static readonly PracticeBook book = PracticeBook.Default;
    private static readonly InstrumentPractice meter = book.Instruments.First(i => i.Dimension == Underturf.Quantities.Dimension.Resistance);

    [Fact]
    public void A_second_reading_is_expected_where_the_first_puts_it()
    {
        var outlook = Outlook.Prior(4, 0, 0.1);
        var (first, second) = (Reading(30, 24, 1, 0.8), Reading(35, 24, 1.5, 0.2));
        var joint = new JointReadings();
        joint.Begin(outlook);
        joint.Add(note, first, Shows(), 33);
        var (mean, sigma) = joint.Expect(second, meter);
        var (variance, together) = (outlook.Variance(first) + meter.OwnVariance(30), outlook.Covariance(first, second));
        Assert.Equal(35 + (together / variance * 3), mean, 1e-9);
        Assert.Equal(Math.Sqrt(outlook.Variance(second) - (together * together / variance) + meter.OwnVariance(35)), sigma, 1e-9);
    }

    [Fact]
    public void A_reading_varies_with_itself_as_much_as_it_varies()
    {
        var outlook = Outlook.Prior(4, 0.05, 0.1);
        var reading = Reading(30, 24, 1, 0.8);
        Assert.Equal(outlook.Variance(reading), outlook.Covariance(reading, reading), 1e-9);
    }

    [Fact]
    public void Readings_in_any_order_are_as_likely()
    {
        var chance = new SeededGenerator(71);
        for (var round = 0; round < 20; round++)
        {
            var outlook = Outlook.Prior(4, 0, 0.1);
            var readings = Enumerable.Range(0, 4).Select(_ => (Prediction: Reading(30, 24 * chance.NextDouble(), chance.NextDouble(), chance.NextDouble()), Shown: 28 + (4 * chance.NextDouble()))).ToList();
            Assert.Equal(LogDensity(outlook, readings), LogDensity(outlook, [readings[2], readings[0], readings[3], readings[1]]), 1e-6);
        }
    }

    [Fact]
    public void The_same_figure_read_three_times_says_little_more_than_once()
    {
        Assert.InRange(Sound(3) / Sound(1), 0.7, 1.3);

        static double Sound(int times)
        {
            var site = Site.Line().Sweep(60, (3, "39.1 ohm"));
            for (var i = 1; i < times; i++)
            {
                site.Read("station ohms", "39.1 ohm", "s3");
            }

            return site.Answer().Questions.FirstOrDefault(q => q.Stations.Contains("3"))?.Share("as-built") ?? 1;
        }
    }

    private static readonly Evidence note = new LookEvidence(default, ["s1"]) { Place = "b1", Found = [], NamesStations = false, Book = book, What = string.Empty, Observed = string.Empty };

    private static double LogDensity(Outlook outlook, IReadOnlyList<(Prediction Prediction, double Shown)> readings)
    {
        var (joint, sum) = (new JointReadings(), 0.0);
        joint.Begin(outlook);
        foreach (var (prediction, shown) in readings)
        {
            var (mean, sigma) = joint.Expect(prediction, meter);
            sum -= (0.5 * (shown - mean) * (shown - mean) / (sigma * sigma)) + Math.Log(sigma);
            joint.Add(note, prediction, Shows(), shown);
        }

        return sum;
    }

    private static Display Shows() => new(meter, book, Shown.OverRange);

    /// <summary>A reading that hangs on the usual coil's level, on unknowns 2 and 3, and on the ohms of one suspect.</summary>
    private static Prediction Reading(double mean, double level, double length, double coil) => new(mean, level, 0, false, true, [2, 3], [length, coil]) { Amounts = [0.5 * coil, 0, 0] };
}
