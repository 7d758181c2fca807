using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>What is likely before anything was touched: runs, colours, gauges, and what somebody noted that an end carries.</summary>
internal sealed class Beforehand(Bundle bundle, NamingPractice book)
{
    public NamingTable Table()
    {
        var table = new NamingTable(bundle.Ends.Count, bundle.Commons);
        for (var e = 0; e < bundle.Ends.Count; e++)
        {
            for (var w = 0; w < bundle.Wires.Count; w++)
            {
                var passes = bundle.Wires[w].Passes;
                table.Add(e, w, Math.Log(passes / (1 - passes) / bundle.Ends.Count) + Looks(bundle.Ends[e], bundle.Wires[w]));
            }

            table.Add(e, bundle.Wires.Count, Math.Log(book.Nothing));
            Noted(table, e);
        }

        return table;
    }

    /// <summary>How far colour and gauge speak for a wire, against an end drawn from the box at random.</summary>
    private double Looks(Joint end, Wire wire) =>
        Alike(end, c => c.Colour?.Trim().ToLowerInvariant(), wire.Colours, book.ColourKept)
        + Alike(end, c => c.Gauge, wire.Gauges, book.GaugeKept)
        + (wire.Colours.Count == 0 && wire.Role != WireRole.Loose ? Usual(end, wire.Role == WireRole.Common ? book.CommonColoured : book.StationColoured) : 0);

    private double Alike(Joint end, Func<ConductorEnd, string?> of, IReadOnlyList<string> known, double kept)
    {
        var mine = end.Ends.Select(of).OfType<string>().ToList();
        if (mine.Count == 0 || known.Count == 0)
        {
            return 0;
        }

        var share = Share(c => of(c) is { } here && known.Contains(here), c => of(c) is not null);
        return mine.Any(known.Contains) ? Math.Log(kept / share) : Math.Log((1 - kept) / (1 - share));
    }

    /// <summary>Where no colour was noted at the controller: commons have colours of their own.</summary>
    private double Usual(Joint end, double coloured)
    {
        if (!end.Ends.Any(c => c.Colour is not null))
        {
            return 0;
        }

        var share = Share(IsCommonColour, c => c.Colour is not null);
        return end.Ends.Any(IsCommonColour) ? Math.Log(coloured / share) : Math.Log((1 - coloured) / (1 - share));
    }

    private bool IsCommonColour(ConductorEnd end) => end.Colour is { } colour && book.CommonColours.Contains(colour.Trim().ToLowerInvariant());

    /// <summary>Share of the ends of the box that are so, one more counted on either side.</summary>
    private double Share(Func<ConductorEnd, bool> isSo, Func<ConductorEnd, bool> isNoted)
    {
        var noted = bundle.Ends.SelectMany(e => e.Ends).Where(isNoted).ToList();
        return (noted.Count(isSo) + 1.0) / (noted.Count + 2.0);
    }

    /// <summary>A name that was inferred came from the touches, which speak for themselves.</summary>
    private void Noted(NamingTable table, int e)
    {
        foreach (var end in bundle.Ends[e].Ends.Where(c => c.Carries is not null && c.Grade != Grade.Inferred))
        {
            var wire = end.Station is { } station ? bundle.ColumnOf(station) : bundle.Wires.Index().Where(w => w.Item.Role == WireRole.Common).Select(w => w.Index).FirstOrDefault(-1);
            var wrong = end.CarriesGrade == Grade.Measured ? book.NotedWrong : book.ToldWrong;
            for (var w = 0; w <= table.Wires && wire >= 0; w++)
            {
                table.Add(e, w, Math.Log(w == wire ? 1 - wrong : wrong / table.Wires));
            }
        }
    }
}
