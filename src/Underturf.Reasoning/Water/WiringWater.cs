using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Water;

/// <summary>Between wires and water: how many places a station waters is known to both, and each hears of the other what it says beyond that.</summary>
internal static class WiringWater
{
    /// <summary>More places than these are not told apart.</summary>
    private const int MostPlaces = 4;

    /// <summary>Worlds of the wires that count for nothing in the water.</summary>
    private const double Worthless = 1e-6;

    /// <summary>What the water says to the wires: one message for each station that was metered since anybody worked on it.</summary>
    public static IReadOnlyList<WaterEvidence> Messages(WaterCase water, Case matter)
    {
        var metered = water.Of(WaterMeasure.MeterFlow).Where(r => r.Station is { } s && matter.Paths.ContainsKey(s) && water.IsAsNow(s, r.Moment)).GroupBy(r => r.Station!).ToList();
        if (metered.Count == 0)
        {
            return [];
        }

        var belief = new WaterBelief(water, metered.ToDictionary(g => g.Key, _ => Beforehand(matter.Book), StringComparer.Ordinal));
        return [.. metered
            .Where(g => g.Min(r => r.Moment) >= matter.Cures.LastOn(matter.Paths[g.Key]))
            .Select(g => Message(belief, belief.Stations.ToList().FindIndex(s => s.Station == g.Key), [.. g], matter))];
    }

    /// <summary>What the wires say to the water: their belief without what they heard from it.</summary>
    public static IReadOnlyList<WiringState> Of(string station, Belief belief, Case matter)
    {
        var (run, outlook) = (RunEvidence.Asked(station, matter), belief.OutlookOf(station));
        var heard = matter.Evidence.OfType<WaterEvidence>().FirstOrDefault(e => e.Stations[0] == station);
        var shares = new double[MostPlaces + 1];
        foreach (var world in belief.Stations[station].Where(w => w.Probability > Worthless))
        {
            Suspect[] wrong = [.. world.Suspects.Where(s => !matter.Cures.IsCured(s, Moment.Last))];
            var without = world.Probability / Math.Exp(heard?.LogChance(wrong, outlook, matter.Cures) ?? 0);
            foreach (var (places, chance) in WaterEvidence.Places(run, wrong, outlook, MostPlaces).Index())
            {
                shares[places] += without * chance;
            }
        }

        var sum = shares.Sum();
        return [.. shares.Select((share, places) => new WiringState(Math.Max(1, places), places == 0, share / sum)).Where(s => s.Probability > 0).OrderBy(s => s.StaysShut).ThenBy(s => s.Valves)];
    }

    /// <summary>As often as the book has it, the further places alike: a message says the same whatever is put in here.</summary>
    private static IReadOnlyList<WiringState> Beforehand(PracticeBook book)
    {
        var more = book.Faults.Where(f => f.ExtraPlaces).Sum(f => f.Rate);
        var shut = book.Faults.Sum(f => f.Rate * f.StaysShut);
        return
        [
            new WiringState(1, false, 1 - more - shut),
            .. Enumerable.Range(2, MostPlaces - 1).Select(n => new WiringState(n, false, more / (MostPlaces - 1))),
            new WiringState(1, true, shut),
        ];
    }

    private static WaterEvidence Message(WaterBelief belief, int index, WaterReading[] readings, Case matter)
    {
        var station = belief.Stations[index];
        var states = station.States.Select((s, k) => (s.Wiring, Share: belief.SharesOf(index)[k])).GroupBy(s => s.Wiring).ToDictionary(g => g.Key, g => g.Sum(s => s.Share));
        var likelihoods = new double[MostPlaces + 1];
        foreach (var (wiring, share) in states)
        {
            likelihoods[wiring.StaysShut ? 0 : wiring.Valves] = share / wiring.Probability;
        }

        var most = likelihoods.Max();
        var say = new WaterSay(matter.History.Facts.UsesUsUnits);
        var usual = belief.Flows.Of(station.Station).Median;
        return new WaterEvidence(readings[^1].Moment, station.Station, [.. likelihoods.Select(l => Math.Log(Math.Max(l / most, double.Epsilon)))], -Math.Log(most), RunEvidence.Asked(station.Station, matter))
        {
            What = $"{readings[^1].Probe.Name}, {matter.View.Name(station.Station)}",
            Observed = string.Join(", ", readings.Select(r => r.Text)),
            Expected = ["nothing", .. Enumerable.Range(1, MostPlaces).Select(n => $"about {say.Flow(n * usual)}")],
        };
    }
}
