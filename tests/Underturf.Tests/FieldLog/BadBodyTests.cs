using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Tests.FieldLog;

/// <summary>Sealed entries whose body cannot be used: the field is named, the entry stays in the chain, no fact is made of it.</summary>
public sealed class BadBodyTests
{
    [Theory]
    [InlineData("{}", "kind", "is missing", "Add \"kind\"")]
    [InlineData("{\"kind\":3,\"version\":1}", "kind", "is 3", "text in quotes")]
    [InlineData("{\"kind\":\"told\"}", "version", "is missing", "Add \"version\"")]
    [InlineData("{\"kind\":\"told\",\"version\":0}", "version", "is 0", "1 or more")]
    [InlineData("{\"kind\":\"told\",\"version\":1,\"who\":\"a\"}", "text", "is missing", "Add \"text\"")]
    [InlineData("{\"kind\":\"told\",\"version\":1,\"who\":\"a\",\"text\":\" \"}", "text", "is empty", "Write what it is")]
    [InlineData("{\"kind\":\"told\",\"version\":1,\"who\":\"a\",\"text\":[]}", "text", "is []", "text in quotes")]
    [InlineData("{\"kind\":\"told\",\"version\":1,\"who\":\"a\",\"text\":\"b\",\"sure\":\"Measured\"}", "sure", "is 'Measured'", "measured, told")]
    [InlineData("{\"kind\":\"told\",\"version\":1,\"who\":\"a\",\"text\":\"b\",\"at\":\"2031-04-02 09:12\"}", "at", "is '2031-04-02 09:12'", "offset")]
    [InlineData("{\"kind\":\"told\",\"version\":1,\"who\":\"a\",\"text\":\"b\",\"at\":\"2031-04-02T09:12\"}", "at", "is '2031-04-02T09:12'", "offset")]
    [InlineData("{\"kind\":\"told\",\"version\":1,\"who\":\"a\",\"text\":\"b\",\"photos\":[\"x\"]}", "photos", "not a SHA-256", "64 lower-case")]
    [InlineData("{\"kind\":\"reading\",\"version\":1,\"how\":\"station ohms\"}", "value", "is missing", "31.5 ohm")]
    [InlineData("{\"kind\":\"reading\",\"version\":1,\"how\":\"station ohms\",\"value\":31.5}", "value", "is 31.5", "text in quotes")]
    [InlineData("{\"kind\":\"reading\",\"version\":1,\"how\":\"station ohms\",\"value\":\"31.5\"}", "value", "has no unit", "12 ohm")]
    [InlineData("{\"kind\":\"reading\",\"version\":1,\"how\":\"station ohms\",\"value\":\"31.5 blah\"}", "value", "no unit that can stand here", "ohm, milliohm, kohm")]
    [InlineData("{\"kind\":\"reading\",\"version\":1,\"how\":\"station ohms\",\"value\":\"-5 ohm\"}", "value", "less than no resistance", "note the volts")]
    [InlineData("{\"kind\":\"reading\",\"version\":1,\"how\":\"station ohms\",\"value\":\"1e999 ohm\"}", "value", "too large", "Check the number")]
    [InlineData("{\"kind\":\"reading\",\"version\":1,\"how\":\"station ohms\",\"value\":\"5 ohm\",\"stations\":\"s1\"}", "stations", "is \"s1\"", "list of texts")]
    [InlineData("{\"kind\":\"cable\",\"version\":1,\"id\":\"c\",\"from\":\"a\",\"to\":\"b\",\"length\":\"240 feets\"}", "length", "'feets', which is not a unit of length", "m, mm, cm")]
    [InlineData("{\"kind\":\"cable\",\"version\":1,\"id\":\"c\",\"from\":\"a\",\"to\":\"b\",\"length\":\"-2 ft\"}", "length", "less than nothing", "minus sign")]
    [InlineData("{\"kind\":\"cable\",\"version\":1,\"id\":\"c\",\"from\":\"a\",\"to\":\"b\",\"gauge\":\"fat\"}", "gauge", "is not a wire size", "18 AWG")]
    [InlineData("{\"kind\":\"cable\",\"version\":1,\"id\":\"c\",\"from\":\"a\",\"to\":\"b\",\"conductors\":0}", "conductors", "is 0", "1 or more")]
    [InlineData("{\"kind\":\"cable\",\"version\":1,\"id\":\"c\",\"from\":\"a\",\"to\":\"b\",\"route\":[[1]]}", "route", "is [1]", "[east, north]")]
    [InlineData("{\"kind\":\"box\",\"version\":1,\"id\":\"b\",\"position\":[1e999,0]}", "position", "is 1e999", "finite number")]
    [InlineData("{\"kind\":\"box\",\"version\":1,\"id\":\"b\",\"position\":[450000,4400000]}", "position", "100 km", "map coordinates")]
    [InlineData("{\"kind\":\"box\",\"version\":1,\"id\":\"b\",\"position\":{\"x\":1}}", "position", "is {", "[east, north]")]
    [InlineData("{\"kind\":\"look\",\"version\":1,\"place\":\"b\",\"minutes\":-3}", "minutes", "is -3", "0 or more")]
    [InlineData("{\"kind\":\"controller\",\"version\":1,\"id\":\"c\",\"terminals\":1.5}", "terminals", "is 1.5", "whole number")]
    [InlineData("{\"kind\":\"controller\",\"version\":1,\"id\":\"c\",\"terminals\":6,\"rated\":\"-40 VA\"}", "rated", "less than nothing", "minus sign")]
    [InlineData("{\"kind\":\"controller\",\"version\":1,\"id\":\"c\",\"terminals\":6,\"pumpRelay\":40}", "pumpRelay", "is 40", "true or false without quotes, or its ohms")]
    [InlineData("{\"kind\":\"controller\",\"version\":1,\"id\":\"c\",\"terminals\":6,\"pumpRelay\":\"40 V\"}", "pumpRelay", "'V', which is not a unit of resistance", "ohm")]
    [InlineData("{\"kind\":\"ground\",\"version\":1,\"id\":\"g\",\"what\":\"moon\",\"shape\":[[0,0]]}", "what", "is 'moon'", "hardscape, bed")]
    [InlineData("{\"kind\":\"ground\",\"version\":1,\"id\":\"g\",\"what\":\"bed\",\"shape\":[]}", "shape", "has no position", "one position")]
    [InlineData("{\"kind\":\"property\",\"version\":1,\"name\":\"n\",\"zone\":\"z\",\"latitude\":91}", "latitude", "is 91", "from -90 to 90")]
    [InlineData("{\"kind\":\"end\",\"version\":1,\"id\":\"e\",\"place\":\"p\",\"common\":\"yes\"}", "common", "is \"yes\"", "true or false")]
    [InlineData("{\"kind\":\"test\",\"version\":1,\"station\":\"s\",\"behaved\":\"odd\"}", "behaved", "is 'odd'", "opens, chatters")]
    public void A_wrong_field_is_named_with_what_would_do(string body, string field, string reason, string remedy)
    {
        var log = LogDocument.Read(Notebook.File(Notebook.First(body)));
        var problem = Assert.Single(log.Errors(), p => p.Place == $"line 1, writer-x/1, field '{field}'");
        problem.Is(Severity.Error, problem.Place, reason, remedy);
        Assert.Null(Assert.Single(log.Entries).Fact);
        Assert.Empty(log.Standing);
    }

