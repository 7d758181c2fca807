using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>What a controller's plate says of its supply, where it can be believed.</summary>
public static class SupplyPlate
{
    /// <summary>No supply of a controller is rated outside these volt-amperes; what is noted so is a slip.</summary>
    private const double Least = 1, Most = 100_000;

    /// <summary>The rating; nothing where none is noted or it cannot be.</summary>
    public static double? PlateVoltAmperes(this ControllerFact controller) =>
        controller.Rated is { VoltAmperes: >= Least and <= Most } rated ? rated.VoltAmperes : null;
}
