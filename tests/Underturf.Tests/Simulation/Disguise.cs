using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Tests.Property;

namespace Underturf.Tests.Simulation;

/// <summary>The same property told by somebody else: other ids and labels, another order of noting, other chance errors of the instruments.</summary>
internal sealed class Disguise(ulong seed)
{
    private const double MostChange = 0.005;
    private static readonly string[] IdFields = ["id", "a", "b", "controller", "box", "station", "place", "farEnd", "cable", "from", "to", "valve", "about", "target", "stations", "carries", "joins", "mates"];
    private static readonly string[] LabelFields = ["label", "waters", "watered"];

    private readonly SeededGenerator chance = new(seed);
    private readonly Dictionary<string, string> ids = new(StringComparer.Ordinal);
    private readonly Dictionary<EntryId, EntryId> entries = [];

    public string Label(string label) => $"{label} again";

    /// <summary>A place as it is called in the other log.</summary>
    public string Named(string place) => Label(place);

    public LogDocument Of(LogDocument log)
    {
        var made = new List<Entry>();
        var clock = new HybridTime(DateTimeOffset.Parse("2031-05-01T08:00:00Z", CultureInfo.InvariantCulture).ToUnixTimeMilliseconds(), 0);
        foreach (var entry in log.Entries.Where(e => e.Fact is not StrikeFact).Shuffled(chance).Concat(log.Entries.Where(e => e.Fact is StrikeFact)))
        {
            clock = HybridTime.Next(clock, clock.UnixMilliseconds + 1000);
            var note = Pen.Seal("another-garden", "somebody-else", made.Count == 0 ? null : made[^1].Header, clock, Body(entry)).Value;
            entries[entry.Id] = note.Id;
            made.Add(note);
        }

        return LogDocument.Read(ReadOnlyMemory<byte>.Empty).With(made);
    }

    private byte[] Body(Entry entry)
    {
        var body = JsonNode.Parse(entry.Line.Span)!["body"]!.AsObject();
        foreach (var field in body.Select(p => p.Key).ToArray())
        {
            if (IdFields.Contains(field))
            {
                Replace(body, field, Id);
            }
            else if (LabelFields.Contains(field))
            {
                Replace(body, field, Label);
            }
        }

        if (entry.Fact is StrikeFact strike)
        {
            var (writer, seq) = (strike.Entry.Split('/')[0], long.Parse(strike.Entry.Split('/')[1], CultureInfo.InvariantCulture));
            body["entry"] = entries[new EntryId(writer, seq)].ToString();
        }
        else if (entry.Fact is ReadingFact { Value.Value: { } value })
        {
            body["value"] = Disturbed(value.Text);
        }

        return Encoding.UTF8.GetBytes(body.ToJsonString());
    }

    private static void Replace(JsonObject body, string field, Func<string, string> change) => body[field] = body[field] switch
    {
        JsonArray list => new JsonArray([.. list.Select(v => (JsonNode)change(v!.GetValue<string>()))]),
        var one => change(one!.GetValue<string>()),
    };

    /// <summary>An id that keeps nothing of the old one, its place in the order of ids included.</summary>
    private string Id(string id)
    {
        if (!ids.TryGetValue(id, out var other))
        {
            other = $"x{chance.NextUInt64():x16}";
            ids[id] = other;
        }

        return other;
    }

    private string Disturbed(string text)
    {
        var (number, unit) = (text.Split(' ')[0], text.Split(' ')[1]);
        var decimals = number.Contains('.', StringComparison.Ordinal) ? number.Length - number.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
        var changed = double.Parse(number, CultureInfo.InvariantCulture) * (1 + (MostChange * ((2 * chance.NextDouble()) - 1)));
        return $"{changed.ToString("F" + decimals, CultureInfo.InvariantCulture)} {unit}";
    }
}
