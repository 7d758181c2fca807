using Underturf.FieldLog;
using Underturf.Planning.Repair;
using Underturf.Planning.Rework;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Planning.Day;

/// <summary>What the jobs of a day are found from.</summary>
internal sealed record Grounds(Notebook Notebook, Answers Answers, DateTimeOffset Begin)
{
    public PropertyView View => Notebook.History.Now;

    public Facts Facts => Notebook.History.Facts;

    public PracticeBook Book => Notebook.Book;

    public DayPractice Numbers { get; init; } = Notebook.Book.Day;

    public ReworkAnswer Rework { get; } = ReworkPlan.Of(Notebook);

    public RepairListAnswer Repairs { get; } = RepairPlan.All(Notebook, Answers);

    /// <summary>What each station takes, in cubic metres a second, by its id.</summary>
    public Lazy<IReadOnlyDictionary<string, double>> Flows { get; } = new(() => Notebook.Flow() is { Succeeded: true, Value: var flow } ? flow.Stations.ToDictionary(s => s.Station, s => s.CubicMetresPerSecond, StringComparer.Ordinal) : []);

    /// <summary>Where somebody has noted it; what is not found yet has to be looked for, and dug for.</summary>
    public bool IsFound(string place) => View.Controllers.ContainsKey(place) || View.Boxes.ContainsKey(place) || View.Valves.ContainsKey(place) || View.IsolationValves.ContainsKey(place) || View.WaterSupplies.ContainsKey(place);

    /// <summary>Ids of stations by their numbers.</summary>
    public ILookup<string, string> StationsByNumber { get; } = Notebook.History.Now.Stations.Keys.ToLookup(Notebook.History.Now.StationNumber, StringComparer.Ordinal);

    /// <summary>What has to be shut to open water at a place, and what goes dry.</summary>
    public (IReadOnlyList<Shutter> Shut, IReadOnlyList<string> Dry) Isolation(string place) => Notebook.Isolate(place) is { Succeeded: true, Value: var isolation }
        ? ([.. isolation.Shut.Select(s => new Shutter(s.Id, s.Name, s.TurnMinutes))], isolation.Dry)
        : ([], []);

    /// <summary>What work costs that turns out not to hold.</summary>
    public double WrongMinutes => Book.Loss.WrongRepairMinutes;

    /// <summary>The last state in which each place was left, where it is one for a time; oldest first.</summary>
    public IReadOnlyList<(Observed<LeftAsFact> Left, string Place, StatePractice State)> Temporary =>
    [
        .. from last in Facts.LeftAs.GroupBy(l => View.Identity.Of(l.Fact.Place)).Select(g => (Left: g.Last(), Place: g.Key))
           let state = Numbers.StateOf(last.Left.Fact.State)
           where state is not null
           orderby last.Left.Moment
           select (last.Left, last.Place, state),
    ];
}
