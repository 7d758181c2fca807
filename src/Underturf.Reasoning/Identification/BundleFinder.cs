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

    public Bundle Of(string place) =>
        new(place, [.. BoxCard.JointsAt(view, place).Where(j => j.Ends.Count > 0)], [.. view.Controllers.Keys.Where(c => c != place).SelectMany(c => Wires(c, place))]);

    private IEnumerable<Wire> Wires(string controller, string place)
    {
        var ends = view.Ends.Where(e => view.Identity.Of(e.Value.Place) == controller).ToList();
        var (common, many) = (ends.Where(e => e.Value.Common == true).ToList(), view.Controllers.Count > 1);
        var name = many ? $"common of {view.Name(controller)}" : "common";
        yield return Make(controller, common, name, name, controller, WireRole.Common, book.CommonPasses, Nearest(controller, place));
        foreach (var id in view.Stations.Where(s => view.Identity.Of(s.Value.Controller) == controller).Select(s => s.Key).OrderBy(view.StationNumber, NaturalOrder.Instance))
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
