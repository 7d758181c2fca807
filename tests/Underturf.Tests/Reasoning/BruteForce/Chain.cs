namespace Underturf.Tests.Reasoning.BruteForce;

/// <summary>A reading of a state as the unknowns foresee it.</summary>
internal sealed record Foreseen(Row Row, double[] Look, double Mean, double Variance)
{
    public static Foreseen Of(Row row, DenseUnknowns unknowns)
    {
        var (mean, look) = (unknowns.MeanOf(row), unknowns.Look(row));
        return new Foreseen(row, look, mean, unknowns.Along(row, look) + row.LocalWith(row) + unknowns.Noise(row));
    }
}

/// <summary>Joint normal chances of readings of several stations, one put upon the other and taken off again: a Cholesky factor grown row by row.</summary>
internal sealed class Chain(DenseUnknowns unknowns)
{
    private const int Most = 32;

    private readonly (Foreseen Reading, int Station)[] readings = new (Foreseen, int)[Most];
    private readonly double[,] factor = new double[Most, Most];
    private readonly double[] score = new double[Most];

    public int Depth { get; set; }

    /// <returns>log of the chance of what they showed, given those before them.</returns>
    public double Push(Foreseen[] some, int station)
    {
        var sum = 0.0;
        foreach (var reading in some)
        {
            var (mean, variance) = Expect(reading, station);
            readings[Depth] = (reading, station);
            factor[Depth, Depth] = Math.Sqrt(variance);
            score[Depth] = (reading.Row.Shown - mean) / factor[Depth, Depth];
            sum += DenseUnknowns.LogChance(reading.Row.Shown - mean, variance, reading.Row.Step);
            Depth++;
        }

        return sum;
    }

    public (double Mean, double Variance) Expect(Foreseen reading, int station)
    {
        var (mean, left) = (reading.Mean, reading.Variance);
        for (var j = 0; j < Depth; j++)
        {
            var together = unknowns.Along(reading.Row, readings[j].Reading.Look) + (readings[j].Station == station ? reading.Row.LocalWith(readings[j].Reading.Row) : 0);
            for (var k = 0; k < j; k++)
            {
                together -= factor[Depth, k] * factor[j, k];
            }

            var share = together / factor[j, j];
            factor[Depth, j] = share;
            mean += share * score[j];
            left -= share * share;
        }

        return (mean, left);
    }
}
