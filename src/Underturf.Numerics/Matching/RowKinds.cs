namespace Underturf.Numerics;

/// <summary>Rows with the same weights, and the states of how many of each kind are taken, numbered in mixed radix.</summary>
internal sealed class RowKinds
{
    private readonly int[] steps;

    private RowKinds(int[] kindOf, List<int> first, int[] sizes)
    {
        (KindOf, First, Sizes, steps) = (kindOf, first, sizes, new int[sizes.Length]);
        var states = 1.0;
        for (var kind = 0; kind < sizes.Length; kind++)
        {
            steps[kind] = states < int.MaxValue ? (int)states : 0;
            states *= sizes[kind] + 1;
        }

        States = states;
    }

    public int Count => Sizes.Length;

    /// <summary>How many states there are; more than can be numbered where there are too many to be summed.</summary>
    public double States { get; }

    /// <summary>The kind of each row.</summary>
    public int[] KindOf { get; }

    /// <summary>A row of each kind.</summary>
    public List<int> First { get; }

    public int[] Sizes { get; }

    public static RowKinds Of(MatchingWeights part)
    {
        var (kindOf, first, sizes) = (new int[part.Rows], new List<int>(), new List<int>());
        for (var i = 0; i < part.Rows; i++)
        {
            var kind = first.FindIndex(other => Same(part, i, other));
            if (kind < 0)
            {
                kind = first.Count;
                first.Add(i);
                sizes.Add(0);
            }

            kindOf[i] = kind;
            sizes[kind]++;
        }

        return new RowKinds(kindOf, first, [.. sizes]);
    }

    /// <summary>The difference that one more row of a kind makes to the number of a state.</summary>
    public int Step(int kind) => steps[kind];

    /// <summary>How many rows of a kind are not taken.</summary>
    public int Free(int state, int kind) => Sizes[kind] - (state / steps[kind] % (Sizes[kind] + 1));

    private static bool Same(MatchingWeights part, int a, int b)
    {
        if (part.RowAlone(a) != part.RowAlone(b))
        {
            return false;
        }

        for (var j = 0; j < part.Columns; j++)
        {
            if (part[a, j] != part[b, j])
            {
                return false;
            }
        }

        return true;
    }
}
