using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Planning.Repair;

/// <summary>Connectors for a joint, by number and gauge of its conductors.</summary>
internal sealed class ConnectorChoice(IReadOnlyList<ConnectorPractice> catalogue)
{
    private const double SquareMillimetresPerSquareMetre = 1e6;

    /// <summary>More than these are not tried: such a joint is a mistake of the notes.</summary>
    private const int MostOfOne = 8;

    /// <summary>
    /// The cheapest connector that grips all; where none does, several with a short piece of the thickest conductor from each to the next, the
    /// conductors shared out evenly. Nothing where not even that can be.
    /// </summary>
    public (ConnectorPractice Connector, int Count)? For(IReadOnlyList<WireSize> wires)
    {
        for (var count = 1; count <= MostOfOne; count++)
        {
            var groups = Shared(wires, count).ToList();
            if (catalogue.Where(c => groups.All(g => Grips(c, g))).MinBy(c => c.Price) is { } cheapest)
            {
                return (cheapest, count);
            }
        }

        return null;
    }

    /// <summary>Each group with the ends of the pieces that link it to its neighbours.</summary>
    private static IEnumerable<IReadOnlyList<WireSize>> Shared(IReadOnlyList<WireSize> wires, int count)
    {
        var thickest = wires.MaxBy(w => w.AreaSquareMetres);
        var sorted = wires.OrderByDescending(w => w.AreaSquareMetres).ToList();
        return Enumerable.Range(0, count).Select(g => (IReadOnlyList<WireSize>)
        [
            .. sorted.Where((_, i) => i % count == g),
            .. Enumerable.Repeat(thickest, count == 1 ? 0 : g == 0 || g == count - 1 ? 1 : 2),
        ]);
    }

    private static bool Grips(ConnectorPractice connector, IReadOnlyList<WireSize> wires)
    {
        var area = wires.Sum(w => w.AreaSquareMetres) * SquareMillimetresPerSquareMetre;
        return wires.Count <= connector.MostWires && area >= connector.LeastSquareMillimetres && area <= connector.MostSquareMillimetres;
    }
}
