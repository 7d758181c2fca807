using Underturf.FieldLog;
using Underturf.Networks.Hydraulics;
using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>
/// What lies behind one valve of a station, as far as it is noted: its pipes, its outlets and their heights. Where no pipe is noted, outlets of which the height is
/// known hang on one pipe down the slope, with as many metres for each as is usual.
/// </summary>
internal sealed class Lateral
{
    private readonly WaterCase owner;
    private readonly string root;
    private readonly Dictionary<string, PipeFact> pipes = new(StringComparer.Ordinal);
    private readonly HashSet<string> things = new(StringComparer.Ordinal);

    /// <param name="root">Id of the valve; of the station where nobody has found one.</param>
    /// <param name="alone">The station has no other valve, so that all its outlets are on this lateral.</param>
    public Lateral(WaterCase owner, string station, string root, bool alone)
    {
        (this.owner, this.root, Station) = (owner, root, station);
        Follow();
        var all = View.Outlets.Where(o => View.Identity.Of(o.Value.Station) == station).OrderBy(o => o.Key, StringComparer.Ordinal).ToList();
        Outlets = [.. all.Where(o => alone || (FittingOf(o.Value) is { } on && things.Contains(on))).Select(o => new LateralOutlet(o.Key, o.Value, FittingOf(o.Value) is { } on && things.Contains(on) ? on : null, HeightOf(o.Key, o.Value)))];
    }

    public string Station { get; }

    public IReadOnlyList<LateralOutlet> Outlets { get; }

    /// <summary>Whether lengths or bores are those that are usual.</summary>
    public bool IsReckoned => pipes.Values.Any(p => PipeLengths.Metres(View, p) is not > 0 || PipeBores.Metres(owner.Water, p) is null) || Strays.Count() > 1;

    /// <summary>Whether heights are noted of two things at least: one alone tells of no slope.</summary>
    public bool HasSlope => things.Select(NotedHeight).Concat(Outlets.Select(o => o.Fitting is null ? o.Metres : owner.Heights.OfOutlet(o.Id))).OfType<double>().Take(2).Count() == 2;

    private PropertyView View => owner.View;

    private LowHeadPractice Book => owner.Water.LowHead;

    /// <summary>Outlets on no pipe that is noted, the highest first.</summary>
    private IEnumerable<LateralOutlet> Strays => Outlets.Where(o => o.Fitting is null && o.Metres is not null).OrderByDescending(o => o.Metres);

    /// <summary>The lateral as a network of its own, its valve shut: with the least that can stand in it, or the most.</summary>
    /// <returns>The network, the node behind the valve, and the outlet of each number.</returns>
    public (PipeNetwork Network, int Behind, IReadOnlyList<LateralOutlet> Outlets) Network(bool most)
    {
        var network = new PipeNetwork(owner.Fluid);
        var heights = new LateralHeights(things, pipes.Values.Select(p => (View.Identity.Of(p.From), View.Identity.Of(p.To))), Known(), most);
        var nodes = things.ToDictionary(t => t, t => network.AddJunction(View.Name(t), heights.Of(t)), StringComparer.Ordinal);
        foreach (var (id, pipe) in pipes)
        {
            network.Add(Pipe(View.Name(id), nodes[View.Identity.Of(pipe.From)], nodes[View.Identity.Of(pipe.To)], PipeLengths.Metres(View, pipe), PipeBores.Metres(owner.Water, pipe), most));
        }

        var placed = new List<LateralOutlet>();
        foreach (var outlet in Outlets.Where(o => o.Metres is not null && o.Fitting is not null))
        {
            Place(network, outlet, network.Nodes[nodes[outlet.Fitting!]].ElevationMetres == outlet.Metres ? nodes[outlet.Fitting!] : Riser(network, outlet, nodes[outlet.Fitting!]), placed);
        }

        Hang(network, nodes[root], placed, most);
        return (network, nodes[root], placed);
    }

