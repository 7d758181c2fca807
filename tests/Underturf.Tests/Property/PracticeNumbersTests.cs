using System.Text.Json.Nodes;
using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Tests.Property;

/// <summary>A number that changes no answer is noise: it has no place in the practice book.</summary>
public sealed class PracticeNumbersTests
{
    [Fact]
    public void A_number_of_the_practice_book_that_changes_nothing_has_no_place_in_it()
    {
        string[] tested = ["$.naming.", "$.locating.", "$.taping.", "$.water.", "$.rework.", "$.repairing.", "$.day."];
        var paths = BookNumbers.Leaves(Base()).Where(path => !tested.Any(block => path.StartsWith(block, StringComparison.Ordinal)));
        Assert.Empty(new IdleNumbers<LogDocument>(PracticeLogs.All(), Said, BookNumbers.Read(Base()).Value).Among(paths, Changed));
    }

    private static PracticeBook? Changed(string path, double factor)
    {
        var root = Base();
        Change(BookNumbers.Leaf(root, path), factor);
        return BookNumbers.Read(root) is { Succeeded: true, Value: var book } ? book : null;
    }

    /// <summary>The default book, but with every move listed, so that the numbers of the lesser ones are seen too.</summary>
    private static JsonNode Base()
    {
        var root = BookNumbers.Base();
        root["questions"]!["listMoves"] = 12;
        return root;
    }

    private static void Change(JsonValue leaf, double factor)
    {
        if (leaf.TryGetValue<bool>(out var flag))
        {
            leaf.ReplaceWith(!flag);
        }
        else if (leaf.TryGetValue<int>(out var whole))
        {
            leaf.ReplaceWith(factor > 1 ? (int)Math.Ceiling(whole * factor) : Math.Max(1, (int)(whole * factor)));
        }
        else
        {
            leaf.ReplaceWith(leaf.GetValue<double>() * factor);
        }
    }

    private static IEnumerable<string> Said(LogDocument log, PracticeBook book)
    {
        var notebook = Notebook.Open(log, book);
        yield return string.Join('\n', notebook.Problems);
        yield return AnswersJson.Write(notebook.Circuit([notebook.History.Now.Stations.Keys.First()]).Value);
        yield return AnswersJson.Write(notebook.Readings());
        yield return AnswersJson.Write(notebook.Answer());
    }
}
