using Underturf.FieldLog;
using Underturf.Papers;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Tests.Papers;

/// <summary>Made-up properties for the papers, and each one's papers made once.</summary>
internal static class Worlds
{
    private static readonly DateTimeOffset morning = new(2031, 4, 2, 8, 0, 0, TimeSpan.FromHours(-6));

    private static readonly Lazy<Notebook> demo = new(() => Notebook.Open(MemorialGarden.Make(PracticeBook.Default).Log, PracticeBook.Default));
    private static readonly Lazy<IReadOnlyList<Paper>> demoPapers = new(() => PaperSet.Make(Demo));

    public static Notebook Demo => demo.Value;

    public static IReadOnlyList<Paper> DemoPapers => demoPapers.Value;

    public static ReadOnlyMemory<byte> Bytes(this IReadOnlyList<Paper> papers, string file) => papers.Single(p => p.FileName == file).Bytes;

    public static Notebook Of(params IEnumerable<Fact> facts)
    {
        var keeper = new LogKeeper("made-up");
        foreach (var fact in facts)
        {
            keeper.Note("writer-a", morning, fact);
        }

        return Notebook.Open(keeper.Log(), PracticeBook.Default);
    }

    public static PropertyFact Property(string name, string units = "us") => new() { Name = name, Zone = "Etc/GMT+6", Units = units };

    /// <summary>A controller, a box and so many stations with valves in that box, each read once.</summary>
    public static IEnumerable<Fact> Stations(int count, Func<int, string>? waters = null, string boxLabel = "box 1") =>
    [
        new ControllerFact { Id = "c", Terminals = count + 2, Position = new Position(0, 0) },
        new BoxFact { Id = "b", Label = boxLabel, Position = new Position(30, 10) },
        new CableFact { Id = "k", From = "c", To = "b", Length = new Length(40), Gauge = WireSize.FromAwg(18), Carries = [.. Enumerable.Range(1, count).Select(i => $"s{i}")] },
        .. Enumerable.Range(1, count).SelectMany(i => (IEnumerable<Fact>)
        [
            new StationFact { Id = $"s{i}", Controller = "c", Terminal = i, Waters = [waters?.Invoke(i) ?? $"long bed {i}"], Minutes = 12, Sure = Grade.Told },
            new ValveFact { Id = $"v{i}", Box = "b", Station = $"s{i}" },
            new ReadingFact { How = "station ohms", Stations = [$"s{i}"], Value = new Shown(new Quantity(28.4, Dimension.Resistance, "28.4 ohm")) },
        ]),
    ];
}
