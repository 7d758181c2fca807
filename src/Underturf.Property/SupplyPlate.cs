using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Property;

/// <summary>What a controller's plate says of its supply and its relay, where it can be believed; what no controller has is a slip of the pen.</summary>
public static class SupplyPlate
{
    private const double LeastVoltAmperes = 1, MostVoltAmperes = 100_000;
    private const double LeastVolts = 1, MostVolts = 1000;
    private const double LeastHertz = 1, MostHertz = 1000;
    private const double LeastRelayOhms = 0.1, MostRelayOhms = 1e6;

    /// <summary>The rating; nothing where none is noted or it cannot be.</summary>
    public static double? PlateVoltAmperes(this ControllerFact controller) =>
        controller.Rated is { VoltAmperes: >= LeastVoltAmperes and <= MostVoltAmperes } rated ? rated.VoltAmperes : null;

    public static double? PlateVolts(this ControllerFact controller) =>
        controller.Supply is { Volts: >= LeastVolts and <= MostVolts } supply ? supply.Volts : null;

    public static double? PlateHertz(this ControllerFact controller) =>
        controller.Frequency is { Hertz: >= LeastHertz and <= MostHertz } frequency ? frequency.Hertz : null;

    /// <summary>The ohms noted for a pump relay; nothing where none are noted or they cannot be.</summary>
    public static double? PlateOhms(this PumpRelay relay) =>
        relay.Ohms is { Ohms: >= LeastRelayOhms and <= MostRelayOhms } ohms ? ohms.Ohms : null;

    /// <summary>Each field that cannot be, by itself.</summary>
    internal static IEnumerable<Problem> Problems(string id, ControllerFact controller)
    {
        var fields = new (bool IsWrong, string What, string Range)[]
        {
            (controller.Supply is not null && controller.PlateVolts() is null, "supply", $"{LeastVolts} V to {MostVolts} V"),
            (controller.Frequency is not null && controller.PlateHertz() is null, "frequency", $"{LeastHertz} Hz to {MostHertz} Hz"),
            (controller.Rated is not null && controller.PlateVoltAmperes() is null, "rated", $"{LeastVoltAmperes} VA to {MostVoltAmperes} VA"),
            (controller.PumpRelay is { Ohms: not null } relay && relay.PlateOhms() is null, "pumpRelay", $"{LeastRelayOhms} ohm to {MostRelayOhms} ohm"),
        };
        return fields.Where(f => f.IsWrong).Select(f => new Problem(
            $"controller '{id}', field '{f.What}'",
            $"is not within {f.Range}, so no controller has it; the practice book's usual value stands in",
            "Read it again, or its plate, and note the controller with what it says"));
    }
}
