using Underturf.Numerics;

namespace Underturf.Tests.Numerics;

/// <summary>A made-up symmetric positive definite matrix by its entries; an entry may be there twice, as two pipes between the same junctions.</summary>
internal sealed record SparseMatrix(int[] From, int[] To, double[] Entries, double[] Diagonal)
{
    public int Size => Diagonal.Length;

    /// <summary>Entries of either sign, the diagonal large enough.</summary>
    public static SparseMatrix Random(SeededGenerator random, int size, int entries)
    {
        int[] from = [.. Enumerable.Range(0, entries).Select(_ => random.NextInt(size))];
        int[] to = [.. Enumerable.Range(0, entries).Select(_ => random.NextInt(size))];
        return new SparseMatrix(from, to, new double[entries], new double[size]).WithOtherValues(random);
    }

    /// <summary>The conductances of a grid of pipes with a little outflow at each junction.</summary>
    public static SparseMatrix Grid(SeededGenerator random, int rows, int columns, double spreadDecades = 1)
    {
        var (from, to) = (new List<int>(), new List<int>());
        for (var k = 0; k < rows * columns; k++)
        {
            if ((k + 1) % columns != 0)
            {
                from.Add(k);
                to.Add(k + 1);
            }

            if (k + columns < rows * columns)
            {
                from.Add(k);
                to.Add(k + columns);
            }
        }

        double[] entries = [.. from.Select(_ => -Math.Pow(10, -spreadDecades * random.NextDouble()))];
        return new SparseMatrix([.. from], [.. to], entries, Dominant(rows * columns, [.. from], [.. to], entries, 0.01));
    }

    public SparseMatrix WithOtherValues(SeededGenerator random)
    {
        double[] entries = [.. From.Select(_ => random.NextNormal())];
        return this with { Entries = entries, Diagonal = Dominant(Size, From, To, entries, 0.1) };
    }

    public SparsePattern Pattern() => SparsePattern.For(Size, From, To);

    public double[] Solve(SparseFactor factor, double[] right)
    {
        var pattern = Pattern();
        factor.Values.Clear();
        for (var k = 0; k < Size; k++)
        {
            factor.Values[pattern.DiagonalAt[k]] = Diagonal[k];
        }

        for (var e = 0; e < Entries.Length; e++)
        {
            if (From[e] != To[e])
            {
                factor.Values[pattern.PairAt[e]] += Entries[e];
            }
        }

        Assert.True(factor.Factor());
        double[] x = [.. right];
        factor.Solve(x);
        return x;
    }

    public double[] SolveDense(double[] right)
    {
        var factor = new DenseFactor<double>(Size);
        for (var k = 0; k < Size; k++)
        {
            factor[k, k] = Diagonal[k];
        }

        for (var e = 0; e < Entries.Length; e++)
        {
            if (From[e] != To[e])
            {
                factor[From[e], To[e]] += Entries[e];
                factor[To[e], From[e]] += Entries[e];
            }
        }

        factor.Factor();
        double[] x = [.. right];
        factor.Solve(x);
        return x;
    }

    /// <summary>The largest difference of the equations' two sides.</summary>
    public double Residual(double[] x, double[] right)
    {
        double[] left = [.. x.Select((value, k) => (Diagonal[k] * value) - right[k])];
        for (var e = 0; e < Entries.Length; e++)
        {
            left[From[e]] += Entries[e] * x[To[e]];
            left[To[e]] += Entries[e] * x[From[e]];
        }

        return left.Max(Math.Abs);
    }

    private static double[] Dominant(int size, int[] from, int[] to, double[] entries, double more)
    {
        double[] diagonal = [.. Enumerable.Repeat(more, size)];
        for (var e = 0; e < entries.Length; e++)
        {
            diagonal[from[e]] += Math.Abs(entries[e]);
            diagonal[to[e]] += Math.Abs(entries[e]);
        }

        return diagonal;
    }
}
