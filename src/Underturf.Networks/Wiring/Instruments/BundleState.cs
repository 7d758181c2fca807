using System.Numerics;
using Underturf.Quantities;

namespace Underturf.Networks.Wiring.Instruments;

/// <summary>Volts of every conductor of a bundle over the soil, at one frequency.</summary>
public sealed class BundleState
{
    private readonly Complex[] volts;

    private BundleState(Bundle bundle, Complex[] volts, double residual)
    {
        Bundle = bundle;
        this.volts = volts;
        KirchhoffResidualAmperes = residual;
    }

    public Bundle Bundle { get; }

    /// <summary>Largest imbalance of currents at a conductor.</summary>
    public double KirchhoffResidualAmperes { get; }

    /// <summary>Rms volts of a conductor over the soil, or of one over another.</summary>
    public Phasor Volts(int conductor, int over = Bundle.Earth)
    {
        var value = At(conductor) - At(over);
        return new Phasor(value.Real, value.Imaginary);
    }

    /// <summary>
    /// Nodal equations: the currents out of each conductor through its capacitances, its leakage and its coils are those that the drives
    /// send in. Dense, with row pivoting, since capacitances and coils can cancel.
    /// </summary>
    public static Outcome<BundleState> Solve(Bundle bundle, IReadOnlyList<BundleDrive> drives, double hertz)
    {
        if (BundleCheck.Check(bundle, drives, hertz) is { } problem)
        {
            return problem;
        }

        var equations = new BundleEquations(bundle, drives, hertz);
        return equations.Solve() is { } volts
            ? new BundleState(bundle, volts, equations.Residual(volts))
            : new Problem("bundle", $"coils and capacitances resonate without loss at {hertz} Hz", "Give the coils their ohms");
    }

    private Complex At(int conductor) => conductor == Bundle.Earth ? Complex.Zero : volts[conductor];
}
