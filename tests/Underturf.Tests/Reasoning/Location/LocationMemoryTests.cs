using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Tests.Reasoning.Location;

/// <summary>What is kept between two answers changes none of them.</summary>
public sealed class LocationMemoryTests
{
    private static readonly Position Spot = new(33, 7);

    public static TheoryData<Fact> Newer =>
    [
        new SearchFact { How = "probe rod", About = "s1", Where = [Spot], Within = new Length(3), Minutes = 12 },
        new TraceFact { How = "wire tracer", Of = ["s1"], Route = [new Position(0, 0), Spot], Ended = "lost" },
        new SignFact { How = "heard", About = "s1", Where = [Spot] },
        new BoxFact { Id = "b9", Position = new Position(12, -0.4) },
        new GroundFact { Id = "new", What = "bed", Shape = [new Position(30, 5), new Position(40, 5), new Position(40, 9), new Position(30, 9)] },
        new GroundFact { Id = "far", What = "lawn", Shape = [new Position(60, 5), new Position(80, 5), new Position(80, 30)] },
        new StationFact { Id = "s1", Controller = "c", Terminal = 1, Waters = ["long bed"] },
    ];

    [Theory]
    [MemberData(nameof(Newer))]
    public void The_answer_after_a_newer_note_is_the_same_with_what_was_kept_and_without(Fact note)
    {
        var grounds = Grounds.Corner(new BoxFact { Id = "b1", Position = new Position(4, -0.3) }, new SearchFact { How = "look over", About = "s1", Where = [new Position(24, 3)], Minutes = 4 });
        var earlier = grounds.Notebook();
        earlier.Locate("station 1");
        grounds.Note(note);
        var kept = grounds.Notebook(earlier: earlier).Locate("station 1").Value;
        var anew = grounds.Notebook().Locate("station 1").Value;
        Assert.Equal(AnswersJson.Write(anew), AnswersJson.Write(kept));
        Assert.Equal(anew.Heat!.Shares, kept.Heat!.Shares);
    }

    [Fact]
    public void What_was_kept_outlives_a_notebook_that_was_asked_nothing()
    {
        var grounds = Grounds.Corner();
        var first = grounds.Notebook();
        first.Locate();
        grounds.Note(new SignFact { How = "heard", About = "s1", Where = [Spot] });
        var third = grounds.Notebook(earlier: grounds.Notebook(earlier: first));
        Assert.Equal(grounds.Notebook().Locate().Value.Heat!.Shares, third.Locate().Value.Heat!.Shares);
    }
}
