using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Reasoning.Translation;

namespace Underturf.Simulation.Trials;

/// <summary>
/// The same belief with as many readings as anybody could want: of each station asked about every way of reading that is owned, at every place, a
/// run, and a look into every place, each several times. What it still gets wrong no choice of moves could have known.
/// </summary>
public static class IdealObserver
{
    /// <summary>Each reading so many times, with errors of its own.</summary>
    public const int Rounds = 3;

    /// <summary>Stations that one is read against.</summary>
    private const int Partners = 2;

    /// <summary>What it says of each question that was open at the start.</summary>
    public static IReadOnlyList<ScoredStatement> Ask(World world, WorldShape shape)
    {
        var site = new TrialSite(world, shape.TailShare);
        var sheet = new ScoreSheet(site, null);
        var asked = Notebook.Open(site.Log, site.Book).Answer().Questions.Select(sheet.Reader.Stations).Where(s => s.Count > 0).ToList();
        foreach (var path in asked.SelectMany(s => s).Distinct().Order(StringComparer.Ordinal).Select(s => site.Paths[s]))
        {
            for (var round = 0; round < Rounds; round++)
            {
                ReadAll(site, path);
            }
        }

        foreach (var question in Notebook.Open(site.Log, site.Book).Answer().Questions.Where(q => asked.Exists(a => a.Intersect(sheet.Reader.Stations(q)).Any())))
        {
            sheet.Score(question);
        }

        sheet.Closed(asked);
        return sheet.Lines;
    }

    private static void ReadAll(TrialSite site, StationPath path)
    {
        foreach (var probe in site.Book.Probes.Where(p => site.Book.Instrument(p).Owned && p.Measures != Measure.SupplyVolts))
        {
            IEnumerable<string?> places = probe.At switch
            {
                Stand.Controller => [null],
                Stand.Box => path.Legs.Select(l => (string?)l.To),
                _ => path.Valves.Select(v => (string?)v.Place),
            };
            foreach (var (place, stations) in from place in places.Distinct() from stations in Stations(site, path, probe) select (place, stations))
            {
                site.See(new ReadingFact { How = probe.Name, Stations = stations, Place = place, Value = Shown.OverRange });
            }
        }

        site.See(new TestFact { Station = path.Station });
        foreach (var place in path.Legs.Select(l => l.To).Distinct())
        {
            site.See(new LookFact { Place = place });
        }
    }

    private static IEnumerable<IReadOnlyList<string>> Stations(TrialSite site, StationPath path, ProbePractice probe) => probe.Measures != Measure.BetweenStationsOhms
        ? [[path.Station]]
        : site.Paths.Values
            .Where(p => p.Station != path.Station && p.Controller == path.Controller)
            .OrderByDescending(p => p.Legs.Count(l => path.LegTo(l.To) >= 0))
            .Take(Partners)
            .Select(p => (IReadOnlyList<string>)[path.Station, p.Station]);
}
