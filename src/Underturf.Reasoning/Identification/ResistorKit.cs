using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>Known resistors for the ends, or for the wires at the controller; nothing where the bag has too few.</summary>
internal sealed record Kits(ResistorKit? Ends, ResistorKit? Wires)
{
    public ResistorKit? Of(bool turned) => turned ? Wires : Ends;
}

/// <summary>Known resistors, one for each end or each wire.</summary>
internal sealed record ResistorKit(IReadOnlyList<double> Ohms, double WireOhms, double LogSpread, InstrumentPractice Meter, NamingPractice Book)
{
    /// <summary>One for each of so many; nothing where the bag has too few that this meter tells apart.</summary>
    public static ResistorKit? For(int count, double wireOhms, double logSpread, InstrumentPractice meter, NamingPractice book) =>
        ResistorChoice.Pick(count, wireOhms, logSpread, meter, book) is var picked && picked.Count == count ? new ResistorKit(picked, wireOhms, logSpread, meter, book) : null;

    /// <summary>A made-up reading at the far side.</summary>
    /// <param name="fitted">What has a resistor.</param>
    /// <param name="holder">Which of them the conductor leads to; -1 where it leads to none.</param>
    public ResistorReading Reading(IReadOnlyList<int> fitted, int holder, NamingWay way, SeededGenerator random)
    {
        var expected = fitted.Select(e => Ohms[e] + (2 * WireOhms)).ToArray();
        var sigma = fitted.Select(e => ResistorChoice.Sigma(Ohms[e], WireOhms, LogSpread, Meter, Book)).ToArray();
        var which = fitted.Index().Where(e => e.Item == holder).Select(e => e.Index).FirstOrDefault(-1);
        double? shown = which < 0 || random.NextDouble() < way.Missed ? null : expected[which] + (sigma[which] * random.NextNormal());
        return new ResistorReading(shown, expected, sigma, Meter.Least, Meter.Most);
    }
}
