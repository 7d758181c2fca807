using Underturf.FieldLog;
using Underturf.Planning.Rework;
using Underturf.Reasoning.Translation;

namespace Underturf.Simulation;

/// <summary>The ground of a rework: what a step finds, and what it changes.</summary>
/// <param name="supplyVolts">Open volts of the supply; drawn where nothing is said.</param>
/// <param name="placeOf">What a station's own valve waters.</param>
internal sealed class ReworkedGround(TrueWiring built, IReadOnlyList<TrueSpare> spares, double? supplyVolts, Func<string, string> placeOf)
{
    /// <summary>A figure further from what was said than so many standard deviations is not what was said.</summary>
    private const double Far = 3.5;

    private readonly IReadOnlyList<TrueFault> before = built.Faults;
    private readonly Dictionary<string, string> waters = new(StringComparer.Ordinal);

    public TrueWiring Truth { get; private set; } = built;

    /// <summary>Readings of checks against what was said: off by so many standard deviations, the meter's own included.</summary>
    public List<double> Offs { get; } = [];

    public string PlaceOf(string station) => waters.GetValueOrDefault(station) ?? placeOf(station);

    public TestFact Run(string station) => Technician.Run(station, PlaceOf);

    /// <summary>Does a step. What is noted of it.</summary>
    public IReadOnlyList<Fact> Do(ReworkStep step)
    {
        if (step.Passed.OfType<RenumberedFact>().Any())
        {
            Part(step);
        }

        return IsGood(step) ? step.Passed : step.Failed;
    }

    private VirtualTechnician Technician => new(Truth, supplyVolts, 0);

    private bool IsGood(ReworkStep step) => step.Station is { } station ? Check(step, station)
        : step.Passed is not [ReworkStepFact { Did: ReworkDeeds.Proven, Wire: { } wire, Place: { } place }] || Reaches(wire, place);

    private bool Reaches(string wire, string place) => spares.First(s => s.Wire == wire) is { IsSound: true } spare
        && Truth.Paths.Any(p => p.LegTo(spare.Reaches) is var far and >= 0 && p.LegTo(place) is var here and >= 0 && p.IsBehind(far, here));

    private bool Check(ReworkStep step, string station)
    {
        var (run, seen) = (Run(station), step.Foreseen!);
        var ohms = Off(station, "station ohms", seen.Ohms, seen.OhmsSpread);
        var amperes = Off(station, "running amps", seen.Amperes, seen.AmperesSpread);
        Offs.AddRange([ohms, amperes]);
        return run.Behaved == "opens" && run.Watered.Count == seen.Places && Math.Abs(ohms) < Far && Math.Abs(amperes) < Far;
    }

    /// <summary>What an instrument at the controller shows of a station.</summary>
    public ReadingFact Read(string station, string how) => Technician.Read(new ReadingFact { How = how, Stations = [station], Value = Shown.OverRange }, $"check {how} {station}");

    private double Off(string station, string how, double said, double spread)
    {
        var read = Read(station, how);
        var meter = Truth.Book.Instrument(Truth.Book.Probe(how)!);
        return read.Value.Value is { } value ? (value.Si - said) / double.Hypot(spread, meter.Sigma(said)) : double.PositiveInfinity;
    }

    private void Part(ReworkStep step)
    {
        var (paths, faults) = (Truth.Paths.ToList(), Truth.Faults.ToList());
        foreach (var moved in step.Passed.OfType<RenumberedFact>())
        {
            var fault = faults.First(f => f.Station == moved.From && f.MoreCoils > 0);
            var place = moved.Waters is { } w && fault.Waters.Contains(w) ? w : fault.Waters[0];
            var number = before.First(f => f.Station == moved.From).Waters.ToList().IndexOf(place);
            waters[moved.Station] = place;
            paths.Add(NewPath(moved, step.Passed, fault, number));
            faults.Remove(fault);
            if (fault.MoreCoils > 1)
            {
                faults.Add(fault with { MoreCoils = fault.MoreCoils - 1, Waters = [.. fault.Waters.Where(x => x != place)] });
            }
        }

        Truth = Truth.Reworked(paths, faults);
    }

    /// <summary>A new cable lies in one piece as long as the way; any other conductor runs in the cables that are there.</summary>
    private StationPath NewPath(RenumberedFact moved, IReadOnlyList<Fact> notes, TrueFault fault, int number)
    {
        var path = Truth.Path(moved.From);
        var chain = new List<Leg>();
        for (var leg = path.LegTo(fault.Place!); leg >= 0; leg = path.Legs[leg].Parent)
        {
            chain.Insert(0, path.Legs[leg]);
        }

        var pulled = notes.OfType<CableFact>().FirstOrDefault(c => c.Id == $"run-{moved.Station}")?.Gauge;
        var end = $"end of {moved.Station}";
        List<Leg> legs = [.. chain.Select((l, i) => l with { Parent = i - 1, StationSize = pulled ?? l.StationSize })];
        var size = Quantities.WireSize.FromAwg(Truth.Book.Wire.StationAwg);
        legs.Add(new Leg($"branch {moved.Station}", fault.Place!, end, Truth.Numbers.BranchMetres(TrueLayout.BranchName(fault, number)), 0, size, size, legs.Count - 1));
        return new StationPath(moved.Station, path.Controller, legs, [new ValveEnd(null, end, legs.Count - 1, null, $"{moved.Station} 0")], false);
    }
}
