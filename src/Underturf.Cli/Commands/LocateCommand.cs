using System.CommandLine;
using Underturf.Papers;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Cli.Commands;

/// <summary>Where hidden things lie, and where to look first.</summary>
internal static class LocateCommand
{
    public static Command Make()
    {
        var (log, book, json) = (Arguments.Log(), Arguments.Book(), Arguments.Json());
        var thing = new Argument<string?>("THING") { Description = "What to look for: a hidden thing or a station, by label or id; all where nothing is said.", DefaultValueFactory = _ => null };
        var at = new Option<string?>("--at") { Description = "Where you are: a place by label or id; the controller where nothing is said." };
        var draw = new Option<FileInfo?>("--draw") { Description = "Draw it into a file: an .svg map sheet, a .png of the heat alone, or .geojson outlines." };
        var command = new Command("locate", "Say where hidden valves, boxes, splices and devices lie, and where to look first.") { log, thing, at, draw, book, json };
        command.SetAction(parsed =>
        {
            var notebook = Files.Notebook(parsed.GetRequiredValue(log), parsed.GetValue(book));
            var location = Locate(notebook, parsed.GetValue(thing), parsed.GetValue(at));
            if (location.Problem is { } problem)
            {
                return problem.Severity == Severity.Notice ? Nothing(notebook, problem, parsed.GetValue(json)) : throw new Refusal(problem);
            }

            Console.WriteLine(parsed.GetValue(json) ? AnswersJson.Write(location.Value) : LocationText.Write(location.Value, notebook.History.Facts.UsesUsUnits));
            if (parsed.GetValue(draw) is { } file)
            {
                Files.Write(file.FullName, Drawn(file, notebook, location.Value));
            }

            return Guard.Notes(notebook.Problems);
        });
        return command;
    }

    /// <summary>That nothing is hidden is an answer.</summary>
    private static int Nothing(Notebook notebook, Problem problem, bool json)
    {
        Console.WriteLine(json ? AnswersJson.Write(new LocationAnswer(Notebook.Engine, notebook.Book.Version, [], [], 0, null, [])) : $"Nothing to look for: {problem}");
        return Guard.Notes(notebook.Problems);
    }

    /// <summary>Only what the notes do not name needs the diagnosis, which takes longer: the faults that it puts into the ground.</summary>
    private static Outcome<LocationAnswer> Locate(Notebook notebook, string? thing, string? at)
    {
        var noted = thing is null ? (Outcome<LocationAnswer>?)null : notebook.Locate(thing, at);
        return noted is { Succeeded: true } ? noted.Value : notebook.Locate(thing, at, notebook.Answer());
    }

    private static byte[] Drawn(FileInfo file, Notebook notebook, LocationAnswer location)
    {
        var drawn = file.Extension.ToLowerInvariant() switch
        {
            ".svg" => SearchSheet.Make(notebook, location),
            ".geojson" => HeatGeoJson.Make(location, notebook.History.Facts.Property),
            ".png" => location.Heat is { } heat ? HeatPicture.Make(heat) : SearchSheet.Make(notebook, location),
            _ => new Problem($"--draw {file.Name}", "has an ending that says no form", "End it with .svg, .png or .geojson"),
        };
        return drawn.Succeeded ? drawn.Value : throw new Refusal(drawn.Problem!);
    }
}
