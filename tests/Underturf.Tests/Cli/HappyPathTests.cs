using System.Text;
using System.Text.Json;
using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Tests.Planning;

namespace Underturf.Tests.Cli;

public sealed class HappyPathTests : IDisposable
{
    private readonly Workbench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void Check_of_a_sound_log_counts_its_entries()
    {
        Log();
        bench.Run("check", "log.jsonl").Worked($"{Workbench.Lines.Length} entries, {Workbench.Lines.Length} of them standing; 0 things wrong");
    }

    [Fact]
    public void Show_says_what_is_known_and_what_is_missing()
    {
        Log();
        bench.Run("show", "log.jsonl").Worked("A small invented site", "lawn 3", "box 2", "Terminals in use: 6 of 24. Valves found: 6.");
    }

    [Fact]
    public void Readings_stand_beside_their_predictions()
    {
        Log();
        bench.Run("readings", "log.jsonl").Worked("station ohms, station 3", "over range", "expected with nothing broken");
        using var json = JsonDocument.Parse(bench.Run("readings", "log.jsonl", "--json").Worked().Out);
        Assert.Equal(6, json.RootElement.GetArrayLength());
    }

    [Fact]
    public void Diagnose_gives_questions_explanations_and_moves_as_text_and_as_JSON()
    {
        Log();
        bench.Run("diagnose", "log.jsonl").Worked("NEXT MOVE", "[station-s3]", "Local codes and licensed practice prevail");
        using var json = JsonDocument.Parse(bench.Run("diagnose", "log.jsonl", "--json").Worked().Out);
        var question = json.RootElement.GetProperty("questions")[0];
        Assert.Contains("station 3", question.GetProperty("symptom").GetString(), StringComparison.Ordinal);
        var explanation = question.GetProperty("explanations")[0];
        Assert.InRange(explanation.GetProperty("probability").GetDouble(), 0.01, 1);
        Assert.NotEmpty(explanation.GetProperty("summary").GetString()!);
        Assert.All(explanation.GetProperty("evidence").EnumerateArray(), e => Assert.True(e.TryGetProperty("predicted", out _) && e.TryGetProperty("observed", out _)));
        var move = question.GetProperty("moves")[0];
        Assert.All(["action", "where", "minutes", "worth", "caution"], name => Assert.True(move.TryGetProperty(name, out _)));
    }

    [Fact]
    public void A_trial_tells_what_the_technician_did_what_was_wrong_and_what_it_cost()
    {
        bench.Run("trial", "--seed", "6523").Worked("RIGHT: remake the splice, station 6, at box b1", "run it and read it again", "Really wrong: bad-splice, s6, b1; shorted-coil, s5, b5", "Still wrong: nothing", "No question is open.", "wrong repairs");
        using var json = JsonDocument.Parse(bench.Run("trial", "--seed", "6523", "--rules", "--json").Worked().Out);
        Assert.Equal(6, json.RootElement.GetArrayLength());
        Assert.Equal("notebook", json.RootElement[0].GetProperty("trial").GetProperty("policy").GetString());
    }

    [Fact]
    public void Circuit_prints_what_stations_do_and_draws_it()
    {
        Log();
        bench.Run("circuit", "log.jsonl", "5", "6", "--draw", "circuit.svg").Worked("holds", "box 3", "Nothing broken", "of 40 VA, the usual rating", " ± ", "Local codes and licensed practice prevail");
        Assert.Contains("circuit.svg", bench.Names());
        using var json = JsonDocument.Parse(bench.Run("circuit", "log.jsonl", "5", "--json").Worked().Out);
        Assert.Equal(1, json.RootElement.GetProperty("stations").GetArrayLength());
        Assert.True(json.RootElement.GetProperty("supply").GetProperty("terminalVoltsSpread").GetDouble() > 0);
        bench.Run("circuit", "log.jsonl", "99").Failed(1, "station '99'", "is not noted");
    }

    [Fact]
    public void Rework_gives_the_next_step_the_price_and_the_numbers_as_text_and_as_JSON()
    {
        bench.Write("log.jsonl", new SharedGround(40).Log.ToBytes().ToArray());
        bench.Run("rework", "log.jsonl").Worked("NEXT STEP", "[station 1] 2 valves on one conductor (measured): 1 more conductor needed", "side bed, parts from station 1 at box 1: terminal 4", "end to end under load", "Local codes and licensed practice prevail");
        using var json = JsonDocument.Parse(bench.Run("rework", "log.jsonl", "--json").Worked().Out);
        Assert.Equal("Spare", json.RootElement.GetProperty("valves")[0].GetProperty("alternatives")[0].GetProperty("kind").GetString());
        Log();
        bench.Run("rework", "log.jsonl").Worked("No station is known to be shared");
    }

