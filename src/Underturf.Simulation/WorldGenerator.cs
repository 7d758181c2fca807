using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Simulation;

/// <summary>
/// Makes properties with known faults: boxes in a tree of cables, stations at their ends, faults drawn by the practice book's rates, and the
/// notes of a technician who reads, runs and looks.
/// </summary>
public sealed class WorldGenerator
{
    private static readonly DateTimeOffset Morning = new(2031, 4, 2, 8, 0, 0, TimeSpan.FromHours(-6));

    private readonly PracticeBook book;
    private readonly WorldShape shape;
    private readonly SeededGenerator chance;
    private readonly SeededGenerator slips;
    private readonly ulong seed;
    private readonly LogKeeper keeper = new("made-up");
    private readonly List<EntryId> wrong = [];
    private DateTimeOffset moment = Morning;

    private WorldGenerator(ulong seed, PracticeBook book, WorldShape shape)
    {
        this.seed = seed;
        this.book = book;
        this.shape = shape;
        chance = new SeededGenerator(seed).Fork("world");
        slips = chance.Fork("slips");
    }

    public static World Make(ulong seed, PracticeBook book) => Make(seed, book, WorldShape.Small);

    public static World Make(ulong seed, PracticeBook book, WorldShape shape) => new WorldGenerator(seed, book, shape).Make();

    internal static string Place(string station) => $"lawn {station}";

    private World Make()
    {
        new WorldGround(shape, chance, fact => Note(fact)).Lay();
        var history = PropertyHistory.Fold(keeper.Log().Standing);
        var paths = new PathFinder(history.Now, book).All();
        var faults = new FaultDraw(book, chance.Fork("faults"), paths).Draw(shape.Faults ?? 1 + chance.NextInt(2));
        var truth = new TrueWiring(paths, faults, book, new TrueNumbers(book, seed));
        var technician = new VirtualTechnician(truth, null, shape.TailShare);
        Note(technician.Read(new ReadingFact { How = "idle volts", Value = Shown.OverRange }, "idle volts"));
        foreach (var path in paths)
        {
            Read(technician, "station ohms", path.Station, paths);
            Read(technician, "earth ohms", path.Station, paths);
            Note(technician.Run(path.Station, Place));
        }

        foreach (var path in paths.Take(3))
        {
            Read(technician, "terminal volts", path.Station, paths);
            Read(technician, "running amps", path.Station, paths);
        }

        Look(history.Now.Boxes.Keys, faults);
        return new World(keeper.Log(), truth.Faults) { WrongNotes = wrong };
    }

    /// <summary>Now and then the station next to it is read, and noted under this one.</summary>
    private void Read(VirtualTechnician technician, string how, string station, IReadOnlyList<StationPath> paths)
    {
        var slipped = shape.WrongShare > 0 && slips.NextDouble() < shape.WrongShare;
        var read = slipped ? paths[slips.NextInt(paths.Count)].Station : station;
        var entry = Note(technician.Read(new ReadingFact { How = how, Stations = [read], Value = Shown.OverRange }, $"{how} {read}") with { Stations = [station] });
        if (read != station)
        {
            wrong.Add(entry);
        }
    }

    private void Look(IEnumerable<string> boxes, IReadOnlyList<TrueFault> faults)
    {
        foreach (var box in boxes.Where(_ => shape.LookShare > 0 && slips.NextDouble() < shape.LookShare))
        {
            var seen = faults.Where(f => f.Place == box && slips.NextDouble() < Practice(f).Seen).ToList();
            Note(new LookFact
            {
                Place = box,
                Stations = [.. seen.SelectMany(f => new[] { f.Station, f.Other }).OfType<string>().Distinct()],
                Found = [.. seen.Select(f => Practice(f).FindingName).Distinct()],
            });
        }
    }

    private FaultPractice Practice(TrueFault fault) => book.Faults.First(f => f.Id == fault.Fault);

    private EntryId Note(Fact fact)
    {
        moment = moment.AddMinutes(1);
        return keeper.Note("w", moment, fact);
    }
}
