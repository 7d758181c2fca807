namespace Underturf.Networks.Wiring.Instruments;

/// <summary>One range of an ohmmeter: its digits and the current it drives.</summary>
/// <param name="TestAmperes">Constant while the meter has the volts for it; out of the plus lead.</param>
/// <param name="TestVolts">The most between its leads.</param>
public sealed record OhmsRange(DisplayRange Display, double TestAmperes, double TestVolts);

/// <summary>An ohmmeter that drives a known current and shows volts over amperes.</summary>
/// <remarks>
/// With E volts on the way that oppose the test current (a galvanic couple, a diode's forward drop) it shows R + leads + E / I. Where the
/// current would need more than the test volts, the range is over; a meter that chooses its ranges itself goes on to the next (exact for
/// the stated source; that it is a current source is common practice).
/// </remarks>
public sealed class Ohmmeter
{
    private readonly OhmsRange[] ranges;
    private readonly Display[] displays;

    /// <param name="ranges">From fine to coarse; one for a meter that is set by hand.</param>
    /// <param name="leads">Leads and contacts that nobody zeroed out, with their spread from one contact to the next.</param>
    public Ohmmeter(IReadOnlyList<OhmsRange> ranges, MeasuredOhms leads)
    {
        this.ranges = [.. ranges];
        displays = [.. ranges.Select(r => new Display([r.Display]))];
        Leads = leads;
        Display = new Display([.. ranges.Select(r => r.Display)]);
    }

    public MeasuredOhms Leads { get; }

    /// <summary>The digits of all ranges.</summary>
    public Display Display { get; }

    /// <param name="ohms">Between the points the leads touch; infinite for an open.</param>
    /// <param name="opposingVolts">Volts on the way against the test current; negative where they help it.</param>
    public Shown Show(double ohms, double opposingVolts = 0, MeterError error = default)
    {
        for (var k = 0; k < ranges.Length; k++)
        {
            var volts = (ranges[k].TestAmperes * (ohms + Leads.Ohms)) + opposingVolts;
            var shown = displays[k].Show(volts / ranges[k].TestAmperes, error);
            if (!shown.IsOverRange && volts <= ranges[k].TestVolts)
            {
                return shown;
            }
        }

        return new Shown(ranges[^1].Display.MostSi, ranges[^1].Display.StepSi, IsOverRange: true);
    }

    /// <summary>
    /// Ohms between the points, leads taken off, with the spread that belief needs. Not more than the display says: a figure near zero can
    /// come out below zero.
    /// </summary>
    /// <returns>Infinite ohms of infinite spread for over-range.</returns>
    public MeasuredOhms Read(Shown shown)
    {
        var display = Display.SpreadSi(shown);
        return shown.IsOverRange
            ? new MeasuredOhms(double.PositiveInfinity, double.PositiveInfinity)
            : new MeasuredOhms(shown.Si - Leads.Ohms, double.Hypot(display, Leads.SpreadOhms));
    }

    /// <summary>ln of the chance of a display where nothing opposes the test current and the test volts suffice.</summary>
    /// <param name="ohms">Exact ohms between the points; infinite for an open.</param>
    /// <param name="spreadOhms">Standard deviation of those ohms, the leads' own apart.</param>
    public double LogProbability(Shown shown, double ohms, double spreadOhms = 0) =>
        Display.LogProbability(shown, ohms + Leads.Ohms, double.Hypot(spreadOhms, Leads.SpreadOhms));

    /// <summary>The current that the range of this display drives.</summary>
    public double TestAmperesOf(Shown shown) =>
        ranges[Math.Max(0, Array.FindIndex(ranges, r => r.Display.StepSi == shown.StepSi))].TestAmperes;
}
