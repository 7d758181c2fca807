using System.Globalization;
using Underturf.FieldLog;
using Underturf.Networks.Wiring;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Circuits;

/// <summary>Reads what a meter would read everywhere in a circuit that has settled.</summary>
/// <param name="first">With all plungers out.</param>
internal sealed class CircuitTeller(Case matter, Outlook outlook, RunningPlan plan, RunningStations running, AcSolution first, SettledCoils settled)
{
    private readonly CircuitSpread spread = new(running.Parts, plan.Supply, plan.Level, matter.Book);
    private readonly AcSolution solution = settled.Solution;

    public CircuitAnswer Tell()
    {
        var (controller, supply) = (plan.Stations[0].Controller, Supply());
        var master = running.Master is { } laid ? new MasterOnCircuit(matter.View.Name(laid.Path.Station), laid.Path.Guessed, Valves(laid)[0]) : null;
        return new CircuitAnswer(
            Notebook.Engine,
            matter.Book.Version,
            matter.View.Name(controller),
            supply,
            [.. running.Commons.Select(c => (c.Key, Reading: Amperes(c.Value.Element))).Select(c => new CommonOnCircuit(c.Key, c.Reading.Magnitude, spread.Of(c.Reading)))],
            [.. running.Stations.Select(Station)],
            master,
            running.Relay >= 0 ? Relay(Amperes(running.Relay)) : null,
            matter.View.Controllers.GetValueOrDefault(controller)?.Sensor,
            Runs(),
            [.. Warnings(supply, master)],
            solution.KirchhoffResidualAmperes);
    }

    private SupplyOnCircuit Supply()
    {
        var (volts, amperes) = (solution.VoltsReading(running.Hot, running.Strip).Value, Amperes(running.Source));
        return new SupplyOnCircuit(
            plan.Supply.Volts,
            plan.Supply.VoltsSpread,
            plan.Supply.Ohms,
            volts.Magnitude,
            spread.Of(volts),
            amperes.Magnitude,
            spread.Of(amperes),
            volts.Magnitude * amperes.Magnitude,
            spread.OfProduct(volts, amperes),
            plan.Supply.RatedVoltAmperes,
            matter.View.Controllers.GetValueOrDefault(plan.Stations[0].Controller)?.PlateVoltAmperes() is not null);
    }

    private StationOnCircuit Station(LaidPath laid)
    {
        var (ohms, ohmsSpread) = Ohms(laid);
        var amperes = Amperes(laid.Output);
        return new StationOnCircuit(
            matter.View.StationNumber(laid.Path.Station),
            RunningStations.LabelOf(laid.Path),
            ohms,
            ohmsSpread,
            amperes.Magnitude,
            spread.Of(amperes),
            laid.Path.Guessed,
            Valves(laid))
        {
            Id = laid.Path.Station,
        };
    }

    /// <summary>As belief predicts it where the wires are those that were noted; where they are only planned, by the circuit itself.</summary>
    private (double Ohms, double Spread) Ohms(LaidPath laid)
    {
        if (matter.Paths.GetValueOrDefault(laid.Path.Station) == laid.Path)
        {
            var known = matter.BenchesNow.Predict(Measure.StationOhms, [laid.Path.Station], null, inrush: false, []);
            return (outlook.Mean(known), Math.Sqrt(outlook.Variance(known)));
        }

        var alone = new RunningStations(plan with { Stations = [laid.Path], Master = null, Relay = null }, matter.Book);
        var (terminal, common) = alone.Stations[0].At(-1);
        var reading = alone.Network.WithoutSources().Ohms(terminal, common).Value;
        return (reading.Ohms, new CircuitSpread(alone.Parts, plan.Supply, plan.Level, matter.Book).Of(reading));
    }

    private List<ValveOnCircuit> Valves(LaidPath laid) =>
    [
        .. running.Coils.Select((c, k) => (c.Path, c.End, c.Coil, Does: settled.Plungers[k])).Where(c => c.Path == laid).Select(c =>
        {
            var (conductor, common) = laid.At(c.End.Leg);
            var (before, after, amperes) = (first.VoltsReading(conductor, common).Value, solution.VoltsReading(conductor, common).Value, Amperes(c.Coil.Element));
            return new ValveOnCircuit(
                matter.View.Name(c.End.Place),
                c.Coil.PullInVolts,
                before.Magnitude,
                spread.Of(before),
                after.Magnitude,
                spread.Of(after),
                amperes.Magnitude,
                spread.Of(amperes),
                c.Does.ToString().ToLowerInvariant())
            {
                Grade = GradeOf(c.End),
                PlaceId = c.End.Place,
            };
        }),
    ];

    private Grade GradeOf(ValveEnd end) => end.Valve is { } id && matter.View.Valves.TryGetValue(id, out var valve) ? valve.Sure
        : matter.View.IsPlace(end.Place) ? Grade.Inferred
        : Grade.Unknown;

    private RelayOnCircuit Relay(AcReading amperes) => new(running.Network.ElementAt(running.Relay).Ohms, amperes.Magnitude, spread.Of(amperes));

    private List<RunOnCircuit> Runs() =>
    [
        .. running.All.SelectMany(p => p.Path.Legs.Select((l, i) => (Laid: p, Leg: l, Index: i))).GroupBy(l => (l.Leg.Id, l.Leg.From, l.Leg.To)).Select(run =>
        {
            var (leg, paths) = (run.First().Leg, run.Select(r => (r.Laid, r.Index)).ToList());
            return new RunOnCircuit(
                matter.View.Name(leg.From),
                matter.View.Name(leg.To),
                !matter.View.Cables.ContainsKey(leg.Id),
                leg.LengthMetres,
                leg.LogSpread,
                leg.StationSize.Say(matter.History.Facts.UsesUsUnits),
                leg.CommonSize.Say(matter.History.Facts.UsesUsUnits),
                [.. paths.Select(p => RunningStations.LabelOf(p.Laid.Path)).Distinct()],
                [.. paths.Select(p => Called(p.Laid))],
                paths.Max(p => Across(p.Laid, p.Laid.Path.Legs[p.Index].Parent) - Across(p.Laid, p.Index)),
                paths.Min(p => Across(p.Laid, p.Index)));
        }),
    ];

    private string Called(LaidPath laid) => laid == running.Master ? matter.View.Name(laid.Path.Station) : matter.View.StationNumber(laid.Path.Station);

    private static IEnumerable<string> Warnings(SupplyOnCircuit supply, MasterOnCircuit? master)
    {
        if (supply.VoltAmperes > supply.RatedVoltAmperes)
        {
            var known = supply.RatingNoted ? string.Empty : " as is usual; its plate is not noted";
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"More than the supply may give: {supply.VoltAmperes:0} VA are taken, it is rated {supply.RatedVoltAmperes:0} VA{known}. Run fewer stations at a time.");
        }

        if (master is { Valve.Does: not "holds" })
        {
            yield return $"The master valve does not open: its coil {master.Valve.Does}, so nothing waters.";
        }
    }

    private AcReading Amperes(int element) => solution.AmperesReading(element).Value;

    private double Across(LaidPath laid, int leg)
    {
        var (conductor, common) = laid.At(leg);
        return solution.VoltageBetween(conductor, common).Value.Magnitude;
    }
}
