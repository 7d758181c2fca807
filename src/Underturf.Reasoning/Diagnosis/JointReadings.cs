using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// The readings of one state taken together. They share the coil, the wires, the meter's bias and the fault's own ohms, so that each is weighed by what those
/// before it leave open: a Cholesky factor of their covariance, row by row, exact for normal distributions. One is used again and again.
/// </summary>
internal sealed class JointReadings
{
    private readonly List<Entry> entries = [];

    /// <summary>Rows of the factor, one after the other, each as long as its number; for as many readings as have been asked about.</summary>
    private readonly List<double> factor = [];
    private readonly List<double> row = [];
    private Outlook? outlook;

    /// <summary>What was expected last, its row of the factor left behind: as a rule that is the next reading taken in.</summary>
    private (Prediction? Prediction, InstrumentPractice? Instrument, int Count, double Mean, double Sigma) expected;

    public bool IsEmpty => entries.Count == 0;

    /// <summary>No reading yet.</summary>
    public void Begin(Outlook under)
    {
        outlook = under;
        entries.Clear();
        factor.Clear();
        expected = default;
    }

    /// <summary>Takes in a reading of a closed path that showed a figure.</summary>
    public void Add(Evidence note, Prediction prediction, Display display, double shown) => entries.Add(new Entry(note, prediction, display, shown, 0, 0, IsSettled: false));

    /// <summary>Mean and standard deviation of a further reading; the chance error of an instrument is counted where one is given.</summary>
    public (double Mean, double Sigma) Expect(Prediction prediction, InstrumentPractice? instrument)
    {
        Settle();
        return Given(entries.Count, prediction, instrument);
    }

    /// <summary>Mean of the last reading by what those before it say; nothing where it is not this note's.</summary>
    public double? MeanOf(Evidence note)
    {
        if (IsEmpty || entries[^1].Note != note)
        {
            return null;
        }

        Settle();
        return entries[^1].Mean;
    }

    private void Settle()
    {
        for (var i = 0; i < entries.Count; i++)
        {
            if (!entries[i].IsSettled)
            {
                entries[i] = Settled(i, entries[i]);
            }
        }
    }

    /// <summary>What is known only by its order of magnitude says nothing of the rest, as if its error had no bounds.</summary>
    private Entry Settled(int i, Entry entry)
    {
        var (mean, sigma) = expected.Count == i && ReferenceEquals(expected.Prediction, entry.Prediction) && ReferenceEquals(expected.Instrument, entry.Display.Instrument)
            ? (expected.Mean, expected.Sigma)
            : Given(i, entry.Prediction, entry.Display.Instrument);
        var wide = entry.Display.IsWide(mean, sigma);
        factor.AddRange(row);
        factor.Add(wide ? double.PositiveInfinity : sigma);
        return entry with { Mean = mean, Score = wide ? 0 : (entry.Shown - mean) / sigma, IsSettled = true };
    }

    /// <summary>By the first so many readings; leaves the row of the factor behind.</summary>
    private (double Mean, double Sigma) Given(int count, Prediction prediction, InstrumentPractice? instrument)
    {
        row.Clear();
        var mean = outlook!.Mean(prediction);
        var error = instrument?.OwnVariance(mean) ?? 0;
        var left = outlook.Variance(prediction);
        for (var j = 0; j < count; j++)
        {
            var (start, sum) = (j * (j + 1) / 2, outlook.Covariance(prediction, entries[j].Prediction));
            for (var k = 0; k < j; k++)
            {
                sum -= row[k] * factor[start + k];
            }

            var share = sum / factor[start + j];
            row.Add(share);
            mean += share * entries[j].Score;
            left -= share * share;
        }

        expected = (prediction, instrument, count, Math.Max(0, mean), Math.Sqrt(Math.Max(0, left) + error));
        return (expected.Mean, expected.Sigma);
    }

    /// <param name="Mean">By what the readings before it say.</param>
    /// <param name="Score">How far above that it is, in what was left open.</param>
    private readonly record struct Entry(Evidence Note, Prediction Prediction, Display Display, double Shown, double Mean, double Score, bool IsSettled);
}
