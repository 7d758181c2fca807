using Underturf.Property;
using Underturf.Reasoning.Water;

namespace Underturf.Planning.Day.Interim;

/// <summary>For each station: to let it run, to stand by, or to leave it dry, whichever is expected to cost least.</summary>
internal sealed class InterimFinder(Grounds grounds)
{
    /// <summary>Likelier so than not.</summary>
    private const double Likelier = 0.5;

    private readonly BeliefRisks belief = new(grounds);
    private readonly StateRisks states = new(grounds);

    /// <param name="closed">Places whose states are ended by the work of the day.</param>
    public InterimAnswer Find(IReadOnlySet<string> closed)
    {
        var stations = grounds.View.Stations.Keys.Select(s => Of(s, closed)).OrderByDescending(s => s.What is Tonight.MustNot).ThenBy(s => s.Number, NaturalOrder.Instance).ToList();
        var lost = grounds.Answers.Questions.Select(q => q.WaterLost).OfType<WaterLoss>().FirstOrDefault();
        return new InterimAnswer(stations, stations.Where(s => s.What == Tonight.Run).Sum(s => s.Minutes), lost is null ? [] : [.. Overnight(lost)], lost);
    }

    private StationTonight Of(string station, IReadOnlySet<string> closed)
    {
        List<RunRisk> risks = [.. belief.Of(station), .. states.Of(station)];
        var (now, then) = (Weigh(risks), Weigh([.. risks.Where(r => r.Place is null || !closed.Contains(r.Place))]));
        var known = grounds.View.Stations[station];
        return new StationTonight(station, grounds.View.StationNumber(station), string.Join(", ", known.Waters), now.What, then.What, known.Minutes ?? grounds.Numbers.RunMinutes, now.Harm, now.Attended, now.Dry, now.Waters, [.. Why(risks)]);
    }

    private Weighed Weigh(List<RunRisk> risks)
    {
        var waters = risks.Aggregate(1.0, (product, r) => product * r.Waters);
        var (harm, attended, dry) = (risks.Sum(r => r.Unattended), grounds.Numbers.HandMinutes + risks.Sum(r => r.Attended), grounds.Numbers.DryMinutes * waters);
        var what = risks.Exists(r => r.Off) || (waters < Likelier && harm < grounds.Numbers.TrifleMinutes) ? Tonight.StaysDry
            : harm <= Math.Min(attended, dry) ? Tonight.Run
            : attended < dry ? Tonight.ByHand
            : Tonight.MustNot;
        return new Weighed(what, harm, attended, dry, waters);
    }

    private IEnumerable<RunReason> Why(IEnumerable<RunRisk> risks) => risks
        .Where(r => r.Off || r.Unattended >= grounds.Numbers.TrifleMinutes || r.Chance * r.Dry > Likelier)
        .OrderByDescending(r => r.Off).ThenByDescending(r => r.Unattended)
        .Select(r => new RunReason(r.Say, r.Chance, r.Unattended, r.Told));

    /// <summary>Where more water runs away in a night than shutting and opening is worth.</summary>
    private IEnumerable<string> Overnight(WaterLoss lost)
    {
        var say = new WaterSay(grounds.Facts.UsesUsUnits);
        var minutes = (lost.LeastCubicMetresADay + lost.MostCubicMetresADay) / 2 * grounds.Book.Water.CubicMetreMinutes;
        var turns = 2 * grounds.Book.Water.Isolating.TurnMinutes;
        if (minutes > turns)
        {
            yield return $"With everything off {lost.Say(say)} run away: shut the water at the point of connection after the last station, and open it slowly before the first.";
        }
    }

    private sealed record Weighed(Tonight What, double Harm, double Attended, double Dry, double Waters);
}
