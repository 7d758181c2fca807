using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Tests.Reasoning.Water;

/// <summary>Notes of pipes and outlets that cannot be: each is told with its place and what helps.</summary>
public sealed class WaterNotesTests
{
    [Fact]
    public void Outlets_on_the_valve_of_another_station_are_told_and_count_behind_their_own()
    {
        var orchard = Orchard.Piped().With(new OutletFact { Id = "o", Station = "s1", What = "spray head", Count = 10, Fitting = "v2" });
        var problem = Assert.Single(orchard.Problems());
        Assert.Equal("outlets 'o'", problem.Place);
        Assert.Contains("noted on valve v2, which is of station 2", problem.Reason, StringComparison.Ordinal);
        Assert.True(orchard.Notebook().Flow("1").Value.Stations[0].CubicMetresPerSecond > 0);
    }

    [Theory]
    [InlineData(0, "is noted with a length of 0")]
    [InlineData(900_000, "is noted with a length of 900 km, which no property has; it counts as losing nothing")]
    public void A_pipe_of_a_length_that_cannot_be_is_told(double metres, string reason) =>
        Assert.Contains(Orchard.Piped().With(new PipeFact { Id = "i1-v1", From = "i1", To = "v1", Size = "2", Length = new Length(metres) }).Problems(), p => p.Place == "pipe 'i1-v1'" && p.Reason == reason);

    [Fact]
    public void A_pipe_without_a_length_is_told_with_its_ends_and_what_helps() => Assert.Contains(
        "pipe a, from street meter to valve v1: no length and no size, so that it counts as losing nothing: pace it; read what is printed on it, or measure the inside, and note it again",
        new Orchard().With(new WaterSupplyFact { Id = "poc", Label = "street meter" }).With(new ControllerFact { Id = "c", Terminals = 2 }).With(new StationFact { Id = "s1", Controller = "c", Terminal = 1 })
            .With(new ValveFact { Id = "v1", Station = "s1" }).With(new PipeFact { Id = "a", From = "poc", To = "v1" }).Notebook().Flow().Value.Unknown);

    [Fact]
    public void Stations_that_could_be_meant_are_listed_as_people_count()
    {
        var orchard = Orchard.Unpiped().With(new StationFact { Id = "s10", Controller = "c", Terminal = 10 });
        Assert.EndsWith("1, 2, 3, 4, 10", orchard.Notebook().Flow("99").Problem!.Remedy, StringComparison.Ordinal);
    }
}
