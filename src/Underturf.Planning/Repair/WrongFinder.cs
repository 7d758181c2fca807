using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Planning.Repair;

/// <summary>What belief says is wrong with a valve or with the joints of a box.</summary>
internal sealed class WrongFinder(PropertyView view, PracticeBook book, Answers answers)
{
    private readonly HashSet<string> ofValves = [.. book.Repairing.Causes.SelectMany(c => c.Of.Keys)];
    private readonly HashSet<string> ofJoints = [.. book.Faults.Where(f => f.Repair == BoxRebuild.Remaking).Select(f => f.Id)];

    /// <summary>Chances of the faults of the book that a valve can have; with the question that says so.</summary>
    public IReadOnlyList<Wrong> OfValve(string valve) => [.. Faults(ofValves).Select(f => f with { Chance = f.Chance * ShareOf(valve, f) }).Where(f => f.Chance > 0)];

    /// <summary>The same for the joints of a box.</summary>
    public IReadOnlyList<Wrong> OfBox(string box) =>
        [.. Faults(ofJoints).Select(f => f with { Chance = f.Chance * f.Told.Places.Where(p => p.Id == box).Sum(p => p.Probability) }).Where(f => f.Chance > 0)];

    private IEnumerable<Wrong> Faults(HashSet<string> wanted) =>
        from question in answers.Questions
        from told in question.Explanations
        from part in told.Alike.Count > 0 ? told.Alike.Select(a => (a.Fault, a.Probability)) : [(told.Fault, told.Probability)]
        from fault in part.Fault.Split(" + ").Distinct()
        where wanted.Contains(fault)
        select new Wrong(question, told, fault, part.Probability);

    /// <summary>Of a fault with a place, how much of it lies at this valve; without one, the valves of its station have it by equal shares.</summary>
    private double ShareOf(string valve, Wrong wrong)
    {
        var fact = view.Valves[valve];
        var (box, station) = (fact.Box is { } b ? view.Identity.Of(b) : null, fact.Station is { } s ? view.Identity.Of(s) : null);
        if (wrong.Question.Stations.Count == 0)
        {
            return wrong.Told.Places.Where(p => p.Id == valve).Sum(p => p.Probability);
        }

        if (station is null || !wrong.Question.Stations.Contains(view.StationNumber(station)))
        {
            return 0;
        }

        List<(string Id, ValveFact Valve)> sisters = [.. view.ValvesOf(station)];
        var here = sisters.Where(v => v.Id == valve || (box is not null && v.Valve.Box is { } other && view.Identity.Of(other) == box)).Count();
        return wrong.Told.Places.Any(p => p.Id is not null)
            ? wrong.Told.Places.Where(p => p.Id == valve || (p.Id is not null && p.Id == box)).Sum(p => p.Probability) / Math.Max(1, here)
            : 1.0 / Math.Max(1, sisters.Count);
    }
}

/// <summary>A fault of the book that an explanation names.</summary>
internal sealed record Wrong(OpenQuestion Question, Explanation Told, string Fault, double Chance);
