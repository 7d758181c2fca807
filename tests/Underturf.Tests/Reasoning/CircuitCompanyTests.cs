using System.Xml.Linq;
using Underturf.FieldLog;
using Underturf.Papers;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Tests.Reasoning;

/// <summary>What comes on with every station, several commons, and the supply's rating. All values invented.</summary>
public sealed class CircuitCompanyTests
{
    [Fact]
    public void A_noted_plate_sets_the_inner_ohms_and_the_rating()
    {
        var usual = Circuit(Site.Line(), "1").Supply;
        Assert.Equal((1.5, 40, false), (usual.Ohms, usual.RatedVoltAmperes, usual.RatingNoted));
        var noted = Circuit(Site.Line().With(Controller() with { Supply = new Voltage(28), Rated = new ApparentPower(100) }), "1").Supply;
        Assert.Equal((28, 100, true), (noted.OpenVolts, noted.RatedVoltAmperes, noted.RatingNoted));
        Assert.Equal(1.5 * 28 * 28 / (26.5 * 26.5) * 40 / 100, noted.Ohms, 1e-12);
        Assert.InRange(noted.OpenVolts - noted.TerminalVolts, 0.1 * noted.Ohms * noted.Amperes, noted.Ohms * noted.Amperes);
    }

    [Fact]
    public void More_stations_than_the_supply_may_give_are_warned_of()
    {
        Assert.Empty(Circuit(Site.Line(), "1", "2", "3", "4").Warnings);
        var circuit = Circuit(Site.Line().With(Controller() with { Rated = new ApparentPower(20) }), "1", "2", "3", "4");
        Assert.InRange(circuit.Supply.VoltAmperes, 20, 30);
        Assert.Contains("it is rated 20 VA. Run fewer", Assert.Single(circuit.Warnings), StringComparison.Ordinal);
        Assert.Contains("as is usual", Assert.Single(Circuit(Site.Line(20), "1", "2", "3", "4", "5", "6", "7", "8").Warnings), StringComparison.Ordinal);
    }

    [Fact]
    public void Stations_on_commons_of_their_own_do_not_take_volts_from_each_other_along_the_way()
    {
        var shared = Circuit(Site.Line(200), "5", "6");
        var parted = Circuit(Site.Line(200).With(Station(5) with { Common = "A" }).With(Station(6) with { Common = "B" }), "5", "6");
        Assert.Equal(["A", "B"], parted.Commons.Select(c => c.Common));
        Assert.Equal(["usual"], shared.Commons.Select(c => c.Common));
        Assert.All(parted.Commons, c => Assert.Equal(parted.Supply.Amperes / 2, c.Amperes, 1e-9));
        Assert.Equal(shared.Supply.Amperes, shared.Commons[0].Amperes, 1e-9);
        Assert.True(parted.Stations[0].Valves[0].Volts > shared.Stations[0].Valves[0].Volts + 0.1);
        Assert.All(parted.Runs, r => Assert.Equal(["A", "B"], r.Commons));
    }

    [Fact]
    public void A_second_common_beside_an_idle_one_is_the_circuit_of_one_common()
    {
        var (alone, labelled) = (Circuit(Site.Line(), "5"), Circuit(Site.Line().With(Station(5) with { Common = " A " }), "5"));
        Assert.Equal("A", labelled.Stations[0].Common);
        Assert.Equal(alone.Stations[0].Valves[0].Volts, labelled.Stations[0].Valves[0].Volts, 1e-12);
    }

    [Fact]
    public void A_master_valve_and_a_pump_relay_are_on_with_every_station()
    {
        var alone = Circuit(Site.Line(), "5");
        var site = Site.Line().With(new ValveFact { Id = "m", Box = "b2" }).With(Controller() with { Master = "m", PumpRelay = new PumpRelay(true, null), Sensor = "rain sensor" });
        var circuit = Circuit(site, "5");
        Assert.Equal(("valve m", "box 2", "holds", false), (circuit.Master!.Name, circuit.Master.Valve.Place, circuit.Master.Valve.Does, circuit.Master.Guessed));
        Assert.Equal("rain sensor", circuit.Sensor);
        Assert.InRange(circuit.Relay!.Amperes, 0.22, 0.26);
        Assert.InRange(circuit.Supply.Amperes, 2.9 * alone.Supply.Amperes, 3.3 * alone.Supply.Amperes);
        Assert.InRange(circuit.Commons[0].Amperes, 1.9 * alone.Supply.Amperes, 2.1 * alone.Supply.Amperes);
        Assert.Contains("valve m", circuit.Runs[0].Stations);
        Assert.DoesNotContain("valve m", circuit.Runs[2].Stations);
        Assert.True(circuit.Supply.VoltAmperes > 2.5 * alone.Supply.VoltAmperes);
    }

