using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Underturf.FieldApp;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Browser;

/// <summary>The components on invented answers, without a browser.</summary>
public sealed class ComponentTests : BunitContext
{
    private static readonly Move lift = new("Lift one splice and read ohms again", "Box 7", 12.4, 48.2, "No ohmmeter on live wire.", "q1");
    private static readonly Explanation splice = new("plain-splice", 0.62, "Two valves on one conductor", [new("box 7", 0.6)], [new("mara/12", "ohms, station 9", "47 to 61 ohm", "18.4 ohm", 2)], "Separate them");
    private static readonly OpenQuestion low = new("q1", "Station 9 reads low", ["9"], [splice], [new(2, 0.8)], [lift], Settled: false);

    private static readonly Answers none = new("0.1.0", "1", [], []);

    [Fact]
    public void The_next_move_stands_before_the_open_questions()
    {
        var page = Open(new Answers("0.1.0", "1", [low], [lift]));
        var markup = page.Markup;
        Assert.True(markup.IndexOf("next-move", StringComparison.Ordinal) < markup.IndexOf("Open questions", StringComparison.Ordinal));
        Assert.Equal(lift.Action, page.Find(".next-move .action").TextContent);
        Assert.Contains(lift.Caution, page.Find(".next-move .caution").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Ends_that_are_worth_naming_stand_between_the_next_move_and_the_questions()
    {
        var naming = new NamingMove("box 10", "b10", 5, 6, "known resistor, all in one trip", 43.9, 2.8, 61.3, "Power off.", "station 9 most likely runs several valves");
        var page = Open(new Answers("0.1.0", "1", [low], [lift]) { Naming = [naming] });
        var said = page.Find(".naming-move").TextContent;
        Assert.Contains("Name the ends of box 10", said, StringComparison.Ordinal);
        Assert.Contains("5 of 6 without a name", said, StringComparison.Ordinal);
        Assert.Contains("Station 9 most likely runs several valves.", said, StringComparison.Ordinal);
        Assert.True(page.Markup.IndexOf("naming-move", StringComparison.Ordinal) < page.Markup.IndexOf("Open questions", StringComparison.Ordinal));
    }

    [Fact]
    public void Ends_whose_naming_saves_most_stand_before_the_other_moves()
    {
        var naming = new NamingMove("box 10", "b10", 5, 6, "known resistor, all in one trip", 43.9, 2.8, 1000, "Power off.", "");
        var page = Open(new Answers("0.1.0", "1", [low], [lift]) { Naming = [naming, naming with { Where = "box 3", Place = "b3", Worth = 44 }] });
        Assert.Equal(["before all other moves", "after 2 other moves"], page.FindAll(".move-rank").Select(rank => rank.TextContent));
        Assert.True(page.Markup.IndexOf("naming-move", StringComparison.Ordinal) < page.Markup.IndexOf("next-move", StringComparison.Ordinal));
    }

    [Fact]
    public void A_reading_is_shown_beside_what_the_explanation_predicts_for_it()
    {
        var row = Open(new Answers("0.1.0", "1", [low], [lift])).Find("tr[data-entry='mara/12']");
        Assert.Equal("47 to 61 ohm", row.QuerySelector(".grade-inferred")!.TextContent);
        Assert.Equal("18.4 ohm", row.QuerySelector(".grade-measured")!.TextContent);
    }

    [Fact]
    public void Without_a_move_the_page_says_that_nothing_is_worth_its_minutes() =>
        Assert.Contains("no move is worth", Open(none).Find(".next-move").TextContent, StringComparison.Ordinal);

    [Fact]
    public void A_log_that_cannot_be_had_is_answered_with_place_reason_and_remedy()
    {
        var missing = new Problem("log.jsonl", "the server offers no log", "Open a log file below");
        var page = Open(missing, new OpenedLog(none, []));
        AssertSays(missing, page.Find("[role=alert]").TextContent);
        Assert.Empty(page.FindAll(".next-move"));
    }

    [Fact]
    public void A_line_that_could_not_be_used_is_told_beside_what_the_rest_lets_one_say()
    {
        var cut = new Problem("line 3", "the line is cut off", "Copy the file again");
        var page = Open(new Answers("0.1.0", "1", [low], [lift]), cut);
        AssertSays(cut, page.Find("[role=alert]").TextContent);
        Assert.Single(page.FindAll("article.question"));
    }

    [Fact]
    public void A_question_s_own_page_place_is_what_the_index_points_to()
    {
        var page = Open(new Answers("0.1.0", "1", [low], [lift]));
        var target = page.Find(".index a").GetAttribute("href")!;
        Assert.Equal(target.TrimStart('#'), page.Find("article.question").Id);
    }

    private static void AssertSays(Problem problem, string text) =>
        Assert.All([problem.Place, problem.Reason, problem.Remedy], part => Assert.Contains(part, text, StringComparison.Ordinal));

    private IRenderedComponent<NotebookPage> Open(Answers answers, params Problem[] problems) => Open((ReadOnlyMemory<byte>)File.ReadAllBytes(Checkout.DemoLog), new OpenedLog(answers, problems));

    private IRenderedComponent<NotebookPage> Open(Outcome<ReadOnlyMemory<byte>> offered, OpenedLog opened)
    {
        Services.AddSingleton<INotebook>(new FixedNotebook(opened));
        Services.AddSingleton<ILateRooms>(new WholePage());
        Services.AddSingleton<IHomeServer>(new MemoryServer(offered));
        Services.AddSingleton<IDevice>(new MemoryDevice());
        Services.AddSingleton<IPhotoShelf>(new MemoryShelf());
        Services.AddSingleton<IBackdropShelf>(new MemoryBackdrops());
        Services.AddSingleton<IWhereabouts>(new FixedWhereabouts());
        var page = Render<NotebookPage>();
        page.WaitForElement("[data-state=ready], [data-state=failed]");
        return page;
    }

    private sealed class FixedNotebook(OpenedLog opened) : SilentNotebook
    {
        protected override OpenedLog Found => opened;
    }
}
