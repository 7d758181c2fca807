using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Simulation.Trials;

/// <summary>The property of a trial: its truth, which repairs change, and its log, which every note makes longer.</summary>
internal sealed class TrialSite
{
    private const string Writer = "trial";

    private readonly LogKeeper keeper;
    private readonly Dictionary<string, int> asked = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Dictionary<string, ReadingFact>> read = new(StringComparer.Ordinal);
    private readonly HashSet<string> improved = new(StringComparer.Ordinal);
    private readonly double tailShare;
    private VirtualTechnician technician;
    private DateTimeOffset moment;

    public TrialSite(World world, double tailShare)
    {
        Truth = world.Truth ?? throw new ArgumentException("The world keeps no wires.", nameof(world));
        this.tailShare = tailShare;
        keeper = LogKeeper.After(world.Log);
        moment = world.Log.LastNoted!.Value.Moment.AddHours(1);
        View = PropertyHistory.Fold(world.Log.Standing).Now;
        Paths = new PathFinder(View, Book).All().ToDictionary(p => p.Station, StringComparer.Ordinal);
        Mending = new Mending(Truth, Paths);
        technician = new VirtualTechnician(Truth, null, tailShare);
        foreach (var reading in world.Log.Standing.Select(e => e.Fact).OfType<ReadingFact>())
        {
            Remember(reading);
        }
    }

    /// <summary>As it is now.</summary>
    public TrueWiring Truth { get; private set; }

    public PracticeBook Book => Truth.Book;

    /// <summary>The property as the first visit noted it.</summary>
    public PropertyView View { get; }

    /// <summary>The wires as the log has them, by station.</summary>
    public IReadOnlyDictionary<string, StationPath> Paths { get; }

    public Mending Mending { get; }

    public LogDocument Log => keeper.Log();

    /// <summary>The first reading of a station by itself at the controller, by how it was taken.</summary>
    public IReadOnlyDictionary<string, ReadingFact> FirstRead(string station) => read.GetValueOrDefault(station) ?? [];

    /// <summary>Reads, runs or looks, and notes what is seen.</summary>
    /// <returns>What is seen, in words.</returns>
    public string See(Fact asks)
    {
        IReadOnlyList<Fact> seen = asks switch
        {
            ReadingFact reading => [Read(reading)],
            TestFact test => [Run(test.Station)],
            LookFact look => Look(look.Place),
            _ => throw new ArgumentException($"Nothing is seen by {asks.GetType().Name}.", nameof(asks)),
        };
        foreach (var fact in seen)
        {
            Note(fact);
            Remember(fact);
        }

        return string.Join("; ", seen.Select(Say));
    }

    /// <summary>Works, and changes what is true.</summary>
    /// <returns>Whether it was right.</returns>
    public bool Work(WorkFact work)
    {
        var mended = Mending.By(work, Truth.Faults);
        var right = mended.Count > 0 || IsWeak(work);
        if (right && mended.Count == 0)
        {
            improved.Add(work.Target!);
        }

        Truth = Truth.Without(mended);
        technician = new VirtualTechnician(Truth, null, tailShare);
        Note(work);
        return right;
    }

    /// <summary>Whether a run or the sweep of any of some stations would be another if a fault were not there: somebody may complain of it.</summary>
    public bool Shows(TrueFault fault, IEnumerable<string> stations)
    {
        var without = new VirtualTechnician(Truth.Without([fault]), null, tailShare);
        return stations.Any(s => Differ(technician.Run(s, WorldGenerator.Place), without.Run(s, WorldGenerator.Place)) || Differ(Sweep(technician, s), Sweep(without, s)));
    }

    private static bool Differ(TestFact one, TestFact other) => one.Behaved != other.Behaved || !one.Watered.SequenceEqual(other.Watered);

    private static bool Differ(double one, double other) => Math.Abs(one - other) > Notable * Math.Min(one, other);

    /// <summary>Share of a reading's ohms by which anybody sees that it is another.</summary>
    private const double Notable = 0.05;

