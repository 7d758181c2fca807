using System.Text;
using System.Text.Json;
using Underturf.FieldLog;
using Underturf.Planning.Repair;
using Underturf.Planning.Rework;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Simulation;

/// <summary>
/// The demo property, invented: a seven-hectare memorial garden taken over without a drawing. Its notes are written by hand; what the
/// instruments show in them is computed from the truth, so that the readings obey physics.
/// </summary>
public static class MemorialGarden
{
    private const string PropertyId = "memorial-garden";

    /// <summary>The demo made anew with a practice book; the committed sample is this with the default book.</summary>
    public static World Make(PracticeBook book)
    {
        var truth = Truth();
        var notes = Notes("notes.jsonl");
        var crew = new Crew(notes, truth, book);
        var keeper = new LogKeeper(PropertyId);
        foreach (var note in notes)
        {
            keeper.Note(note.Writer, note.Noted, note.Fill ? crew.Fill(note) : FactOf(note));
        }

        return new World(keeper.Log(), [.. truth.Faults.Where(f => f.Until is null).Select(f => f.AsFault)]);
    }

    /// <summary>The same log at the end of that day: in the afternoon two people name the conductors of box 10.</summary>
    public static LogDocument Afternoon(PracticeBook book)
    {
        var keeper = LogKeeper.After(Make(book).Log);
        foreach (var note in Notes("afternoon.jsonl"))
        {
            keeper.Note(note.Writer, note.Noted, FactOf(note));
        }

        return keeper.Log();
    }

    /// <summary>The log of the next day: the shared station is reworked, each step as the plan says it, and what its checks show is noted.</summary>
    public static LogDocument Reworked(PracticeBook book)
    {
        var keeper = LogKeeper.After(Afternoon(book));
        var truth = Truth();
        var view = PropertyHistory.Fold(keeper.Log().Standing).Now;
        var faults = truth.Faults.Where(f => f.Until is null).Select(f => f.AsFault).ToList();
        var wiring = new TrueWiring(new PathFinder(view, book).All(), faults, book, new TrueNumbers(book, truth.Seed));
        var ground = new ReworkedGround(wiring, [new TrueSpare("x1", "b10", true)], truth.SupplyVolts, s => view.Stations[s].Waters[0]);
        var moment = new DateTimeOffset(2031, 4, 4, 8, 0, 0, TimeSpan.FromHours(-6));
        foreach (var step in ReworkPlan.Of(Reasoning.Notebook.Open(keeper.Log(), book)).Steps)
        {
            moment = moment.AddMinutes((double)Math.Ceiling(step.Minutes));
            IReadOnlyList<Fact> read = step.Station is { } station ? [ground.Read(station, "station ohms"), ground.Read(station, "running amps")] : [];
            foreach (var (i, fact) in read.Concat(ground.Do(step)).Index())
            {
                keeper.Note("maren", moment.AddMinutes(i), fact with { By = "Maren" });
            }
        }

        return keeper.Log();
    }

    /// <summary>The log of the week after: where the water runs that the meter shows is found in the morning, and the valve is repaired, each step as the plan says it.</summary>
    /// <param name="reworked">The log up to then, where it was made before.</param>
    public static LogDocument Repaired(PracticeBook book, LogDocument? reworked = null)
    {
        var keeper = LogKeeper.After(reworked ?? Reworked(book));
        var creep = Truth().Creep;
        ReadingFact Meter(ReadingFact asked) => creep.Read(asked, PropertyHistory.Fold(keeper.Log().Standing));
        var morning = Notes("morning.jsonl");
        foreach (var note in morning)
        {
            var fact = FactOf(note);
            keeper.Note(note.Writer, note.Noted, note.Fill ? Meter((ReadingFact)fact) with { By = fact.By } : fact);
        }

        var (moment, answers) = (morning[^1].Noted, Reasoning.Notebook.Open(keeper.Log(), book).Answer());
        Queue<RepairStep> Steps() => new(RepairPlan.Of(Reasoning.Notebook.Open(keeper.Log(), book), creep.Valve, answers).Value.Steps);
        var steps = Steps();
        while (steps.TryDequeue(out var step))
        {
            moment = moment.AddMinutes((double)Math.Ceiling(step.Minutes) + 1);
            IEnumerable<Fact> read = step.Key == RepairSteps.Closes ? [Meter(new ReadingFact { How = "meter flow", Place = "poc", Instrument = "water meter", Value = Shown.OverRange })] : [];
            var seen = step.Sights.Where(s => s.Name == creep.Cause).SelectMany(s => s.Notes).ToList();
            foreach (var (i, fact) in read.Concat(seen).Concat(step.Passed).Index())
            {
                keeper.Note("jory", moment.AddSeconds(i), fact with { By = "Jory" });
            }

            // What the opened valve shows may turn the plan.
            steps = seen.Count > 0 ? Steps() : steps;
        }

        return keeper.Log();
    }

    /// <summary>The truth's file, for the sample folder.</summary>
    public static byte[] TruthBytes() => Bytes("truth.json");

    private static SceneTruth Truth() => JsonSerializer.Deserialize(Bytes("truth.json"), SceneJson.Default.SceneTruth)!;

    internal static Fact FactOf(SceneNote note)
    {
        var drafts = Drafts.Read(Encoding.UTF8.GetBytes(note.Body.GetRawText()));
        return drafts.Notes is [var draft] ? draft.Fact : throw new InvalidOperationException(drafts.Problems[0].ToString());
    }

    private static List<SceneNote> Notes(string name) => [.. Encoding.UTF8.GetString(Bytes(name))
        .Split('\n', StringSplitOptions.RemoveEmptyEntries)
        .Select(line => JsonSerializer.Deserialize(line, SceneJson.Default.SceneNote)!)];

    private static byte[] Bytes(string name)
    {
        using var stream = typeof(MemorialGarden).Assembly.GetManifestResourceStream($"memorial-garden/{name}")
            ?? throw new InvalidOperationException($"{name} is not embedded.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    /// <summary>The virtual technician of each stretch of time between repairs.</summary>
    private sealed class Crew
    {
        private readonly SceneTruth truth;
        private readonly PracticeBook book;
        private readonly IReadOnlyList<StationPath> paths;
        private readonly PropertyView view;
        private readonly Dictionary<string, int> asked = new(StringComparer.Ordinal);

        public Crew(IReadOnlyList<SceneNote> notes, SceneTruth truth, PracticeBook book)
        {
            this.truth = truth;
            this.book = book;
            var keeper = new LogKeeper(PropertyId);
            foreach (var note in notes.Where(n => !n.Fill))
            {
                keeper.Note(note.Writer, note.Noted, FactOf(note));
            }

            view = PropertyHistory.Fold(keeper.Log().Standing).Now;
            paths = new PathFinder(view, book).All();
        }

        public Fact Fill(SceneNote note)
        {
            var faults = truth.Faults.Where(f => f.Until is not { } until || note.Noted < until).Select(f => f.AsFault).ToList();
            var technician = new VirtualTechnician(paths, faults, book, new TrueNumbers(book, truth.Seed), truth.SupplyVolts);
            return FactOf(note) switch
            {
                ReadingFact reading => technician.Read(reading, Name(reading)),
                TestFact test => technician.Run(test.Station, s => view.Stations[s].Waters[0]) with { By = test.By, Note = test.Note },
                var other => other,
            };
        }

        private string Name(ReadingFact reading)
        {
            var name = $"{reading.How} {string.Join(' ', reading.Stations)} {reading.Place}";
            asked[name] = asked.GetValueOrDefault(name) + 1;
            return $"{name} {asked[name]}";
        }
    }
}
