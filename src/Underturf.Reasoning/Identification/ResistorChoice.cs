using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>Which known resistors this meter can tell apart at the far side of these wires.</summary>
internal static class ResistorChoice
{
    /// <summary>Standard deviations between two neighbours: half of that is one chance in three thousand to take the one for the other.</summary>
    private const double Apart = 7;

    /// <summary>Standard deviation of what the meter shows: its own error, the resistor's, and the wire's out and back.</summary>
    public static double Sigma(double ohms, double wireOhms, double logSpread, InstrumentPractice meter, NamingPractice book)
    {
        var wire = 2 * wireOhms * logSpread;
        var own = ohms * book.ResistorTolerance;
        var read = meter.Sigma(ohms + (2 * wireOhms));
        return Math.Sqrt((wire * wire) + (own * own) + (read * read));
    }

    /// <summary>Whether the one is not taken for the other, by what the meter is expected to show and its standard deviations.</summary>
    public static bool AreApart(double low, double lowSigma, double high, double highSigma) => high - low > Apart * (lowSigma + highSigma) / 2;

    /// <summary>The smallest resistors of the bag that stay apart, however long each wire is; fewer than asked for where the bag has no more.</summary>
    public static IReadOnlyList<double> Pick(int count, double wireOhms, double logSpread, InstrumentPractice meter, NamingPractice book)
    {
        var picked = new List<double>();
        var (last, lastSigma) = (double.NegativeInfinity, 0.0);
        foreach (var ohms in book.Resistors.Order())
        {
            var sigma = Sigma(ohms, wireOhms, logSpread, meter, book);
            if (picked.Count < count && AreApart(last, lastSigma, ohms, sigma))
            {
                picked.Add(ohms);
                (last, lastSigma) = (ohms, sigma);
            }
        }

        return picked;
    }
}
