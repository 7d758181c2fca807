using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Reasoning.Water;

namespace Underturf.Simulation;

/// <summary>One made-up property with true water: noted, read, then worked by the notebook's own moves about what runs with everything off.</summary>
internal sealed class WaterTrial
{
    /// <summary>Moves that are followed at most.</summary>
    private const int MostMoves = 8;

    private static readonly DateTimeOffset Morning = new(2032, 4, 12, 7, 0, 0, TimeSpan.Zero);

    private readonly LogKeeper keeper;
    private readonly WaterHand hand;
    private readonly SeededGenerator chance;
    private readonly PracticeBook book;
    private readonly int times;
    private int minutes;

    /// <param name="times">How often whatever the visit reads of a station is read, one after the other.</param>
    public WaterTrial(ulong seed, PracticeBook book, int times = 1)
    {
        (this.book, this.times) = (book, times);
        keeper = new LogKeeper($"water-{seed}");
        (Truth, chance) = Draw(seed, book);
        hand = new WaterHand(Truth, chance.Fork("hand"), book);
        Describe();
        Visit();
    }

    public TrueWater Truth { get; }

    /// <summary>What is true of a seed, before anybody reads anything.</summary>
    public static TrueWater TruthOf(ulong seed, PracticeBook book) => Draw(seed, book).Truth;

    private static (TrueWater Truth, SeededGenerator Chance) Draw(ulong seed, PracticeBook book)
    {
        var drawing = new SeededGenerator(seed);
        var stations = 4 + drawing.NextInt(7);
        return (new WaterDraw(drawing.Fork("truth"), book).Draw(stations), drawing);
    }

    /// <summary>Which kinds of reading were taken of a station: what bears on its faults.</summary>
    public HashSet<(string Station, string How)> Noted { get; } = [];

    public LogDocument Log => keeper.Log();

    public WaterReport Report() => Notebook.Open(Log, book).Water()!;

    /// <summary>Follows the moves of the question until it is settled or nothing pays.</summary>
    /// <returns>How many were followed.</returns>
    public int Work()
    {
        for (var move = 0; move < MostMoves; move++)
        {
            var question = Notebook.Open(Log, book).Answer().Questions.FirstOrDefault(q => q.Id == "water-idle");
            if (question is null || question.Settled || question.Moves is not [var next, ..] || next.Worth <= next.Minutes)
            {
                return move;
            }

            Note([.. next.Steps.SelectMany(s => hand.Do(s.Asks, read: true)), .. hand.OpenAll()]);
        }

        return MostMoves;
    }

    /// <summary>The property: pipes for some, what an isolation valve shuts told for others, nothing of it for the rest.</summary>
    private void Describe()
    {
        var (piped, told) = (chance.Happens(0.5), chance.Happens(0.5));
        var levelled = chance.Fork("levelled");
        Note(
        [
            new PropertyFact { Name = "made up", Zone = "Etc/UTC", Units = "us" },
            new WaterSupplyFact { Id = "poc", Position = new Position(0, 0) },
            new ControllerFact { Id = "c", Terminals = Truth.Stations.Count, Position = new Position(5, 5) },
            .. Truth.Stations.SelectMany((s, k) => new Fact[]
            {
                new StationFact { Id = s.Id, Controller = "c", Terminal = k + 1, Waters = [$"bed {k + 1}"] },
                new ValveFact { Id = s.Valve, Station = s.Id, Position = new Position(30 + (12 * k), 20 * s.Branch) },
            }),
            .. new[] { 1, 2 }.Select(b => new IsolationValveFact { Id = $"i{b}", Position = new Position(20, 20 * b), Shuts = !piped && told ? [.. Truth.Stations.Where(s => s.Branch == b).Select(s => s.Id)] : [] }),
            .. piped ? Pipes() : [],
            .. levelled.Happens(0.5) ? Heights(levelled) : [],
        ]);
    }

    private IEnumerable<Fact> Pipes()
    {
        yield return new FittingFact { Id = "tee", Position = new Position(20, 5) };
        foreach (var (from, to) in new[] { ("poc", "tee"), ("tee", "i1"), ("tee", "i2") }.Concat(Truth.Stations.Select(s => ($"i{s.Branch}", s.Valve))))
        {
            yield return new PipeFact { Id = $"{from}-{to}", From = from, To = to, Series = "Schedule 40", Size = "2" };
        }
    }

    /// <summary>Somebody went over the ground with a level and counted outlets by their nozzles, at half of the stations.</summary>
    private IEnumerable<Fact> Heights(SeededGenerator level)
    {
        Length Read(double metres) => new(metres + 20 + (0.04 * level.HeavyTailed()));
        yield return new WaterSupplyFact { Id = "poc", Elevation = Read(0) };
        foreach (var station in Truth.Stations.Where(_ => level.Happens(0.5)).ToList())
        {
            var pascals = Math.Max(1e4, Truth.Solve(station.Sound, new HashSet<string>()).OutletPascals) * level.Between(0.9, 1.1);
            var flow = new Flow(station.Sound!.OutletFactor * Math.Sqrt(pascals) * level.Between(0.9, 1.1) / station.Outlets);
            yield return new ValveFact { Id = station.Valve, Station = station.Id, Elevation = Read(station.Slope.TopMetres) };
            foreach (var (end, metres) in new[] { ("top", station.Slope.TopMetres), ("low", station.Slope.LowMetres) })
            {
                yield return new OutletFact { Id = $"{station.Id}-{end}", Station = station.Id, What = "spray head", Count = station.Outlets / 2, Flow = flow, Pressure = new Pressure(pascals), Elevation = Read(metres) };
            }
        }
    }

    /// <summary>What a first visit reads and sees.</summary>
    private void Visit()
    {
        List<Fact> notes = [hand.Read("meter flow", null)];
        notes.AddRange(chance.Happens(0.5) ? [hand.Read("meter flow", null)] : []);
        notes.AddRange(chance.Happens(0.8) ? [hand.Read("static pressure", null)] : []);
        notes.AddRange(chance.Happens(0.6) ? [hand.Read("running pressure", chance.Pick(Truth.Stations))] : []);
        foreach (var station in Truth.Stations)
        {
            foreach (var (how, often) in new[] { ("meter flow", 0.8), ("outlet pressure", 0.35), ("opening time", 0.35), ("closing time", 0.35) })
            {
                if (chance.Happens(often))
                {
                    notes.AddRange(Enumerable.Range(0, times).Select(_ => hand.Read(how, station)));
                    Noted.Add((station.Id, how));
                }
            }

            if (chance.Happens(0.6))
            {
                notes.Add(hand.Watch(station));
                Noted.Add((station.Id, "watch"));
            }
        }

        Note(notes);
    }

    private void Note(IReadOnlyList<Fact> facts)
    {
        foreach (var fact in facts)
        {
            keeper.Note("maren", Morning.AddMinutes(minutes++), fact);
        }
    }
}
