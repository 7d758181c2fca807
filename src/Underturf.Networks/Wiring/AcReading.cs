using Underturf.Quantities;

namespace Underturf.Networks.Wiring;

/// <summary>
/// The magnitude of one voltage or current, with its exact slopes. The adjoint network (sources off, one ampere between the voltmeter's
/// leads, or one volt in the clamped element) is solved once, when the first slope is asked for.
/// </summary>
public sealed class AcReading
{
    private readonly string name;
    private readonly AcFactor factor;
    private readonly AcState state;
    private readonly Func<AcState> makeAdjoint;
    private readonly double sign;
    private AcState? adjoint;

    internal AcReading(string name, Phasor value, AcFactor factor, AcState state, Func<AcState> makeAdjoint, double sign)
    {
        this.name = name;
        this.factor = factor;
        this.state = state;
        this.makeAdjoint = makeAdjoint;
        this.sign = sign;
        Value = value;
    }

    public Phasor Value { get; }

    /// <summary>What the meter shows: rms volts or amperes.</summary>
    public double Magnitude => Value.Magnitude;

    /// <summary>d(magnitude)/d(ohms of the element).</summary>
    public Outcome<double> Sensitivity(int element)
    {
        var slope = Slope(element);
        return slope.Succeeded ? AlongValue(slope.Value) : slope.Problem!;
    }

    /// <summary>d(magnitude)/d(henries of the element).</summary>
    public Outcome<double> SensitivityToHenries(int element)
    {
        var slope = Slope(element);
        return slope.Succeeded
            ? factor.RadiansPerSecond * AlongValue(new Phasor(-slope.Value.Imaginary, slope.Value.Real))
            : slope.Problem!;
    }

    /// <summary>d(value)/dz = (element's current) (its current in the adjoint network), with the sign of the reading.</summary>
    private Outcome<Phasor> Slope(int element)
    {
        if (Magnitude == 0)
        {
            return Undetermined.NoSlope(name);
        }

        var own = state.Current(element);
        var other = (adjoint ??= makeAdjoint()).Current(element);
        var re = sign * ((own.Real * other.Real) - (own.Imaginary * other.Imaginary));
        var im = sign * ((own.Real * other.Imaginary) + (own.Imaginary * other.Real));
        return double.IsNaN(re) ? Undetermined.JointInLoop(factor.Network, element) : new Phasor(re, im);
    }

    private double AlongValue(Phasor slope) =>
        ((Value.Real / Magnitude) * slope.Real) + ((Value.Imaginary / Magnitude) * slope.Imaginary);
}
