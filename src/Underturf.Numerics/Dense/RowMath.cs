using System.Numerics;
using System.Runtime.InteropServices;

namespace Underturf.Numerics;

/// <summary>Rows of numbers.</summary>
public static class RowMath
{
    /// <summary>Adds a multiple of a row to another as long, as many numbers at a time as the processor takes.</summary>
    public static void AddTimes(Span<double> to, double factor, ReadOnlySpan<double> row)
    {
        var wide = MemoryMarshal.Cast<double, Vector<double>>(to);
        var wideRow = MemoryMarshal.Cast<double, Vector<double>>(row);
        for (var i = 0; i < wide.Length; i++)
        {
            wide[i] += factor * wideRow[i];
        }

        for (var i = wide.Length * Vector<double>.Count; i < to.Length; i++)
        {
            to[i] += factor * row[i];
        }
    }

    /// <summary>The rows added up, each as long as the first.</summary>
    public static double[] Sum(IReadOnlyList<double[]> rows)
    {
        var sum = new double[rows[0].Length];
        foreach (var row in rows)
        {
            AddTimes(sum, 1, row);
        }

        return sum;
    }

    /// <summary>Sum of the products of two rows.</summary>
    public static double Dot(ReadOnlySpan<double> one, ReadOnlySpan<double> other)
    {
        var wide = MemoryMarshal.Cast<double, Vector<double>>(one);
        var wideOther = MemoryMarshal.Cast<double, Vector<double>>(other);
        var sums = Vector<double>.Zero;
        for (var i = 0; i < wide.Length; i++)
        {
            sums += wide[i] * wideOther[i];
        }

        var sum = Vector.Sum(sums);
        for (var i = wide.Length * Vector<double>.Count; i < one.Length; i++)
        {
            sum += one[i] * other[i];
        }

        return sum;
    }
}
