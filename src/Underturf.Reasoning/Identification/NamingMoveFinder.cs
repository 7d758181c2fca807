using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Moves;

namespace Underturf.Reasoning.Identification;

/// <summary>Places whose ends are worth naming. One plan is rehearsed, not all of them, so that this is quick enough to stand beside every answer.</summary>
internal sealed class NamingMoveFinder(Case matter)
{
    /// <summary>The same draws for every place.</summary>
    private const ulong Seed = 20260613;

    /// <summary>More pairs of an end and a wire than this are not rehearsed beside every answer.</summary>
    private const int MostPairs = 1000;

    private readonly NamingPractice book = matter.Book.Naming;
    private readonly Walks walks = new(matter);

    /// <param name="at">Id of the place where one is; the controller of each place where nothing is said.</param>
    /// <param name="mostMinutes">What takes longer is left out.</param>
    public IReadOnlyList<NamingMove> Find(IReadOnlyList<OpenQuestion> questions, string? at, double? mostMinutes) =>
    [
        .. UnnamedEnds.Places(matter.View).Select(place => Of(place, questions, at)).OfType<NamingMove>()
            .Where(m => m.Minutes <= (mostMinutes ?? double.MaxValue) && m.Worth > m.Minutes)
            .OrderByDescending(m => m.Worth / m.Minutes),
    ];

    private NamingMove? Of(string place, IReadOnlyList<OpenQuestion> questions, string? at)
    {
        var bundle = new BundleFinder(matter).Of(place);
        if (bundle.Wires.Count == 0 || bundle.Ends.Count * bundle.Wires.Count > MostPairs)
        {
            return null;
        }

        var named = Named.Of(matter, bundle);
        var controller = bundle.Wires[0].Controller;
        var desk = new PlanDesk(matter, bundle, named.Belief, new Crew(walks.Minutes(controller, place), book.People, book.Remote), named.Touches);
        if (desk.Likely(Seed) is not { } plan)
        {
            return null;
        }

        var walk = walks.Minutes(at ?? controller, place);
        var (ends, unnamed) = (bundle.Ends.Count, Enumerable.Range(0, bundle.Ends.Count).Count(e => named.Belief.Best(e).Share < book.NameAt));
        return new NamingMove(
            matter.View.Name(place),
            place,
            unnamed,
            ends,
            PlanDesk.Name(plan.Plan),
            plan.Minutes + walk,
            walk,
            Enumerable.Range(0, ends).Sum(e => book.Left(named.Belief.Best(e).Share)) - (plan.Loss - plan.Minutes),
            plan.Plan.Way.Caution,
            Why(bundle, questions));
    }

    /// <summary>A station that most likely runs several valves wants a conductor for each of them: a spare that is found here could be one.</summary>
    private static string Why(Bundle bundle, IReadOnlyList<OpenQuestion> questions)
    {
        var shared = questions.Where(q => q.Valves.Where(v => v.Count > 1).Sum(v => v.Probability) > 0.5).SelectMany(q => q.Stations).Distinct().ToList();
        return shared.Count == 0 || bundle.Wires.All(w => w.Role != WireRole.Loose)
            ? string.Empty
            : $"station {string.Join(" and ", shared)} most likely runs several valves: to part them takes a conductor for each, and a loose end at the controller may be found and proven here";
    }
}
