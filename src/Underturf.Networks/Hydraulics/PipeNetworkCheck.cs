using Underturf.Quantities;

namespace Underturf.Networks.Hydraulics;

/// <summary>What must hold before a network is solved; every problem names the element or node.</summary>
internal static class PipeNetworkCheck
{
    private const double MostMetres = 1e6;

    internal static Problem? Of(PipeNetwork network) =>
        First(network.Nodes, Node)
        ?? First(network.Flowing, e => Ends(network, e) ?? Values(e))
        ?? First(network.Outlets, o => OfOutlet(network, o))
        ?? Source(network)
        ?? Regulators(network)
        ?? Withdrawn(network);

    private static Problem? First<T>(IEnumerable<T> of, Func<T, Problem?> check)
    {
        foreach (var each in of)
        {
            if (check(each) is { } problem)
            {
                return problem;
            }
        }

        return null;
    }

    private static Problem? Node(PipeNode node) => !(Math.Abs(node.ElevationMetres) <= MostMetres)
        ? new Problem(Place(node), $"{node.ElevationMetres} m is no height", "Give the height over any one level of the property, in metres")
        : !(Math.Abs(node.WithdrawnCubicMetresPerSecond) <= MostMetres)
        ? new Problem(Place(node), $"{node.WithdrawnCubicMetresPerSecond} m3/s is no flow", "Give what is taken there, or nothing")
        : null;

    private static Problem? Ends(PipeNetwork network, PipeElement element)
    {
        if (element.A < 0 || element.B < 0 || element.A >= network.Nodes.Count || element.B >= network.Nodes.Count)
        {
            return new Problem(Place(element), "ends at a node that is not in the network", "Add its nodes first and give their numbers");
        }

        return element.A == element.B ? new Problem(Place(element), "begins where it ends", "Give it two different nodes") : null;
    }

    private static Problem? Values(PipeElement element)
    {
        if (element.Friction is { } friction)
        {
            if (!(element.LengthMetres > 0 && element.LengthMetres <= MostMetres))
            {
                return new Problem(Place(element), $"{element.LengthMetres} m is no length", "Give a length above zero; pace it if nobody knows");
            }

            if (!(element.InsideDiameterMetres is > 1e-4 and <= 10))
            {
                return new Problem(Place(element), $"{element.InsideDiameterMetres} m is no inside diameter", "Give the inside diameter in metres, 0.0001 to 10");
            }

            if (Wall(friction, element.InsideDiameterMetres) is { } reason)
            {
                return new Problem(Place(element), reason, "Give C from 10 to 200, or a roughness from 0 to a twentieth of the diameter");
            }
        }

        return Losses(element);
    }

    private static string? Wall(Friction friction, double diameter) => friction.IsDarcyWeisbach
        ? (friction.Number >= 0 && friction.Number <= diameter / 20 ? null : $"{friction.Number} m is no roughness of it")
        : (friction.Number is >= 10 and <= 200 ? null : $"C of {friction.Number} is no pipe's");

    private static Problem? Losses(PipeElement element)
    {
        if (!(element.ResistancePerFlowFactor >= 0 && element.ResistancePerFlowSquaredFactor >= 0)
            || double.IsInfinity(element.ResistancePerFlowFactor + element.ResistancePerFlowSquaredFactor))
        {
            return new Problem(Place(element), "has a negative or endless loss", "Give loss and flow coefficients above zero; close it with IsClosed");
        }

        if (element.Curve?.Fault() is { } fault)
        {
            return new Problem(Place(element), $"has a loss curve that {fault}", "Give flows from 0 upward with losses that never fall; where a maker's curve falls at low flow, its highest loss from 0 on");
        }

        if (element.MostCubicMetresPerSecond is { } most && !(most > 0))
        {
            return new Problem(Place(element), $"{most} m3/s is no most flow", "Give a flow above zero, or close it");
        }

        return element.RegulatedPascals is { } held && !(held is >= 0 and <= 1e8)
            ? new Problem(Place(element), $"{held} Pa is no regulated pressure", "Give a pressure of zero or more")
            : null;
    }

    private static Problem? OfOutlet(PipeNetwork network, PlacedOutlet placed)
    {
        var (place, outlet) = ($"outlet '{placed.Name}'", placed.Outlet);
        if (placed.Node < 0 || placed.Node >= network.Nodes.Count)
        {
            return new Problem(place, "is on a node that is not in the network", "Add its junction first");
        }

        if (!(outlet.CubicMetresPerSecondAtOnePascal > 0 && double.IsFinite(outlet.CubicMetresPerSecondAtOnePascal) && outlet.PressureExponentNumber is >= 0 and <= 2))
        {
            return new Problem(place, "has a flow or an exponent that no outlet has", "Give a flow above zero and an exponent from 0 to 2");
        }

        return outlet.CompensatedFromPascals is { } from && !(from > 0)
            ? new Problem(place, $"{from} Pa is no pressure to compensate from", "Give a pressure above zero, or none")
            : null;
    }

    private static Problem? Source(PipeNetwork network) => network.Nodes.Any(n => n.IsReservoir)
        ? null
        : new Problem("network", "has no supply", "Add the point of connection, or any body of water that holds its level");

    private static Problem? Regulators(PipeNetwork network)
    {
        var held = new HashSet<int>();
        foreach (var element in network.Flowing.Where(e => e.RegulatedPascals is not null))
        {
            if (network.Nodes[element.B].IsReservoir || !held.Add(element.B))
            {
                return new Problem(Place(element), "holds the pressure of a node that something else holds already", "Put a length of pipe behind it");
            }
        }

        return null;
    }

    private static Problem? Withdrawn(PipeNetwork network)
    {
        if (!network.Nodes.Any(n => n.WithdrawnCubicMetresPerSecond > 0))
        {
            return null;
        }

        var supplied = Supplied.Nodes(network);
        var dry = Enumerable.Range(0, supplied.Length).FirstOrDefault(n => !supplied[n] && network.Nodes[n].WithdrawnCubicMetresPerSecond > 0, -1);
        return dry < 0
            ? null
            : new Problem(Place(network.Nodes[dry]), "is to give water, and nothing open joins it to a supply", "Open a valve on the way, or take nothing from it");
    }

    private static string Place(PipeElement element) => $"{element.Kind.ToString().ToLowerInvariant()} '{element.Name}'";

    private static string Place(PipeNode node) => $"junction '{node.Name}'";
}
