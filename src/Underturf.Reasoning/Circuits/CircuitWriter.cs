using Underturf.Networks.Wiring;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Circuits;

/// <summary>Switches stations on with all that comes on with them, and lets the plungers settle.</summary>
/// <param name="outlookOf">What the readings of a controller say of what its stations share.</param>
internal sealed class CircuitWriter(Case matter, Func<string, Outlook> outlookOf)
{
    /// <param name="asked">Labels or ids of stations of one controller.</param>
    public Outcome<CircuitAnswer> Write(IReadOnlyList<string> asked)
    {
        var paths = new List<StationPath>();
        foreach (var name in asked)
        {
            var station = StationFinder.Find(matter.View, name);
            if (!station.Succeeded)
            {
                return station.Problem!;
            }

            paths.Add(matter.Paths[station.Value]);
        }

        paths = [.. paths.Distinct()];

        return paths.Select(p => p.Controller).Distinct().Count() == 1
            ? Settled(Plan(paths))
            : new Problem("stations", paths.Count == 0 ? "none is named" : "are not on one controller", "Name stations of one controller");
    }

    /// <summary>The same of wires as they are to be, whether or not they lie yet.</summary>
    public Outcome<CircuitAnswer> Foresee(IReadOnlyList<StationPath> paths) => Settled(Plan(paths));

    private RunningPlan Plan(IReadOnlyList<StationPath> paths)
    {
        var controller = paths[0].Controller;
        return new RunningPlan(
            paths,
            new PathFinder(matter.View, matter.Book).MasterOf(controller),
            matter.View.Controllers.GetValueOrDefault(controller)?.PumpRelay,
            matter.Supplies.Of(matter.View, controller, matter.History.WorkTimes.Count),
            CoilLevel.Of(outlookOf(controller)));
    }

    private Outcome<CircuitAnswer> Settled(RunningPlan plan)
    {
        var running = new RunningStations(plan, matter.Book);
        var first = running.Network.SolveAc(running.Hertz);
        var settled = CoilStates.Settle(running.Network, running.Hertz, [.. running.Coils.Select(c => c.Coil)]);
        return first.Succeeded && settled.Succeeded
            ? new CircuitTeller(matter, outlookOf(plan.Stations[0].Controller), plan, running, first.Value, settled.Value).Tell()
            : (first.Problem ?? settled.Problem)!;
    }
}
