using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Tests.Property;

public sealed class StockTests
{
    [Fact]
    public void What_is_there_and_what_is_missing_is_counted()
    {
        var diary = new Diary();
        Fact[] facts =
        [
            new ControllerFact { Id = "c", Terminals = 12 }, new ControllerFact { Id = "d", Terminals = 6 }, new BoxFact { Id = "b" },
            new StationFact { Id = "s1", Controller = "c", Terminal = 1 }, new StationFact { Id = "s2", Controller = "c", Terminal = 2 },
            new StationFact { Id = "s3", Controller = "d", Terminal = 1 },
            new ValveFact { Id = "v1", Station = "s1", Box = "b" }, new ValveFact { Id = "v9", Box = "b" },
            new EndFact { Id = "e1", Place = "b" }, new EndFact { Id = "e2", Place = "b", Mates = ["e3"] }, new EndFact { Id = "e3", Place = "b" },
            new EndFact { Id = "e4", Place = "b" }, new SpliceFact { Id = "j", Place = "b", Joins = ["e4"] },
            new LeftAsFact { Place = "b", State = "open" }, new LeftAsFact { Place = "b", State = "closed" },
            new QuestionOpenedFact { Id = "q1", Text = "What is that?" }, new QuestionOpenedFact { Id = "q2", Text = "And that?" },
            new QuestionClosedFact { Id = "q1", Answer = "Nothing." },
        ];
        for (var i = 0; i < facts.Length; i++)
        {
            diary.Note(i + 1, facts[i]);
        }

        var stock = Stock.Of(diary.Fold());
        Assert.Equal((18, 3, 2), (stock.Terminals, stock.InUse, stock.ValvesFound));
        Assert.Equal(["s2", "s3"], stock.StationsWithoutValve);
        Assert.Equal(["v9"], stock.ValvesWithoutStation);
        Assert.Equal(["e1"], stock.EndsWithoutMate);
        Assert.Equal(["closed"], stock.LeftAs.Select(l => l.Fact.State));
        Assert.Equal(["q2"], stock.Asked.Select(q => q.Fact.Id));
    }
}
