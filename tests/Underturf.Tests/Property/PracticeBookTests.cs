using System.Text;
using System.Text.Json.Nodes;
using Underturf.Property.Practice;

namespace Underturf.Tests.Property;

public sealed class PracticeBookTests
{
    [Fact]
    public void Every_block_of_numbers_names_its_source()
    {
        foreach (var block in Blocks(JsonNode.Parse(PracticeBook.DefaultBytes())!.AsObject()))
        {
            Assert.True(block.AsObject().TryGetPropertyValue("source", out var source), block.GetPath());
            Assert.NotEmpty(source!.GetValue<string>());
        }
    }

    [Fact]
    public void A_block_that_is_missing_is_named_in_plain_words()
    {
        var root = JsonNode.Parse(PracticeBook.DefaultBytes())!.AsObject();
        root.Remove("relay");
        var problem = PracticeBook.Read(Encoding.UTF8.GetBytes(root.ToJsonString())).Problem!;
        Assert.Equal("lacks 'relay'", problem.Reason);
    }

    [Fact]
    public void A_book_without_faults_is_refused()
    {
        var root = JsonNode.Parse(PracticeBook.DefaultBytes())!.AsObject();
        root["faults"] = new JsonArray();
        var problem = PracticeBook.Read(Encoding.UTF8.GetBytes(root.ToJsonString())).Problem!;
        Assert.Contains("faults", problem.Place, StringComparison.Ordinal);
        Assert.Contains("no fault", problem.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"ohms\": 31,", "\"ohms\": -31,", "coil.ohms", "more than zero")]
    [InlineData("\"ohms\": 31,", "\"ohms\": \"thirty\",", "$.coil.ohms", "")]
    [InlineData("\"detour\": 1.25,", "", "$", "detour")]
    [InlineData("\"detour\": 1.25,", "\"detour\": 1.25, \"detuor\": 2,", "$.wire.detuor", "detuor")]
    [InlineData("\"instrument\": \"clamp meter\"", "\"instrument\": \"clamp\"", "probe running amps", "unknown instrument 'clamp'")]
    [InlineData("\"repair\": \"terminals exchanged\"", "\"repair\": \"swapped back\"", "faults", "unknown repair 'swapped back'")]
    [InlineData("\"id\": \"open-coil\"", "\"id\": \"shorted-coil\"", "faults", "twice")]
    [InlineData("\"rate\": 0.012,", "\"rate\": 0.9,", "fault open-coil", "below 0.5")]
    [InlineData("\"staysShut\": 0.9,", "\"staysShut\": 1.9,", "fault stuck-shut", "outside 0 to 1")]
    [InlineData("\"placeNoticed\": 0.9,", "\"placeNoticed\": 1.2,", "run.placeNoticed", "between 0 and 1")]
    [InlineData("\"findMinutes\": 35", "\"findMinutes\": -35", "walk.findMinutes", "below zero")]
    [InlineData("\"version\": \"2026.11\",", "", "$", "version")]
    [InlineData("\"version\": \"2026.11\",", "\"version\": \"a\\u001bb\",", "version", "cannot be printed")]
    [InlineData("\"ohms\": 31,", "\"ohms\": 1e308,", "coil.ohms", "too large")]
    [InlineData("\"stationAwg\": 18,", "\"stationAwg\": 180,", "wire.stationAwg", "no wire gauge")]
    [InlineData("\"differ\": 0.03,", "\"differ\": 30,", "coil.differ", "too wide")]
    [InlineData("\"ratedVolts\": 24", "\"ratedVolts\": 26.5", "supply.ratedVolts", "below supply.volts")]
    [InlineData("\"ratedVoltAmperes\": 40", "\"ratedVoltAmperes\": 0", "supply.ratedVoltAmperes", "more than zero")]
    [InlineData("\"relay\":", "\"relais\":", "$", "relais")]
    [InlineData("\"chatterVolts\": 15.5", "\"chatterVolts\": 30", "coil.chatterVolts", "below coil.pullInVolts")]
    public void What_is_wrong_with_a_book_is_told_with_its_place(string old, string edited, string place, string reason)
    {
        var text = Encoding.UTF8.GetString(PracticeBook.DefaultBytes());
        Assert.Contains(old, text, StringComparison.Ordinal);
        var problem = PracticeBook.Read(Encoding.UTF8.GetBytes(text.Replace(old, edited, StringComparison.Ordinal))).Problem;
        Assert.NotNull(problem);
        Assert.Contains(place, problem.Place, StringComparison.Ordinal);
        Assert.Contains(reason, problem.Reason, StringComparison.Ordinal);
        Assert.Contains("underturf book", problem.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("{")]
    [InlineData("{}")]
    [InlineData("not json at all")]
    public void What_is_no_book_is_refused(string text)
    {
        var problem = PracticeBook.Read(Encoding.UTF8.GetBytes(text)).Problem;
        Assert.NotNull(problem);
        Assert.StartsWith("practice book", problem.Place, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{\"head\":{\"format\":1}}\n{\"head\":{}}", "is a field log, not a practice book")]
    [InlineData("{\"kind\":\"told\"}\n", "is a file of notes, not a practice book")]
    [InlineData("# Notes", "no field of a practice book stands in it")]
    [InlineData("{\"name\":\"something\"}", "no field of a practice book stands in it")]
    [InlineData("{\"version\":7}", "is of another kind")]
    [InlineData("{\"version\":\"1\",\"wire\":[]}", "is of another kind")]
    [InlineData("{\"version\":\"1\",}", "is not JSON from here on")]
    public void A_file_that_is_none_is_called_what_it_is_and_never_by_the_words_of_the_program(string text, string reason)
    {
        var problem = PracticeBook.Read(Encoding.UTF8.GetBytes(text)).Problem!;
        Assert.Contains(reason, problem.Reason, StringComparison.Ordinal);
        Assert.Contains("underturf book", problem.Remedy, StringComparison.Ordinal);
        Assert.DoesNotContain("JSON value", problem.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("Underturf.", problem.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_book_in_UTF_16_is_refused_with_words() =>
        Assert.NotNull(PracticeBook.Read(Encoding.Unicode.GetBytes(Encoding.UTF8.GetString(PracticeBook.DefaultBytes()))).Problem);

    [Fact]
    public void A_byte_order_mark_before_a_book_does_no_harm() =>
        Assert.True(PracticeBook.Read((byte[])[0xEF, 0xBB, 0xBF, .. PracticeBook.DefaultBytes()]).Succeeded);

    [Fact]
    public void A_book_without_a_needed_number_or_with_null_is_refused()
    {
        foreach (var block in new[] { "wire", "coil", "supply", "relay", "instruments", "probes", "run", "look", "walk", "faults", "repairs", "loss", "questions" })
        {
            var book = JsonNode.Parse(PracticeBook.DefaultBytes())!.AsObject();
            book[block] = null;
            Assert.NotNull(PracticeBook.Read(Encoding.UTF8.GetBytes(book.ToJsonString())).Problem);
        }
    }

    private static IEnumerable<JsonNode> Blocks(JsonObject book) => book
        .Where(p => p.Key != "version")
        .SelectMany(p => p.Value is JsonArray list ? list.OfType<JsonNode>() : [p.Value!]);
}
