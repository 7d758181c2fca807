namespace Underturf.Numerics;

/// <summary>
/// Matchings drawn one after the other (Metropolis and Hastings): a row asks for a column by its own weights; who holds it takes the row's old one in exchange,
/// accepted by how well that suits the holder.
/// </summary>
internal static class MatchingSample
{
    private const int Sweeps = 12_000;
    private const int Unheard = 600;

    /// <returns>For each row its columns and, last, none.</returns>
    public static double[] Of(MatchingWeights part, SeededGenerator random)
    {
        var chain = new Chain(part, random);
        var counts = new double[part.Rows * (part.Columns + 1)];
        for (var sweep = -Unheard; sweep < Sweeps; sweep++)
        {
            chain.Sweep();
            if (sweep >= 0)
            {
                chain.Count(counts);
            }
        }

        for (var k = 0; k < counts.Length; k++)
        {
            counts[k] /= Sweeps;
        }

        return counts;
    }

    private sealed class Chain
    {
        private readonly MatchingWeights part;
        private readonly SeededGenerator random;
        private readonly int wide;
        private readonly AliasTables wishes;

        /// <summary>What each row takes; the number of columns where it stays alone.</summary>
        private readonly int[] taken;
        private readonly int[] holder;

        public Chain(MatchingWeights part, SeededGenerator random)
        {
            (this.part, this.random, wide) = (part, random, part.Columns + 1);
            taken = new int[part.Rows];
            holder = new int[part.Columns];
            Array.Fill(holder, -1);
            var weights = new double[part.Rows * wide];
            for (var k = 0; k < weights.Length; k++)
            {
                weights[k] = Weight(k / wide, k % wide);
            }

            wishes = new AliasTables(weights, part.Rows);
            Begin();
        }

        /// <summary>The weight of a row that takes a column away from nobody.</summary>
        private double Weight(int row, int column) => column == part.Columns ? part.RowAlone(row) : part.ColumnAlone(column) > 0 ? part[row, column] / part.ColumnAlone(column) : part[row, column];

        /// <summary>The best pairs first, so that no matching of nothing has to be left.</summary>
        private void Begin()
        {
            Array.Fill(taken, part.Columns);
            var pairs =
                from i in Enumerable.Range(0, part.Rows)
                from j in Enumerable.Range(0, part.Columns)
                where Weight(i, j) > 0
                orderby Weight(i, j) / wishes.Total(i) descending
                select (i, j);
            foreach (var (i, j) in pairs)
            {
                if (taken[i] == part.Columns && holder[j] < 0)
                {
                    (taken[i], holder[j]) = (j, i);
                }
            }
        }

        public void Sweep()
        {
            for (var step = 0; step < part.Rows; step++)
            {
                // One draw for both: the upper bits choose the row, what they leave the column.
                var i = (int)Math.BigMul(random.NextUInt64(), (ulong)part.Rows, out var rest);
                Ask(i, wishes.Draw(i, rest));
            }
        }

        public void Count(double[] counts)
        {
            for (var i = 0; i < part.Rows; i++)
            {
                counts[(i * wide) + taken[i]]++;
            }
        }

        private void Ask(int row, int column)
        {
            var had = taken[row];
            if (column == had)
            {
                return;
            }

            var other = column == part.Columns ? -1 : holder[column];
            if (other >= 0)
            {
                // The way back: the row asks for what it had, or, where that was nothing, the other asks for its column.
                var (now, then) = had < part.Columns ? (Weight(other, column), Weight(other, had)) : (Weight(row, had) * wishes.Total(other), Weight(other, had) * wishes.Total(row));
                if (random.NextDouble() * now >= then)
                {
                    return;
                }

                taken[other] = had;
            }

            if (had < part.Columns)
            {
                holder[had] = other;
            }

            taken[row] = column;
            if (column < part.Columns)
            {
                holder[column] = row;
            }
        }
    }
}