    [Fact]
    public void A_master_valve_that_cannot_open_is_warned_of()
    {
        var site = Site.Line().With(new BoxFact { Id = "far", Position = new Position(3000, 0) }).With(Controller() with { Master = "far" });
        var circuit = Circuit(site, "1");
        Assert.True(circuit.Master!.Guessed);
        Assert.Contains("master valve does not open", Assert.Single(circuit.Warnings), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_no_valve_and_no_place_is_no_master()
    {
        var site = Site.Line().With(Controller() with { Master = "s2", PumpRelay = new PumpRelay(false, null) });
        Assert.Null(Circuit(site, "1").Master);
        Assert.Null(Circuit(site, "1").Relay);
        Assert.Contains(site.Open().Problems, p => p.Place == "controller 'c'" && p.Reason.Contains("no valve and no place", StringComparison.Ordinal));
    }

    [Fact]
    public void A_later_note_takes_a_relay_back_and_leaves_the_master_valve_as_it_was()
    {
        var site = Site.Line().With(Controller() with { Master = "b1", PumpRelay = new PumpRelay(true, null) }).With(Station(5) with { Common = "A" });
        var circuit = Circuit(site.With(Controller() with { PumpRelay = new PumpRelay(false, null) }).With(Station(5) with { Minutes = 12 }), "5");
        Assert.NotNull(circuit.Master);
        Assert.Null(circuit.Relay);
        Assert.Equal("A", circuit.Stations[0].Common);
    }

    [Fact]
    public void A_station_named_by_label_and_by_id_is_on_once() => Assert.Single(Circuit(Site.Line(), "5", "s5", "5").Stations);

    [Fact]
    public void A_run_that_nobody_noted_is_drawn_dashed()
    {
        var circuit = Circuit(Site.Bare().Station(1), "1");
        Assert.True(Assert.Single(circuit.Runs).Guessed);
        Assert.Contains("stroke-dasharray=\"6 4\"", System.Text.Encoding.UTF8.GetString(CircuitDrawing.Make(circuit, usUnits: true)), StringComparison.Ordinal);
    }

    [Fact]
    public void The_ohms_noted_for_a_relay_are_its_ohms()
    {
        var relay = Circuit(Site.Line().With(Controller() with { PumpRelay = new PumpRelay(true, new Resistance(90)) }), "1").Relay!;
        Assert.Equal(90, relay.Ohms);
        Assert.True(relay.Amperes < 0.2);
    }

    [Fact]
    public void A_word_that_a_node_is_called_is_a_label_like_any_other() =>
        Assert.Equal("terminal", Circuit(Site.Line().With(Station(5) with { Common = "terminal" }), "5").Commons[0].Common);

    [Fact]
    public void The_drawing_shows_commons_master_relay_sensor_spreads_and_warnings()
    {
        var site = Site.Line().With(Station(5) with { Common = "A" }).With(Station(6) with { Common = "B" })
            .With(Controller() with { Master = "b2", PumpRelay = new PumpRelay(true, null), Sensor = "rain sensor", Rated = new ApparentPower(10) });
        using var stream = new MemoryStream(CircuitDrawing.Make(Circuit(site, "5", "6"), usUnits: false));
        var text = XDocument.Load(stream).Root!.Value;
        Assert.All(["common A: ", "common B: ", "common usual: ", "pump relay: ", "in the common: rain sensor", "master valve: holds", " ± ", "(A, B, usual)", "rated 10 VA"], word => Assert.Contains(word, text, StringComparison.Ordinal));
    }

    private static ControllerFact Controller() => new() { Id = "c", Terminals = 24 };

    private static StationFact Station(int number) => new() { Id = $"s{number}", Controller = "c", Terminal = number };

    private static CircuitAnswer Circuit(Site site, params string[] stations)
    {
        if (stations.Length > 6)
        {
            site.Station(7).Station(8);
        }

        var circuit = site.Open(PracticeBook.Default).Circuit(stations);
        Assert.Null(circuit.Problem);
        Assert.InRange(circuit.Value.KirchhoffResidualAmperes, 0, 1e-9);
        return circuit.Value;
    }
}
