using System.Text;
using System.Xml.Linq;
using Underturf.FieldLog;
using Underturf.Papers;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Tests.Papers;

public sealed class HostileInputTests
{
    public static TheoryData<string> Names =>
    [
        new string('x', 3000),
        string.Join(' ', Enumerable.Repeat("a very long border", 200)),
        "</text><script>alert(1)</script> & \"quoted\" 'too'",
        "tab\tnewline\nnull\u0000bell\u0007end\uFFFE",
        "\u202Ereversed\u202C \u05D2\u05DF \u05D4\u05D6\u05D9\u05DB\u05E8\u05D5\u05DF \u0627\u0644\u062D\u062F\u064A\u0642\u0629",
        "\U0001F333 \U0001F333 tree \u5EAD\u5712",
        "e\u0301\u0302\u0303\u0304\u0305",
        " ",
    ];

    [Theory]
    [MemberData(nameof(Names))]
    public void Whatever_people_write_the_papers_are_whole(string name)
    {
        var papers = PaperSet.Make(Worlds.Of(
        [
            Worlds.Property($"p{name}"), .. Worlds.Stations(6, _ => name, $"b{name}"),
            new GroundFact { Id = "g", What = "lawn", Label = name, Shape = [new Position(0, 0), new Position(40, 0), new Position(40, 30)] },
            new LeftAsFact { Place = "b", State = $"s{name}" },
            new ToldFact { Who = $"w{name}", Text = $"t{name}" },
        ]));
        AllWhole(papers);
    }

    [Fact]
    public void An_empty_log_still_gives_papers() => AllWhole(PaperSet.Make(Notebook.Open(ReadOnlyMemory<byte>.Empty, PracticeBook.Default)));

    [Fact]
    public void Stations_of_a_controller_that_nobody_noted_have_a_chart()
    {
        var papers = PaperSet.Make(Worlds.Of(new StationFact { Id = "s", Controller = "nowhere", Terminal = 3, Waters = ["lily bed"] }));
        AllWhole(papers);
        Assert.Contains("lily bed", PdfText.All(papers.Bytes("station-chart.pdf")), StringComparison.Ordinal);
    }

    private static void AllWhole(IReadOnlyList<Paper> papers)
    {
        Assert.Equal(["findings.pdf", "station-chart.pdf", "plan.svg"], papers.Select(p => p.FileName));
        Assert.Empty(PdfText.Outside(papers[0].Bytes));
        Assert.Empty(PdfText.Outside(papers[1].Bytes));
        Assert.All(papers.Take(2), paper => Assert.Contains(XElement.Parse(Metadata(paper)).Descendants(), e => e.Name.LocalName == "title"));
        var plan = XDocument.Parse(Encoding.UTF8.GetString(papers[2].Bytes.Span));
        Assert.DoesNotContain(plan.Descendants(), e => e.Name.LocalName == "script");
    }

    private static string Metadata(Paper paper)
    {
        var text = Encoding.UTF8.GetString(paper.Bytes.Span);
        var (from, to) = (text.IndexOf("<x:xmpmeta", StringComparison.Ordinal), text.IndexOf("</x:xmpmeta>", StringComparison.Ordinal));
        return text[from..(to + "</x:xmpmeta>".Length)];
    }
}
