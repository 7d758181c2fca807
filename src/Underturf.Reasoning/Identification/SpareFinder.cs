using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Identification;

/// <summary>What is proven of each wire that carries nothing: found at both ends, continuous by its own ohms, apart from earth and neighbours, carries a coil.</summary>
internal sealed class SpareFinder(Case matter, Bundle bundle, NamingBelief belief)
{
    /// <summary>Ohms further from the wire's own than this many standard deviations are not its own.</summary>
    private const double Far = 4;

    private readonly NamingPractice book = matter.Book.Naming;

    public IEnumerable<SpareProof> Find(IReadOnlyList<NotedTouching> touches)
    {
        foreach (var (w, wire) in bundle.Wires.Index().Where(x => x.Item.Role == WireRole.Loose))
        {
            var end = Enumerable.Range(0, bundle.Ends.Count).FirstOrDefault(e => belief.Best(e) is var best && best.Wire == w && best.Share >= book.NameAt, -1);
            if (end >= 0)
            {
                yield return Proof(wire, end, w, [.. touches.Where(t => t.Touching.Joins(end, w))]);
            }
        }
    }

    private SpareProof Proof(Wire wire, int end, int column, IReadOnlyList<NotedTouching> on)
    {
        var own = on.Where(t => t.Note.Fact.Value?.Value is not null && t.Touching.Way.Shows == NamingSign.Answers && t.Touching.Answers(end, column)).ToList();
        var continuous = own.Any(t => IsOwn(t.Note.Fact.Value!.Value.Value!.Value.Si, wire));
        var apart = on.Where(t => t.Touching.Way.Shows == NamingSign.Apart && t.Note.Fact.Value is not null).ToList();
        var insulated = apart.Count > 0 && (apart[^1].Note.Fact.Value!.Value.IsOverRange || apart[^1].Note.Fact.Value!.Value.Value!.Value.Si >= book.SoundOhms);
        var load = on.Any(t => t.Touching.Way.CarriesLoad && t.Touching.Put.Count(p => p) == 1 && t.Touching.Answers(end, column));
        return new SpareProof(
            wire.Id,
            wire.Name,
            matter.View.Name(wire.Controller),
            matter.View.Name(bundle.Place),
            true,
            continuous,
            insulated,
            load,
            [.. Missing(wire, own.Count > 0, continuous, apart.Count > 0, insulated, load)]);
    }

    private bool IsOwn(double ohms, Wire wire) =>
        matter.Book.InstrumentOf(Measure.StationOhms) is { } meter && Math.Abs(ohms - (2 * wire.Ohms)) < Far * ResistorChoice.Sigma(0, wire.Ohms, wire.LogSpread, meter, book);

    private IEnumerable<string> Missing(Wire wire, bool read, bool continuous, bool apart, bool insulated, bool load)
    {
        if (!continuous)
        {
            yield return read ? $"continuous, but not by its own ohms (about {2 * wire.Ohms:0.0} ohm out and back)" : "continuity by its own ohms";
        }

        if (!insulated)
        {
            yield return apart ? "insulation: too few ohms to earth or to a neighbour" : $"insulation from earth and neighbours{(book.Ways.Any(w => w.Shows == NamingSign.Apart && w.Owned) ? string.Empty : " (no instrument owned)")}";
        }

        if (!load)
        {
            yield return "a coil carried under load";
        }
    }
}
