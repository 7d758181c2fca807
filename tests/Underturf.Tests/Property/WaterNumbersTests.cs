using System.Text.Json.Nodes;
using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Tests.Reasoning.Water;

namespace Underturf.Tests.Property;

/// <summary>A number of the water side that changes no answer has no place in the practice book.</summary>
public sealed class WaterNumbersTests
{
    [Fact]
    public void A_number_of_the_water_side_that_changes_nothing_has_no_place_in_the_book()
    {
        Orchard[] orchards = [Everything(), Outlets(), Far(), Pressed()];
        var before = orchards.Select(o => Output(o, PracticeBook.Default)).ToArray();
        var idle = BookNumbers.Leaves(BookNumbers.Base()["water"]!)
            .Where(path => !new[] { 1.37, 0.61 }.Any(factor => Changed(path, factor) is { } book && orchards.Select((o, i) => (o, i)).Any(o => Output(o.o, book) != before[o.i])))
            .ToList();
        Assert.True(idle.Count == 0, string.Join(' ', idle));
    }

    /// <summary>Every kind of reading and sight.</summary>
    private static Orchard Everything()
    {
        var sights = PracticeBook.Default.Water.Sights.Select(s => s.Name).ToArray();
        return Orchard.Piped()
            .With(new FittingFact { Id = "low", Elevation = new Length(2) })
            .With(new IsolationValveFact { Id = "i2", Elevation = new Length(8) })
            .With(new PipeFact { Id = "slope", From = "i2", To = "low", Size = "2", Length = new Length(50) })
            .Meter("2.4 gpm").Meter("3 gpm").Turn("i1", "shut").Meter("0.4 gpm").Turn("i1", "open")
            .With(new WatchFact { About = "s3", Seen = ["wet ground"] })
            .With(new WatchFact { Seen = ["bubbling"], Where = [new Position(20, 23)] })
            .Read("static pressure", "62 psi").Meter("19 gpm", "s1").Read("running pressure", "41 psi", "s1")
            .Read("outlet pressure", "30 psi", "s1").Read("opening time", "14 s", "s1").Read("closing time", "21 s", "s1")
            .Watch("s1", sights).Meter("11 gpm", "s2").Watch("s2").Read("closing time", "4 s", "s3").Watch("s3", "weeping ends", "weak");
    }

    private static Orchard Outlets()
    {
        var orchard = Orchard.Unpiped();
        foreach (var outlet in PracticeBook.Default.Water.Outlets)
        {
            orchard.With(new OutletFact { Id = outlet.Name, Station = "s1", What = outlet.Name, Count = 20 });
        }

        foreach (var (pipe, number) in PracticeBook.Default.Water.Pipes.Select((p, k) => (p, k)))
        {
            orchard.With(new PipeFact { Id = $"p{number}", From = "poc", To = $"v{number + 1}", Series = pipe.Name, Size = "1", Length = new Length(60) });
        }

        orchard.With(new ReadingFact { How = "hole level", Place = "v1", Value = Shown.Parse("40 cm").Value });
        return orchard.With(new ReadingFact { How = "hole level", Place = "v1", Value = Shown.Parse("25 cm").Value });
    }

    /// <summary>Little pressure while one runs.</summary>
    private static Orchard Pressed() => Orchard.Piped().Read("running pressure", "24 psi", "s1").Watch("s2", "weak").Read("opening time", "30 s", "s3").Read("closing time", "31 s", "s4");

    /// <summary>Hardly anything is known.</summary>
    private static Orchard Far() => Orchard.Unpiped().Meter("5 gpm").With(new WatchFact { Seen = ["weeping"] });

    private static string Output(Orchard orchard, PracticeBook book)
    {
        var notebook = orchard.Notebook(book);
        var isolations = string.Join('\n', new[] { "v1", "low" }.Select(p => notebook.Isolate(p)).Where(i => i.Succeeded).Select(i => AnswersJson.Write(i.Value)));
        return AnswersJson.Write(notebook.Answer()) + string.Join('\n', notebook.Problems) + AnswersJson.Write(notebook.Flow("1").Value) + isolations;
    }

    private static PracticeBook? Changed(string path, double factor) =>
        BookNumbers.Changed(path, leaf => leaf.TryGetValue<bool>(out var flag) ? JsonValue.Create(!flag) : JsonValue.Create(leaf.GetValue<double>() * factor));
}
