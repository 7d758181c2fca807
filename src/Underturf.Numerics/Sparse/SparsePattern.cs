namespace Underturf.Numerics;

/// <summary>
/// Order of elimination and place of every number of a sparse symmetric matrix and of its factor. Depends on where its entries are only, so
/// one pattern serves every set of values.
/// </summary>
public sealed class SparsePattern
{
    private readonly int[] diagonalAt;
    private readonly int[] pairAt;

    private SparsePattern(int[] order, Fronts fronts, ReadOnlySpan<int> from, ReadOnlySpan<int> to)
    {
        (Order, Fronts) = (order, fronts);
        var place = EliminationTree.Inverse(order);
        (PanelStart, Destination) = (new int[fronts.Count + 1], new int[fronts.Row.Length]);
        for (var f = 0; f < fronts.Count; f++)
        {
            var width = fronts.Width(f);
            PanelStart[f + 1] = PanelStart[f] + (width * (width + fronts.Below(f)));
            SetDestinations(f, fronts.Parent[f]);
        }

        diagonalAt = [.. place.Select(k => At(k, k))];
        pairAt = new int[from.Length];
        for (var e = 0; e < pairAt.Length; e++)
        {
            var (a, b) = (place[from[e]], place[to[e]]);
            pairAt[e] = a == b ? -1 : At(Math.Max(a, b), Math.Min(a, b));
        }
    }

    public int Size => Order.Length;

    /// <summary>How long <see cref="SparseFactor.Values"/> is: the factor, and beside it the unused half of what fronts have on their diagonal.</summary>
    public int ValueCount => PanelStart[^1];

    /// <summary>Entries of the factor on and below the diagonal.</summary>
    public int FactorEntries => ValueCount - Enumerable.Range(0, Fronts.Count).Sum(f => Fronts.Width(f) * (Fronts.Width(f) - 1) / 2);

    /// <summary>Where among the values each diagonal entry lies.</summary>
    public ReadOnlySpan<int> DiagonalAt => diagonalAt;

    /// <summary>Where among the values the entry of each pair given to <see cref="For"/> lies; -1 for a pair of one and the same.</summary>
    public ReadOnlySpan<int> PairAt => pairAt;

    /// <summary>The unknown that is eliminated first, second and so on.</summary>
    internal int[] Order { get; }

    internal Fronts Fronts { get; }

    /// <summary>Front f keeps its own columns from PanelStart[f] on, column after column, each as high as the front.</summary>
    internal int[] PanelStart { get; }

    /// <summary>For each of the fronts' rows, where it is in the front that its own passes to.</summary>
    internal int[] Destination { get; }

    /// <summary>The pattern of a matrix with a full diagonal.</summary>
    /// <param name="size">Unknowns are numbered from 0.</param>
    /// <param name="from">Row of each entry off the diagonal, on either side of it; the same entry may be given again.</param>
    /// <param name="to">Its column.</param>
    public static SparsePattern For(int size, ReadOnlySpan<int> from, ReadOnlySpan<int> to)
    {
        var graph = SparseGraph.Of(size, from, to);
        var order = EliminationTree.Postordered(graph, MinimumDegreeOrder.Of(graph));
        return new SparsePattern(order, new Fronts(EliminationTree.Renumbered(graph, order)), from, to);
    }

    private int At(int row, int column)
    {
        var front = Fronts.Owner[column];
        var (first, width) = (Fronts.FirstColumn[front], Fronts.Width(front));
        return PanelStart[front] + ((column - first) * (width + Fronts.Below(front))) + InFront(front, row);
    }

    private int InFront(int front, int row) => row < Fronts.FirstColumn[front + 1]
        ? row - Fronts.FirstColumn[front]
        : Fronts.Width(front) + Fronts.Rows(front).BinarySearch(row);

    private void SetDestinations(int front, int parent)
    {
        if (parent < 0)
        {
            return;
        }

        var (first, width, at) = (Fronts.FirstColumn[parent], Fronts.Width(parent), 0);
        var theirs = Fronts.Rows(parent);
        for (var r = Fronts.RowStart[front]; r < Fronts.RowStart[front + 1]; r++)
        {
            var row = Fronts.Row[r];
            if (row < first + width)
            {
                Destination[r] = row - first;
                continue;
            }

            while (theirs[at] != row)
            {
                at++;
            }

            Destination[r] = width + at;
        }
    }
}
