namespace Underturf.Networks.Hydraulics;

/// <summary>Head over each outlet by its flow, the inverse of Q = k p^x, and the slope of it.</summary>
internal sealed class OutletLaws
{
    /// <summary>Under less head than this the flow is taken as proportional to it: a nozzle's slope goes to zero there.</summary>
    private const double LinearBelowMetres = 1e-4;

    private readonly double[] k;
    private readonly double[] inverseExponent;
    private readonly double[] linearBelow;

    internal OutletLaws(PipeNetwork network)
    {
        var (outlets, pascals) = (network.Outlets, network.Water.PascalsPerMetre);
        (k, inverseExponent, linearBelow) = (new double[outlets.Count], new double[outlets.Count], new double[outlets.Count]);
        (MostMetres, Most) = (new double[outlets.Count], new double[outlets.Count]);
        for (var o = 0; o < k.Length; o++)
        {
            var outlet = outlets[o].Outlet;
            var exponent = outlet.PressureExponentNumber;
            k[o] = outlet.CubicMetresPerSecondAtOnePascal * Math.Pow(pascals, exponent);
            inverseExponent[o] = 1 / exponent;
            linearBelow[o] = k[o] * Math.Pow(LinearBelowMetres, exponent);
            MostMetres[o] = exponent == 0 ? LinearBelowMetres : (outlet.CompensatedFromPascals / pascals) ?? double.PositiveInfinity;
            Most[o] = double.IsPositiveInfinity(MostMetres[o]) ? double.PositiveInfinity : k[o] * Math.Pow(MostMetres[o], exponent);
        }
    }

    /// <summary>Head from which on each compensates, and its flow then.</summary>
    internal double[] MostMetres { get; }

    internal double[] Most { get; }

    internal (double Head, double Slope) At(int o, double flow)
    {
        if (flow < linearBelow[o])
        {
            var straight = LinearBelowMetres / linearBelow[o];
            return (straight * flow, straight);
        }

        var share = flow / k[o];
        var head = inverseExponent[o] == 2 ? share * share : Math.Pow(share, inverseExponent[o]);
        return (head, inverseExponent[o] * head / flow);
    }

    /// <summary>Flow under a head, straight where it is hardly any.</summary>
    internal double Flow(int o, double head) => head <= 0 ? 0
        : head < LinearBelowMetres ? head / LinearBelowMetres * linearBelow[o]
        : k[o] * (inverseExponent[o] == 2 ? Math.Sqrt(Math.Min(head, MostMetres[o])) : Math.Pow(Math.Min(head, MostMetres[o]), 1 / inverseExponent[o]));
}
