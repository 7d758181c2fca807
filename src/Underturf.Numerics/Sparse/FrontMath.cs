using System.Numerics;
using System.Runtime.InteropServices;

namespace Underturf.Numerics;

/// <summary>
/// Arithmetic on dense fronts, column after column, lower half. A panel holds the front's own columns with D on the diagonal and, once
/// factored, the unit lower triangle L below it.
/// </summary>
internal static class FrontMath
{
    /// <returns>Whether every pivot is positive.</returns>
    internal static bool Factor(Span<double> panel, int width, int below)
    {
        var height = width + below;
        for (var k = 0; k < width; k++)
        {
            var column = panel.Slice((k * height) + k, height - k);
            var pivot = column[0];
            if (!(pivot > 0))
            {
                return false;
            }

            Eliminate(panel, column, k, width, height);
        }

        return true;
    }

    /// <summary>The same with each pivot as its ground and the sum of what its column joins it to; each neighbour takes its share of the ground.</summary>
    internal static bool FactorGrounded(Span<double> panel, Span<double> own, int width, ReadOnlySpan<int> rows, double[] all)
    {
        var height = width + rows.Length;
        for (var k = 0; k < width; k++)
        {
            var column = panel.Slice((k * height) + k, height - k);
            var pivot = own[k];
            for (var r = 1; r < column.Length; r++)
            {
                pivot -= column[r];
            }

            if (!(pivot > 0))
            {
                return false;
            }

            column[0] = pivot;
            Eliminate(panel, column, k, width, height);
            for (var j = 1; j < width - k; j++)
            {
                own[k + j] -= column[j] * own[k];
            }

            for (var r = 0; r < rows.Length; r++)
            {
                all[rows[r]] -= column[width - k + r] * own[k];
            }
        }

        return true;
    }

    /// <summary>Takes L D L^T of the rows below from the update, lower half of a square.</summary>
    internal static void Update(ReadOnlySpan<double> panel, Span<double> update, int width, int below)
    {
        var height = width + below;
        var k = 0;
        for (; k + 1 < width; k += 2)
        {
            var (first, second) = ((k * height) + width, ((k + 1) * height) + width);
            var (pivot, other) = (panel[(k * height) + k], panel[((k + 1) * height) + k + 1]);
            for (var j = 0; j < below; j++)
            {
                var (share, otherShare) = (panel[first + j] * pivot, panel[second + j] * other);
                Subtract(update.Slice((j * below) + j, below - j), panel[(first + j)..], share, panel[(second + j)..], otherShare);
            }
        }

        for (; k < width; k++)
        {
            var pivot = panel[(k * height) + k];
            var column = panel.Slice((k * height) + width, below);
            for (var j = 0; j < below; j++)
            {
                Subtract(update.Slice((j * below) + j, below - j), column[j..], column[j] * pivot);
            }
        }
    }

    /// <summary>Adds an update to the front that it goes to.</summary>
    internal static void Add(ReadOnlySpan<double> from, ReadOnlySpan<int> destination, Span<double> panel, Span<double> update, int width, int below)
    {
        var size = destination.Length;
        var height = width + below;
        for (var j = 0; j < size; j++)
        {
            var to = destination[j] < width
                ? panel.Slice(destination[j] * height, height)
                : update.Slice((destination[j] - width) * below, below);
            var shift = destination[j] < width ? 0 : width;
            for (var i = j; i < size; i++)
            {
                to[destination[i] - shift] += from[(j * size) + i];
            }
        }
    }

    internal static void Forward(ReadOnlySpan<double> panel, Span<double> own, int width, ReadOnlySpan<int> rows, double[] all)
    {
        var height = width + rows.Length;
        for (var k = 0; k < width; k++)
        {
            var column = panel.Slice((k * height) + k, height - k);
            var value = own[k];
            for (var j = 1; j < width - k; j++)
            {
                own[k + j] -= column[j] * value;
            }

            for (var r = 0; r < rows.Length; r++)
            {
                all[rows[r]] -= column[width - k + r] * value;
            }
        }
    }

    internal static void Back(ReadOnlySpan<double> panel, Span<double> own, int width, ReadOnlySpan<int> rows, double[] all)
    {
        var height = width + rows.Length;
        for (var k = width - 1; k >= 0; k--)
        {
            var column = panel.Slice((k * height) + k, height - k);
            var value = own[k] / column[0];
            for (var j = 1; j < width - k; j++)
            {
                value -= column[j] * own[k + j];
            }

            for (var r = 0; r < rows.Length; r++)
            {
                value -= column[width - k + r] * all[rows[r]];
            }

            own[k] = value;
        }
    }

    /// <summary>Takes a column out of the panel's later ones, then divides it by its pivot.</summary>
    private static void Eliminate(Span<double> panel, Span<double> column, int k, int width, int height)
    {
        var pivot = column[0];
        for (var j = 1; j < width - k; j++)
        {
            Subtract(panel.Slice(((k + j) * height) + k + j, height - k - j), column[j..], column[j] / pivot);
        }

        var inverse = 1 / pivot;
        for (var r = 1; r < column.Length; r++)
        {
            column[r] *= inverse;
        }
    }

    /// <summary>to -= share * from.</summary>
    private static void Subtract(Span<double> to, ReadOnlySpan<double> from, double share)
    {
        from = from[..to.Length];
        var done = 0;
        if (Vector.IsHardwareAccelerated && to.Length >= Vector<double>.Count)
        {
            var wideTo = MemoryMarshal.Cast<double, Vector<double>>(to);
            var wideFrom = MemoryMarshal.Cast<double, Vector<double>>(from);
            var wideShare = new Vector<double>(share);
            for (var v = 0; v < wideTo.Length; v++)
            {
                wideTo[v] -= wideShare * wideFrom[v];
            }

            done = wideTo.Length * Vector<double>.Count;
        }

        for (; done < to.Length; done++)
        {
            to[done] -= share * from[done];
        }
    }

    /// <summary>to -= share * from + otherShare * other.</summary>
    private static void Subtract(Span<double> to, ReadOnlySpan<double> from, double share, ReadOnlySpan<double> other, double otherShare)
    {
        from = from[..to.Length];
        other = other[..to.Length];
        var done = 0;
        if (Vector.IsHardwareAccelerated && to.Length >= Vector<double>.Count)
        {
            var wideTo = MemoryMarshal.Cast<double, Vector<double>>(to);
            var wideFrom = MemoryMarshal.Cast<double, Vector<double>>(from);
            var wideOther = MemoryMarshal.Cast<double, Vector<double>>(other);
            var (wideShare, wideOtherShare) = (new Vector<double>(share), new Vector<double>(otherShare));
            for (var v = 0; v < wideTo.Length; v++)
            {
                wideTo[v] -= (wideShare * wideFrom[v]) + (wideOtherShare * wideOther[v]);
            }

            done = wideTo.Length * Vector<double>.Count;
        }

        for (; done < to.Length; done++)
        {
            to[done] -= (share * from[done]) + (otherShare * other[done]);
        }
    }
}
