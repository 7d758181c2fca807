namespace Underturf.Numerics;

/// <summary>
/// An order of elimination that makes little fill: next comes a node that touches few others, its degree bounded from above where elements
/// overlap. Nodes that touch the same are taken as one.
/// </summary>
/// <remarks>After Amestoy, Davis and Duff, SIAM Journal on Matrix Analysis and Applications 17(4), 1996 (from memory).</remarks>
internal sealed class MinimumDegreeOrder
{
    private readonly QuotientGraph graph;
    private readonly DegreeBuckets buckets;
    private readonly List<int> order;
    private readonly int[] inElement;
    private readonly int[] counted;
    private readonly int[] outside;
    private readonly int[] memberWeight;
    private readonly int[] mark;
    private readonly int[] next;
    private readonly int[] last;
    private int[] degrees = new int[16];
    private long[] hashes = new long[16];
    private int stamp;
    private int marks;

    private MinimumDegreeOrder(SparseGraph start)
    {
        var count = start.Count;
        graph = new QuotientGraph(start);
        buckets = new DegreeBuckets(count);
        order = new List<int>(count);
        (inElement, counted, outside, memberWeight, mark) = (new int[count], new int[count], new int[count], new int[count], new int[count]);
        (next, last) = (new int[count], [.. Enumerable.Range(0, count)]);
        Array.Fill(next, -1);
        for (var node = count - 1; node >= 0; node--)
        {
            buckets.Put(node, start.Start[node + 1] - start.Start[node]);
        }
    }

    internal static int[] Of(SparseGraph start)
    {
        var run = new MinimumDegreeOrder(start);
        while (run.order.Count < start.Count)
        {
            run.Eliminate(run.buckets.TakeLeast());
        }

        return [.. run.order];
    }

    private void Eliminate(int pivot)
    {
        stamp++;
        Emit(pivot);
        graph.Eliminate(pivot, inElement, stamp);
        var around = graph.Members(pivot);
        var weight = 0;
        foreach (var node in around)
        {
            weight += graph.Weight[node];
            buckets.Remove(node);
            CountOutside(node);
        }

        Grow(around.Length);
        for (var n = 0; n < around.Length; n++)
        {
            degrees[n] = Update(around[n], pivot, weight);
            hashes[n] = Hash(around[n]);
        }

        memberWeight[pivot] = weight;
        if (Merge(around) + Return(pivot, around) > 0)
        {
            graph.Shrink(pivot);
        }
    }

    private void Grow(int length)
    {
        if (length > degrees.Length)
        {
            (degrees, hashes) = (new int[2 * length], new long[2 * length]);
        }
    }

    /// <summary>Takes the node's weight off each of its elements, so that in the end the weight outside the new element is left.</summary>
    private void CountOutside(int node)
    {
        foreach (var element in graph.Elements(node))
        {
            if (!graph.IsElement(element))
            {
                continue;
            }

            if (counted[element] != stamp)
            {
                counted[element] = stamp;
                outside[element] = memberWeight[element];
            }

            outside[element] -= graph.Weight[node];
        }
    }

    /// <returns>The node's new degree; -1 where it touches the new element only and so goes with it.</returns>
    private int Update(int node, int pivot, int weight)
    {
        var touched = graph.Update(node, pivot, inElement, stamp, outside);
        if (touched == 0)
        {
            return -1;
        }

        var within = weight - graph.Weight[node];
        var left = next.Length - order.Count - graph.Weight[node];
        return Math.Min(left, Math.Min(buckets.Degree(node), touched) + within);
    }

    private long Hash(int node)
    {
        long sum = 0;
        foreach (var element in graph.Elements(node))
        {
            sum += element;
        }

        foreach (var other in graph.Nodes(node))
        {
            sum += other;
        }

        return sum;
    }

    /// <summary>Nodes of the new element that touch the same become one.</summary>
    /// <returns>How many went.</returns>
    private int Merge(ReadOnlySpan<int> around)
    {
        var gone = 0;
        for (var a = 0; a < around.Length; a++)
        {
            for (var b = a + 1; graph.Weight[around[a]] > 0 && b < around.Length; b++)
            {
                if (hashes[a] == hashes[b] && graph.Weight[around[b]] > 0 && TouchTheSame(around[a], around[b]))
                {
                    Join(around[a], around[b]);
                    gone++;
                }
            }
        }

        return gone;
    }

    private bool TouchTheSame(int node, int other)
    {
        if (graph.Elements(node).Length != graph.Elements(other).Length || graph.Nodes(node).Length != graph.Nodes(other).Length)
        {
            return false;
        }

        // An element and a node never have the same number, so one set of marks serves both.
        marks++;
        Mark(graph.Elements(node));
        Mark(graph.Nodes(node));
        return AllMarked(graph.Elements(other)) && AllMarked(graph.Nodes(other));
    }

    private void Mark(ReadOnlySpan<int> numbers)
    {
        foreach (var number in numbers)
        {
            mark[number] = marks;
        }
    }

    private bool AllMarked(ReadOnlySpan<int> numbers)
    {
        foreach (var number in numbers)
        {
            if (mark[number] != marks)
            {
                return false;
            }
        }

        return true;
    }

    private void Join(int node, int other)
    {
        graph.Weight[node] += graph.Weight[other];
        graph.Weight[other] = 0;
        next[last[node]] = other;
        last[node] = last[other];
    }

    /// <returns>How many went with the pivot, because they touch its element only.</returns>
    private int Return(int pivot, ReadOnlySpan<int> around)
    {
        var gone = 0;
        for (var n = 0; n < around.Length; n++)
        {
            var node = around[n];
            if (degrees[n] < 0 && graph.Weight[node] > 0)
            {
                Emit(node);
                memberWeight[pivot] -= graph.Weight[node];
                graph.Weight[node] = 0;
                gone++;
            }
        }

        for (var n = 0; n < around.Length; n++)
        {
            if (graph.Weight[around[n]] > 0)
            {
                buckets.Put(around[n], Math.Min(degrees[n], next.Length - order.Count));
            }
        }

        return gone;
    }

    /// <summary>The node and all that were taken as one with it.</summary>
    private void Emit(int node)
    {
        for (var each = node; each >= 0; each = next[each])
        {
            order.Add(each);
        }
    }
}
