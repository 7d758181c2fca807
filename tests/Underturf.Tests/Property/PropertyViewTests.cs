using Underturf.FieldLog;

namespace Underturf.Tests.Property;

public sealed class PropertyViewTests
{
    [Fact]
    public void Stations_of_one_number_on_two_controllers_are_told_apart_by_their_controller()
    {
        var view = Two("garage", "cellar").Fold().Now;
        Assert.Equal("1 (controller garage)", view.StationNumber("a1"));
        Assert.Equal("station 1 (controller cellar)", view.Name("b1"));
        Assert.Equal("2", view.StationNumber("a2"));
    }

    [Fact]
    public void Two_ids_of_one_controller_need_no_telling_apart()
    {
        var diary = Two("garage", "garage");
        diary.Note(20, new SameAsFact { A = "a", B = "b" });
        Assert.Equal("1", diary.Fold().Now.StationNumber("a1"));
    }

    private static Diary Two(string first, string second)
    {
        var diary = new Diary();
        diary.Note(1, new ControllerFact { Id = "a", Terminals = 12, Label = first });
        diary.Note(2, new ControllerFact { Id = "b", Terminals = 12, Label = second });
        diary.Note(3, new StationFact { Id = "a1", Controller = "a", Terminal = 1 });
        diary.Note(4, new StationFact { Id = "a2", Controller = "a", Terminal = 2 });
        diary.Note(5, new StationFact { Id = "b1", Controller = "b", Terminal = 1 });
        return diary;
    }
}
