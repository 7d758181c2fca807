using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Moves;

/// <summary>What can be read and seen about a subject, and where: the same for what is proposed and for what is foreseen of it.</summary>
internal sealed class Reach(Case owner, Subject subject)
{
    public StationPath Path { get; } = owner.Paths[subject.Stations[0]];

    /// <summary>Where one stands for a way of reading; nothing at the controller.</summary>
    public IEnumerable<string?> Places(ProbePractice probe) => probe.At switch
    {
        Stand.Controller => [null],
        Stand.Box => Path.Legs.Select(l => (string?)l.To).Distinct(),
        _ => Path.Valves.Select(v => (string?)v.Place).Distinct(),
    };

    /// <summary>
    /// The stations of a reading; nothing where it cannot be made. Between two it takes another of the question, or a neighbour that ends at the same place;
    /// against another common there has to be one.
    /// </summary>
    public IReadOnlyList<string>? Stations(ProbePractice probe) => probe.Measures switch
    {
        Measure.SupplyVolts => null,
        Measure.OtherCommonOhms when !owner.Paths.Values.Any(p => p.Controller != Path.Controller || p.Common != Path.Common) => null,
        Measure.BetweenStationsOhms => (subject.Stations.Skip(1).FirstOrDefault() ?? Neighbour()) is { } other ? [Path.Station, other] : null,
        _ => [Path.Station],
    };

    /// <summary>Readings that were taken in the same way, of the same stations, at the same place; at any where none is named.</summary>
    public IEnumerable<ReadingEvidence> Taken(Measure measures, IReadOnlyList<string> stations, string? place) => owner.Evidence.OfType<ReadingEvidence>().Where(e =>
        e.Measures == measures && e.Stations.Order().SequenceEqual(stations.Order()) && (place is null || e.Place == place));

    /// <summary>Chances that a look into a place finds each finding, and nothing odd, in a world. Findings that exclude each other here share what is seen.</summary>
    public static double[] LookRow(World world, string place, List<string> findings)
    {
        var row = new double[findings.Count + 1];
        foreach (var suspect in world.Suspects.Where(s => s.Place == place && !s.Seat.IsUnfound && s.Fault.Seen > 0))
        {
            row[findings.IndexOf(suspect.Fault.FindingName)] = suspect.Fault.Seen;
        }

        var sum = row.Sum();
        if (sum > 1)
        {
            row = [.. row.Select(r => r / sum)];
        }

        row[^1] = Math.Max(0, 1 - row.Sum());
        return row;
    }

    /// <summary>Of the same cable where there is one: the common of another may be another.</summary>
    private string? Neighbour() => owner.Paths.Values
        .Where(p => p.Station != Path.Station && p.Controller == Path.Controller && p.Legs[^1].To == Path.Legs[^1].To && !owner.MayReturnApart(p, Path))
        .MaxBy(p => p.Legs[0].Id == Path.Legs[0].Id)?.Station;
}
