namespace Underturf.Numerics;

/// <summary>Which column each column of the factor passes its update to, and how long the columns become.</summary>
internal sealed class EliminationTree
{
    private EliminationTree(SparseGraph graph)
    {
        Parent = Parents(graph);
    }

    /// <summary>The first column that each column reaches; -1 for a root.</summary>
    internal int[] Parent { get; private init; }

    /// <summary>The order given, with each column directly after those that pass to it; it makes the same fill.</summary>
    internal static int[] Postordered(SparseGraph graph, int[] order)
    {
        var tree = new EliminationTree(Renumbered(graph, order));
        return [.. tree.Postorder().Select(k => order[k])];
    }

    internal static EliminationTree Of(SparseGraph graph) => new(graph);

    internal static SparseGraph Renumbered(SparseGraph graph, int[] order) => graph.Renumbered(order, Inverse(order));

    internal static int[] Inverse(int[] order)
    {
        var place = new int[order.Length];
        for (var k = 0; k < order.Length; k++)
        {
            place[order[k]] = k;
        }

        return place;
    }

    /// <summary>Rows below the diagonal in each column of the factor.</summary>
    internal int[] Counts(SparseGraph graph)
    {
        var (counts, seen) = (new int[Parent.Length], new int[Parent.Length]);
        for (var k = 0; k < counts.Length; k++)
        {
            seen[k] = k;
            for (var n = graph.Start[k]; n < graph.Start[k + 1]; n++)
            {
                for (var j = graph.Neighbours[n]; j < k && seen[j] != k; j = Parent[j])
                {
                    counts[j]++;
                    seen[j] = k;
                }
            }
        }

        return counts;
    }

    private static int[] Parents(SparseGraph graph)
    {
        var (parent, ancestor) = (new int[graph.Count], new int[graph.Count]);
        for (var k = 0; k < parent.Length; k++)
        {
            parent[k] = ancestor[k] = -1;
            for (var n = graph.Start[k]; n < graph.Start[k + 1]; n++)
            {
                var above = 0;
                for (var j = graph.Neighbours[n]; j >= 0 && j < k; j = above)
                {
                    above = ancestor[j];
                    ancestor[j] = k;
                    if (above < 0)
                    {
                        parent[j] = k;
                    }
                }
            }
        }

        return parent;
    }

    private int[] Postorder()
    {
        var (firstChild, sibling) = (new int[Parent.Length], new int[Parent.Length]);
        Array.Fill(firstChild, -1);
        var stack = new Stack<int>();
        for (var k = Parent.Length - 1; k >= 0; k--)
        {
            if (Parent[k] >= 0)
            {
                sibling[k] = firstChild[Parent[k]];
                firstChild[Parent[k]] = k;
            }
            else
            {
                stack.Push(k);
            }
        }

        return Walk(firstChild, sibling, stack);
    }

    private static int[] Walk(int[] firstChild, int[] sibling, Stack<int> stack)
    {
        var order = new List<int>(sibling.Length);
        while (stack.TryPeek(out var node))
        {
            var child = firstChild[node];
            if (child >= 0)
            {
                firstChild[node] = sibling[child];
                stack.Push(child);
            }
            else
            {
                order.Add(stack.Pop());
            }
        }

        return [.. order];
    }
}
