using System.CommandLine;
using System.Globalization;
using Underturf.Papers;
using Underturf.Planning.Day;
using Underturf.Quantities;

namespace Underturf.Cli.Commands;

/// <summary>What to do today and in which order, what waits, and what may run tonight.</summary>
internal static class DayCommand
{
    public static Command Make()
    {
        var (log, book, json, begin) = (Arguments.Log(), Arguments.Book(), Arguments.Json(), Begin());
        var at = new Option<string?>("--at") { Description = "Where you are: a place by label or id; the controller where nothing is said." };
        var minutes = new Option<double?>("--minutes") { Description = "How many minutes you have; a day of the practice book where nothing is said." };
        var draw = new Option<FileInfo?>("--draw") { Description = "Write the day sheet to take along, as PDF." };
        var command = new Command("day", "Order the day: jobs by loss and walking, what they wait for, how places were left, and which stations may run tonight.") { log, at, minutes, begin, draw, book, json };
        command.SetAction(parsed =>
        {
            var notebook = Files.Notebook(parsed.GetRequiredValue(log), parsed.GetValue(book));
            var ask = new DayAsk(BeginOf(parsed.GetValue(begin)), parsed.GetValue(at), parsed.GetValue(minutes));
            var answers = notebook.Answer();
            var answer = DayPlan.Of(notebook, ask, answers);
            if (!answer.Succeeded)
            {
                throw new Refusal(answer.Problem!);
            }

            if (parsed.GetValue(draw) is { } file)
            {
                Files.Write(file.FullName, DaySheet.Make(notebook, answer.Value, answers).Bytes.Span);
            }

            Console.WriteLine(parsed.GetValue(json) ? DayJson.Write(answer.Value) : DayText.Write(answer.Value));
            return Guard.Notes(notebook.Problems);
        });
        return command;
    }

    private static Option<string?> Begin() => new("--begin") { Description = "When the day begins, with its offset: 2031-04-04T07:30-06:00; now where nothing is said." };

    /// <summary>The clock is read here and nowhere further in.</summary>
    private static DateTimeOffset BeginOf(string? given)
    {
        if (given is null)
        {
            var now = DateTimeOffset.Now;
            return now.AddTicks(-(now.Ticks % TimeSpan.TicksPerMinute));
        }

        string[] forms = ["yyyy-MM-dd'T'HH:mmzzz", "yyyy-MM-dd'T'HH:mm:sszzz"];
        return DateTimeOffset.TryParseExact(given.EndsWith('Z') ? given[..^1] + "+00:00" : given, forms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var moment)
            ? moment
            : throw new Refusal(new Problem($"--begin {Problem.Quote(given)}", "is no moment", "Give day, time and offset, for example 2031-04-04T07:30-06:00"));
    }
}
