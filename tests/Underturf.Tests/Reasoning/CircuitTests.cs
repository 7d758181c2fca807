using System.Xml.Linq;
using Underturf.FieldLog;
using Underturf.Papers;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Tests.Reasoning;

/// <summary>Stations that are on, computed from what was noted. All values invented.</summary>
public sealed class CircuitTests
{
    [Fact]
    public void A_single_station_reads_what_the_readings_are_judged_by()
    {
        var circuit = Circuit(Site.Line().Sweep().Read("running amps", "0.21 A", "s5"), "5");
        var station = Assert.Single(circuit.Stations);
        var predicted = Site.Line().Sweep().Read("running amps", "0.21 A", "s5").Open().Readings()[^1].Predicted;
        Assert.StartsWith($"{station.Amperes:0.00} ", predicted, StringComparison.Ordinal);
        Assert.Equal("holds", Assert.Single(station.Valves).Does);
        Assert.Equal(["box 1", "box 2", "box 3"], circuit.Runs.Select(r => r.To));
        Assert.InRange(circuit.KirchhoffResidualAmperes, 0, 1e-9);
    }

    [Fact]
    public void Stations_on_together_share_the_common_and_leave_each_other_less()
    {
        var alone = Circuit(Site.Line().Sweep(), "5");
        var together = Circuit(Site.Line().Sweep(), "s5", "6");
        Assert.True(together.Supply.Amperes > 1.9 * alone.Supply.Amperes);
        Assert.True(together.Stations[0].Valves[0].Volts < alone.Stations[0].Valves[0].Volts);
        Assert.Equal(3, together.Runs.Count);
    }

    [Fact]
    public void A_run_that_is_too_long_lets_its_valve_chatter()
    {
        var valve = Circuit(Site.Line(500).Sweep(500), "5").Stations[0].Valves[0];
        Assert.Equal("chatters", valve.Does);
        Assert.True(valve.PullInVolts < 19.5);
    }

    [Theory]
    [InlineData("77", "is not noted")]
    [InlineData("13", "not on one controller")]
    public void What_cannot_be_switched_on_together_is_refused_by_name(string other, string reason)
    {
        var site = Site.Line().With(new ControllerFact { Id = "d", Terminals = 12 });
        site.Add(new StationFact { Id = "t", Controller = "d", Terminal = 13 });
        Assert.Contains(reason, site.Open().Circuit(["3", other]).Problem!.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void The_drawing_names_every_place_and_what_each_valve_does()
    {
        using var stream = new MemoryStream(CircuitDrawing.Make(Circuit(Site.Line().Sweep(), "3", "5"), usUnits: false));
        var text = XDocument.Load(stream).Root!.Value;
        Assert.All(["controller c", "box 1", "box 2", "box 3", "station 3: holds", "station 5: holds", "60 m"], word => Assert.Contains(word, text, StringComparison.Ordinal));
    }

    private static CircuitAnswer Circuit(Site site, params string[] stations)
    {
        Outcome<CircuitAnswer> circuit = site.Open().Circuit(stations);
        Assert.Null(circuit.Problem);
        return circuit.Value;
    }
}
