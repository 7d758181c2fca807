using Underturf.Quantities;

namespace Underturf.Networks.Wiring;

/// <summary>
/// Sizing of wires by the scalar rule of the handbooks: volts lost = amperes x ohms out and back, as if the load were a resistance.
/// A coil is inductive, so the phasors of <see cref="WiringNetwork.SolveAc"/> lose less; sizing stays on the safe side with this rule.
/// </summary>
/// <remarks>Source: New Mexico State University, Soils 456 notes, chapter 11.</remarks>
public static class ScalarDrop
{
    /// <summary>Volts left at the load.</summary>
    /// <param name="lengthMetres">One way.</param>
    public static double VoltsAfter(
        double supplyVolts, double amperes, double outOhmsPerMetre, double backOhmsPerMetre, double lengthMetres) =>
        supplyVolts - (amperes * (outOhmsPerMetre + backOhmsPerMetre) * lengthMetres);

    /// <summary>The longest run, one way, that leaves the volts needed.</summary>
    public static double LongestRunMetres(
        double supplyVolts, double voltsNeeded, double amperes, double outOhmsPerMetre, double backOhmsPerMetre) =>
        (supplyVolts - voltsNeeded) / (amperes * (outOhmsPerMetre + backOhmsPerMetre));

    /// <summary>The most ohms a metre of each wire may have, out and back alike.</summary>
    /// <param name="lengthMetres">One way.</param>
    public static double MostOhmsPerMetre(double voltsAllowed, double amperes, double lengthMetres) =>
        voltsAllowed / (2 * amperes * lengthMetres);

    /// <summary>The thinnest of the sizes that has no more than the given ohms a metre.</summary>
    /// <returns>The size, or a problem where even the thickest has more.</returns>
    public static Outcome<WireSize> SizeFor(double mostOhmsPerMetre, double temperatureKelvins, IReadOnlyList<WireSize> sizes)
    {
        WireSize? best = null;
        foreach (var size in sizes)
        {
            var enough = CopperWire.OhmsPerMetre(size, temperatureKelvins) <= mostOhmsPerMetre;
            best = enough && (best is null || size.DiameterMetres < best.Value.DiameterMetres) ? size : best;
        }

        return best is { } found
            ? found
            : new Problem("wire size", "every size on the list loses more volts than allowed", "Shorten the run, share the load or add a thicker size");
    }
}
