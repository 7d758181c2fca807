using Underturf.Networks.Wiring;
using Underturf.Networks.Wiring.HalfWave;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Translation;

namespace Underturf.Simulation;

/// <summary>Lays out the elements of a whole property: commons, conductors leg by leg, devices, coils, leaks, crossings.</summary>
internal sealed class TrueLayout
{
    private readonly TrueWiring truth;
    private readonly Dictionary<string, int> elements = new(StringComparer.Ordinal);
    private readonly bool direct;
    private readonly double henries;

    public TrueLayout(TrueWiring truth, double? reactanceOhms)
    {
        this.truth = truth;
        direct = reactanceOhms is null;
        henries = (reactanceOhms ?? 0) / (2 * Math.PI * truth.Book.Supply.Hertz);
        LayCommons();
        foreach (var path in truth.Paths)
        {
            LayConductors(path);
            LayEnds(path);
            LayTrouble(path.Station);
            Wiring.AddResistor("insulation", Node(path.Station, path.Legs[^1].To), Wiring.Node("earth"), truth.Numbers.LeakOhms(path.Station));
        }

        foreach (var fault in truth.Faults.Where(f => truth.Practice(f).Joins))
        {
            Wiring.AddResistor("crossing", Node(fault.Station!, fault.Place!), Node(fault.Other!, fault.Place!), 0);
        }
    }

    public DiodeNetwork Circuit { get; } = new(new WiringNetwork());

    public WiringNetwork Wiring => Circuit.Wiring;

    public static string NodeName(string station, string place) => $"{station}@{place}";

    public static string TerminalName(string station) => $"terminal {station}";

    public static string CommonName(string common) => $"common terminal {common}";

    public static string BranchName(TrueFault branch, int i) => $"{branch.Station} branch {i}";

    public int Element(string name) => elements[name];

    public int CommonNode(string common, string place) => Wiring.Node(CommonAt(common, place));

    private static string CommonAt(string common, string place) => $"common {common}@{place}";

    private int Node(string station, string place) => Wiring.Node(NodeName(station, place));