    private static double Sweep(VirtualTechnician by, string station) =>
        by.Read(new ReadingFact { How = "station ohms", Stations = [station], Value = Shown.OverRange }, "sweep").Value.Value?.Si ?? double.MaxValue;

    /// <summary>A sound run that cannot feed its valve: thicker wire helps.</summary>
    private bool IsWeak(WorkFact work) => work.Did == Book.AsBuilt.WeakRepair && work.Target is { } station && Paths.ContainsKey(station)
        && !improved.Contains(station) && Truth.FaultsOf([station]).Count == 0 && technician.Run(station, WorldGenerator.Place).Behaved != "opens";

    private ReadingFact Read(ReadingFact asks)
    {
        var there = asks.Place is { } place && asks.Stations.Count > 0 ? TrueEnd(asks.Stations[0], place, Book.Probe(asks.How)!.At) : asks.Place;
        return technician.Read(asks with { Place = there }, Once($"{asks.How} {string.Join(' ', asks.Stations)} {there}")) with { Place = asks.Place };
    }

    private TestFact Run(string station)
    {
        var test = technician.Run(station, WorldGenerator.Place);
        return improved.Contains(station) && test.Behaved != "opens" ? test with { Behaved = "opens", Watered = [WorldGenerator.Place(station)] } : test;
    }

    /// <summary>What is found is noted for its stations, and for the others that pass that nothing of theirs was odd.</summary>
    private List<LookFact> Look(string place)
    {
        var chance = Truth.Numbers.Stream(Once($"look {place}"));
        var notes = technician.Look(TruePlace(place), chance).Select(l => l with { Place = place }).ToList();
        var told = notes.SelectMany(n => n.Stations).ToHashSet(StringComparer.Ordinal);
        var others = Paths.Values.Where(p => p.LegTo(place) >= 0 && !told.Contains(p.Station)).Select(p => p.Station).ToList();
        return told.Count == 0 || others.Count == 0 ? notes : [.. notes, new LookFact { Place = place, Stations = others }];
    }

    /// <summary>Where nobody has found the place, the end of the station that is said to end there.</summary>
    private string TruePlace(string place) =>
        Truth.Paths.Any(p => p.LegTo(place) >= 0) || Paths.Values.FirstOrDefault(p => p.Valves.Any(v => v.Place == place)) is not { } path ? place : Truth.Path(path.Station).Valves[0].Place;

    /// <summary>Who is to read at the valve reads where it really is; elsewhere on the way he stands where he was sent.</summary>
    private string TrueEnd(string station, string place, Stand at)
    {
        var truth = Truth.Path(station);
        var isThere = at == Stand.Valve ? truth.Valves.Any(v => v.Place == place) : truth.LegTo(place) >= 0;
        return isThere || !Paths[station].Valves.Any(v => v.Place == place) ? place : truth.Valves[0].Place;
    }

    /// <summary>A name that makes the chance of this time its own, whatever was done in between.</summary>
    private string Once(string name)
    {
        asked[name] = asked.GetValueOrDefault(name) + 1;
        return $"trial {name} {asked[name]}";
    }

    private void Note(Fact fact)
    {
        moment = moment.AddMinutes(1);
        keeper.Note(Writer, moment, fact);
    }

    private void Remember(Fact fact)
    {
        if (fact is ReadingFact { Place: null, Stations: [var station] } reading)
        {
            read.TryAdd(station, new Dictionary<string, ReadingFact>(StringComparer.Ordinal));
            read[station].TryAdd(reading.How, reading);
        }
    }

    private static string Say(Fact fact) => fact switch
    {
        ReadingFact reading => (reading.Value.Value?.Text ?? "over range") + (reading.Drifting ? ", drifting" : string.Empty),
        TestFact test => test.Behaved + (test.Watered.Count > 0 ? $", waters {string.Join(" and ", test.Watered)}" : string.Empty),
        LookFact { Found.Count: 0 } look => look.Stations.Count == 0 ? "nothing odd" : "nothing odd of the others",
        LookFact look => $"{string.Join(", ", look.Found)} ({string.Join(", ", look.Stations)})",
        _ => string.Empty,
    };
}
