using Underturf.Quantities;

namespace Underturf.Networks.Hydraulics.Lumped;

/// <summary>A number as it was read, in SI, and the standard deviation of its error.</summary>
public readonly record struct Reading(double Si, double SpreadSi);

/// <summary>Flow and gauge of a station that ran alone; without a gauge the supply's own curve says the pressure then.</summary>
/// <param name="Flow">m3/s.</param>
/// <param name="Gauge">Pa at the point of connection; null where nobody looked.</param>
public sealed record LumpedStation(string Name, Reading Flow, Reading? Gauge = null);

/// <summary>What the gauge and the meter at the point of connection show.</summary>
/// <param name="Pressure">Pa.</param>
/// <param name="Flow">m3/s in all.</param>
/// <param name="Each">m3/s of each station that runs, in the order asked for.</param>
public sealed record LumpedAnswer(Reading Pressure, Reading Flow, IReadOnlyList<Reading> Each);

/// <summary>
/// A property of which only the point of connection is known: static pressure, one running reading, and a flow for each station. The supply sags
/// as friction does, each station is one nozzle behind the gauge, heights left out. Enough for what a meter and a gauge can tell.
/// </summary>
/// <param name="Static">Pa with nothing running.</param>
/// <param name="Running">Pa with <paramref name="RunningFlow"/> running.</param>
/// <param name="RunningFlow">m3/s.</param>
/// <param name="AllOff">m3/s on the meter with all stations off, a leak that follows the pressure too; null for none.</param>
public sealed record LumpedProperty(Water Water, Reading Static, Reading Running, Reading RunningFlow, IReadOnlyList<LumpedStation> Stations, Reading? AllOff = null)
{
    /// <summary>Pressure and flows with some stations running together; each reading's error counts once, all as independent.</summary>
    /// <param name="running">Numbers of stations, in the order of <see cref="Stations"/>.</param>
    /// <returns>The answer with its spread, or the reading that contradicts another.</returns>
    public Outcome<LumpedAnswer> With(IReadOnlyList<int> running)
    {
        var readings = Readings();
        double[] values = [.. readings.Select(r => r.Si)];
        var middle = Solve(values, running);
        if (!middle.Succeeded)
        {
            return middle.Problem!;
        }

        var variances = new double[middle.Value.Length];
        for (var r = 0; r < values.Length; r++)
        {
            if (readings[r].SpreadSi > 0)
            {
                Add(variances, middle.Value, Moved(values, r, readings[r].SpreadSi, running), Moved(values, r, -readings[r].SpreadSi, running));
            }
        }

        Reading[] all = [.. middle.Value.Select((value, k) => new Reading(value, Math.Sqrt(variances[k])))];
        return new LumpedAnswer(all[0], all[1], all[2..]);
    }

    private Reading[] Readings() =>
        [Static, Running, RunningFlow, AllOff ?? default, .. Stations.SelectMany(s => new[] { s.Flow, s.Gauge ?? default })];

    private double[]? Moved(double[] values, int reading, double by, IReadOnlyList<int> running)
    {
        double[] moved = [.. values];
        moved[reading] += by;
        var solved = Solve(moved, running);
        return solved.Succeeded ? solved.Value : null;
    }

    /// <summary>Half the way between both sides, or the way to the one that can be, squared.</summary>
    private static void Add(double[] variances, double[] middle, double[]? up, double[]? down)
    {
        for (var k = 0; k < middle.Length; k++)
        {
            var change = up is not null && down is not null ? (up[k] - down[k]) / 2 : ((up ?? down ?? middle)[k] - middle[k]);
            variances[k] += change * change;
        }
    }

    /// <returns>Pressure, flow in all, and the flow of each that runs.</returns>
    private Outcome<double[]> Solve(double[] values, IReadOnlyList<int> running)
    {
        var curve = SupplyCurve.FromTwoReadings(Water, values[0], values[1], values[2]);
        if (!curve.Succeeded)
        {
            return curve.Problem!;
        }

        var network = new PipeNetwork(Water);
        var gauge = network.AddSupply("supply", 0, curve.Value);
        foreach (var station in running)
        {
            var nozzle = Nozzle(values, station, curve.Value);
            if (!nozzle.Succeeded)
            {
                return nozzle.Problem!;
            }

            network.AddOutlet(Stations[station].Name, gauge, nozzle.Value);
        }

        if (values[3] > 0)
        {
            network.AddOutlet("leak", gauge, Outlet.At(values[3], values[0], 0.5));
        }

        var solved = network.Solve();
        return solved.Succeeded
            ? new[] { solved.Value.PressurePascals(gauge)!.Value, solved.Value.SuppliedCubicMetresPerSecond }
                .Concat(running.Select((_, k) => solved.Value.OutletCubicMetresPerSecond(k))).ToArray()
            : solved.Problem!;
    }

    private Outcome<Outlet> Nozzle(double[] values, int station, SupplyCurve curve)
    {
        var (flow, gauge) = (values[4 + (2 * station)], values[5 + (2 * station)]);
        var pascals = Stations[station].Gauge is not null
            ? gauge
            : (curve.StaticMetres - (curve.ResistancePerFlowFactor * Math.Pow(Math.Max(flow, 0), HazenWilliams.FlowExponentNumber))) * Water.PascalsPerMetre;
        return flow > 0 && pascals > 0
            ? Outlet.At(flow, pascals, 0.5)
            : new Problem($"station '{Stations[station].Name}'", "ran with a flow that the supply cannot have given", "Read the station's flow and the supply's two pressures again; one of them has a slip of unit or point");
    }
}
