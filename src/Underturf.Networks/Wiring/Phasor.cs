namespace Underturf.Networks.Wiring;

/// <summary>An alternating voltage or current: rms magnitude and phase as a complex number. Phase zero is that of the sources.</summary>
public readonly record struct Phasor(double Real, double Imaginary)
{
    public double Magnitude => double.Hypot(Real, Imaginary);

    public double PhaseRadians => Math.Atan2(Imaginary, Real);
}
