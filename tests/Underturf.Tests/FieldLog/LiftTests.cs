using System.Text.Json.Nodes;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Tests.FieldLog;

/// <summary>A kind invented here: version 1 gave a valve's turns as text, version 2 as a number, version 3 names who turned it.</summary>
public sealed class LiftTests
{
    private static readonly KindCatalogue Kinds = new(
    [
        .. KindCatalogue.Standard.All,
        KindCodec.Create("gate", 3, Read, Write, TurnsAsNumber, NameWhoTurned),
    ]);

    [Theory]
    [InlineData("{\"kind\":\"gate\",\"version\":1,\"turns\":\"7\"}", 7, "nobody named")]
    [InlineData("{\"kind\":\"gate\",\"version\":2,\"turns\":7}", 7, "nobody named")]
    [InlineData("{\"kind\":\"gate\",\"version\":3,\"turns\":7,\"turnedBy\":\"ann\"}", 7, "ann")]
    public void An_older_version_is_lifted_step_by_step(string body, int turns, string turnedBy)
    {
        var line = Notebook.First(body);
        var log = LogDocument.Read(Notebook.File(line), Kinds);
        Assert.Empty(log.Problems);
        Assert.Equal(new GateFact { Turns = turns, TurnedBy = turnedBy }, Assert.Single(log.Standing).Fact! with { Photos = new GateFact { Turns = 0, TurnedBy = "" }.Photos });
        Assert.Equal(Notebook.File(line), log.ToBytes());
    }

    [Fact]
    public void A_body_that_cannot_be_lifted_is_told()
    {
        var log = LogDocument.Read(Notebook.File(Notebook.First("{\"kind\":\"gate\",\"version\":1,\"turns\":\"many\"}")), Kinds);
        log.OnlyProblem().Is(Severity.Error, "line 1, writer-x/1, field 'turns'", "is not a count", "Note it again");
        Assert.Empty(log.Standing);
    }

    [Theory]
    [InlineData("{\"kind\":\"weather\",\"version\":1,\"rain\":true}", "of the kind 'weather'")]
    [InlineData("{\"kind\":\"told\",\"version\":2,\"who\":\"a\",\"text\":\"b\"}", "of version 2 of 'told'")]
    public void An_unknown_kind_or_version_is_kept_through_everything_and_never_used(string body, string reason)
    {
        var (line, mine) = (Notebook.First(body), new Notebook("writer-a").Note(Say.Told("dry")));
        var log = LogMerge.Union(Notebook.Read(mine), LogDocument.Read(Notebook.File(line)));
        log.OnlyProblem().Is(Severity.Notice, "line 1, writer-x/1", reason, "newer version");
        Assert.Equal(Notebook.File(line, Notebook.Text(mine)), log.ToBytes());
        Assert.Equal(["dry"], log.Standing.Texts());
        Assert.Single(log.Standing);
        Assert.Null(log.Entries[0].Fact);
    }

    [Fact]
    public void A_kind_with_a_version_that_nothing_lifts_cannot_be_defined() =>
        Assert.Throws<ArgumentException>(() => KindCodec.Create("gate", 3, Read, Write, TurnsAsNumber));

    private static GateFact Read(Fields f) => new() { Turns = f.Whole("turns", least: 0), TurnedBy = f.Text("turnedBy") };

    private static void Write(BodyWriter w, GateFact fact)
    {
        w.Whole("turns", fact.Turns);
        w.Text("turnedBy", fact.TurnedBy);
    }

    private static Problem? TurnsAsNumber(JsonObject body)
    {
        if (body["turns"] is not JsonValue value || !value.TryGetValue<string>(out var text) || !int.TryParse(text, out var turns))
        {
            return new Problem("field 'turns'", "is not a count", "Note it again as a number");
        }

        body["turns"] = turns;
        return null;
    }

    private static Problem? NameWhoTurned(JsonObject body)
    {
        body["turnedBy"] = "nobody named";
        return null;
    }

    private sealed record GateFact : Fact
    {
        public required int Turns { get; init; }

        public required string TurnedBy { get; init; }
    }
}
