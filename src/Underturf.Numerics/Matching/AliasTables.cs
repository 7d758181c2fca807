namespace Underturf.Numerics;

/// <summary>
/// Draws a column for a row in proportion to its weights with one look at a table (A. J. Walker's method of aliases, ACM Transactions on Mathematical Software 3, 1977; from memory):
/// each slot holds at most two columns, parted at a limit.
/// </summary>
internal sealed class AliasTables
{
    private readonly int wide;
    private readonly ulong[] limits;
    private readonly int[] aliases;
    private readonly double[] totals;

    /// <param name="weights">Row after row, not negative, no row all zero.</param>
    public AliasTables(double[] weights, int rows)
    {
        wide = weights.Length / rows;
        (limits, aliases, totals) = (new ulong[weights.Length], new int[weights.Length], new double[rows]);
        for (var row = 0; row < rows; row++)
        {
            Fill(row, weights.AsSpan(row * wide, wide));
        }
    }

    public double Total(int row) => totals[row];

    /// <param name="uniform">Drawn from all 64-bit numbers.</param>
    public int Draw(int row, ulong uniform)
    {
        var slot = (int)Math.BigMul(uniform, (ulong)wide, out var rest);
        var at = (row * wide) + slot;
        return rest < limits[at] ? slot : aliases[at];
    }

    private void Fill(int row, ReadOnlySpan<double> weights)
    {
        foreach (var weight in weights)
        {
            totals[row] += weight;
        }

        var (scaled, scarce, ample) = (new double[wide], new Stack<int>(), new Stack<int>());
        for (var k = 0; k < wide; k++)
        {
            scaled[k] = weights[k] * wide / totals[row];
            (scaled[k] < 1 ? scarce : ample).Push(k);
        }

        while (scarce.Count > 0 && ample.Count > 0)
        {
            var (little, much) = (scarce.Pop(), ample.Pop());
            Set(row, little, scaled[little], much);
            scaled[much] -= 1 - scaled[little];
            (scaled[much] < 1 ? scarce : ample).Push(much);
        }

        // What is left is full but for rounding.
        foreach (var k in scarce.Concat(ample))
        {
            Set(row, k, 1, k);
        }
    }

    private void Set(int row, int slot, double share, int alias) =>
        (limits[(row * wide) + slot], aliases[(row * wide) + slot]) = (share >= 1 ? ulong.MaxValue : (ulong)(share * ulong.MaxValue), alias);
}
