using Underturf.FieldLog;

namespace Underturf.Tests.Reasoning.Location;

public sealed class WhereWordsTests
{
    /// <summary>South of the middle of a wall, not of its nearer corner.</summary>
    [Fact]
    public void A_place_beside_a_wall_lies_in_the_direction_of_the_nearest_point_of_it()
    {
        var grounds = Grounds.Bare(
            new PropertyFact { Name = "yard", Zone = "Etc/UTC", Units = "si" },
            Grounds.Ground("long wall", "wall", (0, 50), (60, 50)),
            new StationFact { Id = "s1", Controller = "c", Terminal = 1 },
            new ControllerFact { Id = "c", Terminals = 4 },
            new TraceFact { How = "wire tracer", Of = ["s1"], Route = [new Position(30, 20), new Position(30, 42)], Ended = "swell" });
        Assert.Contains(grounds.Notebook().Locate("1").Value.Things[0].Places, p => p.Where.EndsWith("m south of long wall", StringComparison.Ordinal));
    }

    [Fact]
    public void A_station_is_found_by_its_number_alone_and_by_its_name() =>
        Assert.Equal(Grounds.Corner().Notebook().Locate("1").Value.Things[0].Id, Grounds.Corner().Notebook().Locate("station 1").Value.Things[0].Id);
}
