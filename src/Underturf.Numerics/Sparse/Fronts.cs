namespace Underturf.Numerics;

/// <summary>
/// Columns of the factor with the same rows below, taken together as one dense front: its own columns first, then the rows that it passes
/// an update to.
/// </summary>
internal sealed class Fronts
{
    private readonly SparseGraph graph;
    private readonly int[] seen;

    internal Fronts(SparseGraph graph)
    {
        this.graph = graph;
        var tree = EliminationTree.Of(graph);
        FirstColumn = Split(tree.Parent, tree.Counts(graph));
        Owner = new int[graph.Count];
        Rows = new int[FirstColumn.Length - 1][];
        Parent = new int[Rows.Length];
        seen = new int[graph.Count];
        Array.Fill(seen, -1);
        Children = new List<int>[Rows.Length];
        for (var f = 0; f < Rows.Length; f++)
        {
            Owner.AsSpan(FirstColumn[f]..FirstColumn[f + 1]).Fill(f);
        }

        for (var f = 0; f < Rows.Length; f++)
        {
            Link(f);
        }
    }

    /// <summary>Front f has the columns from FirstColumn[f] up to FirstColumn[f + 1].</summary>
    internal int[] FirstColumn { get; }

    /// <summary>The front that a column belongs to.</summary>
    internal int[] Owner { get; }

    /// <summary>Rows of each front below its own columns, ascending.</summary>
    internal int[][] Rows { get; }

    /// <summary>The front that each passes its update to; -1 for none.</summary>
    internal int[] Parent { get; }

    /// <summary>The fronts that pass to each; null for none.</summary>
    internal List<int>?[] Children { get; }

    internal int Width(int front) => FirstColumn[front + 1] - FirstColumn[front];

    private static int[] Split(int[] parent, int[] counts)
    {
        var starts = new List<int> { 0 };
        for (var k = 1; k < parent.Length; k++)
        {
            if (parent[k - 1] != k || counts[k - 1] != counts[k] + 1)
            {
                starts.Add(k);
            }
        }

        starts.Add(parent.Length);
        return parent.Length == 0 ? [0] : [.. starts];
    }

    private void Link(int front)
    {
        var end = FirstColumn[front + 1];
        var rows = new List<int>();
        for (var k = FirstColumn[front]; k < end; k++)
        {
            Collect(graph.Neighbours.AsSpan(graph.Start[k]..graph.Start[k + 1]), front, end, rows);
        }

        foreach (var child in Children[front] ?? [])
        {
            Collect(Rows[child], front, end, rows);
        }

        rows.Sort();
        Rows[front] = [.. rows];
        Parent[front] = rows.Count == 0 ? -1 : Owner[rows[0]];
        if (rows.Count > 0)
        {
            (Children[Parent[front]] ??= []).Add(front);
        }
    }

    private void Collect(ReadOnlySpan<int> from, int front, int end, List<int> rows)
    {
        foreach (var row in from)
        {
            if (row >= end && seen[row] != front)
            {
                seen[row] = front;
                rows.Add(row);
            }
        }
    }
}
