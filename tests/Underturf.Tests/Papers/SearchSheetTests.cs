using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using System.Text.Json;
using System.Xml.Linq;
using Underturf.FieldLog;
using Underturf.Papers;
using Underturf.Tests.Reasoning.Location;

namespace Underturf.Tests.Papers;

public sealed class SearchSheetTests
{
    private static readonly TraceFact Swell = new() { How = "wire tracer", Of = ["s1"], Route = [new Position(0, 0), new Position(33, 7)], Ended = "swell" };

    [Fact]
    public void The_sheet_shows_likely_ground_and_numbered_stops()
    {
        var notebook = Grounds.Corner(Swell).Notebook();
        var location = notebook.Locate().Value;
        var sheet = XDocument.Parse(Encoding.UTF8.GetString(SearchSheet.Make(notebook, location).Value));
        var texts = sheet.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value).ToList();
        Assert.Contains("Where to look: valve of station 1", texts);
        Assert.Contains("1", texts);
        Assert.Equal(3, sheet.Descendants().Single(e => (string?)e.Attribute("class") == "heat").Elements().Count());
        Assert.Contains(texts, t => t.Contains("Local codes and licensed practice prevail", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_a_plan_there_is_no_sheet()
    {
        var notebook = Grounds.Bare(new ControllerFact { Id = "c", Terminals = 4 }, new StationFact { Id = "s1", Controller = "c", Terminal = 1 }, new SpotFact { Id = "hedge" }).Notebook();
        Assert.Equal("has no plan: what is known is by named spots", SearchSheet.Make(notebook, notebook.Locate().Value).Problem!.Reason);
    }

    [Fact]
    public void Where_no_search_for_all_pays_the_sheet_says_to_name_one_thing()
    {
        var notebook = Grounds.Corner(new SoughtFact { Id = "x", What = "splice" }).Notebook();
        var drawn = XDocument.Parse(Encoding.UTF8.GetString(SearchSheet.Make(notebook, notebook.Locate().Value with { Route = null }).Value));
        var sheet = string.Join(' ', drawn.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value));
        Assert.Contains("Name one thing", sheet, StringComparison.Ordinal);
        Assert.DoesNotContain("Then stop", sheet, StringComparison.Ordinal);
    }

    [Fact]
    public void The_picture_has_a_pixel_for_each_cell()
    {
        var heat = Grounds.Corner(Swell).Only().Heat!;
        var png = HeatPicture.Make(heat);
        Assert.Equal((heat.Wide, heat.Deep), (BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20))));
        var at = png.AsSpan().IndexOf("IDAT"u8);
        using var zlib = new ZLibStream(new MemoryStream(png, at + 4, BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(at - 4))), CompressionMode.Decompress);
        using var rows = new MemoryStream();
        zlib.CopyTo(rows);
        Assert.Equal(heat.Deep * (heat.Wide + 1), rows.Length);
        Assert.Contains((byte)3, rows.ToArray());
    }

    [Fact]
    public void Outlines_as_GeoJson_lie_where_the_property_lies()
    {
        var notebook = Grounds.Corner(Swell, new PropertyFact { Name = "corner", Zone = "Etc/UTC", Latitude = 40, Longitude = -100 }).Notebook();
        using var json = JsonDocument.Parse(HeatGeoJson.Make(notebook.Locate().Value, notebook.History.Facts.Property).Value);
        var features = json.RootElement.GetProperty("features").EnumerateArray().ToList();
        Assert.Equal(3, features.Count(f => f.GetProperty("geometry").GetProperty("type").GetString() == "MultiPolygon"));
        var stop = features.Where(f => f.GetProperty("geometry").GetProperty("type").GetString() == "Point").MaxBy(f => f.GetProperty("properties").GetProperty("probability").GetDouble()).GetProperty("geometry").GetProperty("coordinates");
        Assert.Equal(-100 + (33 / 85_394.0), stop[0].GetDouble(), 4);
        Assert.Equal(40 + (7 / 111_035.0), stop[1].GetDouble(), 4);
        foreach (var polygon in features.Where(f => f.GetProperty("geometry").GetProperty("type").GetString() == "MultiPolygon").SelectMany(f => f.GetProperty("geometry").GetProperty("coordinates").EnumerateArray()))
        {
            Assert.All(polygon.EnumerateArray(), ring => Assert.Equal(ring[0].ToString(), ring[ring.GetArrayLength() - 1].ToString()));
        }
    }

    [Fact]
    public void Without_latitude_and_longitude_there_is_no_GeoJson()
    {
        var notebook = Grounds.Corner(Swell).Notebook();
        Assert.Equal("has no latitude and longitude, which GeoJSON needs", HeatGeoJson.Make(notebook.Locate().Value, notebook.History.Facts.Property).Problem!.Reason);
    }
}
