using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Identification;

/// <summary>Every conductor that carries nothing, with the places at which it was found and what is proven of it there.</summary>
internal sealed class SpareWires(Case matter)
{
    private readonly PropertyView view = matter.View;

    public IReadOnlyList<SpareWire> Find()
    {
        var loose = view.Ends
            .Where(e => e.Value.Common != true && e.Value.Station is null && e.Value.Mates.Count == 0 && view.Controllers.ContainsKey(view.Identity.Of(e.Value.Place)))
            .OrderBy(e => view.Name(e.Key), NaturalOrder.Instance)
            .ToList();
        if (loose.Count == 0)
        {
            return [];
        }

        var found = view.Boxes.Keys.SelectMany(At).ToLookup(s => s.Wire, StringComparer.Ordinal);
        return [.. loose.SelectMany(e => found[e.Key].Any() ? found[e.Key] : [Said(e.Key, e.Value)])];
    }

    private IEnumerable<SpareWire> At(string place)
    {
        if (view.Ends.Values.All(e => view.Identity.Of(e.Place) != place))
        {
            return [];
        }

        var bundle = new BundleFinder(matter).Of(place);
        var (touches, _, belief, _) = Named.Of(matter, bundle);
        return new SpareFinder(matter, bundle, belief).Find(touches).Select(proof =>
        {
            var wire = bundle.Wires.First(w => w.Id == proof.Wire);
            var column = bundle.ColumnOf(proof.Wire);
            var row = Enumerable.Range(0, bundle.Ends.Count).First(e => belief.Best(e).Wire == column);
            return new SpareWire(proof.Wire, proof.Name, wire.Controller, place, bundle.Ends[row].Ends[0].Id, proof.Missing);
        });
    }

    /// <summary>One that nobody traced: its far end is where somebody says it is, or nowhere.</summary>
    private SpareWire Said(string id, EndFact end)
    {
        var far = end.FarEnd is { } other && view.Ends.TryGetValue(view.Identity.Of(other), out var there) ? view.Identity.Of(there.Place) : null;
        var controller = view.Identity.Of(end.Place);
        IReadOnlyList<string> missing = [far is null ? "where it ends" : "that it ends there", "continuity by its own ohms", "insulation from earth and neighbours", "a coil carried under load"];
        return new SpareWire(id, $"{view.Name(id)} at {view.Name(controller)}", controller, far, far is null ? null : view.Identity.Of(end.FarEnd!), missing);
    }
}
