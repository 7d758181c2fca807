using Underturf.Networks.Wiring;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Translation;

namespace Underturf.Simulation;

/// <summary>
/// The whole property as one network, faults and all: every station, every coil, one common. Reasoning looks at one station at a time with
/// one fault; readings taken here do not share that shortcut.
/// </summary>
internal sealed class TrueNetwork
{
    private readonly WiringNetwork network = new();
    private readonly Dictionary<string, int> conductors = new(StringComparer.Ordinal);
    private readonly PracticeBook book;
    private readonly TrueNumbers numbers;
    private readonly IReadOnlyList<TrueFault> faults;
    private readonly bool direct;
    private readonly double reactanceOhms;
    private readonly double hertz;

    /// <summary>Lays the property out for direct current, or for alternating current with the coils' reactance.</summary>
    public TrueNetwork(IReadOnlyList<StationPath> paths, PracticeBook book, TrueNumbers numbers, IReadOnlyList<TrueFault> faults, double? reactanceOhms)
    {
        this.book = book;
        this.numbers = numbers;
        this.faults = faults;
        direct = reactanceOhms is null;
        this.reactanceOhms = reactanceOhms ?? 0;
        hertz = book.Supply.Hertz;
        Common = network.Node("common terminal");
        var sensor = Of(FaultScope.Sensor).Any() ? double.PositiveInfinity : 0;
        network.AddResistor("sensor loop", Common, network.Node("common@"), sensor);
        foreach (var path in paths)
        {
            Lay(path);
        }

        Cross();
    }

    public int Common { get; }

    public WiringNetwork Network => network;

    public int Terminal(string station) => network.Node(TerminalName(station));

    public int Node(string station, string place) => network.Node($"{station}@{place}");

    public int CommonNode(string place) => network.Node($"common@{place}");

    public int Earth => network.Node("earth");

    /// <summary>The network with the coil at a place bridged.</summary>
    public WiringNetwork Bridged(string station, string place) => network.With(conductors[$"coil {station}@{place}"], 0);

    public double CoilOhms(string station, string place) => network.ElementAt(conductors[$"coil {station}@{place}"]).Ohms;

    /// <summary>The terminal on which a station's conductor really sits: another's where two are swapped.</summary>
    private string TerminalName(string station)
    {
        var swap = faults.FirstOrDefault(f => Practice(f).Swaps && (f.Station == station || f.Other == station));
        return $"terminal {(swap is null ? station : swap.Station == station ? swap.Other : swap.Station)}";
    }

    private void Lay(StationPath path)
    {
        foreach (var leg in path.Legs)
        {
            var from = leg.Parent < 0 ? network.Node($"terminal {path.Station}") : Node(path.Station, leg.From);
            Wire($"{path.Station}@{leg.To}", from, Node(path.Station, leg.To), leg, leg.StationSize, StationOhms(path.Station, leg.To));
            if (!conductors.ContainsKey($"common@{leg.To}"))
            {
                var back = network.Node(leg.Parent < 0 ? "common@" : $"common@{leg.From}");
                Wire($"common@{leg.To}", back, CommonNode(leg.To), leg, leg.CommonSize, CommonOhms(leg.To));
            }
        }

        foreach (var end in path.Valves)
        {
            LayCoil(path.Station, end);
        }

        foreach (var branch in Of(FaultScope.Branch).Where(f => f.Station == path.Station))
        {
            LayBranches(branch);
        }

        foreach (var leak in faults.Where(f => Practice(f).EarthOhms is not null && f.Station == path.Station))
        {
            network.AddResistor("leak", Node(path.Station, leak.Place!), Earth, leak.Amount);
        }

        foreach (var contact in faults.Where(f => Practice(f).ToCommonOhms is not null && f.Station == path.Station))
        {
            network.AddResistor("contact", Node(path.Station, contact.Place!), CommonNode(contact.Place!), contact.Amount);
        }

        network.AddResistor("insulation", Node(path.Station, path.Legs[^1].To), Earth, numbers.LeakOhms(path.Station));
    }

    private void Wire(string name, int from, int to, Leg leg, WireSize size, double faultOhms)
    {
        var ohms = numbers.LengthMetres(leg) * CopperWire.OhmsPerMetre(size, numbers.SoilKelvins);
        conductors[name] = network.AddResistor(name, from, to, ohms + book.Wire.SoundSpliceOhms + faultOhms);
    }

    private double StationOhms(string station, string place) => faults
        .Where(f => f.Station == station && f.Place == place && Practice(f).Scope is FaultScope.Conductor or FaultScope.Splice or FaultScope.Branch)
        .Sum(Ohms);

    private double CommonOhms(string place) => faults
        .Where(f => f.Place == place && Practice(f).Scope is FaultScope.CommonConductor or FaultScope.CommonSplice)
        .Sum(Ohms);

    private double Ohms(TrueFault fault)
    {
        var practice = Practice(fault);
        return practice.Open ? double.PositiveInfinity
            : practice.SeriesCoils is { } coils ? (coils - 1) * numbers.UsualCoilOhms
            : practice.SeriesOhms is not null || (practice.DcSeriesOhms is not null && direct) ? fault.Amount
            : 0;
    }

    private void LayCoil(string station, ValveEnd end)
    {
        var ohms = numbers.CoilOhms($"{station}@{end.Place}", end.NotedOhms);
        var fault = Of(FaultScope.Coil).FirstOrDefault(f => f.Station == station && f.Place == end.Place);
        var (share, open) = fault is null ? (1, false) : (Practice(fault).CoilFactor is null ? 1 : fault.Amount, Practice(fault).Open);
        AddCoil($"coil {station}@{end.Place}", Node(station, end.Place), CommonNode(end.Place), open ? double.PositiveInfinity : ohms * share, share);
    }

    private void LayBranches(TrueFault branch)
    {
        for (var i = 0; i < branch.MoreCoils; i++)
        {
            var name = $"{branch.Station} branch {i}";
            var wire = 2 * numbers.BranchMetres(name) * CopperWire.OhmsPerMetre(WireSize.FromAwg(book.Wire.StationAwg), numbers.SoilKelvins);
            network.AddResistor(name, Node(branch.Station!, branch.Place!), network.Node(name), wire);
            AddCoil($"coil {name}", network.Node(name), CommonNode(branch.Place!), numbers.CoilOhms(name, null), 1);
        }
    }

    private void AddCoil(string name, int a, int b, double ohms, double share) =>
        conductors[name] = network.AddCoil(name, a, b, ohms, direct ? 0 : share * reactanceOhms / (2 * Math.PI * hertz));

    private void Cross()
    {
        foreach (var fault in faults.Where(f => Practice(f).Joins))
        {
            network.AddResistor("crossing", Node(fault.Station!, fault.Place!), Node(fault.Other!, fault.Place!), 0);
        }
    }

    private IEnumerable<TrueFault> Of(FaultScope scope) => faults.Where(f => Practice(f).Scope == scope);

    private FaultPractice Practice(TrueFault fault) => book.Faults.First(f => f.Id == fault.Fault);
}
