using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Translation;
using Underturf.Simulation.Engines;

namespace Underturf.Simulation;

/// <summary>
/// Makes properties with known faults: small ones of boxes in any order, whole ones as they are built, lost and taken over; faults drawn by the
/// practice book's rates, and the notes of a technician who reads, runs and looks. See docs/models/worlds.md.
/// </summary>
public sealed class WorldGenerator
{
    private static readonly DateTimeOffset Morning = new(2031, 4, 2, 8, 0, 0, TimeSpan.FromHours(-6));

    /// <summary>Of a whole property, where nothing is said.</summary>
    private const int MostFaults = 6;

    private readonly PracticeBook book;
    private readonly WorldShape shape;
    private readonly SeededGenerator chance;
    private readonly ulong seed;
    private readonly LogKeeper keeper;
    private DateTimeOffset moment = Morning;

    private WorldGenerator(ulong seed, PracticeBook book, WorldShape shape)
    {
        this.seed = seed;
        this.book = book;
        this.shape = shape;
        chance = new SeededGenerator(seed).Fork("world");
        keeper = new LogKeeper(shape.Stations is { } stations ? $"made-up-{seed}-{stations}" : $"made-up-{seed}");
    }

    public static World Make(ulong seed, PracticeBook book) => Make(seed, book, WorldShape.Small);

    public static World Make(ulong seed, PracticeBook book, WorldShape shape) => Make(seed, book, shape, null).Value;

    /// <param name="second">Solves a share of the readings, <see cref="WorldShape.SecondEngineShare"/> of them.</param>
    /// <returns>The property, or the problem that the second engine had.</returns>
    public static Outcome<World> Make(ulong seed, PracticeBook book, WorldShape shape, ICircuitEngine? second) =>
        shape.SecondEngineShare > 0 && second is null
            ? throw new ArgumentNullException(nameof(second), "A share of the readings is asked of it.")
            : new WorldGenerator(seed, book, shape).Make(second);

    internal static string Place(string station) => $"lawn {station}";

    private Outcome<World> Make(ICircuitEngine? second) => shape.Stations is { } stations ? Whole(stations, second) : Small(second);

    /// <summary>The truth lies about what was noted.</summary>
    private Outcome<World> Small(ICircuitEngine? second)
    {
        new SmallGround(chance, fact => Note(fact)).Lay();
        var history = PropertyHistory.Fold(keeper.Log().Standing);
        var paths = new PathFinder(history.Now, book).All();
        var faults = new FaultDraw(book, chance.Fork("faults"), paths, null).Draw(shape.Faults ?? 1 + chance.NextInt(2));
        return Visited(new TrueWiring(paths, faults, book, new TrueNumbers(book, seed)), history.Now.Boxes.Keys, second);
    }

    /// <summary>Built first; what is noted is what was found of it.</summary>
    private Outcome<World> Whole(int stations, ICircuitEngine? second)
    {
        var numbers = new TrueNumbers(book, seed);
        var plan = new PlanDraw(shape, stations, chance.Fork("plan"), numbers).Draw();
        new FirstNotes(plan, shape, chance.Fork("first notes"), fact => Note(fact)).Write();
        var (paths, setting) = (plan.Paths(), new FaultSetting(plan, shape.SameStationShare));
        var faults = new FaultDraw(book, chance.Fork("faults"), paths, setting).Draw(shape.Faults ?? 1 + chance.NextInt(MostFaults));
        var made = Visited(new TrueWiring(paths, faults, book, numbers, setting.Commons), plan.Boxes.Where(b => !b.Buried).Select(b => b.Id), second);
        return made.Succeeded ? made.Value with { Plan = plan } : made;
    }

    private Outcome<World> Visited(TrueWiring truth, IEnumerable<string> boxes, ICircuitEngine? second)
    {
        var visit = new Visit(shape, truth, chance, second, Note);
        visit.Go(boxes);
        return visit.Problem is { } problem
            ? problem
            : new World(keeper.Log(), truth.Faults) { WrongNotes = visit.WrongNotes, BySecondEngine = visit.BySecondEngine, Truth = truth };
    }

    private EntryId Note(Fact fact)
    {
        moment = moment.AddMinutes(1);
        return keeper.Note("w", moment, fact);
    }
}
