using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Tests.Reasoning.BruteForce;

/// <summary>All states of a station of up to so many faults, each with its readings and the chances of its other notes.</summary>
internal sealed class StateList(Case matter, Outlook any, int unknowns)
{
    /// <param name="shared">Faults that it shares with others, with their numbers.</param>
    /// <param name="most">Most faults of its own.</param>
    /// <param name="others">What all other stations say with nothing of their own wrong.</param>
    public List<StationState> Of(StationNotes station, IReadOnlyList<(Suspect Suspect, int Number)> shared, int most, DenseUnknowns others)
    {
        var suspects = station.Families.SelectMany(f => f).ToList();
        return [.. Sets(suspects, most).OrderBy(s => s.Length).Select(own => State(station, own, shared, others))];
    }

    /// <summary>All readings of a closed path, with nothing of the station's own wrong.</summary>
    public Row[] Plain(StationNotes station) => [.. station.Evidence.OfType<ReadingEvidence>()
        .Where(r => r.Shown.Value is not null)
        .Select(r => r.Closed([], matter.Cures) is { } prediction ? RowOf(r, prediction, _ => 0) : null)
        .OfType<Row>()];

    private static IEnumerable<Suspect[]> Sets(List<Suspect> suspects, int most)
    {
        yield return [];
        for (var i = 0; i < suspects.Count && most > 0; i++)
        {
            yield return [suspects[i]];
            for (var j = i + 1; j < suspects.Count && most > 1; j++)
            {
                if (!Together(suspects[i], suspects[j]))
                {
                    continue;
                }

                yield return [suspects[i], suspects[j]];
                for (var k = j + 1; k < suspects.Count && most > 2; k++)
                {
                    if (Together(suspects[i], suspects[k]) && Together(suspects[j], suspects[k]))
                    {
                        yield return [suspects[i], suspects[j], suspects[k]];
                    }
                }
            }
        }
    }

    /// <summary>A part has one amount of a fault; what is not modelled leaves no room for more.</summary>
    public static bool Together(Suspect a, Suspect b) => a.Fault!.Scope != FaultScope.Unmodelled && b.Fault!.Scope != FaultScope.Unmodelled
        && (a.Fault, a.Leg, a.Place, a.Other, a.Note, a.Common, a.Station) != (b.Fault, b.Leg, b.Place, b.Other, b.Note, b.Common, b.Station);

    private StationState State(StationNotes station, Suspect[] own, IReadOnlyList<(Suspect Suspect, int Number)> shared, DenseUnknowns others)
    {
        Suspect[] active = [.. own, .. shared.Select(s => s.Suspect)];
        int Slot(int amount) => amount / Prediction.AmountsOfOne is var which && which < own.Length
            ? -amount - 1
            : unknowns + (Prediction.AmountsOfOne * shared[which - own.Length].Number) + (amount % Prediction.AmountsOfOne);
        var (log, rows) = (own.Sum(s => Math.Log(s.Weight)), new List<Row>());
        foreach (var note in station.Evidence.Where(e => e is not RunEvidence))
        {
            log += note is ReadingEvidence reading ? Reading(reading, active, Slot, others, rows) : note.LogChance(active, any, matter.Cures);
        }

        var chain = new Chain(others);
        chain.Push([.. rows.Select(r => Foreseen.Of(r, others))], 0);
        log += station.Evidence.OfType<RunEvidence>().Sum(run => Run(run, active, Slot, others, chain));
        return new StationState(own, StationState.KeyOf(active), log, [.. rows]);
    }

    /// <summary>Adds the row of a reading that hangs together with others, and says what its chance is besides.</summary>
    private double Reading(ReadingEvidence reading, Suspect[] active, Func<int, int> slot, DenseUnknowns others, List<Row> rows)
    {
        if (reading.Closed(active, matter.Cures) is not { } prediction)
        {
            return reading.LogChance(active, any, matter.Cures);
        }

        var unsteady = reading.LogChance(active, any, matter.Cures) - reading.Display.LogChance(prediction, any);
        var row = RowOf(reading, prediction, slot);
        var foreseen = Foreseen.Of(row, others);
        var (mean, sigma) = (Math.Max(0, foreseen.Mean), Math.Sqrt(foreseen.Variance - (row.Step * row.Step / 12)));
        if (reading.Shown.Value is null || reading.Display.IsWide(mean, sigma))
        {
            return unsteady + reading.Display.LogChance((mean, sigma));
        }

        rows.Add(row);
        return unsteady;
    }

    private static Row RowOf(ReadingEvidence reading, Prediction prediction, Func<int, int> slot) => reading.Shown.Value is { } value
        ? Row.Of(prediction, reading.Display.Instrument, value.Si, Math.Max(reading.Display.Instrument.Step, DisplayStep.Si(value)), slot)
        : Row.Of(prediction, reading.Display.Instrument, double.NaN, 0, slot);

    /// <summary>By the volts that the station's own readings and those of all others leave at its coil.</summary>
    private double Run(RunEvidence run, Suspect[] active, Func<int, int> slot, DenseUnknowns others, Chain chain)
    {
        if (active.Any(s => s.Note == run.Entry || s.Fault!.Scope == FaultScope.Unmodelled))
        {
            return run.LogChance(active, any, matter.Cures);
        }

        var prediction = new Predictions(run.Benches, Measure.CoilVolts, run.Stations, null, inrush: true).Of(active);
        var (mean, variance) = chain.Expect(Foreseen.Of(Row.Of(prediction, null, double.NaN, 0, slot), others), 0);
        return RunChance.Log(run, active, Math.Max(0, mean), Math.Sqrt(Math.Max(0, variance)));
    }
}
