using Underturf.Networks.Wiring;
using Underturf.Quantities;
using Underturf.Reasoning.Translation;

namespace Underturf.Planning.Rework;

/// <summary>Wires as they are to be.</summary>
internal static class Wires
{
    /// <summary>The path with some of its valves only, and the legs that lead to them.</summary>
    public static StationPath Only(StationPath path, IReadOnlyList<ValveEnd> ends)
    {
        var kept = ends.SelectMany(e => Chain(path, e.Leg)).Distinct().Order().ToList();
        int Now(int leg) => leg < 0 ? -1 : kept.IndexOf(leg);
        return path with
        {
            Legs = [.. kept.Select(i => path.Legs[i] with { Parent = Now(path.Legs[i].Parent) })],
            Valves = [.. ends.Select(e => e with { Leg = Now(e.Leg) })],
        };
    }

    /// <summary>The wires of one valve with a conductor of its own as far as its joint.</summary>
    /// <param name="id">Names the station that it will be.</param>
    /// <param name="branch">Legs that stay as they are.</param>
    /// <param name="changed">A leg of the conductor that it gets.</param>
    public static StationPath Own(StationPath path, ValveEnd end, string id, IReadOnlyList<Leg> branch, Func<Leg, Leg> changed)
    {
        var only = Only(path, [end]);
        var old = branch.Select(b => b.Key).ToHashSet();
        return only with { Station = id, Legs = [.. only.Legs.Select(l => old.Contains(l.Key) ? l : changed(l))] };
    }

    /// <summary>The same over a new cable laid straight to the joint.</summary>
    public static StationPath Pulled(StationPath path, ValveEnd end, string id, string joint, IReadOnlyList<Leg> branch, Leg cable)
    {
        IReadOnlyList<Leg> legs = [cable with { To = joint, Parent = -1 }, .. branch.Select((b, i) => b with { Parent = i })];
        return path with { Station = id, Legs = legs, Valves = [end with { Leg = legs.Count - 1 }] };
    }

    /// <summary>Metres of wire from the controller to a place of the path.</summary>
    public static double MetresTo(StationPath path, string place) => Chain(path, path.LegTo(place)).Sum(i => path.Legs[i].LengthMetres);

    /// <summary>Legs to a place, from the controller on.</summary>
    public static IEnumerable<Leg> To(StationPath path, string place) => Chain(path, path.LegTo(place)).Reverse().Select(i => path.Legs[i]);

    /// <summary>Two conductors side by side are as good as one of their areas together.</summary>
    public static WireSize Together(WireSize a, WireSize b) => new(double.Hypot(a.DiameterMetres, b.DiameterMetres));

    /// <summary>Length by area of the common that two stations share, per metre.</summary>
    public static double SharedCommon(StationPath a, StationPath b) => a.Common != b.Common ? 0
        : a.Legs.Where(l => b.IndexOf(l.Key) >= 0).Sum(l => l.LengthMetres / l.CommonSize.AreaSquareMetres);

    /// <summary>Ohms out and back to the end of a leg.</summary>
    public static double OhmsTo(StationPath path, int leg, double kelvins) =>
        Chain(path, leg).Sum(i => path.Legs[i].LengthMetres * (CopperWire.OhmsPerMetre(path.Legs[i].StationSize, kelvins) + CopperWire.OhmsPerMetre(path.Legs[i].CommonSize, kelvins)));

    private static IEnumerable<int> Chain(StationPath path, int leg)
    {
        for (; leg >= 0; leg = path.Legs[leg].Parent)
        {
            yield return leg;
        }
    }
}
