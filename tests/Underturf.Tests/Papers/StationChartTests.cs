using Underturf.Papers;

namespace Underturf.Tests.Papers;

public sealed class StationChartTests
{
    [Theory]
    [InlineData(0, 1)]
    [InlineData(5, 1)]
    [InlineData(40, 2)]
    [InlineData(200, 10)]
    public void A_chart_keeps_to_its_pages_and_names_every_station(int stations, int mostPages)
    {
        var pdf = PaperSet.Make(Worlds.Of([Worlds.Property("Made up"), .. Worlds.Stations(stations)])).Bytes("station-chart.pdf");
        using var document = PdfText.Open(pdf);
        Assert.InRange(document.NumberOfPages, 1, mostPages);
        var text = PdfText.All(pdf);
        Assert.All(Enumerable.Range(1, stations), i => Assert.Contains($"long bed {i} ", text, StringComparison.Ordinal));
        Assert.Empty(PdfText.Outside(pdf));
    }

    [Fact]
    public void The_demo_takes_two_pages_and_repeats_the_head_of_its_table()
    {
        using var document = PdfText.Open(Worlds.DemoPapers.Bytes("station-chart.pdf"));
        Assert.Equal(2, document.NumberOfPages);
        Assert.All(document.GetPages(), page => Assert.Contains("Last ohms", PdfText.Words(page), StringComparison.Ordinal));
        Assert.All(document.GetPages(), page => Assert.True(page.Width > page.Height));
    }

    [Fact]
    public void A_long_name_keeps_both_ends_and_a_long_list_says_how_many_more()
    {
        var style = Styles.Body;
        var name = Shorten.Name("the long border of the northern terrace beside the old pump house 12", style, 120, 1);
        Assert.StartsWith("the long", name, StringComparison.Ordinal);
        Assert.EndsWith("12", name, StringComparison.Ordinal);
        Assert.True(Typeface.WidthPoints(name, style) <= 120);
        Assert.Equal("rose walk and 2 more", Shorten.List(["rose walk", "lily bed by the pond", "vine slope"], style, 110, 1));
    }
}
