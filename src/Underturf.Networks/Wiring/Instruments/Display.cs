using Underturf.Numerics;

namespace Underturf.Networks.Wiring.Instruments;

/// <summary>A display of finitely many figures, over-range among them, that takes the finest of its ranges that holds the value.</summary>
/// <remarks>
/// The figures cut the line of values into cells: rounding to the nearest step within a range, the next range beginning where the last
/// figure of the one below ends. So the chances of all figures add up to one.
/// </remarks>
public sealed class Display
{
    private readonly DisplayRange[] ranges;

    /// <param name="ranges">From fine to coarse; at least one. A meter set to a fixed range has that one only.</param>
    /// <exception cref="ArgumentException">
    /// No range, a range without a positive step, or one that is not coarser and higher than the one before.
    /// </exception>
    public Display(IReadOnlyList<DisplayRange> ranges)
    {
        this.ranges = [.. ranges];
        for (var k = 0; k < ranges.Count; k++)
        {
            var above = k == 0 || (ranges[k].MostSi > ranges[k - 1].MostSi && ranges[k].StepSi > ranges[k - 1].StepSi);
            if (!(above && ranges[k].StepSi > 0 && ranges[k].MostSi >= ranges[k].StepSi))
            {
                throw new ArgumentException($"Range {k} needs a positive step, coarser and reaching higher than the one before.", nameof(ranges));
            }
        }

        if (ranges.Count == 0)
        {
            throw new ArgumentException("A display has at least one range.", nameof(ranges));
        }
    }

    public IReadOnlyList<DisplayRange> Ranges => ranges;

    /// <param name="valueSi">What reaches the display; infinite is over-range.</param>
    public Shown Show(double valueSi, MeterError error = default)
    {
        var off = (valueSi * (1 + error.GainShare)) + error.OffsetSi;
        var range = RangeOf(off);
        return range is null
            ? new Shown(Math.Sign(off) * ranges[^1].MostSi, ranges[^1].StepSi, IsOverRange: true)
            : new Shown(Rounded(off, range), range.StepSi, IsOverRange: false);
    }

    /// <summary>
    /// Standard deviation of the exact value once the display is read: gain, offset and an even spread over the last digit, step / sqrt(12).
    /// </summary>
    /// <returns>Infinite for over-range, which says no more than "above".</returns>
    public double SpreadSi(Shown shown)
    {
        if (shown.IsOverRange)
        {
            return double.PositiveInfinity;
        }

        var meter = MeterSpread(shown.Si);
        return Math.Sqrt((meter * meter) + (shown.StepSi * shown.StepSi / 12));
    }

    /// <summary>ln of the chance of a display, gain and offset being normal around nothing.</summary>
    /// <param name="valueSi">The exact value; an infinite one is over-range for certain.</param>
    /// <param name="spreadSi">Standard deviation of that value itself, independent of the meter.</param>
    public double LogProbability(Shown shown, double valueSi, double spreadSi = 0)
    {
        var meter = double.IsFinite(valueSi) ? MeterSpread(valueSi) : 0;
        var spread = Math.Sqrt((meter * meter) + (spreadSi * spreadSi));
        if (spread == 0 || !double.IsFinite(valueSi))
        {
            return Show(valueSi) == shown ? 0 : double.NegativeInfinity;
        }

        var (low, high) = Cell(shown);
        return Normal.LogCdfInterval((low - valueSi) / spread, (high - valueSi) / spread);
    }

    /// <summary>The values, as they reach the digits, that give this display.</summary>
    internal (double Low, double High) Cell(Shown shown)
    {
        if (shown.IsOverRange)
        {
            var top = Top(ranges.Length - 1);
            return shown.Si < 0 ? (double.NegativeInfinity, -top) : (top, double.PositiveInfinity);
        }

        var k = Array.FindIndex(ranges, r => r.StepSi == shown.StepSi);
        var inside = k <= 0 ? 0 : Top(k - 1);
        var (low, high) = (Math.Abs(shown.Si) - (shown.StepSi / 2), Math.Abs(shown.Si) + (shown.StepSi / 2));
        low = k <= 0 ? low : Math.Max(low, inside);
        return shown.Si < 0 ? (-high, -low) : (low, high);
    }

    private DisplayRange? RangeOf(double value)
    {
        var k = Enumerable.Range(0, ranges.Length).FirstOrDefault(i => Math.Abs(value) < Top(i), -1);
        return k < 0 ? null : ranges[k];
    }

    /// <summary>Where the last figure of a range ends.</summary>
    private double Top(int range) => Rounded(ranges[range].MostSi, ranges[range]) + (ranges[range].StepSi / 2);

    private double MeterSpread(double value)
    {
        var range = RangeOf(value) ?? ranges[^1];
        var gain = range.GainSpreadShare * value;
        return Math.Sqrt((gain * gain) + (range.OffsetSpreadSi * range.OffsetSpreadSi));
    }

    private static double Rounded(double value, DisplayRange range) =>
        Math.Round(value / range.StepSi, MidpointRounding.AwayFromZero) * range.StepSi;
}
