namespace Underturf.Reasoning.Identification;

/// <summary>How likely each thing that can be touched is the same conductor as each thing that can carry, and last as none of them: ends and wires, or wires and ends.</summary>
internal readonly struct Odds(double[] shares, int carriers)
{
    public double this[int touched, int carrier] => shares[(touched * (carriers + 1)) + carrier];

    /// <param name="shares">For each end its wires and, last, none.</param>
    /// <param name="turned">True where ends carry and wires are touched.</param>
    public static Odds Of(double[] shares, int ends, int wires, bool turned)
    {
        if (!turned)
        {
            return new Odds(shares, wires);
        }

        var other = new double[wires * (ends + 1)];
        for (var w = 0; w < wires; w++)
        {
            var (at, none) = (w * (ends + 1), 1.0);
            for (var e = 0; e < ends; e++)
            {
                other[at + e] = shares[(e * (wires + 1)) + w];
                none -= other[at + e];
            }

            other[at + ends] = Math.Max(0, none);
        }

        return new Odds(other, ends);
    }
}
