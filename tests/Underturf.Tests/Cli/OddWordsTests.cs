using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Tests.Reasoning;

namespace Underturf.Tests.Cli;

/// <summary>Words that a table or a command line was not made for.</summary>
public sealed class OddWordsTests : IDisposable
{
    private const int WidestTable = 220;

    private readonly Workbench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void A_label_of_several_lines_or_of_thousands_of_letters_leaves_a_table_a_table()
    {
        var log = Site.Line().Sweep()
            .With(new StationFact { Id = "s1", Controller = "c", Terminal = 1, Label = "1\nfront", Waters = ["lawn\r\nby the gate"], Common = new string('x', 5000) })
            .Log();
        bench.Write("log.jsonl", log.ToBytes().ToArray());
        var shown = bench.Run("show", "log.jsonl").Worked("1 front", "lawn by the gate", "…");
        Assert.All(shown.Out.Split('\n'), l => Assert.True(l.Length < WidestTable, l));
        Assert.All(bench.Run("circuit", "log.jsonl", "2").Worked().Out.Split('\n'), l => Assert.True(l.Length < WidestTable, l));
    }

    [Fact]
    public void What_a_controller_has_is_shown_and_its_master_valve_is_run_by_somebody()
    {
        var log = Site.Line()
            .With(new ValveFact { Id = "mv", Label = "master", Box = "b1" })
            .With(new ControllerFact
            {
                Id = "c",
                Terminals = 24,
                Supply = new Voltage(26.5),
                Frequency = new Frequency(60),
                Rated = new ApparentPower(40),
                Master = "mv",
                PumpRelay = new PumpRelay(true, new Resistance(400)),
                Sensor = "rain sensor",
            })
            .Log();
        bench.Write("log.jsonl", log.ToBytes().ToArray());
        var shown = bench.Run("show", "log.jsonl").Worked("26.5 V, 60 Hz", "40 VA", "master", "400 ohm", "rain sensor", "usual");
        Assert.DoesNotContain("no station is known to run", shown.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Stations_with_commas_between_them_are_told_to_be_separated_by_spaces()
    {
        bench.Write("log.jsonl", Workbench.Lines);
        bench.Run("circuit", "log.jsonl", "1,2").Failed(1, "station '1,2'", "Separate stations by spaces: 1 2");
    }

    [Fact]
    public void A_drawing_in_a_folder_that_is_not_there_names_the_drawing()
    {
        bench.Write("log.jsonl", Workbench.Lines);
        var ran = bench.Run("circuit", "log.jsonl", "1", "--draw", "nowhere/circuit.svg").Failed(1, "nowhere/circuit.svg", "Make the folder".ToLowerInvariant());
        Assert.DoesNotContain(".part", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_between_one_station_and_itself_is_told_in_those_words()
    {
        bench.Write("log.jsonl", Site.Line().Sweep().Read("station to station ohms", "62 ohm", "s1", "s1").Log().ToBytes().ToArray());
        bench.Run("check", "log.jsonl").Failed(1, "names station 1 twice", "the other station");
    }
}
