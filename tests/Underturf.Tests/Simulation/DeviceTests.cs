using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;
using Underturf.Simulation;
using Underturf.Tests.Reasoning;

namespace Underturf.Tests.Simulation;

/// <summary>Half-wave devices in the truth: what the technician's meter shows of them. Diodes and meters are invented.</summary>
public sealed class DeviceTests
{
    private static readonly TrueDevice Whole = new(TakesPositive: true, OwnDiode: true, OtherDiode: true, ControllerHalf: false, 3e-9, 1.8);

    [Fact]
    public void With_the_controllers_half_gone_both_valves_open_and_either_polarity_shows_a_drop_or_nothing()
    {
        for (var seed = 1UL; seed <= 10; seed++)
        {
            var technician = Technician(Whole, seed);
            Assert.Equal(["bed 2", "the other lawn"], technician.Run("s2", Place).Watered);
            Assert.All(["station ohms", "reversed ohms"], how => Assert.True(Ohms(technician, how) is > 1000, $"seed {seed}"));
        }
    }

    [Fact]
    public void With_the_controllers_half_there_one_valve_opens_and_one_polarity_is_over_range()
    {
        foreach (var positive in new[] { true, false })
        {
            for (var seed = 1UL; seed <= 10; seed++)
            {
                var technician = Technician(Whole with { ControllerHalf = true, TakesPositive = positive }, seed);
                Assert.Equal(["bed 2"], technician.Run("s2", Place).Watered);
                Assert.Null(Ohms(technician, positive ? "reversed ohms" : "station ohms"));
            }
        }
    }

    [Fact]
    public void A_valve_without_its_diode_hides_the_other_from_the_ohmmeter()
    {
        var technician = Technician(Whole with { OwnDiode = false }, 3);
        var plain = Technician(null, 3);
        Assert.All(["station ohms", "reversed ohms"], how => Assert.Equal(Ohms(plain, how)!.Value, Ohms(technician, how)!.Value, 0.02 * Ohms(plain, how)!.Value));
        Assert.Equal(["bed 2", "the other lawn"], technician.Run("s2", Place).Watered);
    }

    [Fact]
    public void Half_of_the_period_carries_less_current_and_two_halves_more()
    {
        double Amperes(TrueDevice? device) => Technician(device, 4).Read(Reading("running amps"), "amps").Value.Value!.Value.Si;
        var (plain, half, both) = (Amperes(null), Amperes(Whole with { ControllerHalf = true }), Amperes(Whole));
        Assert.True(half < plain && plain < both, $"{half} {plain} {both}");
    }

    [Fact]
    public void A_station_beside_the_device_reads_as_if_it_were_not_there()
    {
        var (with, without) = (Technician(Whole, 5), Technician(null, 5));
        Assert.All(
            ["station ohms", "terminal volts", "running amps"],
            how => Assert.Equal(without.Read(Reading(how, "s4"), how).Value, with.Read(Reading(how, "s4"), how).Value));
    }

    [Fact]
    public void A_crossed_station_reads_the_device_of_the_other()
    {
        var crossing = new TrueFault("crossed-conductors", "s2", "s4", "b1", 0, 0, []);
        Assert.True(Ohms(Technician(Whole, 6, crossing), "station ohms", "s4") < 60);
        Assert.Equal(["bed 4", "bed 2"], Technician(Whole, 6, crossing).Run("s4", Place).Watered);
    }

    private static string Place(string station) => $"bed {station[1..]}";

    private static ReadingFact Reading(string how, string station = "s2") => new() { How = how, Stations = [station], Value = Shown.OverRange };

    private static double? Ohms(VirtualTechnician technician, string how, string station = "s2") => technician.Read(Reading(how, station), how).Value.Value?.Si;

    private static VirtualTechnician Technician(TrueDevice? device, ulong seed, params TrueFault[] more)
    {
        var book = PracticeBook.Default;
        var paths = new PathFinder(PropertyHistory.Fold(Site.Line().Log().Standing).Now, book).All();
        var fault = new TrueFault("sharing-device", "s2", null, paths.First(p => p.Station == "s2").Valves[0].Place, 0, 1, ["the other lawn"]) { Device = device };
        return new VirtualTechnician(paths, device is null ? more : [fault, .. more], book, new TrueNumbers(book, seed), 26.5);
    }
}
