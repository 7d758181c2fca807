using Underturf.Quantities;

namespace Underturf.Networks.Hydraulics;

/// <summary>What a valve passes: Q = c sqrt(dp) for water (IEC 60534-2-1, turbulent, not choked; from memory).</summary>
/// <param name="CubicMetresPerSecondAtOnePascal">c: flow at one pascal of loss.</param>
public readonly record struct FlowCoefficient(double CubicMetresPerSecondAtOnePascal)
{
    /// <summary>Cv: US gallons a minute at one psi.</summary>
    public static FlowCoefficient FromGallonsPerMinuteAtOnePsi(double number) =>
        new(Units.From(number, "gpm") / Math.Sqrt(Units.From(1, "psi")));

    /// <summary>m of h = m Q^2: m = 1 / (c^2 rho g).</summary>
    public double ResistancePerFlowSquaredFactor(Water water) =>
        1 / (CubicMetresPerSecondAtOnePascal * CubicMetresPerSecondAtOnePascal * water.PascalsPerMetre);
}
