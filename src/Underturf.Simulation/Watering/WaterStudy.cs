using System.Globalization;
using Underturf.Property.Practice;
using Underturf.Reasoning.Water;

namespace Underturf.Simulation;

/// <summary>Many made-up properties with true water: whether what is said of stations, supply and of what runs with everything off holds as often as it says.</summary>
public static class WaterStudy
{
    /// <summary>A probability below this counts as this: one blunder is not to drown all else.</summary>
    private const double Least = 1e-3;

    private const int Bins = 10;

    /// <summary>Reporting seeds begin here; seeds below were used for looking.</summary>
    public const ulong FirstSeed = 83_301;

    /// <summary>Properties that a test makes again, and of those in which something runs.</summary>
    public const int Few = 5, FewRunning = 2;

    public static string Heading => "| properties | statements | likeliest right | its mean probability | calibration error | log score | by rates alone |\n|---|---|---|---|---|---|---|";

    public static string IdleHeading => "| properties | something runs | said so | its source on top at the start | on top at the end | mean probability on top | calibration error | log score | by odds alone | within the stated loss | moves |\n|---|---|---|---|---|---|---|---|---|---|---|";

    /// <summary>A statement: what was held likeliest, whether that is right, and the chances given to the truth.</summary>
    public sealed record Stated(double Top, bool Right, double Truth, double TruthByRates);

    /// <summary>One property.</summary>
    /// <param name="Start">Of what runs with everything off, before the moves; null where nothing really does.</param>
    /// <param name="WithinLoss">Whether what is really lost lies in what was stated; null where nothing was.</param>
    public sealed record Case(IReadOnlyList<Stated> Stations, Stated Supply, bool Runs, bool SaidToRun, Stated? Start, Stated? End, bool? WithinLoss, int Moves)
    {
        /// <summary>Chance that each fault of each station was given, beside whether it is there.</summary>
        public IReadOnlyList<(string Fault, double Chance, bool There)> Faults { get; init; } = [];
    }

    /// <param name="times">How often whatever a visit reads of a station is read.</param>
    public static IReadOnlyList<Case> Block(ulong first, int count, PracticeBook book, int times = 1) => [.. Enumerable.Range(0, count).Select(i => One(first + (ulong)i, book, times))];

    /// <summary>The first in which something really runs with everything off.</summary>
    public static IReadOnlyList<Case> Running(ulong first, int count, PracticeBook book)
    {
        var found = new List<Case>();
        for (var seed = first; found.Count < count; seed++)
        {
            if (Sources(WaterTrial.TruthOf(seed, book)).Count > 0)
            {
                found.Add(One(seed, book));
            }
        }

        return found;
    }

    public static Case One(ulong seed, PracticeBook book, int times = 1)
    {
        var trial = new WaterTrial(seed, book, times);
        var (start, truth) = (trial.Report(), trial.Truth);
        var stations = start.Stations.Where(s => s.States.Count > 0).Select(s => Station(s, trial, book)).ToList();
        var supply = Of(start.Supply, [.. truth.Faults.Where(f => book.Water.Of(WaterScope.Supply).Any(k => k.Id == f))], Rates(book.Water.Of(WaterScope.Supply)));
        var sources = Sources(truth);
        var moves = sources.Count > 0 ? trial.Work() : 0;
        var end = moves > 0 ? trial.Report() : start;
        return new Case(stations, supply, sources.Count > 0, Runs(start), Idle(start, sources, book, truth), Idle(end, sources, book, truth), Within(end, truth), moves)
        {
            Faults = [.. start.Stations.Where(s => s.States.Count > 0).SelectMany(s => Faults(s, trial, book))],
        };
    }

    public static string Row(IReadOnlyList<Case> cases, Func<Case, IEnumerable<Stated>> of)
    {
        var all = cases.SelectMany(of).ToList();
        return string.Create(CultureInfo.InvariantCulture, $"| {cases.Count} | {all.Count} | {100 * TopRight(all):0.0} % | {100 * all.Average(s => s.Top):0.0} % | {CalibrationError(all):0.000} | {LogScore(all, s => s.Truth):0.000} | {LogScore(all, s => s.TruthByRates):0.000} |");
    }

    public static string IdleRow(IReadOnlyList<Case> cases)
    {
        var runs = cases.Where(c => c.Runs).ToList();
        var (start, end, loss) = (runs.Select(c => c.Start!).ToList(), runs.Select(c => c.End!).ToList(), runs.Select(c => c.WithinLoss).OfType<bool>().ToList());
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {cases.Count} | {runs.Count} | {100.0 * runs.Count(c => c.SaidToRun) / Math.Max(1, runs.Count):0.0} % | {Share(start)} | {Share(end)} | {100 * end.Select(s => s.Top).DefaultIfEmpty().Average():0.0} % | {CalibrationError([.. start, .. end]):0.000} | {LogScore(end, s => s.Truth):0.000} | {LogScore(end, s => s.TruthByRates):0.000} | {100.0 * loss.Count(w => w) / Math.Max(1, loss.Count):0.0} % of {loss.Count} | {runs.Select(c => c.Moves).DefaultIfEmpty().Average():0.0} |");
    }

    private static string Share(IReadOnlyList<Stated> all) => all.Count == 0 ? "none" : string.Create(CultureInfo.InvariantCulture, $"{100 * TopRight(all):0.0} %");

    public static double TopRight(IEnumerable<Stated> all) => all.Select(s => s.Right ? 1.0 : 0).DefaultIfEmpty(double.NaN).Average();

