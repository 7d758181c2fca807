using System.Collections;
using System.Text;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Tests.FieldLog;

public sealed class WriteReadTests
{
    public static TheoryData<string> Kinds => [.. FactKinds.All.Select(k => k.Kind)];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void What_was_written_is_what_is_read(string kind)
    {
        var type = FactKinds.All.Single(k => k.Kind == kind).Type;
        Cases.Each(FactCases.Of(type), 150, fact =>
        {
            var log = Notebook.Read(new Notebook("writer-a").Note(fact));
            Assert.All(log.Problems, p => Assert.Contains("which is not in this log", p.Reason, StringComparison.Ordinal));
            AssertSame(fact, log.Entries.Single().Fact!);
            Assert.Equal(BodyText.Write(fact), BodyText.Write(log.Entries.Single().Fact!));
        });
    }

    [Fact]
    public void The_standard_catalogue_knows_every_kind_under_its_stored_name()
    {
        Assert.Equal(
            FactKinds.All.OrderBy(k => k.Kind, StringComparer.Ordinal),
            KindCatalogue.Standard.All.Select(c => (c.Kind, c.Version, c.Type)).OrderBy(k => k.Kind, StringComparer.Ordinal));
    }

    [Theory]
    [InlineData(240, "ft", "240 ft")]
    [InlineData(1.5, "in", "1.5 in")]
    [InlineData(0.1, "m", "0.1 m")]
    [InlineData(0, "ft", "0 m")]
    public void A_length_is_written_in_the_unit_that_gives_the_shortest_exact_text(double number, string unit, string text)
    {
        var body = Encoding.UTF8.GetString(BodyText.Write(new CableFact { Id = "c", From = "a", To = "b", Length = Length.FromSi(Units.From(number, unit)) }));
        Assert.Contains($"\"length\":\"{text}\"", body, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(18, "18 AWG")]
    [InlineData(0, "0 AWG")]
    public void A_gauge_is_written_by_its_number(int awg, string text)
    {
        var body = Encoding.UTF8.GetString(BodyText.Write(new CableFact { Id = "c", From = "a", To = "b", Gauge = WireSize.FromAwg(awg) }));
        Assert.Contains($"\"gauge\":\"{text}\"", body, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2031-04-02T09:12-06:00")]
    [InlineData("2031-04-02T09:12:30-06:00")]
    [InlineData("2031-04-02T09:12:30.1234567+00:00")]
    public void The_time_keeps_its_offset(string text)
    {
        var at = DateTimeOffset.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
        var entry = Notebook.Read(new Notebook("writer-a").Note(Say.Told("dry"), at)).Entries.Single();
        Assert.Equal((at, at.Offset), (entry.At, entry.At.Offset));
        Assert.Contains($"\"at\":\"{text}\"", Notebook.Text(entry), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_time_it_was_so_when_it_was_noted()
    {
        var entry = new Notebook("writer-a", startMilliseconds: 0).Note(Say.Told("dry"));
        Assert.Equal(DateTimeOffset.UnixEpoch.AddSeconds(1), entry.At);
    }

    private static void AssertSame(Fact expected, Fact actual)
    {
        Assert.Equal(expected.GetType(), actual.GetType());
        foreach (var property in expected.GetType().GetProperties())
        {
            var (a, b) = (property.GetValue(expected), property.GetValue(actual));
            Assert.True(a is IEnumerable x and not string ? x.Cast<object>().SequenceEqual(((IEnumerable)b!).Cast<object>()) : Equals(a, b), $"{property.Name}: {a} became {b}");
        }
    }
}
