using Underturf.Networks.Wiring;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Circuits;

/// <summary>Switches stations on, lets the plungers settle, and reads what a meter would read everywhere.</summary>
/// <param name="outlookOf">What the readings of a controller say of the usual coil, the lengths and the rest that they share.</param>
internal sealed class CircuitWriter(Case matter, Func<string, Outlook> outlookOf)
{
    /// <param name="asked">Labels or ids of stations of one controller.</param>
    public Outcome<CircuitAnswer> Write(IReadOnlyList<string> asked)
    {
        var paths = new List<StationPath>();
        foreach (var name in asked.Distinct())
        {
            var station = matter.View.Stations.Keys.FirstOrDefault(s => s == name || matter.View.StationNumber(s) == name);
            if (station is null)
            {
                return new Problem($"station '{name}'", "is not noted", $"Name one of: {string.Join(", ", matter.View.Stations.Keys.Select(matter.View.StationNumber).Take(12))}");
            }

            paths.Add(matter.Paths[station]);
        }

        return paths.Select(p => p.Controller).Distinct().Count() == 1
            ? Settled(paths)
            : new Problem("stations", paths.Count == 0 ? "none is named" : "are not on one controller", "Name stations of one controller");
    }

    private Outcome<CircuitAnswer> Settled(List<StationPath> paths)
    {
        var controller = paths[0].Controller;
        var supply = matter.Supplies.Of(matter.View, controller, matter.History.WorkTimes.Count);
        var running = new RunningStations(paths, supply, matter.Book, outlookOf(controller).LogLevel);
        var first = running.Network.SolveAc(running.Hertz);
        var settled = CoilStates.Settle(running.Network, running.Hertz, [.. running.Coils.Select(c => c.Coil)]);
        if (!first.Succeeded || !settled.Succeeded)
        {
            return (first.Problem ?? settled.Problem)!;
        }

        var solution = settled.Value.Solution;
        return new CircuitAnswer(
            Notebook.Engine,
            matter.Book.Version,
            matter.View.Name(controller),
            supply.Volts,
            Volts(solution, running.Hot, running.Common),
            solution.Current(running.Source).Value.Magnitude,
            [.. paths.Select(p => Station(p, running, first.Value, settled.Value))],
            Runs(paths, running, solution),
            solution.KirchhoffResidualAmperes);
    }

    private StationOnCircuit Station(StationPath path, RunningStations running, AcSolution first, SettledCoils settled)
    {
        var ohms = matter.BenchesNow.Predict(Measure.StationOhms, [path.Station], null, inrush: false, []);
        var valves = running.Coils
            .Select((c, k) => (c.Station, c.End, c.Coil, Does: settled.Plungers[k]))
            .Where(c => c.Station == path.Station)
            .Select(c => new ValveOnCircuit(
                matter.View.Name(c.End.Place),
                Across(first, running, c.Station, c.End.Place),
                Across(settled.Solution, running, c.Station, c.End.Place),
                settled.Solution.Current(c.Coil.Element).Value.Magnitude,
                c.Does.ToString().ToLowerInvariant()));
        return new StationOnCircuit(
            matter.View.StationNumber(path.Station),
            outlookOf(path.Controller).Mean(ohms),
            Math.Sqrt(outlookOf(path.Controller).Variance(ohms)),
            settled.Solution.Current(running.Outputs[path.Station]).Value.Magnitude,
            path.Guessed,
            [.. valves]);
    }

    private List<RunOnCircuit> Runs(List<StationPath> paths, RunningStations running, AcSolution solution) =>
    [
        .. paths.SelectMany(p => p.Legs.Select(l => (Path: p, Leg: l))).GroupBy(l => (l.Leg.Id, l.Leg.From, l.Leg.To)).Select(run =>
        {
            var (leg, stations) = (run.First().Leg, run.Select(r => r.Path.Station).ToList());
            return new RunOnCircuit(
                matter.View.Name(leg.From),
                matter.View.Name(leg.To),
                leg.LengthMetres,
                leg.LogSpread,
                leg.StationSize.ToString(),
                leg.CommonSize.ToString(),
                [.. stations.Select(matter.View.StationNumber)],
                stations.Max(s => Across(solution, running, s, leg.From) - Across(solution, running, s, leg.To)),
                stations.Min(s => Across(solution, running, s, leg.To)));
        }),
    ];

    private static double Across(AcSolution solution, RunningStations running, string station, string place) =>
        Volts(solution, running.Conductor(station, place), running.CommonAt(place));

    private static double Volts(AcSolution solution, int a, int b) => solution.VoltageBetween(a, b).Value.Magnitude;
}
