using Underturf.Numerics;

namespace Underturf.Networks.Wiring;

/// <summary>The equations of one network at one frequency, factored once; at 0 Hz those of direct current, coils counting by their ohms.</summary>
internal sealed class AcFactor
{
    private readonly ComplexNodalFactor factor;

    internal AcFactor(WiringNetwork network, double hertz)
    {
        Network = network;
        Topology = hertz == 0 ? network.Topologies.Direct(network) : network.Topologies.Alternating(network);
        RadiansPerSecond = 2 * Math.PI * hertz;
        SiemensRe = new double[network.ElementCount];
        SiemensIm = new double[network.ElementCount];
        var re = new double[Topology.Pattern.SlotCount];
        var im = new double[Topology.Pattern.SlotCount];
        for (var e = 0; e < SiemensRe.Length; e++)
        {
            if (!Topology.Finite[e])
            {
                continue;
            }

            Invert(network.Ohmic[e], RadiansPerSecond * network.Inductive[e], out SiemensRe[e], out SiemensIm[e]);
            var slot = Topology.ElementSlot[e];
            if (slot >= 0)
            {
                re[slot] += SiemensRe[e];
                im[slot] += SiemensIm[e];
            }
        }

        factor = new ComplexNodalFactor(Topology.Pattern, re, im);
    }

    internal WiringNetwork Network { get; }

    internal Topology Topology { get; }

    internal double RadiansPerSecond { get; }

    internal double[] SiemensRe { get; }

    internal double[] SiemensIm { get; }

    /// <summary>Amperes into each merged node become volts, in place.</summary>
    internal void Solve(double[] re, double[] im) => factor.Solve(re, im);

    /// <summary>1 / (r + jx), scaled by the larger part so that no square overflows.</summary>
    private static void Invert(double r, double x, out double re, out double im)
    {
        var scale = Math.Max(Math.Abs(r), Math.Abs(x));
        var (rs, xs) = (r / scale, x / scale);
        var square = scale * ((rs * rs) + (xs * xs));
        re = rs / square;
        im = -xs / square;
    }
}