    /// <summary>Down the slope from the valve: the pipe of each outlet lies between it and the next lower one.</summary>
    private void Hang(PipeNetwork network, int behind, List<LateralOutlet> placed, bool most)
    {
        var from = -1;
        var metres = 0.0;
        foreach (var outlet in Strays)
        {
            var node = network.AddJunction(outlet.Id, outlet.Metres!.Value);
            var above = from < 0 && NotedHeight(root) > outlet.Metres;
            network.Add(from >= 0 ? Pipe(outlet.Id, from, node, metres, null, most) : above ? Pipe(outlet.Id, behind, node, Spacing(most), null, most) : Link(outlet.Id, behind, node));
            Place(network, outlet, node, placed);
            (from, metres) = (node, outlet.Fact.Count * Spacing(most));
        }
    }

    private void Place(PipeNetwork network, LateralOutlet outlet, int node, List<LateralOutlet> placed)
    {
        if (OutletLaw.Of(owner.Water)(outlet.Fact) is { } law)
        {
            network.AddOutlet(outlet.Id, node, Outlet.At(law.Count * law.CubicMetresPerSecond, law.Pascals, law.Exponent));
            placed.Add(outlet);
        }
    }

    private static int Riser(PipeNetwork network, LateralOutlet outlet, int fitting)
    {
        var node = network.AddJunction(outlet.Id, outlet.Metres!.Value);
        network.Add(Link(outlet.Id, fitting, node));
        return node;
    }

    /// <summary>Holds nothing.</summary>
    private static PipeElement Link(string name, int from, int to) => new(name, PipeElementKind.Pipe, from, to);

    private PipeElement Pipe(string name, int from, int to, double? metres, double? bore, bool most) => new(name, PipeElementKind.Pipe, from, to)
    {
        LengthMetres = metres is > 0 and var length ? length : Spacing(most),
        InsideDiameterMetres = bore ?? ((most ? Book.BoreMillimetresMost : Book.BoreMillimetresLeast) / 1000),
    };

    private double Spacing(bool most) => most ? Book.SpacingMetresMost : Book.SpacingMetresLeast;

    /// <summary>Heights of the lateral's things; one that nobody noted is as high as the only outlets on it.</summary>
    private Dictionary<string, double> Known()
    {
        var known = things.Select(t => (Thing: t, Height: NotedHeight(t))).Where(t => t.Height is not null).ToDictionary(t => t.Thing, t => t.Height!.Value, StringComparer.Ordinal);
        foreach (var on in Outlets.Where(o => o.Fitting is not null && o.Metres is not null).GroupBy(o => o.Fitting!).Where(g => !known.ContainsKey(g.Key)))
        {
            known[on.Key] = on.Min(o => o.Metres!.Value);
        }

        return known;
    }

    /// <summary>Pipes from the valve on, away from the mainline.</summary>
    private void Follow()
    {
        things.Add(root);
        var queue = new Queue<string>([root]);
        while (queue.TryDequeue(out var at))
        {
            foreach (var (id, pipe) in View.Pipes.Where(p => !pipes.ContainsKey(p.Key)))
            {
                var (from, to) = (View.Identity.Of(pipe.From), View.Identity.Of(pipe.To));
                var other = from == at ? to : to == at && at != root ? from : null;
                if (other is null || other == at || View.Valves.ContainsKey(other) || View.WaterSupplies.ContainsKey(other))
                {
                    continue;
                }

                pipes[id] = pipe;
                if (things.Add(other))
                {
                    queue.Enqueue(other);
                }
            }
        }
    }

    private string? FittingOf(OutletFact outlet) => outlet.Fitting is { } fitting ? View.Identity.Of(fitting) : null;

    /// <summary>Its own height, or that of the fitting it is on.</summary>
    private double? HeightOf(string id, OutletFact outlet) => owner.Heights.OfOutlet(id) ?? (FittingOf(outlet) is { } on ? NotedHeight(on) : null);

    private double? NotedHeight(string id) => owner.Heights.Noted(id);
}

/// <summary>Outlets of one kind on a lateral.</summary>
/// <param name="Fitting">What they are on; null where no pipe that is noted leads to it.</param>
/// <param name="Metres">How high they are; null where nobody noted it.</param>
internal sealed record LateralOutlet(string Id, OutletFact Fact, string? Fitting, double? Metres);
