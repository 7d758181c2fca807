namespace Underturf.Numerics;

/// <summary>
/// Columns of the factor with the same rows below, taken together as one dense front: its own columns first, then the rows that it passes
/// an update to.
/// </summary>
internal sealed class Fronts
{
    private const int None = -1;

    private readonly SparseGraph graph;
    private readonly int[] seen;
    private readonly List<int> rows = [];

    internal Fronts(SparseGraph graph)
    {
        this.graph = graph;
        var tree = EliminationTree.Of(graph);
        FirstColumn = Split(tree.Parent, tree.Counts(graph));
        Owner = new int[graph.Count];
        Count = FirstColumn.Length - 1;
        (RowStart, Parent, LastChild, Earlier) = (new int[Count + 1], new int[Count], new int[Count], new int[Count]);
        seen = new int[graph.Count];
        Array.Fill(seen, None);
        Array.Fill(LastChild, None);
        for (var f = 0; f < Count; f++)
        {
            Owner.AsSpan(FirstColumn[f]..FirstColumn[f + 1]).Fill(f);
        }

        for (var f = 0; f < Count; f++)
        {
            Link(f);
        }

        Row = [.. rows];
    }

    internal int Count { get; }

    /// <summary>Front f has the columns from FirstColumn[f] up to FirstColumn[f + 1].</summary>
    internal int[] FirstColumn { get; }

    /// <summary>The front that a column belongs to.</summary>
    internal int[] Owner { get; }

    /// <summary>Front f has the rows from Row[RowStart[f]] up to Row[RowStart[f + 1]] below its own columns, ascending.</summary>
    internal int[] RowStart { get; }

    internal int[] Row { get; }

    /// <summary>The front that each passes its update to; -1 for none.</summary>
    internal int[] Parent { get; }

    /// <summary>The last of the fronts that pass to each; -1 for none.</summary>
    internal int[] LastChild { get; }

    /// <summary>The one before it among those that pass to the same front; -1 for none.</summary>
    internal int[] Earlier { get; }

    internal ReadOnlySpan<int> Rows(int front) => Row.AsSpan(RowStart[front]..RowStart[front + 1]);

    internal int Below(int front) => RowStart[front + 1] - RowStart[front];

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
        for (var k = FirstColumn[front]; k < end; k++)
        {
            Collect(graph.Neighbours.AsSpan(graph.Start[k]..graph.Start[k + 1]), front, end);
        }

        for (var child = LastChild[front]; child != None; child = Earlier[child])
        {
            for (var r = RowStart[child]; r < RowStart[child + 1]; r++)
            {
                Collect(rows[r], front, end);
            }
        }

        var count = rows.Count - RowStart[front];
        rows.Sort(RowStart[front], count, null);
        RowStart[front + 1] = rows.Count;
        Parent[front] = count == 0 ? None : Owner[rows[RowStart[front]]];
        if (count > 0)
        {
            Earlier[front] = LastChild[Parent[front]];
            LastChild[Parent[front]] = front;
        }
    }

    private void Collect(ReadOnlySpan<int> from, int front, int end)
    {
        foreach (var row in from)
        {
            Collect(row, front, end);
        }
    }

    private void Collect(int row, int front, int end)
    {
        if (row >= end && seen[row] != front)
        {
            seen[row] = front;
            rows.Add(row);
        }
    }
}
