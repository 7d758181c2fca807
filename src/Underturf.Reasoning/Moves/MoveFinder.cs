using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Moves;

/// <summary>What to do next, for each question by itself and for all together.</summary>
internal sealed class MoveFinder
{
    /// <summary>A move that saves less is not worth listing, in minutes: it would read as none.</summary>
    private const double LeastWorth = 0.5;

    private readonly Case owner;
    private readonly Walks walks;
    private readonly MoveWriter writer;
    private readonly IReadOnlyList<SubjectPlan> plans;
    private readonly double minutes;

    /// <param name="at">Id of the place where one stands.</param>
    public MoveFinder(Case owner, IEnumerable<Subject> subjects, string? at, double? minutes)
    {
        (this.owner, this.minutes) = (owner, minutes ?? double.PositiveInfinity);
        (walks, writer) = (new Walks(owner), new MoveWriter(owner));
        plans = [.. subjects.Select(s => new SubjectPlan(owner, s, walks, at))];
    }

    public IReadOnlyList<SubjectPlan> Plans => plans;

    /// <summary>The first moves of one question, best first; the repair itself first where enough is known.</summary>
    public IReadOnlyList<Move> Of(SubjectPlan plan)
    {
        var moves = plan.Options
            .Where(o => o.Worth > LeastWorth && o.Minutes <= minutes)
            .Take(owner.Book.Questions.ListMoves)
            .Select(o => writer.Write(plan, o));
        return [.. plan.Settled is not null && VisitFinder.Repair(plan) is var repair && repair.Minutes <= minutes ? moves.Prepend(writer.Write(repair)) : moves];
    }

    /// <summary>Of all questions together, best first; where the time is limited the best set that fits, in walking order.</summary>
    public IReadOnlyList<Move> Together()
    {
        var finder = new VisitFinder(plans, owner.Book.Questions.ListMoves, minutes);
        return double.IsPositiveInfinity(minutes) || plans.Count == 0
            ? [.. finder.Foremost().Select(writer.Write)]
            : [.. new Round([.. finder.Find().Take(Round.MostVisits)], walks, plans[0].At).Within(minutes).Select(writer.Write)];
    }

    /// <summary>Of all that is worth its minutes, what takes fewest of them, however many one has; nothing where nothing is worth them.</summary>
    public Move? Nearest() => plans
        .SelectMany(p => p.Settled is null ? p.Options.Where(o => o.Gain > 0).Select(o => writer.Write(p, o)) : [writer.Write(VisitFinder.Repair(p))])
        .MinBy(m => m.Minutes);

    /// <summary>Where somebody stands, and how long they have; nothing where that cannot be.</summary>
    public static Outcome<string?> Stand(Case owner, Standpoint standpoint)
    {
        if (standpoint.Minutes is { } minutes && !(double.IsFinite(minutes) && minutes > 0))
        {
            return new Problem("minutes", "are not a number above nothing", "Give the minutes that you have, for example 45");
        }

        if (standpoint.At is not { } name)
        {
            return (string?)null;
        }

        var found = new Walks(owner).Find(name);
        return found.Succeeded ? found.Value : found.Problem!;
    }
}
