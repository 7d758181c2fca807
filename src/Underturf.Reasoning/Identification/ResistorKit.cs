using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>Known resistors, one for each end.</summary>
internal sealed record ResistorKit(IReadOnlyList<double> Ohms, double WireOhms, double LogSpread, InstrumentPractice Meter, NamingPractice Book)
{
    /// <summary>One for each of so many ends; nothing where the bag has too few that this meter tells apart.</summary>
    public static ResistorKit? For(int ends, double wireOhms, double logSpread, InstrumentPractice meter, NamingPractice book) =>
        ResistorChoice.Pick(ends, wireOhms, logSpread, meter, book) is var picked && picked.Count == ends ? new ResistorKit(picked, wireOhms, logSpread, meter, book) : null;

    /// <summary>A made-up reading at the far side.</summary>
    /// <param name="holder">The end that the wire leads to; -1 where it leads to none.</param>
    public ResistorReading Reading(IReadOnlyList<int> ends, int holder, NamingWay way, SeededGenerator random)
    {
        var expected = ends.Select(e => Ohms[e] + (2 * WireOhms)).ToArray();
        var sigma = ends.Select(e => ResistorChoice.Sigma(Ohms[e], WireOhms, LogSpread, Meter, Book)).ToArray();
        var which = ends.Index().Where(e => e.Item == holder).Select(e => e.Index).FirstOrDefault(-1);
        double? shown = which < 0 || random.NextDouble() < way.Missed ? null : expected[which] + (sigma[which] * random.NextNormal());
        return new ResistorReading(shown, expected, sigma, Meter.Least, Meter.Most);
    }
}
