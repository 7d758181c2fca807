using System.Text.RegularExpressions;
using Underturf.Tests.Cli;

namespace Underturf.Tests.Docs;

/// <summary>The README is run: its commands, with ./underturf replaced by the built program, and its output is real.</summary>
public sealed partial class ReadmeTests
{
    private static readonly string Readme = Repository.Read("README.md");

    [Fact]
    public void The_output_and_the_picture_shown_are_what_the_demo_makes()
    {
        using var bench = new Workbench();
        var printed = bench.RunApart("demo").Worked().Out.Split('\n').Select(l => l.TrimEnd()).ToList();
        var shown = Block("text").Where(l => l.Trim() is not ("" or "...")).Select(l => l.TrimEnd()).ToList();
        Assert.NotEmpty(shown);
        var at = 0;
        foreach (var line in shown)
        {
            at = printed.IndexOf(line, at) + 1;
            Assert.True(at > 0, $"The demo does not print, after the lines before it: {line}");
        }

        Assert.Equal(Repository.Read("docs/pictures/plan.svg"), File.ReadAllText(bench.Path(Path.Combine("demo", "plan.svg"))));
    }

    [Fact]
    public void The_names_shown_are_what_identify_prints()
    {
        using var bench = new Workbench();
        var samples = Path.Combine(Repository.Root, "samples", "memorial-garden");
        bench.RunApart("identify", Path.Combine(samples, "log.jsonl"), "box 10", "--people", "2").Worked("NEXT ROUND", "live wire on stations 25, 26", "Why ", " min of work and ", "; next best ", " min more");
        bench.RunApart("identify", Path.Combine(samples, "afternoon.jsonl"), "box 10").Worked(Readme.Split("```text\n")[2].Split("```")[0].Trim());
    }

    [Fact]
    public void Where_a_hidden_valve_lies_and_what_was_learned_is_what_locate_prints()
    {
        using var bench = new Workbench();
        var samples = Path.Combine(Repository.Root, "samples", "memorial-garden");
        var blocks = Readme.Split("```text\n").Skip(3).Select(block => block.Split("```")[0].Trim()).ToList();
        bench.RunApart("locate", Path.Combine(samples, "log.jsonl"), "station 14").Worked(blocks[0]);
        bench.RunApart("locate", Path.Combine(samples, "afternoon.jsonl"), "station 17").Worked(blocks[1]);
    }

    [Fact]
    public void The_step_and_the_numbers_shown_are_what_rework_prints()
    {
        using var bench = new Workbench();
        var shown = Readme.Split("```text\n")[5].Split("```")[0].Split("...").SelectMany(part => part.Trim('\n').Split('\n')).Where(line => line.Trim().Length > 0);
        bench.RunApart("rework", Path.Combine(Repository.Root, "samples", "memorial-garden", "afternoon.jsonl")).Worked([.. shown]);
    }

    [Fact]
    public void The_roots_and_what_to_wait_for_are_what_repair_prints()
    {
        using var bench = new Workbench();
        var log = Path.Combine(Repository.Root, "samples", "memorial-garden", "log.jsonl");
        bench.Run("repair", log, "v15", "--card", "card.pdf").Worked([.. Readme.Split("```text\n")[6].Split("```")[0].Split("...").Select(part => part.Trim())]);
        Assert.True(new FileInfo(bench.Path("card.pdf")).Length > 1000);
        bench.Run("repair", log, "valve 15").Worked("18 ft from old lime");
        bench.Run("repair", log, "box 99").Failed(1, "is no valve or box that is noted");
    }

    [Fact]
    public void The_order_of_the_day_that_is_shown_is_what_its_command_prints()
    {
        using var bench = new Workbench();
        var shown = Readme.Split("```text\n").Select(block => block.Split("```")[0]).Single(block => block.StartsWith("ORDER OF THE DAY", StringComparison.Ordinal));
        string[] words = [.. DayCommand().Match(Readme).Groups["it"].Value.Split(' ').Select(w => w.StartsWith("samples/", StringComparison.Ordinal) ? Path.Combine(Repository.Root, w) : w)];
        bench.Run(words).Worked([.. shown.Split("...").SelectMany(part => part.Split('\n')).Where(line => line.Trim().Length > 0)]);
    }

    [Fact]
    public void The_commands_of_a_first_property_work_as_written()
    {
        using var bench = new Workbench();
        var script = Readme.Split("```sh\n")[2].Split("```")[0];
        bench.Write("notes.jsonl", NoteLines().Matches(script).Select(m => m.Groups["it"].Value));
        var commands = script.Split('\n').Where(l => l.StartsWith("./underturf ", StringComparison.Ordinal)).Select(l => l.Split(' ')[1..]).ToList();
        Assert.Equal(4, commands.Count);
        Assert.All(commands, words => bench.RunApart(words).Worked());
        bench.RunApart("diagnose", "log.jsonl").Worked("several valves on one conductor");
        var joint = "the joint alone; with conductor, terminal and checks: rework";
        Assert.All((string[])["diagnose", "moves", "repair"], command => bench.Run(command, "log.jsonl").Worked(joint));
        bench.Run("flow", "log.jsonl").Worked("station 1: reckoned with 2 valves (inferred, ");
        bench.Run("rework", "log.jsonl").Worked("In it: ways, finding and proving conductors");
        Assert.Contains("papers", bench.Names());
    }

    [Fact]
    public void The_picture_of_a_circuit_is_what_its_command_draws()
    {
        using var bench = new Workbench();
        var words = CircuitCommand().Match(Readme).Groups["it"].Value.Split(' ');
        bench.RunApart([.. words.Select(w => w.StartsWith("samples/", StringComparison.Ordinal) ? Path.Combine(Repository.Root, w) : w)]).Worked("chatters");
        Assert.Equal(Repository.Read("docs/pictures/circuit.svg"), File.ReadAllText(bench.Path("circuit.svg")));
    }

    [Fact]
    public void A_place_of_a_circuit_that_nobody_has_found_is_told_as_inferred_with_its_chance()
    {
        using var bench = new Workbench();
        bench.Run("circuit", Path.Combine(Repository.Root, "samples", "memorial-garden", "log.jsonl"), "14", "40").Worked("inferred, ", "nobody has found it; its wire was last seen at box", "% that it lies within 13 ft of there", "lookout valve  measured");
    }

    [Fact]
    public void Every_file_that_the_README_names_is_there() => Assert.All(
        Links().Matches(Readme).Select(m => m.Groups["it"].Value).Where(l => !l.StartsWith("http", StringComparison.Ordinal)),
        link => Assert.True(Path.Exists(Path.Combine(Repository.Root, link)), link));

    private static string[] Block(string kind) => Readme.Split($"```{kind}\n")[1].Split("```")[0].Split('\n');

    [GeneratedRegex(@"^  '(?<it>\{.*\})'", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex NoteLines();

    [GeneratedRegex("`./underturf (?<it>circuit [^`]+)`", RegexOptions.ExplicitCapture)]
    private static partial Regex CircuitCommand();

    [GeneratedRegex("`./underturf (?<it>day [^`]+)`", RegexOptions.ExplicitCapture)]
    private static partial Regex DayCommand();

    [GeneratedRegex(@"\]\((?<it>[^)]+)\)", RegexOptions.ExplicitCapture)]
    private static partial Regex Links();
}
