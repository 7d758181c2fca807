using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>A conductor end that is being noted. It stays as it is until it is stored; the gauge stays for the next one too.</summary>
public sealed class EndDraft
{
    /// <summary>Chosen in place of a gauge that nobody can tell.</summary>
    public const string NoGauge = "not sure";

    private static readonly string[] awg = ["18 AWG", "16 AWG", "14 AWG", "12 AWG", "10 AWG"];
    private static readonly string[] squareMillimetres = ["0.75 mm2", "1 mm2", "1.5 mm2", "2.5 mm2", "4 mm2"];

    /// <summary>The end that is corrected; nothing where it is a new one.</summary>
    public string? Id { get; init; }

    public string Label { get; init; } = "";

    public string Colour { get; set; } = "";

    public string Gauge { get; set; } = "";

    public string? Station { get; set; }

    public bool Common { get; set; }

    /// <summary>Sizes that are offered, in the units of the property.</summary>
    public static IReadOnlyList<string> Gauges(bool us) => [.. us ? awg : squareMillimetres, NoGauge];

    /// <summary>A correction of an end that stands on a card.</summary>
    public static EndDraft Of(ConductorEnd end) => new()
    {
        Id = end.Id,
        Label = end.Name,
        Colour = end.Colour ?? "",
        Gauge = end.Gauge ?? NoGauge,
        Station = end.CarriesGrade == Grade.Inferred ? null : end.Station,
    };

    /// <summary>The next one, with the gauge of this one.</summary>
    public EndDraft Next() => new() { Gauge = Gauge };

    /// <summary>What it says, or what is still missing.</summary>
    /// <param name="newId">For an end that nobody has noted before.</param>
    /// <param name="mates">The ends that it was seen joined to; none where it is loose, or where a correction leaves them as they were.</param>
    public Outcome<Fact> ToFact(string newId, BoxCard card, IReadOnlyList<ConductorEnd> mates)
    {
        if (Colour.Trim().Length == 0)
        {
            return new Problem("colour", "is not given yet", "Choose the colour, or write it");
        }

        if (Gauge.Trim().Length == 0)
        {
            return new Problem("gauge", "is not given yet", $"Choose the gauge, or \"{NoGauge}\"");
        }

        var gauge = Gauge.Trim() == NoGauge ? (WireSize?)null : WireSize.Parse(Gauge) is { Succeeded: true } read ? read.Value : default(WireSize);
        return gauge == default(WireSize) ? WireSize.Parse(Gauge).Problem! : new EndFact
        {
            Id = Id ?? $"end-{newId}",
            Place = card.Id,
            Label = Id is null ? NextLabel(card) : null,
            Colour = Colour.Trim(),
            Gauge = gauge,
            Mates = [.. mates.Select(mate => mate.Id).Where(mate => mate != Id)],
            Station = Station,
            Common = Common ? true : null,
        };
    }

    /// <summary>The lowest number that no end of the box has yet.</summary>
    private static string NextLabel(BoxCard card)
    {
        var taken = card.Joints.SelectMany(joint => joint.Ends).Select(end => end.Name).ToHashSet(StringComparer.OrdinalIgnoreCase);
        return Enumerable.Range(1, taken.Count + 1).Select(number => $"end {number}").First(label => !taken.Contains(label));
    }
}
