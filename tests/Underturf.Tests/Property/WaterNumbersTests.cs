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
        Orchard[] orchards = [Troubled(), Outlets(), Pressed(), Doubtful(), Far(), Sloped(), Connected(), Everything()];
        Assert.Empty(new IdleNumbers<Orchard>(orchards, Said, PracticeBook.Default).Among(BookNumbers.Leaves(BookNumbers.Base()["water"]!), Changed));
    }

    /// <summary>Every kind of reading and sight.</summary>
    private static Orchard Everything()
    {
        var sights = PracticeBook.Default.Water.Sights.Select(s => s.Name).ToArray();
        return Orchard.Piped()
            .With(new FittingFact { Id = "low", Elevation = new Length(2) })
            .With(new IsolationValveFact { Id = "i2", Elevation = new Length(8) })
            .With(new PipeFact { Id = "i1-v1", From = "i1", To = "v1", Size = "1 1/4" })
            .With(new PipeFact { Id = "slope", From = "i2", To = "low", Size = "2", Length = new Length(50) })
            .Meter("2.4 gpm").Meter("3 gpm").Turn("i1", "shut").Meter("0.4 gpm").Turn("i1", "open")
            .With(new WatchFact { About = "s3", Seen = ["wet ground"] })
            .With(new WatchFact { Seen = ["bubbling"], Where = [new Position(30, 15)] })
            .Read("static pressure", "62 psi").Meter("19 gpm", "s1").Read("running pressure", "41 psi", "s1")
            .Read("outlet pressure", "30 psi", "s1").Read("opening time", "14 s", "s1").Read("closing time", "21 s", "s1")
            .Watch("s1", sights).With(new CatchFact { Station = "s1", Minutes = 10, Cans = [new Length(0.002), new Length(0.009), new Length(0.011), new Length(0.012)] }).With(new CatchFact { Station = "s2", Cans = [new Length(0.006), new Length(0.009), new Length(0.010), new Length(0.011)] }).Meter("11 gpm", "s2").Watch("s2").Read("closing time", "4 s", "s3").Watch("s3", "weeping ends", "weak");
    }

    private static Orchard Outlets()
    {
        var orchard = Orchard.Unpiped();
        foreach (var outlet in PracticeBook.Default.Water.Outlets)
        {
            orchard.With(new OutletFact { Id = outlet.Name, Station = "s1", What = outlet.Name, Count = 3 });
            orchard.With(new OutletFact { Id = $"low {outlet.Name}", Station = "s2", What = outlet.Name, Count = 1, Pressure = new Pressure(60e3) });
        }

        var from = "poc";
        foreach (var (pipe, number) in PracticeBook.Default.Water.Pipes.Select((p, k) => (p, k)))
        {
            var to = number + 1 < PracticeBook.Default.Water.Pipes.Count ? $"f{number}" : "v1";
            orchard.With(new FittingFact { Id = $"f{number}" }).With(new PipeFact { Id = $"p{number}", From = from, To = to, Series = pipe.Name, Size = "1", Length = new Length(60) });
            from = to;
        }

        orchard.Read("static pressure", "20 psi");
        orchard.With(new ReadingFact { How = "hole level", Place = "v1", Value = Shown.Parse("40 cm").Value });
        return orchard.With(new ReadingFact { How = "hole level", Place = "v1", Value = Shown.Parse("25 cm").Value });
    }

    /// <summary>Little pressure while one runs.</summary>
    private static Orchard Pressed() => Orchard.Unpiped().Read("running pressure", "24 psi", "s1").Read("opening time", "30 s", "s3").Read("closing time", "31 s", "s4");

    /// <summary>Weak here and there, and nobody has gauged while anything ran.</summary>
    private static Orchard Doubtful() => Orchard.Unpiped().Read("static pressure", "60 psi").Watch("s1", "weak").Watch("s2", "weak")
        .With(new CatchFact { Station = "s3", Cans = [new Length(0), new Length(0), new Length(0.009), new Length(0.012)] });

    /// <summary>Each station with another trouble, and pressure at rest alone.</summary>
    private static Orchard Troubled()
    {
        var orchard = Orchard.Unpiped().Read("static pressure", "30 psi");
        foreach (var station in new[] { "s1", "s2", "s3", "s4" })
        {
            orchard.With(new OutletFact { Id = $"heads {station}", Station = station, What = "spray head", Count = 10 });
        }

        return orchard.Meter("9 gpm", "s1").Watch("s1", "weak").Meter("26 gpm", "s2").Watch("s2", "weak").Meter("20 gpm", "s3").Watch("s3", "misting").Watch("s4", "bang").Watch("s4", "bang");
    }

    /// <summary>One station on a slope, its outlets a little and much higher than the lowest, metered twice.</summary>
    private static Orchard Sloped() => Orchard.Unpiped()
        .With(new OutletFact { Id = "a", Station = "s1", What = "rotor", Count = 2, Elevation = new Length(10) })
        .With(new OutletFact { Id = "b", Station = "s1", What = "rotor", Count = 2, Elevation = new Length(10.058) })
        .With(new OutletFact { Id = "c", Station = "s1", What = "rotor", Count = 3, Elevation = new Length(10.13) })
        .Meter("20 gpm", "s1").Meter("20.6 gpm", "s1").Watch("s1", "wet ground");

    /// <summary>Each size of meter and each kind of backflow device.</summary>
    private static Orchard Connected()
    {
        var (orchard, book) = (Orchard.Unpiped(), PracticeBook.Default.Water);
        foreach (var (meter, number) in book.Meters.Select((m, k) => (m, k)))
        {
            orchard.With(new WaterSupplyFact { Id = number == 0 ? "poc" : $"poc{number}", Meter = new Length(meter.Millimetres / 1000), BackflowKind = book.Backflows[number % book.Backflows.Count].Name, BackflowSize = new Length(0.025) });
        }

        return orchard;
    }

    /// <summary>Hardly anything is known.</summary>
    private static Orchard Far() => Orchard.Unpiped().Meter("5 gpm").With(new WatchFact { Seen = ["weeping"] })
        .Read("static pressure", "65 psi").Watch("s1", "weak").Watch("s2", "weak").Watch("s3", "weak").Watch("s4", "weak", "bang");

    /// <summary>One after the other, the dearest last, so that the first that differs is enough.</summary>
    private static IEnumerable<string> Said(Orchard orchard, PracticeBook book)
    {
        var notebook = orchard.Notebook(book);
        yield return string.Join('\n', notebook.Problems);
        foreach (var place in new[] { "v1", "low" })
        {
            yield return notebook.Isolate(place) is { Succeeded: true, Value: var isolation } ? AnswersJson.Write(isolation) : string.Empty;
        }

        foreach (var station in new[] { "1", "2" })
        {
            yield return AnswersJson.Write(notebook.Flow(station).Value);
        }

        yield return AnswersJson.Write(notebook.Answer());
    }

    private static PracticeBook? Changed(string path, double factor) =>
        BookNumbers.Changed(path, leaf => leaf.TryGetValue<bool>(out var flag) ? JsonValue.Create(!flag) : JsonValue.Create(leaf.GetValue<double>() * factor));
}
