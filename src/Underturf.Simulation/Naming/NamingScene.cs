using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Quantities;

namespace Underturf.Simulation;

/// <summary>A made-up box with conductor ends that nobody named, the log as a technician begins with, and the truth.</summary>
/// <param name="Truth">For each end the id of the wire that it is; nothing for a wire of no controller.</param>
/// <param name="Beside">Where each end lies in the bundle: neighbours couple.</param>
/// <param name="WireOhms">Ohms of one conductor from the controller to the box.</param>
public sealed record NamingScene(ulong Seed, LogDocument Log, IReadOnlyList<string> Ends, IReadOnlyDictionary<string, string?> Truth, IReadOnlyDictionary<string, double> Beside, double WireOhms)
{
    public const string Controller = "c";
    public const string Box = "b";

    private static readonly string[] Colours = ["red", "blue", "yellow", "black", "green", "orange", "brown", "grey"];

    private static readonly DateTimeOffset Morning = new(2031, 5, 6, 8, 0, 0, TimeSpan.FromHours(-6));

    /// <summary>Colours, runs and spares as they come on site, drawn without the practice book's chances.</summary>
    /// <param name="ends">Conductor ends in the box, the common among them.</param>
    /// <param name="stations">Stations of the controller.</param>
    public static NamingScene Make(ulong seed, int ends, int stations)
    {
        var chance = new SeededGenerator(seed).Fork("scene");
        var keeper = new LogKeeper("naming");
        var minute = 0;
        void Note(Fact fact) => keeper.Note("maren", Morning.AddMinutes(minute++), fact with { Sure = Grade.Measured });
        var metres = 30 + (200 * chance.NextDouble());
        Note(new ControllerFact { Id = Controller, Label = "A", Terminals = stations, Position = new Position(0, 0) });
        Note(new BoxFact { Id = Box, Label = "box", Position = new Position(metres, 0) });
        for (var s = 1; s <= stations; s++)
        {
            Note(new StationFact { Id = $"s{s}", Controller = Controller, Terminal = s, Label = $"{s}" });
        }

        var wires = Wires(chance, ends, stations);
        var photographed = chance.NextDouble() < 0.5;
        var colours = wires.Select(w => w == Controller ? "white" : Colours[chance.NextInt(Colours.Length)]).ToList();
        foreach (var (at, wire) in wires.Index().Where(w => w.Item is not null && (photographed || w.Item[0] == 'x')))
        {
            Note(AtController(wire!, photographed ? colours[at] : null));
        }

        var (truth, beside, names) = (new Dictionary<string, string?>(), new Dictionary<string, double>(), new List<string>());
        foreach (var (at, which) in Shuffled(chance, ends).Index())
        {
            var name = $"e{at + 1}";
            names.Add(name);
            truth[name] = wires[which];
            beside[name] = chance.NextDouble() * ends;
            var colour = chance.NextDouble() < 0.1 ? Colours[chance.NextInt(Colours.Length)] : colours[which];
            Note(new EndFact { Id = name, Place = Box, Label = $"end {at + 1}", Colour = colour, Gauge = WireSize.FromAwg(wires[which] == Controller ? 14 : 18) });
        }

        return new NamingScene(seed, keeper.Log(), names, truth, beside, metres * 1.15 * 0.0209 * Math.Exp(0.1 * chance.NextNormal()));
    }

    /// <summary>The common, some spares that end loose at the controller, some wires that go nowhere, and stations.</summary>
    private static List<string?> Wires(SeededGenerator chance, int ends, int stations)
    {
        var wires = new List<string?> { Controller };
        var free = Shuffled(chance, stations);
        var (spares, strays) = (chance.NextInt(1 + (ends / 6)), chance.NextInt(1 + (ends / 5)));
        for (var e = 1; e < ends; e++)
        {
            wires.Add(e <= spares ? $"x{e}" : e <= spares + strays || e - spares - strays > stations ? null : $"s{free[e - spares - strays - 1] + 1}");
        }

        return wires;
    }

    private static EndFact AtController(string wire, string? colour) => new()
    {
        Id = wire[0] == 'x' ? wire : $"at-{wire}",
        Place = Controller,
        Label = wire[0] == 'x' ? $"loose {wire[1..]}" : null,
        Colour = colour,
        Station = wire[0] == 's' ? wire : null,
        Common = wire == Controller ? true : null,
    };

    private static List<int> Shuffled(SeededGenerator chance, int count)
    {
        var all = Enumerable.Range(0, count).ToList();
        for (var i = count - 1; i > 0; i--)
        {
            var j = chance.NextInt(i + 1);
            (all[i], all[j]) = (all[j], all[i]);
        }

        return all;
    }
}
