using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Identification;

/// <summary>What is likely before anything was touched: runs, colours, gauges, and what somebody noted that an end carries; of ends that come from no controller see <see cref="FarParts"/>.</summary>
internal sealed class Beforehand(Case matter, Bundle bundle)
{
    private readonly NamingPractice book = matter.Book.Naming;
    private readonly FarMates mates = new(matter.View);
    private readonly string commonGauge = WireSize.FromAwg(matter.Book.Wire.CommonAwg).ToString();
    private readonly string stationGauge = WireSize.FromAwg(matter.Book.Wire.StationAwg).ToString();

    public NamingTable Table()
    {
        var table = new NamingTable(bundle.Ends.Count, bundle.Commons);
        for (var e = 0; e < bundle.Ends.Count; e++)
        {
            var said = LogSaid(bundle.Ends[e]);
            for (var w = 0; w < bundle.Wires.Count; w++)
            {
                var passes = bundle.Wires[w].Passes;
                table.Add(e, w, Math.Log(passes / (1 - passes) / bundle.Ends.Count) + Looks(bundle.Ends[e], bundle.Wires[w]));
                table.Add(e, w, said[w]);
            }

            table.Add(e, bundle.Wires.Count, Math.Log(book.Nothing));
        }

        return table;
    }

    /// <summary>How far colour and gauge speak for a wire, against an end drawn from the box at random.</summary>
    public double Looks(Joint end, Wire wire)
    {
        var isCommon = wire.Role == WireRole.Common;
        return Alike(end, c => c.Colour?.Trim().ToLowerInvariant(), wire.Colours, book.ColourKept)
            + Alike(end, c => c.Gauge, wire.Gauges, book.GaugeKept)
            + (wire.Role == WireRole.Loose ? 0 : UsualColour(end, wire, isCommon) + UsualGauge(end, wire, isCommon));
    }

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
    private double UsualColour(Joint end, Wire wire, bool isCommon) =>
        wire.Colours.Count > 0 ? 0 : Usual(end, c => c.Colour is not null, IsCommonColour, isCommon ? book.CommonColoured : book.StationColoured);

    /// <summary>Where no gauge was noted there: commons are thicker, where the practice book has them so.</summary>
    private double UsualGauge(Joint end, Wire wire, bool isCommon) =>
        wire.Gauges.Count > 0 || commonGauge == stationGauge ? 0 : Usual(end, c => c.Gauge is not null, c => c.Gauge == commonGauge, isCommon ? book.CommonGauged : book.StationGauged);

    private double Usual(Joint end, Func<ConductorEnd, bool> isNoted, Func<ConductorEnd, bool> isSo, double usually)
    {
        if (!end.Ends.Any(isNoted))
        {
            return 0;
        }

        var share = Share(isSo, isNoted);
        return end.Ends.Any(isSo) ? Math.Log(usually / share) : Math.Log((1 - usually) / (1 - share));
    }

    private bool IsCommonColour(ConductorEnd end) => end.Colour is { } colour && book.CommonColours.Contains(colour.Trim().ToLowerInvariant());

    /// <summary>Share of the ends of the box that are so, one more counted on either side.</summary>
    private double Share(Func<ConductorEnd, bool> isSo, Func<ConductorEnd, bool> isNoted)
    {
        var noted = bundle.Ends.SelectMany(e => e.Ends).Where(isNoted).ToList();
        return (noted.Count(isSo) + 1.0) / (noted.Count + 2.0);
    }

    /// <summary>
    /// What somebody said that an end carries, a station or, where nothing is given, a common, and how likely that is wrong. A name that was inferred came from the touches, which speak for
    /// themselves; where nobody noted one, what the end is joined to in other boxes tells.
    /// </summary>
    public IEnumerable<(string? Station, double Wrong)> Said(Joint joint)
    {
        foreach (var end in joint.Ends)
        {
            if (end.Carries is not null)
            {
                if (end.Grade != Grade.Inferred)
                {
                    yield return (end.Station, end.CarriesGrade == Grade.Measured ? book.NotedWrong : book.ToldWrong);
                }
            }
            else if (mates.Of(end.Id) is { } told)
            {
                yield return (told.Station, told.ByColour ? Math.Max(book.ToldWrong, 1 - book.ColourKept) : book.ToldWrong);
            }
        }
    }

    /// <summary>Logarithm of the chance of what was said of an end, if it is, or leads on to, each wire and, last, none.</summary>
    public double[] LogSaid(Joint joint)
    {
        var logs = new double[bundle.Wires.Count + 1];
        foreach (var (station, wrong) in Said(joint))
        {
            var right = Enumerable.Range(0, bundle.Wires.Count).Where(w => station is null ? bundle.Wires[w].Role == WireRole.Common : w == bundle.ColumnOf(station)).ToHashSet();
            for (var w = 0; w < logs.Length && right.Count > 0; w++)
            {
                logs[w] += Math.Log(right.Contains(w) ? (1 - wrong) / right.Count : wrong / (logs.Length - right.Count));
            }
        }

        return logs;
    }
}
