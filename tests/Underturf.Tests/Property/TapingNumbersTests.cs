using System.Globalization;
using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Tests.Property;

/// <summary>A number of taping that changes no answer has no place in the practice book.</summary>
public sealed class TapingNumbersTests
{
    [Fact]
    public void A_number_of_taping_that_changes_nothing_has_no_place_in_the_book()
    {
        var before = Output(PracticeBook.Default);
        var paths = BookNumbers.Leaves(BookNumbers.Base()["taping"]!).ToList();
        Assert.Equal(22, paths.Count);
        Assert.All(paths, path => Assert.True(new[] { 1.5, 0.4 }.Any(factor => Changed(path, factor) is { Succeeded: true } book && Output(book.Value) != before), path));
    }

    [Theory]
    [InlineData("tapeMetres", "")]
    [InlineData("tieMetres", "told")]
    [InlineData("placedMetres", "unknown")]
    public void A_number_of_taping_below_zero_is_refused_by_name(string block, string grade) =>
        Assert.Contains($"taping.{block}", Changed(grade.Length == 0 ? $"$.taping.{block}" : $"$.taping.{block}.{grade}", -1).Problem!.Place, StringComparison.Ordinal);

    private static Outcome<PracticeBook> Changed(string path, double factor)
    {
        var root = BookNumbers.Base();
        var leaf = BookNumbers.Leaf(root, path);
        leaf.ReplaceWith(leaf.GetValue<double>() * factor);
        return BookNumbers.Read(root);
    }

    /// <summary>For each grade a thing tied so, a thing tied to a mark so known, and one so placed; one whose ties do not agree; one to be tied with a mark just within the tape.</summary>
    private static string Output(PracticeBook book)
    {
        var diary = new Diary();
        var minute = 0;
        void Note(Fact fact) => diary.Note(++minute, fact);
        void Tied(string thing, string mark, double metres, Grade grade = Grade.Measured) => Note(new TieFact { Thing = thing, Mark = mark, Distance = new Length(metres), Sure = grade });
        Note(new GroundFact { Id = "a", What = "tree", Shape = [new(0, 0)] });
        Note(new GroundFact { Id = "b", What = "tree", Shape = [new(20, 0)] });
        Note(new GroundFact { Id = "c", What = "tree", Shape = [new(0, 22)] });
        foreach (var grade in Enum.GetValues<Grade>())
        {
            var name = grade.ToString().ToLower(CultureInfo.InvariantCulture);
            Note(new GroundFact { Id = $"m-{name}", What = "tree", Shape = [new(20, 20)], Sure = grade });
            Note(new BoxFact { Id = $"t-{name}" });
            Tied($"t-{name}", "a", 14.2, grade);
            Tied($"t-{name}", $"m-{name}", 14.2);
            Note(new BoxFact { Id = $"p-{name}", Position = new(11, 9), Sure = grade });
            Tied($"p-{name}", "a", 14.3);
            Tied($"p-{name}", "b", 14.3);
        }

        Note(new BoxFact { Id = "off" });
        Tied("off", "a", 10);
        Tied("off", "b", 9.45);
        Note(new BoxFact { Id = "free", Position = new(20, 13) });
        var notebook = Notebook.Open(diary.Log(), book);
        return AnswersJson.Write(notebook.Ties()) + AnswersJson.Write(notebook.Tie("free").Value);
    }
}
