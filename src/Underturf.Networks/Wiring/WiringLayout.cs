namespace Underturf.Networks.Wiring;

/// <summary>What is joined to what, without values: shared by all variants of a network.</summary>
internal sealed class WiringLayout
{
    private readonly Dictionary<string, int> nodeByName = new(StringComparer.Ordinal);

    private int? undriven;

    internal List<string> NodeNames { get; } = [];

    internal List<string> Names { get; } = [];

    internal List<ElementKind> Kinds { get; } = [];

    internal List<int> A { get; } = [];

    internal List<int> B { get; } = [];

    internal int Node(string name)
    {
        if (!nodeByName.TryGetValue(name, out var node))
        {
            node = NodeNames.Count;
            nodeByName.Add(name, node);
            NodeNames.Add(name);
            undriven = null;
        }

        return node;
    }

    internal void Add(string name, ElementKind kind, int a, int b)
    {
        Names.Add(name);
        Kinds.Add(kind);
        A.Add(a);
        B.Add(b);
        undriven = null;
    }

    internal bool Knows(string name) => nodeByName.ContainsKey(name);

    internal string NameOf(int node) => node >= 0 && node < NodeNames.Count ? NodeNames[node] : $"node number {node}";

    /// <summary>A node that no source reaches even with every open closed; -1 where there is none.</summary>
    internal int UndrivenNode()
    {
        if (undriven is not { } known)
        {
            var part = Parts.Of(NodeNames.Count, A, B);
            var driven = new bool[NodeNames.Count];
            for (var e = 0; e < Names.Count; e++)
            {
                driven[part[A[e]]] |= Kinds[e] == ElementKind.Source;
            }

            undriven = known = Array.FindIndex(part, p => !driven[p]);
        }

        return known;
    }

    internal WiringLayout Copy()
    {
        var copy = new WiringLayout();
        foreach (var name in NodeNames)
        {
            copy.Node(name);
        }

        copy.Names.AddRange(Names);
        copy.Kinds.AddRange(Kinds);
        copy.A.AddRange(A);
        copy.B.AddRange(B);
        return copy;
    }
}
