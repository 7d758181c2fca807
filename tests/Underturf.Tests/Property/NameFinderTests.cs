using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.Tests.Property;

/// <summary>A thing is found by every name that people have for it. All of it invented.</summary>
public sealed class NameFinderTests
{
    private static readonly PropertyView view = Ground().Fold().Now;

    [Theory]
    [InlineData("v15", "v15")]
    [InlineData("valve 15", "v15")]
    [InlineData("VALVE  15", "v15")]
    [InlineData("station 15", "v15")]
    [InlineData("valve of station 15", "v15")]
    [InlineData("lookout valve", "v16")]
    [InlineData("lookout", "v16")]
    [InlineData("valve lookout", "v16")]
    [InlineData("valve 16", "v16")]
    [InlineData("box 10", "b10")]
    [InlineData("10", "b10")]
    [InlineData("tool shed", "c")]
    [InlineData("controller tool shed", "c")]
    [InlineData("shut-off 2", "i2")]
    public void A_place_is_known_by_label_with_its_kind_or_without_and_a_valve_by_its_station(string name, string id) => Assert.Equal(id, Find(name).Value);

    [Fact]
    public void A_name_of_several_things_is_answered_by_all_of_them()
    {
        var problem = Find("15", "b15").Problem!;
        Assert.Equal(("is the name of 2 things", "Name one by its id: v15 (valve v15), b15 (box 15)"), (problem.Reason, problem.Remedy));
        Assert.Equal("b15", Find("box 15", "b15").Value);
    }

    [Theory]
    [InlineData("box 99")]
    [InlineData("valve")]
    [InlineData("")]
    [InlineData("box 15 valve")]
    public void A_name_that_nothing_has_is_answered_by_what_there_is(string name)
    {
        var problem = Find(name).Problem!;
        Assert.Equal("is not noted", problem.Reason);
        Assert.StartsWith("Name one of: controller tool shed, box 10", problem.Remedy, StringComparison.Ordinal);
    }

    private static Outcome<string> Find(string name, params string[] more) => new NameFinder(view).Find(["c", "b10", "v15", "v16", "i2", .. more], name, "place");

    private static Diary Ground()
    {
        var diary = new Diary();
        diary.Note(1, new ControllerFact { Id = "c", Terminals = 24, Label = "tool shed" });
        diary.Note(2, new StationFact { Id = "s15", Controller = "c", Terminal = 15 });
        diary.Note(3, new StationFact { Id = "s16", Controller = "c", Terminal = 16 });
        diary.Note(4, new BoxFact { Id = "b10", Label = "box 10" });
        diary.Note(5, new BoxFact { Id = "b15", Label = "15" });
        diary.Note(6, new ValveFact { Id = "v15", Station = "s15", Box = "b10" });
        diary.Note(7, new ValveFact { Id = "v16", Station = "s16", Label = "lookout valve" });
        diary.Note(8, new IsolationValveFact { Id = "i2", Label = "shut-off 2" });
        return diary;
    }
}
