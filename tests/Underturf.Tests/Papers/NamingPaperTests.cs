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
