using System.Numerics;

namespace Underturf.Networks.Wiring;

/// <summary>A few complex equations, solved by elimination with the largest pivot of the column.</summary>
internal sealed class SmallSystem
{
    private readonly int size;
    private readonly Complex[] rows;
    private readonly int[] pivots;

    /// <param name="matrix">Row by row; used up.</param>
    internal SmallSystem(int size, Complex[] matrix)
    {
        this.size = size;
        rows = matrix;
        pivots = new int[size];
        Smallest = double.PositiveInfinity;
        for (var k = 0; k < size; k++)
        {
            Eliminate(k);
        }
    }

    /// <summary>Magnitude of the smallest pivot: near zero where the equations hardly have a solution.</summary>
    internal double Smallest { get; private set; }

    internal void Solve(Span<Complex> x)
    {
        for (var k = 0; k < size; k++)
        {
            (x[k], x[pivots[k]]) = (x[pivots[k]], x[k]);
        }

        for (var k = 0; k < size; k++)
        {
            for (var i = k + 1; i < size; i++)
            {
                x[i] -= rows[(i * size) + k] * x[k];
            }
        }

        for (var k = size - 1; k >= 0; k--)
        {
            for (var j = k + 1; j < size; j++)
            {
                x[k] -= rows[(k * size) + j] * x[j];
            }

            x[k] /= rows[(k * size) + k];
        }
    }

    private void Eliminate(int k)
    {
        var best = k;
        for (var i = k + 1; i < size; i++)
        {
            best = Complex.Abs(rows[(i * size) + k]) > Complex.Abs(rows[(best * size) + k]) ? i : best;
        }

        pivots[k] = best;
        for (var j = 0; j < size && best != k; j++)
        {
            (rows[(k * size) + j], rows[(best * size) + j]) = (rows[(best * size) + j], rows[(k * size) + j]);
        }

        var pivot = rows[(k * size) + k];
        Smallest = Math.Min(Smallest, Complex.Abs(pivot));
        for (var i = k + 1; i < size; i++)
        {
            var factor = rows[(i * size) + k] /= pivot;
            for (var j = k + 1; j < size; j++)
            {
                rows[(i * size) + j] -= factor * rows[(k * size) + j];
            }
        }
    }
}
