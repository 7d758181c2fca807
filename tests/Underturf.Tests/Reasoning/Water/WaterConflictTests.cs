using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Tests.Reasoning.Water;

/// <summary>Notes of water that cannot all be right, or lie beyond what is weighed: they are named and count for nothing.</summary>
public sealed class WaterConflictTests
{
    [Fact]
    public void More_pressure_running_than_at_rest_is_to_be_read_again()
    {
        var orchard = Orchard.Unpiped().Read("static pressure", "52 psi").Meter("12 gpm", "s1").Read("running pressure", "71 psi", "s1");
        var question = orchard.Question("water-supply")!;
        Assert.True(question.Unexplained);
        Assert.Equal(2, Assert.Single(question.Repeats).Entries.Count);
        Assert.StartsWith("take again: static pressure and running pressure", question.Moves[0].Action, StringComparison.Ordinal);
        Assert.Contains(orchard.Problems(), p => p.Reason.Contains("is above static pressure of 52 psi", StringComparison.Ordinal) && p.Reason.EndsWith("neither counts", StringComparison.Ordinal));

        // As without any pressure read.
        var (flow, bare) = (orchard.Notebook().Flow().Value, Orchard.Unpiped().Meter("12 gpm", "s1").Notebook().Flow().Value);
        Assert.Equal(bare.Supply.StaticSpreadPascals, flow.Supply.StaticSpreadPascals, 6);
        Assert.Contains(flow.Unknown, u => u.Contains("neither counts until", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_once_more_the_one_that_stands_alone_is_left_out()
    {
        var orchard = Orchard.Unpiped().Read("static pressure", "52 psi").Read("running pressure", "71 psi", "s1").Read("static pressure", "75 psi").Read("running pressure", "70 psi", "s1");
        Assert.InRange(orchard.Notebook().Flow().Value.Supply.StaticPascals / 6894.757, 73, 77);
        Assert.All(orchard.Problems().Where(p => p.Reason.Contains("is above", StringComparison.Ordinal)), p => Assert.EndsWith("static pressure of 52 psi counts for nothing", p.Reason, StringComparison.Ordinal));
    }

    [Fact]
    public void More_at_an_outlet_than_where_the_water_comes_in_cannot_be_but_downhill()
    {
        var level = Orchard.Unpiped().Read("static pressure", "50 psi").Read("outlet pressure", "70 psi", "s1");
        Assert.Contains(level.Problems(), p => p.Reason.Contains("lower, and no heights are noted", StringComparison.Ordinal));
        Assert.Null(level.Question("water-s1"));
        var down = Orchard.Unpiped().With(new WaterSupplyFact { Id = "poc", Elevation = new Length(20) }).With(new OutletFact { Id = "o", Station = "s1", What = "spray head", Count = 10, Elevation = new Length(2) })
            .Read("static pressure", "50 psi").Read("outlet pressure", "70 psi", "s1");
        Assert.DoesNotContain(down.Problems(), p => p.Reason.Contains("is above", StringComparison.Ordinal));
    }

    [Fact]
    public void No_pressure_is_lost_without_flow()
    {
        var orchard = Orchard.Unpiped().Read("static pressure", "65 psi").Meter("0 gpm", "s1").Read("running pressure", "40 psi", "s1");
        Assert.Contains(orchard.Problems(), p => p.Reason.Contains("no pressure is lost without flow", StringComparison.Ordinal));
        Assert.Single(orchard.Question("water-supply")!.Repeats);
    }

    [Fact]
    public void Nothing_flows_behind_what_stands_shut()
    {
        var orchard = Orchard.Piped().Meter("0 gpm").Turn("i2", "shut").Meter("12 gpm", "s3");
        Assert.Contains(orchard.Problems(), p => p.Reason.Contains("cannot be while isolation valve high before it stands shut (maren/", StringComparison.Ordinal));
        Assert.Null(orchard.Notebook().Flow().Value.Stations.Single(s => s.Station == "s3").ReadCubicMetresPerSecond);
        Assert.DoesNotContain(Orchard.Piped().Turn("i2", "shut").Meter("12 gpm", "s1").Problems(), p => p.Reason.Contains("stands shut", StringComparison.Ordinal));
        Assert.Contains(Orchard.Unpiped().Turn("v1", "shut").Meter("12 gpm", "s1").Problems(), p => p.Reason.Contains("valve v1 before it stands shut", StringComparison.Ordinal));
    }

    [Fact]
    public void What_runs_with_everything_off_is_no_flow_behind_what_is_shut() =>
        Assert.DoesNotContain(Orchard.Piped().Meter("4 gpm").Turn("i2", "shut").Meter("4 gpm", "s3").Problems(), p => p.Reason.Contains("stands shut", StringComparison.Ordinal));

    [Fact]
    public void A_meter_does_not_take_more_than_all_that_is_lost()
    {
        var flow = Orchard.Unpiped().With(new WaterSupplyFact { Id = "poc", MeterAt = new Flow(15 * 6.30902e-5), MeterLoss = new Pressure(20 * 6894.757) })
            .Read("static pressure", "65 psi").Meter("15 gpm", "s1").Read("running pressure", "64 psi", "s1").Read("running pressure", "64 psi", "s1").Notebook().Flow().Value;
        Assert.Contains(flow.Unknown, u => u.StartsWith("meter would take", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("meter flow", "1000 gpm", "s1")]
    [InlineData("meter flow", "400 gpm", null)]
    [InlineData("static pressure", "60 kPa", null)]
    [InlineData("static pressure", "1000 psi", null)]
    [InlineData("running pressure", "1000 psi", "s1")]
    [InlineData("outlet pressure", "900 psi", "s1")]
    [InlineData("closing time", "90000 s", "s1")]
    public void What_lies_beyond_all_that_is_weighed_is_said_to_and_counts_for_nothing(string how, string shown, string? station)
    {
        string[] running = station is null ? [] : [station];
        var orchard = Orchard.Unpiped().Read(how, shown, running);
        Assert.Contains(orchard.Problems(), p => p.ToString().Contains("lies outside what is weighed (", StringComparison.Ordinal));
        var flow = orchard.Notebook().Flow().Value;
        Assert.Equal(Orchard.Unpiped().Notebook().Flow().Value.Stations[0].CubicMetresPerSecond, flow.Stations[0].CubicMetresPerSecond, 9);
        Assert.Contains(flow.Unknown, u => u.Contains("lies outside what is weighed", StringComparison.Ordinal));
    }

    [Fact]
    public void An_outlet_up_in_the_sky_has_no_height()
    {
        var orchard = Orchard.Piped().With(new WaterSupplyFact { Id = "poc", Elevation = new Length(100) }).With(new OutletFact { Id = "o", Station = "s1", What = "spray head", Count = 10, Elevation = new Length(4572) });
        Assert.Contains(orchard.Problems(), p => p.Reason.EndsWith("its height counts for nothing", StringComparison.Ordinal));
        var station = orchard.Notebook().Flow("1").Value.Stations[0];
        Assert.True(station.OutletPascals > 0 && station.CubicMetresPerSecond > 0);
    }
}
