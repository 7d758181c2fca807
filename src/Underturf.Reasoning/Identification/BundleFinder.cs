using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Identification;

/// <summary>Finds the ends of a place and the wires that they may be.</summary>
internal sealed class BundleFinder(Case matter)
{
    private readonly PropertyView view = matter.View;
    private readonly NamingPractice book = matter.Book.Naming;

    public Bundle Of(string place) => new(
        place,
        [.. BoxCard.JointsAt(view, place).Where(j => j.Ends.Count > 0)],
        [.. view.Controllers.ContainsKey(place) ? Outside(place) : view.Controllers.Keys.SelectMany(c => Wires(c, place))]);

    /// <summary>The wires that the ends at a controller may be: what leaves it for its stations, each put on at its own place.</summary>
    private IEnumerable<Wire> Outside(string controller)
    {
        yield return Make(controller, [], "common", "common", controller, WireRole.Common, book.CommonPasses, Nearest(controller, controller));
        foreach (var id in StationsOf(controller))
        {
            var seen = view.Ends.Where(e => view.Identity.Of(e.Value.Place) != controller && e.Value.Station is { } s && view.Identity.Of(s) == id).ToList();
            yield return Make(id, seen, view.Name(id), view.StationNumber(id), controller, WireRole.Station, book.Passes, Nearest(controller, view.ValvesOf(id).Select(v => v.Id).FirstOrDefault(controller)));
        }
    }

    private IEnumerable<string> StationsOf(string controller) =>
        view.Stations.Where(s => view.Identity.Of(s.Value.Controller) == controller).Select(s => s.Key).OrderBy(view.StationNumber, NaturalOrder.Instance);

    private IEnumerable<Wire> Wires(string controller, string place)
    {
        var ends = view.Ends.Where(e => view.Identity.Of(e.Value.Place) == controller).ToList();
        var many = view.Controllers.Count > 1;
        foreach (var common in Commons(controller, ends.Where(e => e.Value.Common == true), many ? $"common of {view.Name(controller)}" : "common", place))
        {
            yield return common;
        }

        foreach (var id in StationsOf(controller))
        {
            var path = matter.Paths[id];
            var seen = ends.Where(e => e.Value.Station is { } s && view.Identity.Of(s) == id).ToList();
            yield return Make(id, seen, view.Name(id), view.StationNumber(id), controller, WireRole.Station, Passes(path, place), Ohms(path, place) ?? Nearest(controller, place));
        }

        foreach (var loose in ends.Where(e => e.Value.Common != true && e.Value.Station is null))
        {
            var said = $"{view.Name(loose.Key)} at {view.Name(controller)}";
            yield return Make(loose.Key, [loose], said, said, controller, WireRole.Loose, book.LoosePasses, Nearest(controller, place));
        }
    }

    /// <summary>Each common conductor that was seen at the controller; the first has the controller's id. One that nobody saw is there all the same.</summary>
    private IEnumerable<Wire> Commons(string controller, IEnumerable<KeyValuePair<string, EndFact>> seen, string name, string place)
    {
        var all = seen.OrderBy(e => view.Name(e.Key), NaturalOrder.Instance).ToList();
        var first = all.Count > 1 ? $"{name}, {view.Name(all[0].Key)}" : name;
        yield return Make(controller, all.Take(1).ToList(), first, first, controller, WireRole.Common, book.CommonPasses, Nearest(controller, place));
        foreach (var end in all.Skip(1))
        {
            var said = $"{name}, {view.Name(end.Key)}";
            yield return Make(end.Key, [end], said, said, controller, WireRole.Common, book.CommonPasses, Nearest(controller, place));
        }
    }

    private static Wire Make(
        string id, IReadOnlyList<KeyValuePair<string, EndFact>> seen, string name, string brief, string controller, WireRole role, double passes, (double Ohms, double LogSpread) run) =>
        new(
            id,
            [.. seen.Select(e => e.Key)],
            name,
            brief,
            controller,
            role,
            [.. seen.Select(e => e.Value.Colour).OfType<string>().Select(c => c.Trim().ToLowerInvariant()).Distinct()],
            [.. seen.Select(e => e.Value.Gauge?.ToString()).OfType<string>().Distinct()],
            passes,
            run.Ohms,
            run.LogSpread);

    private double Passes(StationPath path, string place) => path.LegTo(place) >= 0 ? book.Passes : path.Guessed ? book.MayPass : book.Strays;

    /// <summary>Ohms of one conductor along the known run.</summary>
    private (double Ohms, double LogSpread)? Ohms(StationPath path, string place)
    {
        if (path.LegTo(place) is not (var leg and >= 0))
        {
            return null;
        }

        var (ohms, variance) = (0.0, 0.0);
        for (; leg >= 0; leg = path.Legs[leg].Parent)
        {
            var own = BenchLayout.WireOhms(matter.Book, path.Legs[leg].StationSize, path.Legs[leg].LengthMetres);
            ohms += own;
            variance += own * path.Legs[leg].OhmsLogSpread * own * path.Legs[leg].OhmsLogSpread;
        }

        return (ohms, Math.Sqrt(variance) / ohms);
    }

    /// <summary>Ohms by the straight line, where no run is known.</summary>
    private (double Ohms, double LogSpread) Nearest(string controller, string place)
    {
        var (metres, spread) = LegLength.Between(controller, place, view, matter.Book);
        return (BenchLayout.WireOhms(matter.Book, WireSizeOfStation, metres), double.Hypot(spread, matter.Book.Wire.GaugeSpread));
    }

    private Quantities.WireSize WireSizeOfStation => Quantities.WireSize.FromAwg(matter.Book.Wire.StationAwg);
}
