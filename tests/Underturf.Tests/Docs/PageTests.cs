using System.Text.Json;
using System.Text.RegularExpressions;
using Underturf.Property.Practice;
using Underturf.Simulation;
using Underturf.Simulation.Trials;
using Underturf.Tests.Cli;

namespace Underturf.Tests.Docs;

/// <summary>The pages name what there is.</summary>
public sealed partial class PageTests
{
    [Fact]
    public void The_command_line_page_names_every_command()
    {
        using var bench = new Workbench();
        var help = bench.Run("--help").Worked().Out;
        var commands = Commands().Matches(help[help.IndexOf("Commands:", StringComparison.Ordinal)..]).Select(m => m.Groups["name"].Value).Order();
        var documented = Documented().Matches(Repository.Read("docs/cli.md")).Select(m => m.Groups["name"].Value).Order();
        Assert.Equal(commands, documented);
    }

    [Fact]
    public void The_practice_book_page_names_every_block()
    {
        var page = Repository.Read("docs/practice-book.md");
        using var book = JsonDocument.Parse(PracticeBook.DefaultBytes());
        Assert.All(
            book.RootElement.EnumerateObject().Select(p => p.Name).Where(n => n != "version"),
            name => Assert.Contains($"`{name}`", page, StringComparison.Ordinal));
    }

    [Fact]
    public void The_practice_book_page_lists_every_name_that_notes_use()
    {
        var page = Repository.Read("docs/practice-book.md");
        var book = PracticeBook.Default;
        var names = book.Probes.Select(p => p.Name).Concat(book.Findings).Concat(book.Repairs.Select(r => r.Name)).Concat(Water(book.Water));
        Assert.All(names, name => Assert.Contains($"`{name}`", page[page.IndexOf("## Names", StringComparison.Ordinal)..], StringComparison.Ordinal));
    }

    private static IEnumerable<string> Water(WaterPractice water) =>
        [.. water.Probes.Select(p => p.Name), .. water.Sights.Select(s => s.Name), .. water.Repairs.Select(r => r.Name), .. water.Outlets.Select(o => o.Name), .. water.Pipes.Select(p => p.Name)];

    [Fact]
    public void Every_block_of_the_practice_book_names_its_source()
    {
        using var book = JsonDocument.Parse(PracticeBook.DefaultBytes());
        var blocks = book.RootElement.EnumerateObject()
            .Where(p => p.Name != "version")
            .SelectMany(p => p.Value.ValueKind == JsonValueKind.Array ? [.. p.Value.EnumerateArray()] : new[] { p.Value });
        Assert.All(blocks, b => Assert.NotEmpty(b.GetProperty("source").GetString()!));
    }

    [Fact]
    public void The_report_on_trials_says_what_a_rerun_of_its_first_properties_comes_to()
    {
        var page = Repository.Read("docs/reports/diagnosis.md");
        for (var seed = TrialStudy.FirstSeed; seed < TrialStudy.FirstSeed + TrialStudy.Told; seed++)
        {
            var trial = TrialStudy.One(seed, WorldShape.Trial(null, null), PracticeBook.Default, [Trial.PolicyNames[0]])[0];
            Assert.Contains(TrialStudy.ToldRow(trial, PracticeBook.Default), page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_report_says_what_is_stated_of_a_whole_property()
    {
        var trial = TrialStudy.One(21_046, WorldShape.Trial(30, null), PracticeBook.Default, [Trial.PolicyNames[0]])[0];
        Assert.Contains(Assert.Single(TrialStudy.SaidRows(trial)), Repository.Read("docs/reports/diagnosis.md"), StringComparison.Ordinal);
    }

    [GeneratedRegex(@"^  (?<name>\w+)", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex Commands();

    [GeneratedRegex(@"^\| `(?<name>\w+)", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex Documented();
}