    /// <summary>Mean difference between the stated probability of the likeliest and how often it was right, over ten bins, weighted by their size.</summary>
    public static double CalibrationError(IReadOnlyList<Stated> all) => all.Count == 0 ? 0 : all
        .GroupBy(s => Math.Min(Bins - 1, (int)(s.Top * Bins)))
        .Sum(g => Math.Abs(g.Average(s => s.Top) - g.Average(s => s.Right ? 1.0 : 0)) * g.Count() / all.Count);

    public static double LogScore(IEnumerable<Stated> all, Func<Stated, double> chance) => all.Select(s => Math.Log(Math.Max(chance(s), Least))).DefaultIfEmpty(double.NaN).Average();

    /// <summary>Faults that nothing noted bears on are no part of what can be said.</summary>
    private static Stated Station(StationBelief said, WaterTrial trial, PracticeBook book)
    {
        var bearing = Bearing(said.Station, trial, book);
        var there = trial.Truth.Stations.First(s => s.Id == said.Station).Faults.Where(f => bearing.Any(b => b.Id == f)).ToList();
        return Of(said.States, there, Rates(bearing));
    }

    private static IEnumerable<(string Fault, double Chance, bool There)> Faults(StationBelief said, WaterTrial trial, PracticeBook book)
    {
        var truth = trial.Truth.Stations.First(s => s.Id == said.Station).Faults;
        return Bearing(said.Station, trial, book).Select(f => (f.Id, said.States.Where(s => s.Faults.Contains(f.Id)).Sum(s => s.Probability), truth.Contains(f.Id)));
    }

    private static List<WaterFault> Bearing(string station, WaterTrial trial, PracticeBook book) => [.. book.Water.Of(WaterScope.Station).Where(f =>
        (trial.Noted.Contains((station, "meter flow")) && (f.FlowFactor ?? f.AddsLitresPerMinute) is not null)
        || (trial.Noted.Contains((station, "watch")) && f.Seen.Count > 0)
        || (trial.Noted.Contains((station, "outlet pressure")) && f.OutletPressureFactor is not null)
        || (trial.Noted.Contains((station, "opening time")) && f.OpeningFactor is not null)
        || (trial.Noted.Contains((station, "closing time")) && f.ClosingFactor is not null))];

    private static Stated Of(IReadOnlyList<BelievedState> said, IReadOnlyList<string> there, Func<IReadOnlyList<string>, double> rates)
    {
        bool Is(BelievedState state) => state.Faults.Count == there.Count && state.Faults.All(there.Contains);
        return new Stated(said[0].Probability, Is(said[0]), said.Where(Is).Sum(s => s.Probability), rates(there));
    }

    private static Func<IReadOnlyList<string>, double> Rates(IEnumerable<WaterFault> faults) => there => faults.Aggregate(1.0, (p, f) => p * (there.Contains(f.Id) ? f.Rate : 1 - f.Rate));

    /// <summary>What really runs with everything off, the most first.</summary>
    private static List<(string Fault, string Id, double Runs)> Sources(TrueWater truth) =>
    [
        .. new[] { (Fault: "meter-creep", Id: "meter-creep", Runs: truth.Creep), (Fault: "main-leak", Id: $"main {truth.MainAt}", Runs: truth.MainHole) }
            .Concat(truth.Stations.Select(s => (Fault: "valve-not-closing", Id: s.Valve, Runs: s.LeakHole)))
            .Where(s => s.Runs > 0)
            .OrderByDescending(s => s.Fault != "meter-creep").ThenByDescending(s => s.Runs),
    ];

    private static bool Runs(WaterReport said) => said.Lost is not null;

    /// <summary>Right where the likeliest source really runs, a leak of the mainline on the piece that was named.</summary>
    private static Stated? Idle(WaterReport said, List<(string Fault, string Id, double Runs)> sources, PracticeBook book, TrueWater truth)
    {
        if (sources.Count == 0)
        {
            return null;
        }

        bool Is(BelievedSource s) => sources.Any(t => t.Fault == s.Fault && (s.Fault != "valve-not-closing" || s.Id == t.Id) && (s.Fault != "main-leak" || OnPiece(s, truth.MainAt)));
        var all = truth.Stations.Count * book.Water.Of(WaterScope.Valve).Sum(f => f.Odds);
        var odds = sources[0].Fault == "valve-not-closing" ? all / truth.Stations.Count : book.Water.Faults.First(f => f.Id == sources[0].Fault).Odds;
        var total = all + (book.Water.Of(WaterScope.Main).Sum(f => f.Odds) * book.Water.MainMetres / 100) + book.Water.Of(WaterScope.Meter).Sum(f => f.Odds);
        return said.Sources is [var top, ..] ? new Stated(top.Probability, Is(top), Math.Min(1, said.Sources.Where(Is).Sum(s => s.Probability)), odds / total) : new Stated(0, false, 0, odds / total);
    }

    /// <summary>Where no pipes are noted, any words for the mainline will do.</summary>
    private static bool OnPiece(BelievedSource said, int at) => said.Id switch
    {
        "mainline" => true,
        "poc-tee" or "tee-i1" or "tee-i2" => at == 0,
        _ => said.Id.StartsWith($"i{at}-", StringComparison.Ordinal),
    };

    private static bool? Within(WaterReport said, TrueWater truth)
    {
        if (said.Lost is not { } lost)
        {
            return null;
        }

        var real = (truth.Solve(null, new HashSet<string>()).Meter - truth.Creep) * 86400;
        return real > 0 ? real >= lost.LeastCubicMetresADay * 0.999 && real <= lost.MostCubicMetresADay * 1.001 : null;
    }
}
