using Underturf.Networks.Hydraulics;

namespace Underturf.Simulation;

/// <summary>A station as it really is: its valve, its lateral and what it waters with.</summary>
/// <param name="Faults">Ids of the practice book's faults that are really there.</param>
/// <param name="Coefficient">Of its valve, m3/s at 1 Pa, as it opens.</param>
/// <param name="RegulatedPascals">What its valve holds behind it; null for nothing.</param>
/// <param name="LateralMetres">Inside diameter of its lateral.</param>
/// <param name="OutletFactor">k of all its outlets together, m3/s at 1 Pa to the power 0.5.</param>
/// <param name="Hole">k of what is broken; 0 for nothing.</param>
/// <param name="LeakHole">k of what its shut valve lets through; 0 for nothing.</param>
internal sealed record TrueStation(
    string Id,
    string Valve,
    int Branch,
    IReadOnlyList<string> Faults,
    double Coefficient,
    double? RegulatedPascals,
    double LateralMetres,
    double OutletFactor,
    double Hole,
    double LeakHole,
    double OpeningSeconds,
    double ClosingSeconds)
{
    public TrueStation? Sound { get; init; }

    public TrueSlope Slope { get; init; } = new(0, 0);

    /// <summary>How many outlets it waters with.</summary>
    public int Outlets { get; init; } = 1;
}

/// <summary>How a lateral lies, over the point of connection: its valve and its upper outlets, and its lower ones.</summary>
internal readonly record struct TrueSlope(double TopMetres, double LowMetres)
{
    public double MiddleMetres => (TopMetres + LowMetres) / 2;
}

/// <summary>
/// A property's water as it really is: a street, a mainline with two branches that can be shut, stations, holes. Flows are those of a pipe network
/// with all of it in, so that nothing adds up as the notebook's belief has it: what leaks elsewhere leaks less while a station draws the pressure down.
/// </summary>
/// <param name="Faults">Of the supply and of the meter, by the practice book's ids.</param>
/// <param name="MainHole">k of a leak of the mainline; 0 for none.</param>
/// <param name="MainAt">Where that is: 0 before the branches, else the branch.</param>
/// <param name="Creep">What the meter shows that does not run, m3/s.</param>
/// <param name="PassesShut">k of what each isolation valve lets through when it is shut; 0 for one that holds.</param>
internal sealed record TrueWater(
    IReadOnlyList<TrueStation> Stations,
    IReadOnlyList<string> Faults,
    double StaticMetres,
    double StreetFactor,
    double MainHole,
    int MainAt,
    double Creep,
    IReadOnlyList<double> PassesShut)
{
    private const double MainMetres = 0.0525;

    private static readonly Water Fluid = new(288.15);

    /// <param name="running">The station that runs; null for none.</param>
    /// <param name="shut">Isolation valves (i1, i2) and station valves that stand shut by hand.</param>
    public TrueFlow Solve(TrueStation? running, IReadOnlySet<string> shut)
    {
        var network = new PipeNetwork(Fluid);
        var poc = network.AddSupply("poc", 0, new SupplyCurve(StaticMetres, StreetFactor));
        var tee = network.AddJunction("tee", 0);
        network.Add(Main("poc-tee", poc, tee, 40));
        int[] nodes = [tee, Branch(network, tee, 1, shut), Branch(network, tee, 2, shut)];
        if (MainHole > 0)
        {
            network.AddOutlet("main", nodes[MainAt], new Outlet(MainHole, 0.5));
        }

        foreach (var leaking in Stations.Where(s => s.LeakHole > 0 && s != running && s.Id != running?.Id && !shut.Contains(s.Valve)))
        {
            network.AddOutlet(leaking.Id, nodes[leaking.Branch], new Outlet(leaking.LeakHole, 0.5));
        }

        var end = running is null ? poc : Lateral(network, nodes[running.Branch], running, shut);
        var solved = network.Solve();
        return solved.Succeeded
            ? new TrueFlow(Math.Max(0, solved.Value.SuppliedCubicMetresPerSecond) + Creep, solved.Value.PressurePascals(poc) ?? 0, solved.Value.PressurePascals(end) ?? 0)
            : throw new InvalidOperationException(solved.Problem!.ToString());
    }

    private static PipeElement Main(string name, int from, int to, double metres) => PipeElement.Pipe(name, from, to, metres, MainMetres, Friction.HazenWilliams(140));

    /// <summary>An isolation valve that does not hold lets through what a hole of the same size would, and so is a valve nearly shut.</summary>
    private int Branch(PipeNetwork network, int tee, int number, IReadOnlySet<string> shut)
    {
        var (up, down) = (network.AddJunction($"i{number}", 0), network.AddJunction($"branch {number}", 0));
        network.Add(Main($"tee-i{number}", tee, up, 25));
        var (closed, passes) = (shut.Contains($"i{number}"), PassesShut[number - 1]);
        network.Add(closed && passes > 0
            ? PipeElement.Valve($"i{number}", up, down, new FlowCoefficient(passes), Fluid, isClosed: false)
            : PipeElement.Isolation($"i{number}", up, down, MainMetres, 0.3, closed));
        return down;
    }

    private static int Lateral(PipeNetwork network, int from, TrueStation station, IReadOnlySet<string> shut)
    {
        var (behind, end) = (network.AddJunction("behind", station.Slope.TopMetres), network.AddJunction("end", station.Slope.MiddleMetres));
        network.Add(PipeElement.Valve(station.Valve, from, behind, new FlowCoefficient(Math.Max(station.Coefficient, 1e-9)), Fluid, shut.Contains(station.Valve) || station.Coefficient <= 0, station.RegulatedPascals));
        network.Add(PipeElement.Pipe("lateral", behind, end, 20, station.LateralMetres, Friction.HazenWilliams(140)));
        network.AddOutlet("outlets", end, new Outlet(station.OutletFactor, 0.5));
        if (station.Hole > 0)
        {
            network.AddOutlet("hole", end, new Outlet(station.Hole, 0.5));
        }

        return end;
    }
}

/// <summary>What really flows and stands.</summary>
/// <param name="Meter">What goes through the meter, m3/s, its creeping counted in.</param>
internal sealed record TrueFlow(double Meter, double SupplyPascals, double OutletPascals);
