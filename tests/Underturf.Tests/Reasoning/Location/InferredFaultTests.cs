using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Tests.Reasoning.Location;

/// <summary>A break that the diagnosis puts on the way between two boxes, in a made-up corner of a garden.</summary>
public sealed class InferredFaultTests
{
    private const string Name = "fault in the ground, station 1";

    private static readonly Fact[] Boxes =
    [
        new BoxFact { Id = "b4", Label = "4", Position = new Position(8, 12) },
        new BoxFact { Id = "b7", Label = "7", Position = new Position(40, 26) },
        new ValveFact { Id = "v", Station = "s1", Box = "b7" },
    ];

    private static readonly CableFact Drawn = new() { Id = "k", From = "b4", To = "b7", Route = [new Position(8, 12), new Position(8, 26), new Position(40, 26)] };

    [Fact]
    public void It_is_looked_for_along_the_run_with_the_probability_of_the_explanations()
    {
        var fault = Ask(Notes());
        Assert.Equal(("fault", "station-s1", Name), (fault.What, fault.Id, fault.Name));
        Assert.Equal(1 - (0.7 * 0.8) - (0.2 * 0.5), fault.None, 9);
        Assert.InRange(Grounds.Within(fault, 24, 19, 19) / (1 - fault.None), 0.7, 1);
    }

    [Fact]
    public void Where_the_way_was_drawn_it_lies_on_that_way()
    {
        var fault = Ask(Notes(Drawn));
        Assert.True(Grounds.Within(fault, 8, 26, 3) > 4 * Grounds.Within(fault, 24, 19, 3));
    }

    [Fact]
    public void Searching_a_part_of_the_way_in_vain_moves_it_to_the_rest_and_towards_there_being_none()
    {
        var before = Ask(Notes(Drawn));
        var after = Ask(Notes(Drawn, new SoughtFact { Id = "station-s1", What = "fault" }, new SearchFact { How = "hand dig", About = "station-s1", Where = [new Position(8, 26)], Within = new Length(3), Minutes = 400 }));
        Assert.True(Grounds.Within(after, 8, 26, 2) < 0.4 * Grounds.Within(before, 8, 26, 2));
        Assert.True(Grounds.Within(after, 30, 26, 3) > Grounds.Within(before, 30, 26, 3));
        Assert.True(after.None > before.None);
    }

    [Fact]
    public void Tracing_it_is_weighed_before_digging() =>
        Assert.Contains(Notes(Drawn).Notebook().Locate(Name, null, Inferred()).Value.Choices, choice => choice.How == "wire tracer");

    [Fact]
    public void Once_found_or_no_longer_inferred_it_is_not_looked_for()
    {
        var sought = new SoughtFact { Id = "station-s1", What = "fault" };
        Assert.Equal("has nothing hidden", Notes(sought).Notebook().Locate().Problem!.Reason);
        Assert.Equal("has nothing hidden", Notes(sought, new SearchFact { How = "hand dig", About = "station-s1", Where = [new Position(8, 26)], Minutes = 5, Found = ["station-s1"] }).Notebook().Locate(null, null, Inferred()).Problem!.Reason);
    }

    [Fact]
    public void A_doubt_what_asks_for_no_repair_and_what_sits_in_a_box_put_nothing_into_the_ground()
    {
        var doubt = new Explanation("misread", 0.9, "The note is wrong", [new PlaceProbability("box 7", 1, "box 4")], [], Mend) { Doubt = true };
        var longer = new Explanation("longer", 0.9, "A longer run", [new PlaceProbability("box 7", 1, "box 4")], [], string.Empty);
        var boxed = new Explanation("bad-splice", 0.1, "A bad splice", [new PlaceProbability("box 7", 1)], [], Mend);
        Assert.Equal("has nothing hidden", Notes().Notebook().Locate(null, null, Of(doubt, longer, boxed)).Problem!.Reason);
    }

    private static HiddenThing Ask(Grounds grounds) => Assert.Single(grounds.Notebook().Locate(null, null, Inferred()).Value.Things);

    private static Grounds Notes(params Fact[] notes) => Grounds.Corner([.. Boxes, .. notes]);

    private const string Mend = "mend the conductor";

    private static Answers Inferred() => Of(
        new Explanation("open-conductor", 0.7, "A broken conductor", [new PlaceProbability("box 7", 0.8, "box 4"), new PlaceProbability("box 4", 0.2)], [], Mend),
        new Explanation("nicked", 0.2, "A nick in the insulation", [new PlaceProbability("box 7", 0.5, "box 4")], [], Mend));

    private static Answers Of(params Explanation[] explanations) => new("0", "1", [new OpenQuestion("station-s1", "station 1 reads over range", ["1"], explanations, [], [], Settled: false)], []);
}
