using System.Text.Json;
using Json.Schema;
using Underturf.FieldLog;

namespace Underturf.Tests.FieldLog;

/// <summary>docs/field-log.schema.json against what is written and what is refused.</summary>
public sealed class SchemaTests
{
    private static readonly string Text = Repository.Read("docs/field-log.schema.json");

    private static readonly JsonSchema Schema = JsonSchema.FromText(Text);

    [Fact]
    public void Every_sealed_entry_of_every_kind_is_valid() => Cases.Each(FactCases.Any, 400, fact =>
    {
        var entry = new Notebook("writer-a").Note(fact, new DateTimeOffset(2031, 4, 2, 9, 12, 0, TimeSpan.FromHours(-6)));
        AssertValid(Notebook.Text(entry), valid: true);
        AssertValid(Notebook.Text(Erasure.Erase(entry)), valid: true);
    });

    [Fact]
    public void Every_entry_of_a_log_is_valid() => Cases.Each(Notebook.Pages, 20, pages => Assert.All(pages, e => AssertValid(Notebook.Text(e), valid: true)));

    [Theory]
    [InlineData("{\"kind\":\"weather\",\"version\":1,\"rain\":{}}", true)]
    [InlineData("{\"kind\":\"told\",\"version\":2}", true)]
    [InlineData("{\"kind\":\"told\",\"version\":1,\"who\":\"a\",\"text\":\"b\",\"later\":1}", true)]
    [InlineData("{\"kind\":\"told\",\"version\":1,\"who\":\"a\"}", false)]
    [InlineData("{\"kind\":\"told\"}", false)]
    [InlineData("{\"kind\":\"told\",\"version\":1,\"who\":\"a\",\"text\":\" \"}", false)]
    [InlineData("{\"kind\":\"reading\",\"version\":1,\"how\":\"x\",\"value\":\"3 parsec\"}", false)]
    [InlineData("{\"kind\":\"reading\",\"version\":1,\"how\":\"x\",\"value\":\"-3 ohm\"}", false)]
    [InlineData("{\"kind\":\"reading\",\"version\":1,\"how\":\"x\",\"value\":\"-3 V\"}", true)]
    [InlineData("{\"kind\":\"box\",\"version\":1,\"id\":\"b\",\"position\":[450000,4400000]}", false)]
    [InlineData("{\"kind\":\"look\",\"version\":1,\"place\":\"b\",\"minutes\":-1}", false)]
    [InlineData("{\"kind\":\"controller\",\"version\":1,\"id\":\"c\",\"terminals\":6,\"pumpRelay\":\"40 ohm\",\"master\":\"v\"}", true)]
    [InlineData("{\"kind\":\"controller\",\"version\":1,\"id\":\"c\",\"terminals\":6,\"pumpRelay\":false}", true)]
    [InlineData("{\"kind\":\"controller\",\"version\":1,\"id\":\"c\",\"terminals\":6,\"pumpRelay\":\"yes\"}", false)]
    [InlineData("3", false)]
    public void The_schema_and_the_reader_agree(string body, bool valid)
    {
        var line = Notebook.First(body);
        AssertValid(line, valid);
        Assert.Equal(valid, LogDocument.Read(Notebook.File(line)).Errors().Length == 0);
    }

    [Fact]
    public void The_schema_has_the_fields_of_every_record_and_no_others()
    {
        using var schema = JsonDocument.Parse(Text);
        var definitions = schema.RootElement.GetProperty("$defs");
        foreach (var (kind, _, type) in FactKinds.All)
        {
            var definition = definitions.GetProperty("kind-" + kind);
            Assert.Equal(RecordFields.Own(type).Select(f => f.Name), definition.GetProperty("properties").EnumerateObject().Select(p => p.Name));
            Assert.Equal(RecordFields.Own(type).Where(f => f.Required).Select(f => f.Name), definition.GetProperty("required").EnumerateArray().Select(r => r.GetString()!));
        }

        Assert.Equal(FactKinds.All.Count, definitions.EnumerateObject().Count(d => d.Name.StartsWith("kind-", StringComparison.Ordinal)));
        Assert.Equal(RecordFields.Common.Select(f => f.Name).Prepend("at"), definitions.GetProperty("common").GetProperty("properties").EnumerateObject().Select(p => p.Name));
    }

    private static void AssertValid(string line, bool valid)
    {
        using var document = JsonDocument.Parse(line);
        var results = Schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(results.IsValid == valid, $"{line}\n{string.Join('\n', (results.Details ?? []).Where(d => d.Errors is not null).Select(d => $"{d.InstanceLocation}: {string.Join(", ", d.Errors!.Values)}"))}");
    }
}
