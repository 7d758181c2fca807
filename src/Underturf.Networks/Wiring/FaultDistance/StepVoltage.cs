namespace Underturf.Networks.Wiring.FaultDistance;

/// <summary>Volts between two pins in the ground in line with the run, while current leaves a conductor at one buried point.</summary>
/// <remarks>
/// Potential at the surface of a uniform half space: rho I / (2 pi r), r the distance from the point; the surface, through which nothing
/// flows, doubles what the point makes in full space (method of images; exact). The current returns far away. In line with the run
/// V = rho I / (2 pi) (1 / r1 - 1 / r2), the first pin nearer to the near end: it is zero over the fault, reverses there and peaks on
/// both sides.
/// </remarks>
public static class StepVoltage
{
    private const int Halvings = 100;

    /// <param name="fromFaultMetres">Middle of the pins less the place of the fault, along the run.</param>
    /// <param name="depthMetres">Of the fault under the surface.</param>
    /// <param name="asideMetres">Of the line of pins beside the run.</param>
    public static double Volts(
        double soilOhmMetres, double amperes, double fromFaultMetres, double pinSpacingMetres, double depthMetres, double asideMetres = 0) =>
        soilOhmMetres * amperes / (2 * Math.PI) * Shape(fromFaultMetres, pinSpacingMetres, double.Hypot(depthMetres, asideMetres));

    /// <summary>
    /// How far from the fault the step voltage peaks: where both pins see the same slope of potential, u / (u^2 + h^2)^(3/2). For pins close
    /// together it is h / sqrt(2), h the distance of the fault from the line of pins.
    /// </summary>
    public static double PeakFromFaultMetres(double pinSpacingMetres, double distanceMetres)
    {
        var (low, high) = (pinSpacingMetres / 2, (pinSpacingMetres / 2) + (distanceMetres / Math.Sqrt(2)));
        for (var k = 0; k < Halvings; k++)
        {
            var middle = 0.5 * (low + high);
            var rising = Pull(middle - (pinSpacingMetres / 2), distanceMetres) < Pull(middle + (pinSpacingMetres / 2), distanceMetres);
            (low, high) = rising ? (middle, high) : (low, middle);
        }

        return 0.5 * (low + high);
    }

    /// <summary>1 / r1 - 1 / r2, per metre.</summary>
    internal static double Shape(double from, double spacing, double distance) =>
        (1 / Reach(from - (spacing / 2), distance)) - (1 / Reach(from + (spacing / 2), distance));

    /// <summary>Change of the shape a metre that the fault lies farther along the run.</summary>
    internal static double AlongFault(double from, double spacing, double distance) =>
        Pull(from - (spacing / 2), distance) - Pull(from + (spacing / 2), distance);

    /// <summary>Change of the shape a metre that the fault lies farther from the line of pins.</summary>
    internal static double AlongDistance(double from, double spacing, double distance) =>
        distance * (Math.Pow(Reach(from + (spacing / 2), distance), -3) - Math.Pow(Reach(from - (spacing / 2), distance), -3));

    private static double Reach(double along, double distance) => Math.Sqrt((along * along) + (distance * distance));

    private static double Pull(double along, double distance) => along * Math.Pow(Reach(along, distance), -3);
}