    [Fact]
    public void Simulate_makes_up_a_property_that_can_be_diagnosed()
    {
        bench.Run("simulate", "--out", "made", "--stations", "12", "--faults", "2", "--seed", "5").Worked("12 stations");
        bench.Run("simulate", "--out", "made", "--stations", "3").Failed(1, "--stations", "from 10 to 300");
        using var truth = JsonDocument.Parse(bench.Read(Path.Combine("made", "truth.json")));
        Assert.Equal(2, truth.RootElement.GetProperty("faults").GetArrayLength());
        Assert.Contains("Engine", bench.Run("diagnose", Path.Combine("made", "log.jsonl")).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Simulate_asks_the_second_engine_for_a_share_and_says_where_it_is_missing()
    {
        string[] asked = ["simulate", "--out", "made", "--stations", "10", "--second-engine", "0.2"];
        bench.RunAlone(asked).Failed(1, "ngspice", "is missing", "Install");
        Assert.Empty(bench.Names());
        bench.Run(asked).Worked("10 stations");
        using var truth = JsonDocument.Parse(bench.Read(Path.Combine("made", "truth.json")));
        Assert.NotEqual(0, truth.RootElement.GetProperty("bySecondEngine").GetArrayLength());
        bench.Run("simulate", "--out", "made", "--second-engine", "2").Failed(1, "--second-engine", "from 0 to 1");
    }

    [Fact]
    public void Merge_unites_and_keeps_every_line()
    {
        bench.Write("a.jsonl", Workbench.Lines[..9]);
        bench.Write("b.jsonl", Workbench.Lines[5..]);
        bench.Run("merge", "a.jsonl", "b.jsonl", "--out", "all.jsonl").Worked($"{Workbench.Lines.Length} entries in all.jsonl.");
        Assert.Equal(Workbench.Lines.Order(), Encoding.UTF8.GetString(bench.Read("all.jsonl")).Split('\n', StringSplitOptions.RemoveEmptyEntries).Order());
        Assert.Equal(["a.jsonl", "all.jsonl", "b.jsonl"], bench.Names());
    }

    [Fact]
    public void Papers_are_put_into_the_folder()
    {
        Log();
        bench.Run("papers", "log.jsonl", "--out", "papers").Worked();
        Assert.Equal(
            ["findings.pdf", "issued.jsonl", "plan.svg", "station-chart.pdf"],
            new DirectoryInfo(bench.Path("papers")).EnumerateFiles().Select(f => f.Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_paper_handed_out_can_be_sealed_into_the_log()
    {
        Log();
        bench.Run("papers", "log.jsonl", "--out", "papers").Worked();
        bench.Run("note", "log.jsonl", "papers/issued.jsonl", "--data", "me").Worked("3 noted");
        bench.Run("check", "log.jsonl").Worked(" 0 things wrong");
    }

    [Fact]
    public void Book_prints_the_default_and_accepts_it_back()
    {
        var printed = bench.Run("book").Worked().Out;
        Assert.Equal(Encoding.UTF8.GetString(PracticeBook.DefaultBytes()).TrimEnd(), printed.TrimEnd());
        bench.Write("book.json", Encoding.UTF8.GetBytes(printed.Replace("\"2026.11\"", "\"mine\"", StringComparison.Ordinal)));
        bench.Run("book", "book.json").Worked("Practice book mine can be used.");
        Log();
        bench.Run("diagnose", "log.jsonl", "--book", "book.json").Worked("practice book mine");
    }

    [Fact]
    public void Demo_writes_its_log_its_truth_and_its_papers()
    {
        bench.Run("demo", "--out", "garden").Worked("Memorial garden", "NEXT MOVE", "OPEN QUESTIONS");
        Assert.True(File.Exists(bench.Path("garden/log.jsonl")) && File.Exists(bench.Path("garden/truth.json")));
        bench.Run("check", "garden/log.jsonl").Worked(" 0 things wrong");
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("diagnose --help")]
    [InlineData("--version")]
    public void Help_and_version_are_given(string arguments) => Assert.NotEmpty(bench.RunApart(arguments.Split(' ')).Worked().Out);

    private void Log() => bench.Write("log.jsonl", Workbench.Sound.ToBytes().ToArray());
}
