using Underturf.Reasoning;

namespace Underturf.Papers;

/// <summary>Where each place of a circuit is drawn: how many stretches from the controller, and in which lane, so that no two branches cross.</summary>
internal sealed class CircuitTree
{
    private readonly Dictionary<string, (int Depth, int Lane)> seats = new(StringComparer.Ordinal);
    private readonly ILookup<string, string> onward;

    private CircuitTree(CircuitAnswer circuit)
    {
        onward = circuit.Runs.ToLookup(r => r.From, r => r.To, StringComparer.Ordinal);
        Seat(circuit.Controller, 0);
    }

    public int Depth { get; private set; }

    public int Lanes { get; private set; } = 1;

    public IEnumerable<string> Places => seats.Keys;

    public static CircuitTree Of(CircuitAnswer circuit) => new(circuit);

    public int DepthOf(string place) => seats.GetValueOrDefault(place).Depth;

    public int LaneOf(string place) => seats.GetValueOrDefault(place).Lane;

    /// <summary>The first branch goes straight on; each further one takes a new lane.</summary>
    private void Seat(string place, int depth)
    {
        if (!seats.TryAdd(place, (depth, Lanes - 1)))
        {
            return;
        }

        Depth = Math.Max(Depth, depth);
        var first = true;
        foreach (var next in onward[place].Distinct())
        {
            Lanes += first || seats.ContainsKey(next) ? 0 : 1;
            first = false;
            Seat(next, depth + 1);
        }
    }
}
