namespace Underturf.Numerics;

/// <summary>
/// Rows to be matched with columns: each row takes one column or stays alone, each column is taken by one row at most. The chance of a matching is in
/// proportion to the product of its weights.
/// </summary>
public sealed class MatchingWeights
{
    private readonly double[] weights;
    private readonly double[] rowAlone;
    private readonly double[] columnAlone;

    /// <summary>All weights one.</summary>
    public MatchingWeights(int rows, int columns)
    {
        (Rows, Columns) = (rows, columns);
        weights = new double[rows * columns];
        rowAlone = new double[rows];
        columnAlone = new double[columns];
        Array.Fill(weights, 1);
        Array.Fill(rowAlone, 1);
        Array.Fill(columnAlone, 1);
    }

    public int Rows { get; }

    public int Columns { get; }

    /// <summary>Weight of a row with a column; not negative.</summary>
    public ref double this[int row, int column] => ref weights[(row * Columns) + column];

    /// <summary>A row with each column.</summary>
    public Span<double> Row(int row) => weights.AsSpan(row * Columns, Columns);

    /// <summary>Weight of a row that takes no column.</summary>
    public ref double RowAlone(int row) => ref rowAlone[row];

    /// <summary>Weight of a column that no row takes.</summary>
    public ref double ColumnAlone(int column) => ref columnAlone[column];

    /// <summary>The same with rows and columns exchanged.</summary>
    public MatchingWeights Turned()
    {
        var turned = new MatchingWeights(Columns, Rows);
        for (var i = 0; i < Rows; i++)
        {
            for (var j = 0; j < Columns; j++)
            {
                turned[j, i] = this[i, j];
            }
        }

        rowAlone.CopyTo(turned.columnAlone, 0);
        columnAlone.CopyTo(turned.rowAlone, 0);
        return turned;
    }

    /// <summary>Some rows with some columns.</summary>
    public MatchingWeights Part(IReadOnlyList<int> rows, IReadOnlyList<int> columns)
    {
        var part = new MatchingWeights(rows.Count, columns.Count);
        for (var i = 0; i < rows.Count; i++)
        {
            part.rowAlone[i] = rowAlone[rows[i]];
            for (var j = 0; j < columns.Count; j++)
            {
                part[i, j] = this[rows[i], columns[j]];
            }
        }

        for (var j = 0; j < columns.Count; j++)
        {
            part.columnAlone[j] = columnAlone[columns[j]];
        }

        return part;
    }
}
