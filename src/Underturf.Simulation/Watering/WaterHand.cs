using System.Globalization;
using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Simulation;

/// <summary>Reads, turns and looks on true water: a meter read in whole tenths with an error of its own, a gauge in whole pounds, eyes that miss things.</summary>
internal sealed class WaterHand(TrueWater truth, SeededGenerator chance, PracticeBook book)
{
    private const double Sees = 0.85;

    private readonly double meterError = chance.Between(-0.03, 0.03);
    private readonly double gaugeError = chance.Between(-0.025, 0.025);
    private readonly HashSet<string> shut = new(StringComparer.Ordinal);

    /// <summary>What comes of what a move asks for; nothing where this hand does not know how.</summary>
    public IReadOnlyList<Fact> Do(Fact asks, bool read) => asks switch
    {
        ReadingFact r => [Read(r.How, r.Stations is [var s] ? Station(s) : null)],
        SettingFact s => [Turn(s), .. read ? [Read("meter flow", null)] : Array.Empty<Fact>()],
        WatchFact { Station: { } s } => [Watch(Station(s))],
        WatchFact => Round(),
        _ => [],
    };

    /// <summary>Everything open again, as one leaves it.</summary>
    public IReadOnlyList<Fact> OpenAll() => [.. shut.Order(StringComparer.Ordinal).ToList().Select(of => Turn(new SettingFact { Of = of, State = "open" }))];

    public Fact Read(string how, TrueStation? station)
    {
        var flow = truth.Solve(station, shut);
        return new ReadingFact
        {
            How = how,
            Stations = station is null ? [] : [station.Id],
            Value = Shown.Parse(how switch
            {
                "meter flow" => Flow(flow.Meter),
                "static pressure" or "running pressure" => Pressure(flow.SupplyPascals),
                "outlet pressure" => Pressure(flow.OutletPascals),
                "opening time" => Time(station!.OpeningSeconds),
                _ => Time(station!.ClosingSeconds),
            }).Value
        };
    }

    private TrueStation Station(string id) => truth.Stations.First(s => s.Id == id);

    private SettingFact Turn(SettingFact setting)
    {
        _ = setting.State == "shut" ? shut.Add(setting.Of) : shut.Remove(setting.Of);
        return setting;
    }

    /// <summary>Now and then somebody else draws water just then.</summary>
    private string Flow(double runs)
    {
        var drawn = chance.Happens(book.Water.Faults.First(f => f.Scope == WaterScope.Elsewhere).Rate) ? chance.Between(2, 25) / 60000 : 0;
        var shown = Units.In((runs + drawn) * (1 + meterError) * (1 + (0.01 * chance.HeavyTailed())), "gpm");
        return $"{Math.Max(0, Math.Round(shown, 1)).ToString("0.0", CultureInfo.InvariantCulture)} gpm";
    }

    private string Pressure(double pascals) => $"{Math.Max(0, Math.Round((Units.In(pascals, "psi") * (1 + gaugeError)) + (0.4 * chance.HeavyTailed()))).ToString("0", CultureInfo.InvariantCulture)} psi";

    private string Time(double seconds) => $"{Math.Max(1, Math.Round(seconds + chance.Between(-0.8, 0.8))).ToString("0", CultureInfo.InvariantCulture)} s";

    /// <summary>What a station that runs shows, by what it really gives beside what it would give in order.</summary>
    public WatchFact Watch(TrueStation station)
    {
        var (now, sound) = (truth.Solve(station, shut), truth.Solve(station.Sound!, shut));
        var share = Math.Max(0, now.OutletPascals) / Math.Max(1, sound.OutletPascals);
        var has = station.Faults.ToHashSet(StringComparer.Ordinal);
        return new WatchFact
        {
            Station = station.Id,
            Seen = Seen(
                ("nothing waters", share < 0.03 ? 0.97 : 0),
                ("weak", share < 0.03 ? 0 : Math.Max(Weak(share), Weak(now.OutletPascals / 200_000))),
                ("misting", now.OutletPascals > 400_000 ? 0.85 : now.OutletPascals > 340_000 ? 0.35 : 0),
                ("broken outlet", has.Contains("outlet-broken") ? 0.92 : 0),
                ("bubbling", has.Contains("lateral-break") ? 0.7 : 0),
                ("wet ground", has.Contains("lateral-break") ? 0.6 : has.Contains("outlet-broken") ? 0.25 : station.LeakHole > 0 ? 0.15 : has.Contains("low-head") ? 0.12 : 0),
                ("spitting", has.Contains("air-in-pipe") ? Sees : 0),
                ("bang", has.Contains("closes-hard") ? 0.75 : has.Contains("air-in-pipe") ? 0.2 : 0),
                ("weeping ends", has.Contains("low-head") ? 0.6 : 0),
                ("weeping", station.LeakHole > 0 ? 0.3 : 0)),
        };
    }

    /// <summary>With everything off, past the lowest outlets of all stations: what is odd is noted at its own station.</summary>
    private List<Fact> Round()
    {
        var odd = truth.Stations.Select(s => new WatchFact { About = s.Id, Seen = Idle(s) }).Where(w => w.Seen.Count > 0).Select(w => (Fact)w).ToList();
        return odd.Count > 0 ? odd : [new WatchFact()];
    }

    private IReadOnlyList<string> Idle(TrueStation station)
    {
        var runs = station.LeakHole * Math.Sqrt(400_000) * 60000;
        return Seen(("weeping", runs > 0 ? 1 - Math.Exp(-runs / 4) : 0), ("wet ground", runs > 0 ? 0.45 : 0));
    }

    private static double Weak(double share) => share < 0.5 ? 0.85 : share < 0.75 ? 0.5 : 0;

    /// <summary>Besides, one now and then sees what is not there.</summary>
    private IReadOnlyList<string> Seen(params IReadOnlyList<(string Sight, double Chance)> shows) =>
        [.. shows.Where(s => chance.Happens(s.Chance) || chance.Happens(0.6 * book.Water.Sights.First(k => k.Name == s.Sight).Imagined)).Select(s => s.Sight)];
}
