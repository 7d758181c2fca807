using Underturf.Property;

namespace Underturf.Reasoning.Identification;

/// <summary>What a wire from a controller is.</summary>
internal enum WireRole
{
    Station,
    Common,
    Loose,
}

/// <summary>A wire that leaves a controller.</summary>
/// <param name="Id">Of the station, the controller (its common) or the loose end there.</param>
/// <param name="Also">Ids of conductor ends seen at the controller that are this wire.</param>
/// <param name="Name">"station 12", "common", "end 4 at controller A".</param>
/// <param name="Short">A station's number; the name of anything else.</param>
/// <param name="Colours">Colours noted of it at the controller, in small letters.</param>
/// <param name="Passes">Chance that it is among the ends of the place, before anything was touched.</param>
/// <param name="Ohms">Ohms of the one conductor to the place, and the standard deviation of their logarithm.</param>
internal sealed record Wire(
    string Id, IReadOnlyList<string> Also, string Name, string Short, string Controller, WireRole Role, IReadOnlyList<string> Colours, IReadOnlyList<string> Gauges, double Passes, double Ohms, double LogSpread);

/// <summary>Conductor ends at one place that nobody may have named, and the wires that they may be.</summary>
/// <param name="Ends">Ends joined at the place are one.</param>
internal sealed record Bundle(string Place, IReadOnlyList<Joint> Ends, IReadOnlyList<Wire> Wires)
{
    /// <summary>The row of an end's id, or -1.</summary>
    public int RowOf(string end) => Ends.Index().Where(e => e.Item.Ends.Any(c => c.Id == end)).Select(e => e.Index).FirstOrDefault(-1);

    /// <summary>The column of a wire's id, or -1.</summary>
    public int ColumnOf(string id) => Wires.Index().Where(w => w.Item.Id == id || w.Item.Also.Contains(id)).Select(w => w.Index).FirstOrDefault(-1);

    /// <summary>How many wires there are, or ends.</summary>
    public int Count(bool wires) => wires ? Wires.Count : Ends.Count;

    /// <summary>The column of a wire's id or the row of an end's, or -1.</summary>
    public int At(string id, bool isWire) => isWire ? ColumnOf(id) : RowOf(id);

    public string IdOf(int at, bool isWire) => isWire ? Wires[at].Id : Ends[at].Ends[0].Id;

    public string NameOf(int at, bool isWire) => isWire ? Wires[at].Name : Ends[at].Ends[0].Name;

    public bool[] Commons => [.. Wires.Select(w => w.Role == WireRole.Common)];
}
