using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Translation;

namespace Underturf.Simulation;

/// <summary>
/// Makes properties with known faults: boxes in a tree of cables, stations at their ends, one or two faults drawn by the practice book's
/// rates, and the notes of a technician who reads, runs and looks.
/// </summary>
public sealed class WorldGenerator
{
    private static readonly DateTimeOffset Morning = new(2031, 4, 2, 8, 0, 0, TimeSpan.FromHours(-6));

    private readonly PracticeBook book;
    private readonly SeededGenerator chance;
    private readonly ulong seed;
    private readonly LogKeeper keeper = new("made-up");
    private DateTimeOffset moment = Morning;

    private WorldGenerator(ulong seed, PracticeBook book)
    {
        this.seed = seed;
        this.book = book;
        chance = new SeededGenerator(seed).Fork("world");
    }

    public static World Make(ulong seed, PracticeBook book) => new WorldGenerator(seed, book).Make();

    private World Make()
    {
        LayGround();
        var history = PropertyHistory.Fold(keeper.Log().Standing);
        var paths = new PathFinder(history.Now, book).All();
        var faults = new FaultDraw(book, chance.Fork("faults"), paths).Draw(1 + chance.NextInt(2));
        var technician = new VirtualTechnician(paths, faults, book, new TrueNumbers(book, seed), null);
        Note(technician.Read(new ReadingFact { How = "idle volts", Value = Shown.OverRange }, "idle volts"));
        foreach (var path in paths)
        {
            Read(technician, "station ohms", path.Station);
            Read(technician, "earth ohms", path.Station);
            Note(technician.Run(path.Station, Place));
        }

        foreach (var path in paths.Take(3))
        {
            Read(technician, "terminal volts", path.Station);
            Read(technician, "running amps", path.Station);
        }

        return new World(keeper.Log(), faults);
    }

    private void LayGround()
    {
        Note(new PropertyFact { Name = "A made-up property", Zone = "Etc/GMT+6" });
        Note(new ControllerFact { Id = "c", Terminals = 48, Position = new Position(0, 0) });
        var boxes = 4 + chance.NextInt(8);
        var parents = new int[boxes];
        for (var b = 0; b < boxes; b++)
        {
            parents[b] = b == 0 ? -1 : chance.NextInt(Math.Min(b + 1, 4)) is 0 ? -1 : chance.NextInt(b);
            Note(new BoxFact { Id = $"b{b}", Position = new Position(20 + (chance.NextDouble() * 200), chance.NextDouble() * 200) });
        }

        var stations = 6 + chance.NextInt(15);
        var ends = Enumerable.Range(0, stations).Select(_ => chance.NextInt(boxes)).ToArray();
        for (var s = 0; s < stations; s++)
        {
            Note(new StationFact { Id = $"s{s + 1}", Controller = "c", Terminal = s + 1, Waters = [Place($"s{s + 1}")] });
        }

        LayCables(parents, ends);
        NoteValves(ends);
    }

    private void LayCables(int[] parents, int[] ends)
    {
        for (var b = 0; b < parents.Length; b++)
        {
            var carried = Enumerable.Range(0, ends.Length).Where(s => Passes(parents, ends[s], b)).Select(s => $"s{s + 1}").ToList();
            if (carried.Count > 0)
            {
                var taped = chance.NextDouble() < 0.5;
                Note(new CableFact
                {
                    Id = $"k{b}",
                    From = parents[b] < 0 ? "c" : $"b{parents[b]}",
                    To = $"b{b}",
                    Carries = carried,
                    Length = taped ? new Length(Math.Round(20 + (chance.NextDouble() * 120))) : null,
                    Gauge = WireSize.FromAwg(18),
                    CommonGauge = WireSize.FromAwg(14),
                    Sure = taped ? Grade.Measured : Grade.Estimated,
                });
            }
        }
    }

    private void NoteValves(int[] ends)
    {
        for (var s = 0; s < ends.Length; s++)
        {
            if (chance.NextDouble() < 0.7)
            {
                Note(new ValveFact { Id = $"v{s + 1}", Box = $"b{ends[s]}", Station = $"s{s + 1}" });
            }
        }
    }

    private static bool Passes(int[] parents, int end, int box)
    {
        for (var at = end; at >= 0; at = parents[at])
        {
            if (at == box)
            {
                return true;
            }
        }

        return false;
    }

    private void Read(VirtualTechnician technician, string how, string station) =>
        Note(technician.Read(new ReadingFact { How = how, Stations = [station], Value = Shown.OverRange }, $"{how} {station}"));

    private static string Place(string station) => $"lawn {station}";

    private void Note(Fact fact)
    {
        moment = moment.AddMinutes(1);
        keeper.Note("w", moment, fact);
    }
}
