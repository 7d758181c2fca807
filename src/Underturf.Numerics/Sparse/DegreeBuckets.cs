namespace Underturf.Numerics;

/// <summary>Nodes by degree, so that one of the least is at hand; of equals the one that came last.</summary>
internal sealed class DegreeBuckets
{
    private const int None = -1;

    private readonly int[] head;
    private readonly int[] next;
    private readonly int[] previous;
    private readonly int[] degree;
    private int least;

    internal DegreeBuckets(int count)
    {
        head = new int[count + 1];
        next = new int[count];
        previous = new int[count];
        degree = new int[count];
        Array.Fill(head, None);
        Array.Fill(degree, None);
    }

    internal int Degree(int node) => degree[node];

    internal void Put(int node, int newDegree)
    {
        degree[node] = newDegree;
        previous[node] = None;
        next[node] = head[newDegree];
        if (next[node] != None)
        {
            previous[next[node]] = node;
        }

        head[newDegree] = node;
        least = Math.Min(least, newDegree);
    }

    internal void Remove(int node)
    {
        if (previous[node] == None)
        {
            head[degree[node]] = next[node];
        }
        else
        {
            next[previous[node]] = next[node];
        }

        if (next[node] != None)
        {
            previous[next[node]] = previous[node];
        }
    }

    internal int TakeLeast()
    {
        while (head[least] == None)
        {
            least++;
        }

        var node = head[least];
        Remove(node);
        return node;
    }
}
