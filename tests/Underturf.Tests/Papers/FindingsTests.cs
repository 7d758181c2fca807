using Underturf.FieldLog;
using Underturf.Papers;
using Underturf.Quantities;
using Underturf.Tests.Reasoning.Water;

namespace Underturf.Tests.Papers;

public sealed class FindingsTests
{
    private static readonly ReadOnlyMemory<byte> findings = Worlds.DemoPapers.Bytes("findings.pdf");
    private static readonly string text = PdfText.Squeezed(PdfText.All(findings));

    [Fact]
    public void Every_open_question_stands_with_its_explanations_moves_and_cautions()
    {
        foreach (var question in Worlds.Demo.Answer().Questions)
        {
            var (head, seen) = QuestionPart.Name(question);
            Assert.Contains(PdfText.Squeezed(seen), text, StringComparison.OrdinalIgnoreCase);
            Assert.Contains(PdfText.Squeezed(head), text, StringComparison.OrdinalIgnoreCase);
            Assert.All(question.Explanations, e => Assert.Contains(PdfText.Squeezed(e.Summary), text, StringComparison.OrdinalIgnoreCase));
            Assert.All(question.Moves.Take(1), m => Assert.Contains(PdfText.Squeezed(m.Caution)[..12], text, StringComparison.OrdinalIgnoreCase));
        }
    }

    [Fact]
    public void The_next_move_comes_before_the_first_question()
    {
        var move = text.IndexOf("Nextmove", StringComparison.Ordinal);
        Assert.InRange(move, 0, text.IndexOf("Openquestion", StringComparison.Ordinal));
    }

    [Fact]
    public void Each_page_is_numbered_and_says_that_local_codes_prevail()
    {
        using var document = PdfText.Open(findings);
        foreach (var page in document.GetPages())
        {
            var words = PdfText.Words(page);
            Assert.Contains($"page {page.Number} of {document.NumberOfPages}", words, StringComparison.Ordinal);
            Assert.Contains("Local codes and licensed practice prevail", words, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_typeface_is_in_the_file_and_nothing_stands_outside_the_page()
    {
        using var document = PdfText.Open(findings);
        Assert.All(document.GetPages().SelectMany(p => p.Letters), l => Assert.Contains("Hyperlegible", l.FontName, StringComparison.Ordinal));
        Assert.Contains("FontFile2", System.Text.Encoding.Latin1.GetString(findings.Span), StringComparison.Ordinal);
        Assert.Empty(PdfText.Outside(findings));
    }

    [Fact]
    public void What_is_missing_and_how_places_were_left_is_said()
    {
        Assert.Contains("Stationswhosevalvenobodyhasfound", text, StringComparison.Ordinal);
        Assert.Contains("Conductorendswithoutamate", text, StringComparison.Ordinal);
        Assert.Contains("holeopen,boardsoverit", text, StringComparison.Ordinal);
        Assert.Contains("Stationsthatnobodyranandwatched", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_water_part_says_what_runs_away_what_each_station_gives_and_what_shuts_what()
    {
        var orchard = Orchard.Piped().Meter("2.4 gpm").Meter("2.4 gpm").Meter("13.1 gpm", "s1").Meter("2.6 gpm", "s2").Turn("i2", "shut")
            .With(new WaterSupplyFact { Id = "poc", Price = 4, PriceOf = new Volume(Units.From(1000, "gal")) })
            .With(new IsolationValveFact { Id = "i3", Label = "old", Shuts = ["s4"] })
            .With(new IsolationValveFact { Id = "i4", Label = "found" });
        var notebook = orchard.Notebook();
        var paper = PdfText.Squeezed(PdfText.All(PaperSet.Make(notebook).Bytes("findings.pdf")));
        var report = notebook.Water()!;
        Assert.Equal(["i4:", "i2:3,4", "i1:1,2", "i3:4"], report.Shuts.Select(s => $"{s.Id}:{string.Join(',', s.Stations)}"));
        Assert.Equal([null, true, true, false], report.Shuts.Select(s => s.ByPipes));
        Assert.All(
            ["inmoneyaday", "nobodyhasnotedwhat", PdfText.Squeezed(report.Idle!), PdfText.Squeezed(report.Stations[1].State!), "Ofstations3,4nowaterwasreadorseen"],
            said => Assert.Contains(said, paper, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void The_water_part_says_what_runs_out_at_the_low_end_and_what_meter_and_backflow_device_take()
    {
        var notebook = Orchard.Unpiped()
            .With(new WaterSupplyFact { Id = "poc", Meter = new Length(0.01905), BackflowKind = "double check", BackflowSize = new Length(0.0254) })
            .With(new OutletFact { Id = "low", Station = "s3", What = "rotor", Count = 2, Elevation = new Length(1) })
            .With(new OutletFact { Id = "high", Station = "s3", What = "rotor", Count = 6, Elevation = new Length(4) })
            .Notebook();
        var paper = PdfText.Squeezed(PdfText.All(PaperSet.Make(notebook).Bytes("findings.pdf")));
        Assert.All(
            ["What runs out at the low end", "After it shuts 2 rotors at the low end go on running", "Outlets with check valves at the low", "made to hold 9.8 ft of water", "Lost in the meter (3/4 in, as is usual of its size)", "double check of 1 in"],
            said => Assert.Contains(PdfText.Squeezed(said), paper, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("us", 612, 792)]
    [InlineData("si", 595.28, 841.89)]
    public void The_paper_is_the_one_of_the_propertys_units(string units, double widthPoints, double heightPoints)
    {
        using var document = PdfText.Open(PaperSet.Make(Worlds.Of(Worlds.Property("Made up", units))).Bytes("findings.pdf"));
        Assert.Equal(widthPoints, document.GetPage(1).Width, 0.1);
        Assert.Equal(heightPoints, document.GetPage(1).Height, 0.1);
    }
}
