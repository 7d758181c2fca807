using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;
using Underturf.Simulation;
using Underturf.Tests.Reasoning;

namespace Underturf.Tests.Simulation;

/// <summary>Two commons of one controller in the truth. The site is invented; stations 1 and 2 end in one box.</summary>
public sealed class CommonTests
{
    [Fact]
    public void A_coil_on_the_wrong_common_reads_open_to_its_own_and_runs()
    {
        var technician = Technician(new TrueFault("wrong-common", "s2", null, "b1", 0, 0, []));
        Assert.True(technician.Read(Ohms("s2"), "ohms").Value.IsOverRange);
        Assert.Equal("opens", technician.Run("s2", s => s).Behaved);
    }

    [Fact]
    public void Where_no_other_common_passes_the_coil_hangs_on_a_dead_one()
    {
        var technician = Technician(new TrueFault("wrong-common", "s6", null, "b3", 0, 0, []));
        Assert.True(technician.Read(Ohms("s6"), "ohms").Value.IsOverRange);
        Assert.Equal("stays shut", technician.Run("s6", s => s).Behaved);
    }

    [Fact]
    public void A_broken_common_takes_down_its_own_stations_only()
    {
        var technician = Technician(new TrueFault("broken-common", null, null, "b1", 0, 0, []) { Common = "blue" });
        Assert.True(technician.Read(Ohms("s2"), "ohms").Value.IsOverRange);
        Assert.False(technician.Read(Ohms("s1"), "ohms").Value.IsOverRange);
    }

    private static ReadingFact Ohms(string station) => new() { How = "station ohms", Stations = [station], Value = Shown.OverRange };

    private static VirtualTechnician Technician(TrueFault fault)
    {
        var paths = new PathFinder(PropertyHistory.Fold(Site.Line().Log().Standing).Now, PracticeBook.Default).All();
        var commons = paths.ToDictionary(p => p.Station, p => p.Station == "s2" ? "blue" : "white");
        return new VirtualTechnician(new TrueWiring(paths, [fault], PracticeBook.Default, new TrueNumbers(PracticeBook.Default, 3), commons), 26.5, 0);
    }
}