    [Theory]
    [InlineData("3")]
    [InlineData("[]")]
    [InlineData("\"told\"")]
    public void A_body_must_be_an_object(string body) =>
        LogDocument.Read(Notebook.File(Notebook.First(body))).OnlyProblem().Is(Severity.Error, "line 1, writer-x/1", "not an object", "kind");

    [Fact]
    public void All_wrong_fields_of_a_body_are_told_at_once()
    {
        var log = LogDocument.Read(Notebook.File(Notebook.First("{\"kind\":\"cable\",\"version\":1,\"from\":\"a\",\"gauge\":\"x\",\"length\":\"y\"}")));
        Assert.Equal(["id", "to", "length", "gauge"], log.Errors().Select(p => p.Place.Split('\'')[1]));
    }

    [Fact]
    public void A_field_that_is_not_known_is_noticed_kept_and_costs_nothing()
    {
        var line = Notebook.First("{\"kind\":\"told\",\"version\":1,\"who\":\"a\",\"text\":\"dry\",\"vale\":{\"deep\":[1,2]}}");
        var log = LogDocument.Read(Notebook.File(line));
        log.OnlyProblem().Is(Severity.Notice, "line 1, writer-x/1, field 'vale'", "not a field of 'told'", "who, text, about");
        Assert.Equal(["dry"], log.Standing.Texts());
        Assert.Equal(Notebook.File(line), LogMerge.Union(log, log).ToBytes());
    }

    [Fact]
    public void Null_counts_as_absent()
    {
        var log = LogDocument.Read(Notebook.File(Notebook.First("{\"kind\":\"told\",\"version\":1,\"who\":\"a\",\"text\":\"dry\",\"about\":null,\"photos\":null}")));
        Assert.Empty(log.Problems);
        Assert.Null(Assert.IsType<ToldFact>(log.Standing.Single().Fact).About);
    }

    [Theory]
    [InlineData("-0.4 V", -0.4)]
    [InlineData("-12 mA", -0.012)]
    [InlineData("-2 psi", -13789.514586336722)]
    public void Volts_amperes_and_pressures_may_be_negative(string text, double si) => Assert.Equal(si, Shown.Parse(text).Value.Value!.Value.Si, 1e-9);

    [Fact]
    public void Over_range_is_a_value_of_its_own() => Assert.True(Shown.Parse("over range").Value.IsOverRange);

    [Theory]
    [InlineData("OL")]
    [InlineData("O.L")]
    [InlineData(" ol ")]
    public void What_meters_print_for_it_is_over_range_too(string display) => Assert.True(Shown.Parse(display).Value.IsOverRange);

    [Theory]
    [InlineData("30,5 ohm", "30.5 ohm")]
    [InlineData("1,250 ohm", "1250 ohm")]
    public void A_comma_in_a_number_is_refused_with_both_ways_to_mean_it(string text, string meant)
    {
        var problem = Shown.Parse(text).Problem!;
        Assert.Contains("comma", problem.Reason, StringComparison.Ordinal);
        Assert.Contains($"\"{meant}\"", problem.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_shown_keeps_the_text_that_was_written() => Assert.Equal("1.20 kΩ", Shown.Parse("1.20 kΩ").Value.Value!.Value.Text);
}
