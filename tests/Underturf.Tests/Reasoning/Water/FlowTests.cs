using Underturf.FieldLog;
using Underturf.Networks.Hydraulics;
using Underturf.Quantities;
using Underturf.Reasoning.Water;

namespace Underturf.Tests.Reasoning.Water;

/// <summary>What stations take, alone and together.</summary>
public sealed class FlowTests
{
    private const double GallonsPerMinute = 0.003785411784 / 60;

    [Fact]
    public void A_station_that_was_read_gives_what_was_read()
    {
        var station = Orchard.Piped().Meter("14.2 gpm", "s1").Notebook().Flow("1").Value.Stations[0];
        Assert.InRange(station.CubicMetresPerSecond / GallonsPerMinute, 13.9, 14.4);
        Assert.True(station.SpreadCubicMetresPerSecond > 0);
    }

    [Fact]
    public void A_station_with_outlets_gives_what_they_give_at_the_pressure_that_is_left()
    {
        var answer = Heads().Read("static pressure", "65 psi").Notebook().Flow("s1").Value;
        var station = answer.Stations[0];

        // Ten nozzles of 6 L/min at 207 kPa.
        Assert.Equal(10 * 6e-3 / 60 * Math.Sqrt(station.OutletPascals / 207e3), station.CubicMetresPerSecond, 9);
        Assert.True(station.OutletPascals < station.SupplyPascals);
    }

    [Fact]
    public void Together_each_gives_less_than_alone()
    {
        var orchard = Heads().Read("static pressure", "65 psi").Meter("15 gpm", "s3").Notebook();
        var alone = orchard.Flow().Value.Stations;
        var together = orchard.Flow("1", "3").Value;
        Assert.True(together.Together);
        Assert.All(together.Stations, s => Assert.True(s.CubicMetresPerSecond < alone.Single(a => a.Station == s.Station).CubicMetresPerSecond));
    }

    [Fact]
    public void A_narrow_pipe_is_named_as_the_fastest()
    {
        var orchard = Orchard.Piped().With(new PipeFact { Id = "i1-v1", From = "i1", To = "v1", Size = "3/4", Length = new Length(30) }).Meter("20 gpm", "s1");
        var station = orchard.Notebook().Flow("1").Value.Stations[0];
        Assert.Equal("pipe i1-v1", station.FastestPipe);
        Assert.True(station.TooFast);
        Assert.Equal(station.CubicMetresPerSecond / HoleDischarge.AreaSquareMetres(0.824 * 0.0254), station.FastestMetresPerSecond!.Value, 6);
    }

    [Fact]
    public void Without_pipes_it_says_so() =>
        Assert.Contains(Orchard.Unpiped().Notebook().Flow().Value.Unknown, u => u.StartsWith("no pipe is noted", StringComparison.Ordinal));

    [Fact]
    public void A_station_that_is_not_there_is_named() =>
        Assert.Equal("is not noted", Orchard.Unpiped().Notebook().Flow("99").Problem!.Reason);

    [Fact]
    public void Of_a_station_without_a_pipe_no_speed_is_told()
    {
        var flow = Orchard.Piped().With(new StationFact { Id = "s10", Controller = "c", Terminal = 10 }).With(new StationFact { Id = "s5", Controller = "c", Terminal = 5 }).Notebook().Flow().Value;
        Assert.Equal(["1", "2", "3", "4", "5", "10"], flow.Stations.Select(s => s.Number));
        Assert.All(flow.Stations, s => Assert.Equal(s.Number is "5" or "10", s is { FastestPipe: null, FastestMetresPerSecond: null, Piping: StationPiping.Unknown }));
    }

    [Fact]
    public void Amounts_are_said_as_people_say_them()
    {
        var say = new WaterSay(usUnits: true);
        Assert.Equal("12.3 ± 0.4 gpm", say.Flow(12.3 * GallonsPerMinute, 0.4 * GallonsPerMinute));
        Assert.Equal("2,500 to 3,000 gal", say.Volume(2480 * 0.003785411784, 3020 * 0.003785411784));
        Assert.Equal("95 L/min", new WaterSay(usUnits: false).Flow(95e-3 / 60));
    }

    private static Orchard Heads() => Orchard.Piped().With(new OutletFact { Id = "heads", Station = "s1", What = "spray head", Count = 10 });
}
