namespace Underturf.Reasoning.Water;

/// <summary>Where a function that falls from above zero to below it between 0 and 1 is zero.</summary>
internal static class Halving
{
    private const int Halvings = 40;

    public static double Of(Func<double, double> falling)
    {
        var (low, high) = (0.0, 1.0);
        for (var k = 0; k < Halvings; k++)
        {
            var middle = (low + high) / 2;
            (low, high) = falling(middle) > 0 ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }
}
