namespace Underturf.Networks.Wiring.HalfWave;

/// <summary>A few linear equations, solved by elimination with partial pivoting, again and again in the same memory.</summary>
internal sealed class SmallSystem(int count)
{
    private readonly double[] matrix = new double[count * count];
    private readonly double[] right = new double[count];

    internal void Set(int row, int column, double value) => matrix[(row * count) + column] = value;

    internal void SetRight(int row, double value) => right[row] = value;

    /// <summary>Uses the equations up.</summary>
    /// <returns>The unknowns, valid until the next call; not finite where the equations are singular.</returns>
    internal double[] Solve()
    {
        for (var p = 0; p < count; p++)
        {
            Swap(p, Largest(p));
            for (var row = p + 1; row < count; row++)
            {
                var share = matrix[(row * count) + p] / matrix[(p * count) + p];
                for (var column = p + 1; column < count; column++)
                {
                    matrix[(row * count) + column] -= share * matrix[(p * count) + column];
                }

                right[row] -= share * right[p];
            }
        }

        for (var p = count - 1; p >= 0; p--)
        {
            for (var column = p + 1; column < count; column++)
            {
                right[p] -= matrix[(p * count) + column] * right[column];
            }

            right[p] /= matrix[(p * count) + p];
        }

        return right;
    }

    private int Largest(int p)
    {
        var best = p;
        for (var row = p + 1; row < count; row++)
        {
            best = Math.Abs(matrix[(row * count) + p]) > Math.Abs(matrix[(best * count) + p]) ? row : best;
        }

        return best;
    }

    private void Swap(int row, int other)
    {
        for (var column = 0; column < count && row != other; column++)
        {
            (matrix[(row * count) + column], matrix[(other * count) + column]) = (matrix[(other * count) + column], matrix[(row * count) + column]);
        }

        (right[row], right[other]) = (right[other], right[row]);
    }
}
