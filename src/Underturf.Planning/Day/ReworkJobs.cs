using Underturf.FieldLog;
using Underturf.Planning.Repair;
using Underturf.Planning.Rework;
using Underturf.Reasoning;

namespace Underturf.Planning.Day;

/// <summary>The steps of the rework, those at one place together, each after the one before. What a valve of its own saves is shared out by minutes: a rework that takes more than a day is begun all the same.</summary>
internal sealed class ReworkJobs(Grounds grounds)
{
    private ReworkAnswer Plan => grounds.Rework;

    public IEnumerable<Job> Find()
    {
        var visits = Visits().ToList();
        var minutes = Math.Max(visits.Sum(v => v.Sum(s => s.Minutes)), 1);
        var worth = Worth();
        return visits.Select((visit, k) => Of(visit, k, worth * (double)(visit.Sum(s => s.Minutes) / minutes)));
    }

    /// <summary>Whether the rework does what a move proposes.</summary>
    public static bool Does(Grounds grounds, Move move) =>
        grounds.Answers.Questions.FirstOrDefault(q => q.Id == move.Question) is { } question
        && move.Steps.Select(s => s.Asks).OfType<WorkFact>().Any(w => Does(grounds, w.Did, question.Stations));

    /// <summary>Whether the rework does what a repair proposes.</summary>
    public static bool Parts(Grounds grounds, RepairItem item) =>
        grounds.Rework.Valves.Any(v => v.Terminal is not null && item.Stations.Contains(v.Number) && item.Thing == v.Joint);

    private static bool Does(Grounds grounds, string did, IReadOnlyList<string> numbers) => grounds.Rework.Steps
        .SelectMany(s => s.Passed).OfType<WorkFact>()
        .Any(w => w.Did == did && w.Target is { } target && numbers.Contains(grounds.View.StationNumber(target)));

    private IEnumerable<IReadOnlyList<ReworkStep>> Visits()
    {
        var visit = new List<ReworkStep>();
        foreach (var step in Plan.Steps)
        {
            if (visit.Count > 0 && visit[^1].Place != step.Place)
            {
                yield return [.. visit];
                visit.Clear();
            }

            visit.Add(step);
        }

        if (visit.Count > 0)
        {
            yield return visit;
        }
    }

    private Job Of(IReadOnlyList<ReworkStep> visit, int number, double worth) => new($"rework {number}", JobKind.Rework, string.Join("; ", visit.Select(s => s.Say)), visit[0].Place, (double)visit.Sum(s => s.Minutes), 0, worth, [.. Plan.Shared.Select(s => s.Number)])
    {
        Steps = [.. visit.Select(s => new DayStep(s.Expect is { } expect ? $"{s.Say}; expect {expect}" : s.Say, (double)s.Minutes, s.Caution))],
        After = number > 0 ? [$"rework {number - 1}"] : [],
        Digs = visit.SelectMany(s => s.Passed).Any(f => f is WorkFact w && grounds.Numbers.Digs.Contains(w.Did)) || Pulls(visit) || !grounds.IsFound(visit[0].Place),
        Consents = Plan.Cost.Price > grounds.Book.Repairing.AgreeAbove ? [new Consent(WantKind.Owner, "have the owner agree to the price of the rework", $"{Plan.Cost.Price:0.00} {Plan.Money}")] : [],
        Things = [.. Plan.Shared.Select(s => s.Station)],
    };

    /// <summary>A new cable is laid.</summary>
    private bool Pulls(IReadOnlyList<ReworkStep> visit) => visit.Any(s => s.Passed.Any(f => f is WorkFact)) && Plan.Valves.Any(v => v.Terminal is not null && v.Joint == visit[0].Place && v.Choice.Kind == RemedyKind.Pull);

    /// <summary>What moving saves beside leaving them together, or what belief says that the repair is worth, whichever is more. Checks that are still open are worth the chance that one fails.</summary>
    private double Worth()
    {
        var money = Plan.Valves.Where(v => v.Terminal is not null).Sum(v => v.Alternatives.Where(a => a.Kind == RemedyKind.Keep).Select(a => a.Expected - v.Choice.Expected).FirstOrDefault());
        var saved = (double)(money * 60 / Math.Max(grounds.Book.Rework.HourPrice, 1)) + (double)Plan.Cost.Minutes;
        var believed = grounds.Answers.Moves.Where(m => m.IsRepair && Does(grounds, m)).Sum(m => m.Worth);
        var checks = Plan.Valves.Count == 0 ? Plan.Steps.Count * grounds.Numbers.RecheckFails * grounds.WrongMinutes : 0;
        return Math.Max(Math.Max(Plan.Valves.Any(v => v.Terminal is not null) ? saved : 0, believed), checks);
    }
}
