namespace Underturf.Networks.Wiring.FaultDistance;

/// <summary>Symmetric positive definite equations of a few unknowns, row by row in a flat array, scaled to a unit diagonal first.</summary>
internal static class SmallCholesky
{
    private const double LeastPivot = 1e-14;

    /// <returns>Null where the matrix is not positive definite to rounding.</returns>
    internal static double[]? Solve(double[] matrix, double[] side)
    {
        var n = side.Length;
        var scale = Enumerable.Range(0, n).Select(i => 1 / Math.Sqrt(matrix[(i * n) + i])).ToArray();
        if (!scale.All(double.IsFinite) || Factor(matrix, scale) is not { } lower)
        {
            return null;
        }

        var x = side.Zip(scale, (s, f) => s * f).ToArray();
        Substitute(lower, x);
        return [.. x.Zip(scale, (s, f) => s * f)];
    }

    /// <summary>Forward through the lower triangle, then back through its transpose, in place.</summary>
    private static void Substitute(double[] lower, double[] x)
    {
        var n = x.Length;
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < i; j++)
            {
                x[i] -= lower[(i * n) + j] * x[j];
            }

            x[i] /= lower[(i * n) + i];
        }

        for (var i = n - 1; i >= 0; i--)
        {
            for (var j = i + 1; j < n; j++)
            {
                x[i] -= lower[(j * n) + i] * x[j];
            }

            x[i] /= lower[(i * n) + i];
        }
    }

    internal static double[]? Inverse(double[] matrix)
    {
        var n = (int)Math.Round(Math.Sqrt(matrix.Length));
        var inverse = new double[matrix.Length];
        for (var k = 0; k < n; k++)
        {
            var unit = new double[n];
            unit[k] = 1;
            if (Solve(matrix, unit) is not { } column)
            {
                return null;
            }

            column.CopyTo(inverse, k * n);
        }

        return inverse;
    }

    private static double[]? Factor(double[] matrix, double[] scale)
    {
        var n = scale.Length;
        var lower = new double[matrix.Length];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = matrix[(i * n) + j] * scale[i] * scale[j];
                for (var k = 0; k < j; k++)
                {
                    sum -= lower[(i * n) + k] * lower[(j * n) + k];
                }

                if (i == j && !(sum > LeastPivot))
                {
                    return null;
                }

                lower[(i * n) + j] = i == j ? Math.Sqrt(sum) : sum / lower[(j * n) + j];
            }
        }

        return lower;
    }
}
