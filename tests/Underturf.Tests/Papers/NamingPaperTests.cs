using Underturf.FieldLog;
using Underturf.Papers;
using Underturf.Reasoning;

namespace Underturf.Tests.Papers;

/// <summary>The test sheet of a place whose conductor ends want names.</summary>
public sealed class NamingPaperTests
{
    [Fact]
    public void The_demo_has_a_sheet_for_each_place_with_unnamed_ends_and_it_says_what_the_notebook_says()
    {
        var naming = Worlds.Demo.Name("box 10", new NamingCrew()).Value;
        var pdf = Worlds.DemoPapers.Bytes("naming-box-10.pdf");
        var text = PdfText.Squeezed(PdfText.All(pdf));
        string[] said = ["Localcodesandlicensedpracticeprevail", naming.Sheet!.Caution, naming.Sheet.Say[1..], .. naming.Ends.Select(e => e.Name), .. naming.Sheet.Fitted.Select(f => f.Sign), .. naming.Sheet.Keys.Select(k => k.Sign)];
        Assert.All(said, words => Assert.Contains(PdfText.Squeezed(words), text, StringComparison.Ordinal));
        Assert.Empty(PdfText.Outside(pdf));
    }

    [Theory]
    [InlineData("live wire, half", 6)]
    [InlineData("live wire, half", 40)]
    [InlineData("tone", 12)]
    [InlineData("known resistor", 9)]
    public void Every_plan_can_be_worked_on_paper_with_room_for_what_is_found(string plan, int ends)
    {
        var notebook = Worlds.Of([.. Box(ends), new EndFact { Id = "e0", Place = "b", Label = "end 0", Common = true }]);
        var naming = notebook.Name("box 1", new NamingCrew(Plan: plan)).Value;
        var sheets = NamingPaper.Sheets(new PaperMatter(notebook, new Answers("0.1.0", "1", [], [])), naming);
        var blanks = sheets.SelectMany(s => s.Marks).OfType<BoxMark>().Count(b => b is { WidthPoints: BlankMark.BoxPoints, Fill: null });
        var sheet = naming.Sheet!;
        var open = naming.Ends.Count(e => !e.Named);
        Assert.Equal(sheet.Fitted.Count > 0 ? 2 * sheet.Fitted.Count : sheet.Keys.Count > 0 ? open * sheet.Rounds.Count : sheet.Rounds.Count, blanks);
        Assert.All(sheets.SelectMany(s => s.Marks).OfType<TextMark>(), t => Assert.InRange(t.XPoints, 0, sheets[0].Form.RightPoints));
    }

    [Theory]
    [InlineData("live wire from the box, half of the ends at a time", 4)]
    [InlineData("live wire from the box, half of the ends at a time", 30)]
    [InlineData("tone from the box, one end at a time", 6)]
    [InlineData("known resistor at the controller, all in one trip", 5)]
    public void A_sheet_made_from_the_box_puts_it_on_ends_and_has_room_for_every_wire_at_the_controller(string plan, int ends)
    {
        var notebook = Worlds.Of([.. Box(ends), new EndFact { Id = "e0", Place = "b", Label = "end 0", Common = true }]);
        var naming = notebook.Name("box 1", new NamingCrew(Plan: plan, Source: true)).Value;
        var (sheet, next) = (naming.Sheet!, naming.Next!);
        Assert.True(sheet.FromPlace && next.FromPlace);
        var papers = NamingPaper.Sheets(new PaperMatter(notebook, new Answers("0.1.0", "1", [], [])), naming);
        var marks = papers.SelectMany(s => s.Marks).ToList();
        var text = PdfText.Squeezed(string.Join(' ', marks.OfType<TextMark>().Select(t => t.Text)));
        void Says(string words) => Assert.Contains(PdfText.Squeezed(words), text, StringComparison.Ordinal);
        Says(sheet.Caution[1..]);
        if (next.AgainstName is { } common)
        {
            Says(common);
        }

        if (sheet.Fitted.Count > 0)
        {
            Says("At the controller: what goes between each lifted wire and the lifted common");
            Says("At the box: end after end to the common");
            Assert.All(sheet.Fitted, fit => Assert.StartsWith("station", fit.Name, StringComparison.Ordinal));
        }
        else
        {
            Says(sheet.Keys.Count > 0 ? "touch every wire at the controller and tick those that answer" : "compare all wires at the controller");
            Assert.All(sheet.Rounds, round => Assert.Contains("end", round.On, StringComparison.Ordinal));
        }

        Assert.All(sheet.Keys.Where(_ => sheet.Fitted.Count == 0), key => Assert.StartsWith("end", key.Name, StringComparison.Ordinal));
        Assert.Equal(sheet.Fitted.Count > 0 ? 2 * sheet.Fitted.Count : sheet.Keys.Count > 0 ? next.TouchNames.Count * sheet.Rounds.Count : sheet.Rounds.Count, marks.OfType<BoxMark>().Count(b => b is { WidthPoints: BlankMark.BoxPoints, Fill: null }));
        Assert.All(marks.OfType<TextMark>(), t => Assert.InRange(t.XPoints, 0, papers[0].Form.RightPoints));
    }

    [Fact]
    public void Two_places_of_one_name_have_two_sheets_and_a_place_that_names_its_ends_has_none()
    {
        var notebook = Worlds.Of([.. Box(2), new BoxFact { Id = "twin", Label = "Box  1!" }, new EndFact { Id = "t", Place = "twin" }, new BoxFact { Id = "done", Label = "done" }, new EndFact { Id = "d", Place = "done", Station = "s1" }]);
        Assert.Equal(["naming-box-1.pdf", "naming-box-1-2.pdf"], PaperSet.Make(notebook).Skip(3).Select(p => p.FileName));
        Assert.Equal(5, PaperSet.Count(notebook, notebook.Answer()));
    }

    [Fact]
    public void Ends_that_have_their_names_give_a_terminal_list_with_the_grade_of_each()
    {
        Fact[] touches = [.. Enumerable.Repeat(new TouchFact { How = "continuity", Place = "b", Put = ["s1"], Against = "e2", Touched = ["e1"], Answered = ["e1"] }, 4)];
        var text = PdfText.All(PaperSet.Make(Worlds.Of([.. Box(1), new EndFact { Id = "e2", Place = "b", Label = "end 2", Common = true }, .. touches])).Bytes("naming-box-1.pdf"));
        Assert.Contains("Every end has its name.", text, StringComparison.Ordinal);
        Assert.Contains("Station 1 end 1", text, StringComparison.Ordinal);
        Assert.Contains("Common end 2", text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(HostileInputTests.Names), MemberType = typeof(HostileInputTests))]
    public void Whatever_people_write_the_sheet_is_whole(string name)
    {
        var paper = PaperSet.Make(Worlds.Of([.. Box(2), new BoxFact { Id = "b", Label = $"b{name}" }, new EndFact { Id = "e1", Place = "b", Label = $"e{name}", Colour = $"c{name}" }])).Single(p => p.FileName.StartsWith("naming-", StringComparison.Ordinal));
        Assert.Matches("^naming-[a-z0-9-]{1,40}\\.pdf$", paper.FileName);
        Assert.Empty(PdfText.Outside(paper.Bytes));
    }

    private static IEnumerable<Fact> Box(int ends) =>
        [Worlds.Property("Made up"), .. Worlds.Stations(ends + 2), .. Enumerable.Range(1, ends).Select(i => new EndFact { Id = $"e{i}", Place = "b", Label = $"end {i}", Colour = "red" })];
}
