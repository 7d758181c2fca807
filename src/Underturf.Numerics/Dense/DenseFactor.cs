using System.Numerics;

namespace Underturf.Numerics;

/// <summary>A few linear equations, real or complex, factored by elimination with the largest pivot of each column; the memory is used again.</summary>
public sealed class DenseFactor<T>(int size)
    where T : struct, INumberBase<T>
{
    private readonly T[] rows = new T[size * size];
    private readonly int[] pivots = new int[size];

    /// <summary>An entry of the matrix, to be set before <see cref="Factor"/>, which uses the matrix up.</summary>
    public ref T this[int row, int column] => ref rows[(row * size) + column];

    /// <returns>Magnitude of the smallest pivot: zero where the equations have no one solution.</returns>
    public double Factor()
    {
        var smallest = double.PositiveInfinity;
        for (var k = 0; k < size; k++)
        {
            pivots[k] = Largest(k);
            Swap(k, pivots[k]);
            smallest = Math.Min(smallest, Magnitude(this[k, k]));
            for (var i = k + 1; i < size; i++)
            {
                var share = this[i, k] /= this[k, k];
                for (var j = k + 1; j < size; j++)
                {
                    this[i, j] -= share * this[k, j];
                }
            }
        }

        return smallest;
    }

    /// <summary>Solves in place; not finite where the smallest pivot is zero.</summary>
    public void Solve(Span<T> x)
    {
        for (var k = 0; k < size; k++)
        {
            (x[k], x[pivots[k]]) = (x[pivots[k]], x[k]);
        }

        for (var i = 0; i < size; i++)
        {
            for (var j = 0; j < i; j++)
            {
                x[i] -= this[i, j] * x[j];
            }
        }

        for (var i = size - 1; i >= 0; i--)
        {
            for (var j = i + 1; j < size; j++)
            {
                x[i] -= this[i, j] * x[j];
            }

            x[i] /= this[i, i];
        }
    }

    private int Largest(int k)
    {
        var best = k;
        for (var i = k + 1; i < size; i++)
        {
            best = Magnitude(this[i, k]) > Magnitude(this[best, k]) ? i : best;
        }

        return best;
    }

    private void Swap(int row, int other)
    {
        for (var j = 0; j < size && row != other; j++)
        {
            (this[row, j], this[other, j]) = (this[other, j], this[row, j]);
        }
    }

    private static double Magnitude(T value) => double.CreateChecked(T.Abs(value));
}