    /// <summary>Each common from its terminal through the sensor; those of one controller meet at its terminal unless they are lifted.</summary>
    private void LayCommons()
    {
        var joined = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var path in truth.Paths.DistinctBy(p => truth.CommonOf(p.Station)))
        {
            var common = truth.CommonOf(path.Station);
            var terminal = Wiring.Node(CommonName(common));
            var open = truth.Of(FaultScope.Sensor).Any(f => truth.Concerns(f, path.Station));
            Wiring.AddResistor("sensor loop", terminal, CommonStart(common), open ? double.PositiveInfinity : 0);
            if (!direct && !joined.TryAdd(path.Controller, terminal))
            {
                Wiring.AddResistor("common bar", joined[path.Controller], terminal, 0);
            }
        }
    }

    private int CommonStart(string common) => Wiring.Node($"common {common}@");

    private void LayConductors(StationPath path)
    {
        var (station, common) = (path.Station, truth.CommonOf(path.Station));
        var start = Start(station);
        foreach (var leg in path.Legs)
        {
            var to = truth.DeviceAt(station, leg.To) is null ? Node(station, leg.To) : BeforeDevice(station, leg.To);
            var near = leg.Parent < 0 ? start : Node(station, leg.From);
            Wire(NodeName(station, leg.To), near, to, leg, leg.StationSize, StationOhms(station, leg.To), truth.ContactsInside(leg.To).Where(c => c.Station == station), henries * SeriesCoils(station, leg.To));
            var name = CommonAt(common, leg.To);
            if (!elements.ContainsKey(name))
            {
                var back = leg.Parent < 0 ? CommonStart(common) : CommonNode(common, leg.From);
                var contacts = truth.ContactsInside(leg.To).Where(c => truth.CommonOf(c.Station!) == common);
                Wire(name, back, CommonNode(common, leg.To), leg, leg.CommonSize, CommonOhms(common, leg.To), contacts);
            }
        }
    }

    /// <summary>Where a station's conductor begins: at the terminal, or behind the controller's half of a device.</summary>
    private int Start(string station)
    {
        var terminal = Wiring.Node(TerminalName(station));
        if (truth.Faults.FirstOrDefault(f => f.Station == station && f.Device is { ControllerHalf: true }) is not { } device)
        {
            return terminal;
        }

        var start = Wiring.Node($"behind the diode of {station}");
        AddDiode(device.Device!, "controller diode", terminal, start, device.Device!.TakesPositive);
        return start;
    }

    private int BeforeDevice(string station, string place) => Wiring.Node($"{station}@{place} before the device");

    /// <summary>A stretch, in pieces where conductors touch inside it; by its name one finds the piece before the place where it ends.</summary>
    private void Wire(string name, int from, int to, Leg leg, WireSize size, double faultOhms, IEnumerable<TrueFault> contacts, double faultHenries = 0)
    {
        var ohms = truth.Numbers.LengthMetres(leg) * CopperWire.OhmsPerMetre(size, truth.Numbers.SoilKelvins);
        var (node, reached) = (from, 0.0);
        foreach (var contact in contacts.OrderBy(truth.ShareAlong))
        {
            var (next, share) = (Wiring.Node(Inside(name, contact)), truth.ShareAlong(contact));
            Wiring.AddResistor(Inside(name, contact), node, next, ohms * (share - reached));
            (node, reached) = (next, share);
        }

        var rest = (ohms * (1 - reached)) + truth.Book.Wire.SoundSpliceOhms + faultOhms;
        elements[name] = faultHenries > 0 ? Wiring.AddCoil(name, node, to, rest, faultHenries) : Wiring.AddResistor(name, node, to, rest);
    }

    private static string Inside(string stretch, TrueFault contact) => $"{stretch} where {contact.Station} touches";

    private double StationOhms(string station, string place) => truth.Faults
        .Where(f => f.Station == station && f.Place == place && truth.Practice(f).Scope is FaultScope.Conductor or FaultScope.Splice or FaultScope.Branch)
        .Sum(Ohms);

    /// <summary>Coils in series that somebody wired in at a place.</summary>
    private int SeriesCoils(string station, string place) => truth.Faults
        .Where(f => f.Station == station && f.Place == place)
        .Sum(f => truth.Practice(f).SeriesCoils is { } coils ? coils - 1 : 0);

    private double CommonOhms(string common, string place) => truth.Faults
        .Where(f => f.Place == place && (f.Common is null || f.Common == common))
        .Where(f => truth.Practice(f).Scope is FaultScope.CommonConductor or FaultScope.CommonSplice)
        .Sum(Ohms);

    private double Ohms(TrueFault fault)
    {
        var practice = truth.Practice(fault);
        return truth.IsWrongCommon(fault) && truth.WrongCommon(fault.Station!) is not null ? 0
            : practice.Open || practice.OtherCommon ? double.PositiveInfinity
            : practice.SeriesCoils is { } coils ? (coils - 1) * truth.Numbers.UsualCoilOhms
            : practice.SeriesOhms is not null ? fault.Amount
            : 0;
    }

    private void LayEnds(StationPath path)
    {
        foreach (var end in path.Valves)
        {
            LayCoil(path.Station, end);
        }

        foreach (var branch in truth.Of(FaultScope.Branch).Where(f => f.Station == path.Station))
        {
            LayBranches(branch, branch.Device is null ? Node(path.Station, branch.Place!) : LayDevice(branch));
        }
    }

    private void LayCoil(string station, ValveEnd end)
    {
        var ohms = truth.Numbers.CoilOhms($"{station}@{end.Place}", end.NotedOhms);
        var fault = truth.Of(FaultScope.Coil).FirstOrDefault(f => f.Station == station && f.Place == end.Place);
        var (share, open) = fault is null ? (1, false) : (truth.Practice(fault).CoilFactor is null ? 1 : fault.Amount, truth.Practice(fault).Open);
        var back = CommonNode(truth.WrongCommon(station) ?? truth.CommonOf(station), end.Place);
        AddCoil($"coil {station}@{end.Place}", Node(station, end.Place), back, open ? double.PositiveInfinity : ohms * share, share);
    }

    /// <returns>The node behind the diode of the further valves.</returns>
    private int LayDevice(TrueFault fault)
    {
        var (device, before) = (fault.Device!, BeforeDevice(fault.Station!, fault.Place!));
        var (own, other) = (Node(fault.Station!, fault.Place!), Wiring.Node($"{fault.Station}@{fault.Place} behind the device"));
        LayHalf(device, "own diode", before, own, device.OwnDiode, device.TakesPositive);
        LayHalf(device, "other diode", before, other, device.OtherDiode, !device.TakesPositive);
        return other;
    }

    private void LayHalf(TrueDevice device, string name, int before, int behind, bool there, bool takesPositive)
    {
        if (there)
        {
            AddDiode(device, name, before, behind, takesPositive);
        }
        else
        {
            Wiring.AddResistor(name, before, behind, 0);
        }
    }

    private void AddDiode(TrueDevice device, string name, int before, int behind, bool takesPositive)
    {
        var (anode, cathode) = takesPositive ? (before, behind) : (behind, before);
        Circuit.AddDiode(name, anode, cathode, device.JunctionAt(truth.Numbers.SoilKelvins), TrueDevice.SeriesOhms);
    }

    private void LayBranches(TrueFault branch, int from)
    {
        for (var i = 0; i < branch.MoreCoils; i++)
        {
            var name = BranchName(branch, i);
            var wire = 2 * truth.Numbers.BranchMetres(name) * CopperWire.OhmsPerMetre(WireSize.FromAwg(truth.Book.Wire.StationAwg), truth.Numbers.SoilKelvins);
            Wiring.AddResistor(name, from, Wiring.Node(name), wire);
            AddCoil($"coil {name}", Wiring.Node(name), CommonNode(truth.CommonOf(branch.Station!), branch.Place!), truth.Numbers.CoilOhms(name, null), 1);
        }
    }

    private void AddCoil(string name, int a, int b, double ohms, double share) =>
        elements[name] = Wiring.AddCoil(name, a, b, ohms, share * henries);

    private void LayTrouble(string station)
    {
        foreach (var leak in truth.Faults.Where(f => truth.Practice(f).EarthOhms is not null && f.Station == station))
        {
            Wiring.AddResistor("leak", Node(station, leak.Place!), Wiring.Node("earth"), leak.Amount);
        }

        foreach (var contact in truth.Faults.Where(f => truth.Practice(f).ToCommonOhms is not null && f.Station == station))
        {
            var (conductor, common) = (NodeName(station, contact.Place!), CommonAt(truth.CommonOf(station), contact.Place!));
            var (a, b) = truth.IsInside(contact) ? (Inside(conductor, contact), Inside(common, contact)) : (conductor, common);
            Wiring.AddResistor("contact", Wiring.Node(a), Wiring.Node(b), contact.Amount);
        }
    }
}
