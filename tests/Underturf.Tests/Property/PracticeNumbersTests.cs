using System.Collections.Concurrent;
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
        var logs = PracticeLogs.All();
        var before = logs.Select(log => Output(log, BookNumbers.Read(Base()).Value, "the default book")).ToArray();
        var idle = new ConcurrentBag<string>();
        string[] tested = ["$.naming.", "$.locating.", "$.taping.", "$.water.", "$.rework.", "$.day."];
        Parallel.ForEach(BookNumbers.Leaves(Base()).Where(path => !tested.Any(block => path.StartsWith(block, StringComparison.Ordinal))), path =>
        {
            if (!Changed(path).Any(book => logs.Select((log, i) => Output(log, book, path) != before[i]).Any(differs => differs)))
            {
                idle.Add(path);
            }
        });
        Assert.True(idle.IsEmpty, string.Join('\n', idle.Order(StringComparer.Ordinal)));
    }

    /// <summary>The book with one leaf made larger, or smaller where larger would not be valid or is a second try.</summary>
    private static IEnumerable<PracticeBook> Changed(string path)
    {
        foreach (var factor in new[] { 1.37, 0.61 })
        {
            var root = Base();
            Change(BookNumbers.Leaf(root, path), factor);
            var book = BookNumbers.Read(root);
            if (book.Succeeded)
            {
                yield return book.Value;
            }
        }
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

    private static string Output(LogDocument log, PracticeBook book, string what)
    {
        try
        {
            var notebook = Notebook.Open(log, book);
            var circuit = AnswersJson.Write(notebook.Circuit([notebook.History.Now.Stations.Keys.First()]).Value);
            return AnswersJson.Write(notebook.Answer()) + AnswersJson.Write(notebook.Readings()) + string.Join('\n', notebook.Problems) + circuit;
        }
        catch (Exception fault)
        {
            throw new InvalidOperationException($"{what}: a book that is accepted must give an answer", fault);
        }
    }
}
