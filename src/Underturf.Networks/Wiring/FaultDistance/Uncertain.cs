namespace Underturf.Networks.Wiring.FaultDistance;

/// <summary>
/// A number with its exact slopes along independent unknowns, each measured in its own standard deviations (forward differentiation). Shared
/// unknowns thus cancel or add as they do in the formula.
/// </summary>
internal readonly struct Uncertain
{
    private readonly double[]? slopes;

    private Uncertain(double value, double[]? slopes)
    {
        Value = value;
        this.slopes = slopes;
    }

    internal double Value { get; }

    /// <summary>Standard deviation, the unknowns being independent.</summary>
    internal double Spread => Math.Sqrt(Slopes.Sum(s => s * s));

    internal IReadOnlyList<double> Slopes => slopes ?? [];

    internal static Uncertain Exact(double value) => new(value, null);

    internal static Uncertain Along(int unknown, double value, double spread)
    {
        var along = new double[unknown + 1];
        along[unknown] = spread;
        return new Uncertain(value, along);
    }

    public static implicit operator Uncertain(double value) => Exact(value);

    public static Uncertain operator +(Uncertain a, Uncertain b) => Combine(a.Value + b.Value, a, 1, b, 1);

    public static Uncertain operator -(Uncertain a, Uncertain b) => Combine(a.Value - b.Value, a, 1, b, -1);

    public static Uncertain operator *(Uncertain a, Uncertain b) => Combine(a.Value * b.Value, a, b.Value, b, a.Value);

    public static Uncertain operator /(Uncertain a, Uncertain b)
    {
        var ratio = a.Value / b.Value;
        return Combine(ratio, a, 1 / b.Value, b, -ratio / b.Value);
    }

    private static Uncertain Combine(double value, Uncertain a, double alongA, Uncertain b, double alongB)
    {
        var sum = new double[Math.Max(a.Slopes.Count, b.Slopes.Count)];
        Add(sum, a, alongA);
        Add(sum, b, alongB);
        return new Uncertain(value, sum);
    }

    private static void Add(double[] sum, Uncertain term, double along)
    {
        for (var k = 0; k < term.Slopes.Count; k++)
        {
            sum[k] += along * term.Slopes[k];
        }
    }
}
