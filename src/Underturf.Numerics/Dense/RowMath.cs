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
}
