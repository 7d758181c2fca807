namespace Underturf.Numerics;

/// <summary>The lower triangle L of a symmetric positive definite matrix A = L L^T.</summary>
public sealed class CholeskyFactor
{
    private readonly double[] lower;

    private CholeskyFactor(double[] lower, int size) => (this.lower, Size) = (lower, size);

    public int Size { get; }

    /// <param name="matrix">By rows; only its lower triangle is read.</param>
    /// <exception cref="ArgumentException">The matrix is not positive definite.</exception>
    public static CholeskyFactor Of(ReadOnlySpan<double> matrix, int size)
    {
        var l = new double[size * size];
        for (var i = 0; i < size; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = matrix[(i * size) + j];
                for (var k = 0; k < j; k++)
                {
                    sum -= l[(i * size) + k] * l[(j * size) + k];
                }

                if (i == j && !(sum > 0))
                {
                    throw new ArgumentException($"Not positive definite: pivot {i} is {sum}.", nameof(matrix));
                }

                l[(i * size) + j] = i == j ? Math.Sqrt(sum) : sum / l[(j * size) + j];
            }
        }

        return new CholeskyFactor(l, size);
    }

    /// <summary>Solves A x = b in place.</summary>
    public void Solve(Span<double> x)
    {
        for (var i = 0; i < Size; i++)
        {
            for (var k = 0; k < i; k++)
            {
                x[i] -= lower[(i * Size) + k] * x[k];
            }

            x[i] /= lower[(i * Size) + i];
        }

        SolveTransposed(x);
    }

    /// <summary>Solves L^T x = b in place: of independent standard normal numbers it makes ones whose covariance is the inverse of A.</summary>
    public void SolveTransposed(Span<double> x)
    {
        for (var i = Size - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < Size; k++)
            {
                x[i] -= lower[(k * Size) + i] * x[k];
            }

            x[i] /= lower[(i * Size) + i];
        }
    }

    /// <summary>The diagonal of the inverse of A.</summary>
    public double[] InverseDiagonal()
    {
        var diagonal = new double[Size];
        var unit = new double[Size];
        for (var i = 0; i < Size; i++)
        {
            Array.Clear(unit);
            unit[i] = 1;
            Solve(unit);
            diagonal[i] = unit[i];
        }

        return diagonal;
    }
}
