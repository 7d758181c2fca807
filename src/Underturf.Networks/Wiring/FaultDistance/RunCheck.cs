using Underturf.Quantities;

namespace Underturf.Networks.Wiring.FaultDistance;

/// <summary>What must hold of a run and of its far end before a distance is computed.</summary>
internal static class RunCheck
{
    private const double LeastKelvins = 100;
    private const double MostKelvins = 500;

    internal static Problem? Check(Run run)
    {
        if (run.Stretches.Count == 0)
        {
            return new Problem("run", "has no stretch", "Give at least one length with its gauge");
        }

        return Spread("temperature of the run", run.TemperatureSpreadKelvins)
            ?? Spread("capacitance of the run", run.CapacitanceSpreadShare)
            ?? run.Stretches.Select(Check).FirstOrDefault(problem => problem is not null);
    }

    internal static Problem? FarEndIs(FarEnd needed, FarEnd found, string place) => found == needed
        ? null
        : new Problem(
            place,
            found == FarEnd.Loaded
                ? "the far end is still on its coil or splice, and other paths share the current"
                : $"the far end is {Say(found)}",
            needed == FarEnd.Free
                ? "Lift the conductor from its splice at the far end and let it touch nothing"
                : "Lift both conductors from their splices at the far end, join them to each other, and read again");

    private static Problem? Check(Stretch stretch)
    {
        var place = $"stretch '{stretch.Name}'";
        if (!(stretch.LengthMetres > 0 && double.IsFinite(stretch.LengthMetres)))
        {
            return new Problem(place, $"{stretch.LengthMetres} m is no length", "Give a positive number of metres");
        }

        if (!IsSize(stretch.Size) || !IsSize(stretch.ReturnSize))
        {
            return new Problem(place, "has a conductor without a size", "Give the gauge of the faulty conductor and of the return");
        }

        if (!(stretch.TemperatureKelvins is >= LeastKelvins and <= MostKelvins))
        {
            return new Problem(place, $"{stretch.TemperatureKelvins} K is no temperature of buried copper", "Give kelvins: 20 C is 293.15 K");
        }

        return Spread(place, stretch.LengthSpreadShare)
            ?? (stretch.FaradsPerMetre >= 0 && double.IsFinite(stretch.FaradsPerMetre)
                ? null
                : new Problem(place, $"{stretch.FaradsPerMetre} F/m is no capacitance", "Give zero where it is unknown, else a positive number"));
    }

    private static Problem? Spread(string place, double spread) => double.IsFinite(spread) && spread >= 0
        ? null
        : new Problem(place, $"{spread} is no standard deviation", "Give zero or a positive number");

    private static bool IsSize(WireSize size) => double.IsFinite(size.DiameterMetres) && size.DiameterMetres > 0;

    private static string Say(FarEnd end) => end == FarEnd.Free ? "free" : "joined to the return conductor";
}
