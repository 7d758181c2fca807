namespace Underturf.Networks.Wiring.FaultDistance;

/// <summary>
/// Gauss-Newton with halved steps over the place, the strength and the logarithm of the distance of one leak; what was known of the distance
/// is one more observation. Started at the place of a scan at which the readings fit best.
/// </summary>
internal sealed class StepFit
{
    private const int Rounds = 100;
    private const int Halvings = 40;
    private const int ScanPerReading = 8;
    private const double StandOutSpreads = 4;
    private const int Place = 0;
    private const int Strength = 1;
    private const int LogDistance = 2;

    /// <summary>A distance known to this share of itself is as good as exact, and the equations stay regular.</summary>
    private const double LeastSpreadShare = 1e-6;

    private readonly StepSurvey survey;
    private readonly double[] at;
    private readonly double knownLog;
    private readonly double knownSpread;

    private StepFit(StepSurvey survey)
    {
        this.survey = survey;
        knownLog = Math.Log(survey.DistanceMetres);
        knownSpread = Math.Max(survey.DistanceSpreadShare, LeastSpreadShare);
        at = Scan();
    }

    internal double PlaceMetres => at[Place];

    /// <summary>
    /// Does a leak at the best place of the scan explain the readings better than none, by what four standard deviations make?
    /// </summary>
    internal bool StandsOut => Misfit([PlaceMetres, 0, knownLog]) - Misfit(at) > StandOutSpreads * StandOutSpreads;

    /// <summary>Before the descent: the best of the scan.</summary>
    internal static StepFit Start(StepSurvey survey) => new(survey);

    /// <returns>False where no step from the best start leads to a minimum.</returns>
    internal bool Descend() => Walk() && SmallCholesky.Inverse(Equations(at).Matrix) is not null;

    internal StepEstimate Estimate()
    {
        var covariance = SmallCholesky.Inverse(Equations(at).Matrix)!;
        var distance = Math.Exp(at[LogDistance]);
        var fromDistance = covariance[LogDistance] / knownSpread;
        var all = covariance[Place];
        var fromVolts = Math.Sqrt(Math.Max(0, all - (fromDistance * fromDistance)));
        SpreadSource[] sources =
        [
            new("volts between the pins", fromVolts), new("depth", Math.Abs(fromDistance)), new("start of the tape", survey.StartSpreadMetres),
        ];
        var freedom = survey.Readings.Count - 2;
        return new StepEstimate(
            new DistanceEstimate(
                at[Place],
                double.Hypot(Math.Sqrt(all), survey.StartSpreadMetres),
                [.. sources.Where(s => s.SpreadMetres > 0).OrderByDescending(s => s.SpreadMetres)]),
            distance,
            distance * Math.Sqrt(covariance[(LogDistance * 3) + LogDistance]),
            at[Strength],
            Math.Sqrt(Misfit(at) / freedom));
    }

    private bool Walk()
    {
        var misfit = Misfit(at);
        for (var round = 0; round < Rounds; round++)
        {
            var (matrix, side) = Equations(at);
            if (SmallCholesky.Solve(matrix, side) is not { } step)
            {
                return false;
            }

            var gain = Step(step, ref misfit);
            if (!(gain > 1e-13 * (1 + misfit)))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Goes as much of the step as lowers the misfit, and says by how much it did.</summary>
    private double Step(double[] step, ref double misfit)
    {
        var share = 1.0;
        for (var k = 0; k < Halvings; k++, share /= 2)
        {
            double[] tried = [at[0] + (share * step[0]), at[1] + (share * step[1]), at[2] + (share * step[2])];
            var next = Misfit(tried);
            if (next < misfit)
            {
                var gain = misfit - next;
                (at[0], at[1], at[2], misfit) = (tried[0], tried[1], tried[2], next);
                return gain;
            }
        }

        return 0;
    }

    private double[] Scan()
    {
        var (first, last) = (survey.Readings.Min(r => r.MiddleMetres), survey.Readings.Max(r => r.MiddleMetres));
        var count = ScanPerReading * survey.Readings.Count;
        double[]? best = null;
        for (var k = 0; k <= count; k++)
        {
            double[] tried = [first + ((last - first) * k / count), 0, knownLog];
            tried[Strength] = BestStrength(tried[Place]);
            best = best is null || Misfit(tried) < Misfit(best) ? tried : best;
        }

        return best!;
    }

    /// <summary>The volts are linear in the strength.</summary>
    private double BestStrength(double place)
    {
        var (top, bottom) = (0.0, 0.0);
        foreach (var reading in survey.Readings)
        {
            var shape = StepVoltage.Shape(reading.MiddleMetres - place, survey.PinSpacingMetres, survey.DistanceMetres);
            var weight = 1 / (reading.Volts.SpreadVolts * reading.Volts.SpreadVolts);
            top += weight * shape * reading.Volts.Volts;
            bottom += weight * shape * shape;
        }

        return bottom > 0 ? top / bottom : 0;
    }

    private double Misfit(double[] x)
    {
        var known = (x[LogDistance] - knownLog) / knownSpread;
        var sum = known * known;
        foreach (var reading in survey.Readings)
        {
            var shape = StepVoltage.Shape(reading.MiddleMetres - x[Place], survey.PinSpacingMetres, Math.Exp(x[LogDistance]));
            var off = (reading.Volts.Volts - (x[Strength] * shape)) / reading.Volts.SpreadVolts;
            sum += off * off;
        }

        return sum;
    }

    private (double[] Matrix, double[] Side) Equations(double[] x)
    {
        var (matrix, side) = (new double[9], new double[3]);
        AddRow(matrix, side, [0, 0, 1 / knownSpread], (knownLog - x[LogDistance]) / knownSpread);
        var distance = Math.Exp(x[LogDistance]);
        foreach (var reading in survey.Readings)
        {
            var (from, spread) = (reading.MiddleMetres - x[Place], reading.Volts.SpreadVolts);
            var shape = StepVoltage.Shape(from, survey.PinSpacingMetres, distance);
            double[] row =
            [
                x[Strength] * StepVoltage.AlongFault(from, survey.PinSpacingMetres, distance) / spread,
                shape / spread,
                x[Strength] * distance * StepVoltage.AlongDistance(from, survey.PinSpacingMetres, distance) / spread,
            ];
            AddRow(matrix, side, row, (reading.Volts.Volts - (x[Strength] * shape)) / spread);
        }

        return (matrix, side);
    }

    private static void AddRow(double[] matrix, double[] side, double[] row, double off)
    {
        for (var i = 0; i < row.Length; i++)
        {
            side[i] += row[i] * off;
            for (var j = 0; j < row.Length; j++)
            {
                matrix[(i * row.Length) + j] += row[i] * row[j];
            }
        }
    }
}
