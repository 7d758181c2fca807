namespace Underturf.Networks.Wiring.Instruments;

/// <summary>One range of a meter's display, in the SI unit of what it measures.</summary>
public sealed record DisplayRange
{
    /// <summary>The largest figure that the range shows: counts times step, "600.0".</summary>
    public required double MostSi { get; init; }

    /// <summary>The last digit of the display.</summary>
    public required double StepSi { get; init; }

    /// <summary>Standard deviation of the gain, as a share of the reading: one unknown of the meter, the same in every reading.</summary>
    public double GainSpreadShare { get; init; }

    /// <summary>Standard deviation of what the meter adds whatever it reads.</summary>
    public double OffsetSpreadSi { get; init; }
}

/// <summary>How one meter is off, as a fact of the simulator or a value tried for a shared unknown.</summary>
/// <param name="GainShare">0.01 shows one percent too much.</param>
/// <param name="OffsetSi">Added to every reading.</param>
public readonly record struct MeterError(double GainShare, double OffsetSi);

/// <summary>What a display shows.</summary>
/// <param name="Si">The figure; the sign alone counts where the display is over its range.</param>
/// <param name="StepSi">The last digit of the range it is shown in.</param>
public readonly record struct Shown(double Si, double StepSi, bool IsOverRange);
