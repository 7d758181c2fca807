using Underturf.Quantities;

namespace Underturf.Networks.Hydraulics;

/// <summary>
/// Pipes, valves and what else water flows through, between junctions, supplies and outlets. Built by adding, then varied cheaply: a variant
/// shares the nodes and, as long as nothing is added, the order of elimination.
/// </summary>
public sealed class PipeNetwork(Water water)
{
    private List<PipeNode> nodes = [];
    private List<PlacedOutlet> outlets = [];
    private PatternCache patterns = new();
    private bool shared;

    /// <summary>All that flows through it.</summary>
    public Water Water { get; } = water;

    public IReadOnlyList<PipeNode> Nodes => nodes;

    public IReadOnlyList<PipeElement> Elements => Flowing;

    public IReadOnlyList<PlacedOutlet> Outlets => outlets;

    internal PatternCache Patterns => patterns;

    internal List<PipeElement> Flowing { get; private set; } = [];

    /// <returns>The node's number, as of all Add methods of nodes: 0, 1, 2 in the order of adding.</returns>
    public int AddJunction(string name, double elevationMetres, double withdrawnCubicMetresPerSecond = 0) =>
        Add(new PipeNode(name, elevationMetres, IsReservoir: false, withdrawnCubicMetresPerSecond));

    /// <summary>A body of water that holds its head.</summary>
    public int AddReservoir(string name, double headMetres) => Add(new PipeNode(name, headMetres, IsReservoir: true, 0));

    /// <summary>A point of connection: a junction behind a body of water and the losses on the way to it.</summary>
    /// <param name="gaugeElevationMetres">Where its pressures were read.</param>
    public int AddSupply(string name, double gaugeElevationMetres, SupplyCurve curve)
    {
        var street = AddReservoir(name, gaugeElevationMetres + curve.StaticMetres);
        var junction = AddJunction(name, gaugeElevationMetres);
        Add(new PipeElement(name, PipeElementKind.Supply, street, junction) { ResistancePerFlowFactor = curve.ResistancePerFlowFactor });
        return junction;
    }

    /// <returns>The element's number: 0, 1, 2 in the order of adding.</returns>
    public int Add(PipeElement element)
    {
        Own();
        Flowing.Add(element);
        return Flowing.Count - 1;
    }

    /// <returns>The outlet's number: 0, 1, 2 in the order of adding.</returns>
    public int AddOutlet(string name, int node, Outlet outlet)
    {
        Own();
        outlets.Add(new PlacedOutlet(name, node, outlet));
        return outlets.Count - 1;
    }

    /// <summary>A variant with one element as given, which joins the same nodes.</summary>
    public PipeNetwork With(int element, PipeElement changed)
    {
        if (changed.A != Flowing[element].A || changed.B != Flowing[element].B)
        {
            throw new ArgumentException($"'{changed.Name}' joins other nodes than '{Flowing[element].Name}' did.", nameof(changed));
        }

        var variant = Clone();
        variant.Flowing = [.. Flowing];
        variant.Flowing[element] = changed;
        return variant;
    }

    public PipeNetwork WithClosed(int element, bool isClosed) => With(element, Flowing[element] with { IsClosed = isClosed });

    /// <summary>A copy to which more can be added without touching this network.</summary>
    public PipeNetwork Clone()
    {
        shared = true;
        return new PipeNetwork(Water) { nodes = nodes, Flowing = Flowing, outlets = outlets, patterns = patterns, shared = true };
    }

    /// <summary>Heads and flows while nothing changes. See docs/models/hydraulics.md.</summary>
    /// <returns>The solution, or a problem that names the element or node.</returns>
    public Outcome<PipeSolution> Solve(SolveSettings? settings = null) => GradientSolver.Solve(this, settings ?? SolveSettings.Fine);

    private int Add(PipeNode node)
    {
        Own();
        nodes.Add(node);
        return nodes.Count - 1;
    }

    private void Own()
    {
        patterns = new PatternCache();
        if (shared)
        {
            (nodes, Flowing, outlets, shared) = ([.. nodes], [.. Flowing], [.. outlets], false);
        }
    }
}
