using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Translation;

namespace Underturf.Simulation;

/// <summary>A conductor that carries nothing, as it really is.</summary>
/// <param name="Reaches">The place where it ends.</param>
internal sealed record TrueSpare(string Wire, string Reaches, bool IsSound);

/// <summary>
/// A made-up property with shared stations, spares sound and broken, a station that waters nothing and few free terminals: its truth, and the log of
/// who ran and read every station, looked into some boxes and proved some spares.
/// </summary>
internal sealed class ReworkScene
{
    private const double LookShare = 0.6, ProvenShare = 0.4, BrokenShare = 0.25, ThirdValveShare = 0.25, AbandonedShare = 0.4;
    private const int MostShared = 3, MostSpares = 8, MostFreeTerminals = 8;

    private static readonly DateTimeOffset Morning = new(2031, 4, 2, 8, 0, 0, TimeSpan.FromHours(-6));

    private readonly LogKeeper keeper;
    private readonly SeededGenerator chance;
    private int minute;

    private ReworkScene(ulong seed, PracticeBook book)
    {
        Book = book;
        keeper = new LogKeeper($"rework-{seed}");
        chance = new SeededGenerator(seed).Fork("rework");
        new SmallGround(chance, Note).Lay();
        var paths = new PathFinder(PropertyHistory.Fold(keeper.Log().Standing).Now, book).All();
        var faults = Share(paths).ToList();
        Truth = new TrueWiring(paths, faults, book, new TrueNumbers(book, seed));
        Spares = [.. Lay(paths)];
        var abandoned = chance.NextDouble() < AbandonedShare;
        Note(new ControllerFact { Id = "c", Terminals = paths.Count + (abandoned ? 1 : 0) + chance.NextInt(MostFreeTerminals), Position = new Position(0, 0) });
        Visit(new VirtualTechnician(Truth, null, 0), faults);
        if (abandoned)
        {
            Spares = [.. Spares, Abandon(paths)];
        }
    }

    public PracticeBook Book { get; }

    public TrueWiring Truth { get; }

    public IReadOnlyList<TrueSpare> Spares { get; }

    public LogDocument Log => keeper.Log();

    public static ReworkScene Make(ulong seed, PracticeBook book) => new(seed, book);

    private IEnumerable<TrueFault> Share(IReadOnlyList<StationPath> paths)
    {
        var order = Enumerable.Range(0, paths.Count).OrderBy(_ => chance.NextDouble()).ToList();
        foreach (var path in order.Take(1 + chance.NextInt(MostShared)).Select(i => paths[i]))
        {
            var more = chance.NextDouble() < ThirdValveShare ? 2 : 1;
            var at = path.Legs[chance.NextInt(path.Legs.Count)].To;
            yield return new TrueFault("plain-branch", path.Station, null, at, 0, more, [.. Enumerable.Range(1, more).Select(i => $"{WorldGenerator.Place(path.Station)}, far end {i}")]);
        }
    }

    private IEnumerable<TrueSpare> Lay(IReadOnlyList<StationPath> paths)
    {
        var places = paths.SelectMany(p => p.Legs).Select(l => l.To).Where(to => to[0] == 'b').Distinct().ToList();
        for (var i = 1; i <= chance.NextInt(MostSpares + 1); i++)
        {
            var spare = new TrueSpare($"x{i}", places[chance.NextInt(places.Count)], chance.NextDouble() >= BrokenShare);
            Note(new EndFact { Id = spare.Wire, Place = "c", Label = $"loose {i}", Gauge = WireSize.FromAwg(18) });
            if (spare.IsSound && chance.NextDouble() < ProvenShare)
            {
                Prove(spare, paths);
            }

            yield return spare;
        }
    }

    /// <summary>Everything that makes a spare proven, at the place where it ends.</summary>
    private void Prove(TrueSpare spare, IReadOnlyList<StationPath> paths)
    {
        var (end, common, other) = ($"{spare.Wire}-far", $"{spare.Wire}-common", $"{spare.Wire}-other");
        Note(new EndFact { Id = common, Place = spare.Reaches, Colour = "white", Gauge = WireSize.FromAwg(14), Common = true });
        Note(new EndFact { Id = end, Place = spare.Reaches, Gauge = WireSize.FromAwg(18) });
        Note(new EndFact { Id = other, Place = spare.Reaches, Colour = "red" });
        var path = paths.First(p => p.LegTo(spare.Reaches) >= 0);
        var metres = 0.0;
        for (var leg = path.LegTo(spare.Reaches); leg >= 0; leg = path.Legs[leg].Parent)
        {
            metres += path.Legs[leg].LengthMetres;
        }

        var ohms = Shown.Parse(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{2 * metres * 0.0209:0.0} ohm")).Value;
        TouchFact Touch(string how) => new() { How = how, Place = spare.Reaches, Put = [spare.Wire], Touched = [end, other], Answered = [end], Against = common };
        Note(Touch("test coil"));
        Note(Touch("test coil"));
        Note(Touch("continuity") with { Touched = [end], Value = ohms });
        Note(new TouchFact { How = "insulation", Place = spare.Reaches, Put = [spare.Wire], Touched = [end], Value = Shown.OverRange });
    }

    private void Visit(VirtualTechnician technician, List<TrueFault> faults)
    {
        foreach (var path in Truth.Paths)
        {
            Note(technician.Run(path.Station, WorldGenerator.Place));
            Note(technician.Read(new ReadingFact { How = "station ohms", Stations = [path.Station], Value = Shown.OverRange }, $"sweep {path.Station}"));
        }

        foreach (var fault in faults)
        {
            Note(technician.Read(new ReadingFact { How = "running amps", Stations = [fault.Station!], Value = Shown.OverRange }, $"amps {fault.Station}"));
            if (chance.NextDouble() < LookShare)
            {
                Note(new LookFact { Place = fault.Place!, Stations = [fault.Station!], Found = ["plain branch"] });
            }
        }
    }

    /// <summary>A station on a terminal, its conductor open, that waters nothing.</summary>
    private TrueSpare Abandon(IReadOnlyList<StationPath> paths)
    {
        var path = paths[chance.NextInt(paths.Count)];
        Note(new StationFact { Id = "old", Controller = "c", Terminal = paths.Count + 1, Label = $"{paths.Count + 1}" });
        Note(new ReadingFact { How = "station ohms", Stations = ["old"], Value = Shown.OverRange });
        return new TrueSpare("old", path.Legs[chance.NextInt(path.Legs.Count)].To, chance.NextDouble() < 0.5);
    }

    private void Note(Fact fact) => keeper.Note("visit", Morning.AddMinutes(minute++), fact);
}
