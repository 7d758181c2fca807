using System.Numerics;

namespace Underturf.Networks.Wiring.Feeders;

/// <summary>
/// A circuit whose two conductors run side by side from one pair of terminals: a tree of stretches, each with the impedance of its loop, and
/// loads between the conductors at the far ends. One sweep inward gives what any end sees, one outward all volts and currents, so a solve
/// costs a few operations a stretch. Equal to the nodal solution of the same network (Kirchhoff's laws on a tree; exact).
/// </summary>
/// <typeparam name="T">double for direct current, Complex for alternating.</typeparam>
public sealed class RadialFeeder<T>
    where T : struct, INumberBase<T>
{
    private readonly int[] parents;
    private readonly T[] below;
    private readonly T[] through;
    private readonly T[] sent;
    private readonly T[] sentThrough;

    /// <param name="parents">For each stretch the one before it, -1 at the terminals; parents stand before their children.</param>
    public RadialFeeder(IReadOnlyList<int> parents)
    {
        this.parents = [.. parents];
        var count = parents.Count;
        (below, through, sent, sentThrough) = (new T[count], new T[count], new T[count], new T[count]);
        (Series, Load, Open) = (new T[count], new T[count], new bool[count]);
        (Volts, Amperes, AdjointVolts, AdjointAmperes) = (new T[count], new T[count], new T[count], new T[count]);
    }

    public int Count => parents.Length;

    /// <summary>Ohms of each stretch's loop: out by the one conductor and back by the other.</summary>
    public T[] Series { get; }

    /// <summary>Siemens between the conductors at the far end of each stretch.</summary>
    public T[] Load { get; }

    /// <summary>Stretches of which a conductor is parted.</summary>
    public bool[] Open { get; }

    /// <summary>Volts between the conductors at each far end, after <see cref="Drive"/>.</summary>
    public T[] Volts { get; }

    /// <summary>Amperes outward in each stretch, after <see cref="Drive"/>.</summary>
    public T[] Amperes { get; }

    /// <summary>Volts at each far end with one ampere sent in at an end, after <see cref="SendBack"/>.</summary>
    public T[] AdjointVolts { get; }

    /// <summary>Amperes outward in each stretch with one ampere sent in at an end, after <see cref="SendBack"/>.</summary>
    public T[] AdjointAmperes { get; }

    /// <summary>Siemens seen outward from the terminals (-1) or from the far end of a stretch.</summary>
    public T Admittance(int end)
    {
        for (var i = 0; i < Count; i++)
        {
            below[i] = Load[i];
        }

        var root = T.Zero;
        for (var i = Count - 1; i >= 0; i--)
        {
            through[i] = Open[i] || T.IsZero(below[i]) ? T.Zero : below[i] / (T.One + (Series[i] * below[i]));
            if (parents[i] < 0)
            {
                root += through[i];
            }
            else
            {
                below[parents[i]] += through[i];
            }
        }

        return end < 0 ? root : below[end];
    }

    /// <summary>Volts and currents outward of an end that is held at <paramref name="volts"/>; call <see cref="Admittance"/> before.</summary>
    public void Drive(int end, T volts)
    {
        for (var i = 0; i < Count; i++)
        {
            var feeding = parents[i] == end ? volts : parents[i] < 0 ? T.Zero : Volts[parents[i]];
            if (i == end)
            {
                (Volts[i], Amperes[i]) = (volts, T.Zero);
                continue;
            }

            Amperes[i] = through[i] * feeding;
            Volts[i] = Open[i] ? T.Zero : feeding - (Series[i] * Amperes[i]);
        }
    }

    /// <summary>
    /// One ampere sent in at the far end of a stretch, the source off and <paramref name="sourceOhms"/> between the terminals; call
    /// <see cref="Admittance"/> before.
    /// </summary>
    /// <returns>Amperes that leave by the source, outward counted positive.</returns>
    public T SendBack(int end, T sourceOhms)
    {
        Array.Clear(sent);
        sent[end] = T.One;
        var atRoot = T.Zero;
        var root = T.Zero;
        for (var i = Count - 1; i >= 0; i--)
        {
            sentThrough[i] = Open[i] ? T.Zero : sent[i] / (T.One + (Series[i] * below[i]));
            root += parents[i] < 0 ? through[i] : T.Zero;
            if (parents[i] < 0)
            {
                atRoot += sentThrough[i];
            }
            else
            {
                sent[parents[i]] += sentThrough[i];
            }
        }

        var terminal = atRoot * sourceOhms / (T.One + (sourceOhms * root));
        for (var i = 0; i < Count; i++)
        {
            var feeding = parents[i] < 0 ? terminal : AdjointVolts[parents[i]];
            AdjointAmperes[i] = (through[i] * feeding) - sentThrough[i];
            AdjointVolts[i] = !Open[i] ? feeding - (Series[i] * AdjointAmperes[i]) : T.IsZero(below[i]) ? T.Zero : sent[i] / below[i];
        }

        return -terminal / sourceOhms;
    }
}
