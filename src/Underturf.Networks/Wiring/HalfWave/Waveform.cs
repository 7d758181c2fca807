namespace Underturf.Networks.Wiring.HalfWave;

/// <summary>
/// Equally spaced samples of one period, volts or amperes; the first is the instant at which the sources rise through zero. Means are plain
/// means of the samples, which for a period is the trapezoidal rule.
/// </summary>
public sealed class Waveform
{
    private readonly double[] samples;

    internal Waveform(double[] samples) => this.samples = samples;

    public ReadOnlySpan<double> Samples => samples;

    /// <summary>The direct part.</summary>
    public double Average() => samples.Average();

    /// <summary>Root mean square, direct part included.</summary>
    public double Rms() => Math.Sqrt(samples.Average(s => s * s));

    /// <summary>Root mean square of what is left without the direct part.</summary>
    public double AlternatingRms()
    {
        var average = Average();
        return Math.Sqrt(samples.Average(s => (s - average) * (s - average)));
    }

    /// <summary>Mean of the size of what is left without the direct part.</summary>
    public double AlternatingMean()
    {
        var average = Average();
        return samples.Average(s => Math.Abs(s - average));
    }

    public double Least() => samples.Min();

    public double Most() => samples.Max();

    /// <summary>What a meter of that response shows.</summary>
    public double ShownBy(MeterResponse response) => response switch
    {
        MeterResponse.Direct => Average(),
        MeterResponse.MeanResponding => Math.PI / (2 * Math.Sqrt(2)) * AlternatingMean(),
        MeterResponse.TrueRms => AlternatingRms(),
        MeterResponse.TrueRmsWithDirect => Rms(),
        _ => throw new ArgumentOutOfRangeException(nameof(response), response, "No such response."),
    };
}

/// <summary>
/// What a meter makes of a waveform, of a voltage across its leads or a current through it. Ohms that the meter adds are an element of the
/// network.
/// </summary>
public enum MeterResponse
{
    /// <summary>DC volts or amperes: the average.</summary>
    Direct,

    /// <summary>
    /// AC volts or amperes of a meter that rectifies: the direct part is blocked, the mean shown as if of a sine, times pi / (2 sqrt 2) =
    /// 1.1107.
    /// </summary>
    MeanResponding,

    /// <summary>AC volts or amperes of a meter that squares: the direct part is blocked. Every clamp with a transformer loses it too.</summary>
    TrueRms,

    /// <summary>AC+DC of a meter that squares and blocks nothing.</summary>
    TrueRmsWithDirect,
}
