using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Tests.Property;

/// <summary>Conductor ends of which two notes cannot both be right.</summary>
public sealed class EndProblemsTests
{
    [Fact]
    public void An_end_noted_twice_under_two_ids_is_named()
    {
        var diary = Boxed();
        diary.Note(3, new EndFact { Id = "e1", Place = "b", Label = "end 1" });
        diary.Note(4, new EndFact { Id = "e9", Place = "b", Label = "End 1" });
        var problem = Assert.Single(References.Problems(diary.Fold()));
        Assert.Contains("'e1', 'e9'", problem.Place, StringComparison.Ordinal);
        Assert.Contains("same-as", problem.Remedy, StringComparison.Ordinal);
        diary.Note(5, new SameAsFact { A = "e1", B = "e9" });
        Assert.Empty(References.Problems(diary.Fold()));
    }

    [Fact]
    public void A_colour_that_changed_is_named_with_both_notes()
    {
        var diary = Boxed();
        var first = diary.Note(3, new EndFact { Id = "e1", Place = "b", Label = "end 1", Colour = "red" });
        diary.Note(4, new EndFact { Id = "e1", Place = "b", Colour = "Red" });
        Assert.Empty(References.Problems(diary.Fold()));
        var second = diary.Note(5, new EndFact { Id = "e1", Place = "b", Colour = "blue" });
        var problem = Assert.Single(References.Problems(diary.Fold()));
        Assert.Equal(second.ToString(), problem.Place);
        Assert.Contains($"end 1 is blue, but {first} says red", problem.Reason, StringComparison.Ordinal);
    }

    private static Diary Boxed()
    {
        var diary = new Diary();
        diary.Note(1, new ControllerFact { Id = "c", Terminals = 4 });
        diary.Note(2, new BoxFact { Id = "b", Label = "7" });
        return diary;
    }
}
