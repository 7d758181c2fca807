using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Planning.Day.Interim;

/// <summary>What belief holds of a station, as what may go wrong while it runs. Explanations count by their weight, faults by their effects.</summary>
internal sealed class BeliefRisks
{
    private readonly Grounds grounds;
    private readonly ILookup<string, OpenQuestion> questions;

    public BeliefRisks(Grounds grounds)
    {
        this.grounds = grounds;
        questions = grounds.Answers.Questions.SelectMany(q => q.Stations.SelectMany(n => grounds.StationsByNumber[n]).Distinct().Select(s => (Station: s, Question: q))).ToLookup(p => p.Station, p => p.Question, StringComparer.Ordinal);
    }

    public IEnumerable<RunRisk> Of(string station)
    {
        var weights = questions[station].SelectMany(Weights).Concat(Idle(station)).ToList();
        foreach (var effect in grounds.Numbers.Effects)
        {
            var chance = Math.Min(1, weights.Where(w => w.Effects.Contains(effect.Effect)).Sum(w => w.Weight));
            if (chance > 0)
            {
                yield return new RunRisk(effect.Harm.Say, chance, effect.Harm, effect.Dry, Lost: Lost(station, effect.Effect));
            }
        }

        // What keeps a valve shut or its water away does no harm; it only leaves the station dry.
        foreach (var (say, dry, weight) in weights.Where(w => w.Dry > 0).GroupBy(w => w.Say).Select(g => (g.Key, g.Max(w => w.Dry), Math.Min(1, g.Sum(w => w.Weight)))))
        {
            yield return new RunRisk(say, weight, new HarmPractice(string.Empty, say, 0, 0, 0), dry);
        }
    }

    /// <summary>Each fault of each explanation; explanations that no move tells apart count by their own shares.</summary>
    private IEnumerable<Weighted> Weights(OpenQuestion question) => question.Explanations
        .SelectMany(e => e.Alike.Count > 0 ? e.Alike.Select(a => (a.Fault, a.Probability)) : [(e.Fault, e.Probability)])
        .SelectMany(e => e.Fault.Split(" + ").Distinct().Select(f => Weigh(f, e.Probability)))
        .OfType<Weighted>();

    private Weighted? Weigh(string id, double weight) =>
        grounds.Book.Faults.FirstOrDefault(f => f.Id == id) is { } wiring ? new Weighted(weight, [.. FaultEffects.Of(wiring)], FaultEffects.Dry(wiring), wiring.Say)
        : grounds.Book.Water.Faults.FirstOrDefault(f => f.Id == id) is { } water ? new Weighted(weight, [.. FaultEffects.Of(water)], FaultEffects.Dry(water), water.Say)
        : null;

    /// <summary>What runs with everything off, where it may be this station's valve.</summary>
    private IEnumerable<Weighted> Idle(string station)
    {
        HashSet<string> things = [station, .. grounds.View.ValvesOf(station).Select(v => v.Id)];
        foreach (var explanation in grounds.Answers.Questions.Where(q => q.Stations.Count == 0 && q.WaterLost is not null).SelectMany(q => q.Explanations))
        {
            var here = explanation.Places.Where(p => p.Id is { } id && things.Contains(id)).Sum(p => p.Probability);
            foreach (var weighed in explanation.Fault.Split(" + ").Distinct().Select(f => Weigh(f, explanation.Probability * here)).OfType<Weighted>().Where(w => w.Weight > 0))
            {
                yield return weighed;
            }
        }
    }

    /// <summary>Minutes that the water is worth which runs out beside the outlets in one run.</summary>
    private double Lost(string station, RunEffect effect)
    {
        var minutes = grounds.View.Stations[station].Minutes ?? grounds.Numbers.RunMinutes;
        var adds = grounds.Book.Water.Faults.Where(f => FaultEffects.Of(f).Contains(effect) && f.AddsLitresPerMinute is not null).Select(f => f.AddsLitresPerMinute!.Median).DefaultIfEmpty().Max();
        var twice = effect == RunEffect.MorePlaces ? grounds.Flows.Value.GetValueOrDefault(station) * 60 * 1000 : 0;
        return (adds + twice) * minutes / 1000 * grounds.Book.Water.CubicMetreMinutes;
    }

    private sealed record Weighted(double Weight, IReadOnlyList<RunEffect> Effects, double Dry, string Say);
}
