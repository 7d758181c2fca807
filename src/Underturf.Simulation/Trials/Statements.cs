using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Simulation.Trials;

/// <summary>Reads what the notebook says of a question as classes, and says which are right.</summary>
internal sealed class Statements(PropertyView view, PracticeBook book, Mending mending)
{
    private readonly Dictionary<string, string> places = mending.NotedPlaces.DistinctBy(view.Name).ToDictionary(view.Name, StringComparer.Ordinal);

    public IReadOnlyList<string> Stations(OpenQuestion question) => [.. view.Stations.Keys.Where(s => question.Stations.Contains(view.StationNumber(s))).Order(StringComparer.Ordinal)];

    public Statement Of(OpenQuestion question) => Of(question.Explanations.SelectMany(Classes));

    public static Statement Of(IEnumerable<(RepairClass Class, double Probability)> classes) => new(classes
        .GroupBy(c => c.Class)
        .ToDictionary(g => g.Key, g => g.Sum(c => c.Probability)));

    /// <summary>
    /// A class is right where each repair that it names cures something of what is wrong, one of them at the place that it names, what is buried on the way
    /// there and noted by nobody among it; nothing to be done is right where nothing is wrong.
    /// </summary>
    public bool IsRight(RepairClass said, IReadOnlyList<TrueFault> faults)
    {
        if (said == RepairClass.Nothing || said == RepairClass.Unknown)
        {
            return said == RepairClass.Nothing && faults.Count == 0;
        }

        var repairs = said.Repairs.Split(RepairClass.And);
        var place = said.Place is null ? null : places.GetValueOrDefault(said.Place);
        bool There(string repair, TrueFault fault) => place is not null && Cures(repair, place, fault);
        return Array.TrueForAll(repairs, r => faults.Any(f => Cures(r, f.Place, f) || There(r, f)))
            && (said.Place is null || Array.Exists(repairs, r => faults.Any(f => There(r, f))));
    }

    private bool Cures(string repair, string? place, TrueFault fault) => mending.Cures(new WorkFact { Did = repair, Place = place, Target = fault.Station }, fault);

    public double OfTruth(Statement said, IReadOnlyList<TrueFault> faults) => Math.Min(1, said.Classes.Where(c => IsRight(c.Key, faults)).Sum(c => c.Value));

    private IEnumerable<(RepairClass Class, double Probability)> Classes(Explanation explanation)
    {
        var known = explanation.Fault.Split(RepairClass.And).Select(id => book.Faults.FirstOrDefault(f => f.Id == id)).ToList();
        if (known.Contains(null))
        {
            return [(explanation.Fault == AsBuilt ? LeftAlone(explanation) : RepairClass.Unknown, explanation.Probability)];
        }

        var asking = known.Where(f => !f!.AsksNothing).ToList();
        if (asking.Count == 0)
        {
            return [(LeftAlone(explanation), explanation.Probability)];
        }

        // A note that is wrong besides is no repair; by itself it is to be taken again.
        var real = asking.Where(f => f!.Scope != FaultScope.Note).ToList();
        var repairs = (real.Count > 0 ? real : asking).Select(f => f!.Repair).Where(r => r.Length > 0).Distinct().Order(StringComparer.Ordinal).ToList();
        var name = string.Join(RepairClass.And, repairs);
        return repairs.Count == 0 ? [(RepairClass.Unknown, explanation.Probability)]
            : repairs.Exists(r => book.Repair(r)!.Placed) && explanation.Places.Count > 0
                ? explanation.Places.Select(p => (new RepairClass(name, p.Place), p.Probability * explanation.Probability))
                : [(new RepairClass(name, null), explanation.Probability)];
    }

    /// <summary>Nothing is broken; a sound run may be too weak all the same.</summary>
    private RepairClass LeftAlone(Explanation explanation) => explanation.Repair.Length > 0 ? new RepairClass(book.AsBuilt.WeakRepair, null) : RepairClass.Nothing;

    /// <summary>The name under which the notebook says that nothing is broken.</summary>
    private const string AsBuilt = "as-built";
}
