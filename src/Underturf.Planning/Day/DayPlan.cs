using Underturf.Planning.Day.Interim;
using Underturf.Planning.Day.Ordering;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Planning.Day;

/// <summary>The way in: a notebook and where one is, the order of the day out. Nothing is kept: after each note the day is ordered anew.</summary>
public static class DayPlan
{
    private const int MinutesADay = 24 * 60;

    /// <param name="answers">What belief says, where it was worked out before.</param>
    /// <param name="order">How the order is found.</param>
    public static Outcome<DayAnswer> Of(Notebook notebook, DayAsk ask, Answers? answers = null, DayOrder? order = null)
    {
        if (Wrong(ask) is { } wrong)
        {
            return wrong;
        }

        var at = ask.At is { } name ? notebook.Place(name) : notebook.History.Now.Controllers.Keys.Concat(notebook.History.Now.Boxes.Keys).FirstOrDefault() ?? string.Empty;
        if (!at.Succeeded)
        {
            return at.Problem!;
        }

        var grounds = new Grounds(notebook, answers ?? notebook.Answer(), notebook.History.Facts.Zone.Told(ask.Begin));
        return Of(grounds, at.Value, ask.Minutes ?? notebook.Book.Day.Minutes, order ?? new DayOrder());
    }

    private static Problem? Wrong(DayAsk ask) => ask.Minutes switch
    {
        <= 0 or double.NaN => new Problem("minutes", "are not a number above nothing", "Give the minutes that you have, for example 300"),
        > MinutesADay => new Problem("minutes", "are more than a day has", $"Give at most {MinutesADay}: what is left over comes first the next day"),
        _ => ask.Begin.Year is > 1 and < 9999 ? null : new Problem("begin", "lies at the end of the calendar", "Give the day on which the work is done, for example 2031-04-04T07:30-06:00"),
    };

    internal static DayAnswer Of(Grounds grounds, string at, double minutes, DayOrder order)
    {
        var tickets = new Tickets(grounds, minutes);
        var queue = JobQueue.Of(grounds, tickets);
        var program = new DayProgram(grounds, tickets, queue.Ready, at, minutes);
        var best = order.Solve(program.Errands);
        var rows = new DayWriter(grounds, tickets, program).Rows(best.Order);
        var done = best.Order.Select(k => program.Jobs[k]).ToList();
        return new DayAnswer(
            Notebook.Engine,
            grounds.Book.Version,
            grounds.Begin,
            grounds.View.Name(at),
            minutes,
            rows,
            best.Value,
            best.Bound,
            [.. done.SelectMany(j => j.Load).Distinct()],
            queue.Waiting,
            [.. queue.Ready.Except(done).Select(j => Later(grounds, program, j))],
            [.. grounds.Temporary.Select(t => new LeftPlace(t.Place, grounds.View.Name(t.Place), t.Left.Fact.State, t.Left.At, t.Left.Fact.Told, t.State.Say, done.Exists(j => j.Key == LeftJobs.Prefix + t.Place)))],
            tickets.All(),
            new InterimFinder(grounds).Find(done.Where(j => j.Kind == JobKind.Close).Select(j => j.Place).ToHashSet(StringComparer.Ordinal)));
    }

    private static LaterJob Later(Grounds grounds, DayProgram program, Job job) =>
        new(job.Say, grounds.View.Name(job.Place), job.Place, job.Minutes, job.Worth, program.IsWorthIt(job) ? "no time for it today" : "not worth its minutes today");
}
