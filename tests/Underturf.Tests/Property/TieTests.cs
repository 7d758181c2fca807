using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.Tests.Property;

/// <summary>Taped distances as they stand, on invented notes.</summary>
public sealed class TieTests
{
    private static readonly Fact[] garden =
    [
        new GroundFact { Id = "oak", What = "tree", Label = "the oak", Shape = [new Position(2, 3)] },
        new GroundFact { Id = "hall", What = "building", Label = "the hall", Shape = [new Position(30, 0), new Position(40, 0), new Position(40, 10)] },
        new BoxFact { Id = "b7", Label = "7" },
    ];

    private static PropertyHistory Folded(params Fact[] ties)
    {
        var diary = new Diary();
        foreach (var (fact, minute) in garden.Concat(ties).Select((fact, i) => (fact, i + 1)))
        {
            diary.Note(minute, fact);
        }

        return diary.Fold();
    }

    private static TieFact Taped(string mark, double metres) => new() { Thing = "b7", Mark = mark, Distance = Length.FromSi(metres) };

    [Fact]
    public void The_newest_distance_between_the_same_two_points_counts()
    {
        var tie = Tie.All(Folded(Taped("oak", 5), Taped("oak", 5.2) with { Sure = Grade.Estimated })).Single();
        Assert.Equal((5.2, Grade.Estimated, "5.2 m", "17.1 ft"), (tie.Distance.Metres, tie.Grade, tie.Words(us: false), tie.Words(us: true)));
        Assert.Equal(new Position(2, 3), tie.From);
    }

    [Fact]
    public void Two_corners_of_one_building_are_two_marks_and_a_building_without_a_corner_is_listed_without_a_point()
    {
        var ties = Tie.All(Folded(Taped("hall", 9) with { Corner = new Position(30, 0) }, Taped("hall", 11) with { Corner = new Position(40, 0) }, Taped("hall", 10)));
        Assert.Equal([new Position(30, 0), new Position(40, 0), null], ties.Select(tie => tie.From));
    }

    [Fact]
    public void A_tie_to_something_that_nobody_noted_is_named_with_the_remedy() =>
        Assert.Contains(References.Problems(Folded(Taped("elm", 5))), problem => problem.Reason.Contains("'elm'", StringComparison.Ordinal));
}
