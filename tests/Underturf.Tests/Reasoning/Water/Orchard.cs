using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Tests.Reasoning.Water;

/// <summary>A made-up orchard: one point of connection, two branches that can be shut, two stations on each.</summary>
internal sealed class Orchard
{
    private static readonly DateTimeOffset Morning = new(2032, 4, 12, 7, 0, 0, TimeSpan.Zero);

    private readonly LogKeeper keeper = new("made-up");
    private int minutes;

    /// <summary>Stations and valves, no pipes.</summary>
    public static Orchard Unpiped(string? master = null)
    {
        var orchard = new Orchard()
            .With(new PropertyFact { Name = "orchard", Zone = "Etc/UTC", Units = "us" })
            .With(new WaterSupplyFact { Id = "poc", Label = "street meter", Position = new Position(0, 0) })
            .With(new ControllerFact { Id = "c", Terminals = 8, Position = new Position(5, 5), Master = master });
        foreach (var (number, east, north) in new[] { (1, 40, 10), (2, 60, 10), (3, 40, 60), (4, 60, 60) })
        {
            orchard.With(new StationFact { Id = $"s{number}", Controller = "c", Terminal = number, Waters = [$"rows {number}"] });
            orchard.With(new ValveFact { Id = $"v{number}", Station = $"s{number}", Position = new Position(east, north) });
        }

        return orchard;
    }

    /// <summary>With pipes: i1 shuts the branch of stations 1 and 2, i2 that of 3 and 4.</summary>
    public static Orchard Piped()
    {
        var orchard = Unpiped()
            .With(new FittingFact { Id = "tee", Position = new Position(20, 20) })
            .With(new IsolationValveFact { Id = "i1", Label = "low", Position = new Position(20, 10) })
            .With(new IsolationValveFact { Id = "i2", Label = "high", Position = new Position(20, 50) });
        foreach (var (from, to) in new[] { ("poc", "tee"), ("tee", "i1"), ("i1", "v1"), ("i1", "v2"), ("tee", "i2"), ("i2", "v3"), ("i2", "v4") })
        {
            orchard.With(new PipeFact { Id = $"{from}-{to}", From = from, To = to, Series = "Schedule 40", Size = "2" });
        }

        return orchard;
    }

    public Orchard With(Fact fact)
    {
        keeper.Note("maren", Morning.AddMinutes(minutes++), fact);
        return this;
    }

    public Orchard Meter(string shown, params string[] running) => Read("meter flow", shown, running);

    public Orchard Read(string how, string shown, params string[] running) => With(new ReadingFact { How = how, Stations = running, Value = Shown.Parse(shown).Value });

    public Orchard Turn(string valve, string state) => With(new SettingFact { Of = valve, State = state });

    public Orchard Watch(string? station, params string[] seen) => With(new WatchFact { Station = station, Seen = seen });

    public Notebook Notebook(PracticeBook? book = null) => Underturf.Reasoning.Notebook.Open(keeper.Log(), book ?? PracticeBook.Default);

    public OpenQuestion? Question(string id) => Notebook().Answer().Questions.FirstOrDefault(q => q.Id == id);

    public OpenQuestion Idle() => Question("water-idle")!;

    public IReadOnlyList<Problem> Problems() => Notebook().Problems;
}

/// <summary>What an answer holds.</summary>
internal static class WaterAnswers
{
    public static double Share(this OpenQuestion question, string fault) => question.Explanations.Where(e => e.Fault == fault).Sum(e => e.Probability);

    public static double ShareOf(this OpenQuestion question, string fault, string place) =>
        question.Explanations.Where(e => e.Fault == fault).SelectMany(e => e.Places.Where(p => p.Label == place).Select(p => p.Probability)).Sum();
}
