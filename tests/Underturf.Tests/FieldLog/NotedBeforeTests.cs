using System.Text;
using Underturf.FieldLog;

namespace Underturf.Tests.FieldLog;

/// <summary>The same notes given twice are told from the same thing seen twice. All of it invented.</summary>
public sealed class NotedBeforeTests
{
    private const string Shut = """{"kind":"setting","of":"i1","state":"shut"}""";
    private const string Open = """{"kind":"setting","of":"i1","state":"open"}""";
    private const string Ohms = """{"kind":"reading","how":"station ohms","stations":["s1"],"value":"31.2 ohm","at":"2031-04-02T08:10Z"}""";

    [Fact]
    public void A_valve_that_is_shut_opened_and_shut_again_is_no_repetition() => Assert.Equal(1, Fresh([Shut, Open], Shut));

    [Fact]
    public void The_last_note_in_the_same_words_is_one() => Assert.Equal(0, Fresh([Shut, Open], Open));

    [Fact]
    public void A_note_with_a_time_of_its_own_is_the_same_wherever_it_stands() => Assert.Equal(1, Fresh([Ohms, Shut, Open], Shut, Ohms));

    [Fact]
    public void Several_in_the_order_of_the_log_are_the_same_notes() => Assert.Equal(1, Fresh([Shut, Open, Ohms], Open.Replace("i1", "i2", StringComparison.Ordinal), Shut, Open));

    [Fact]
    public void What_another_writer_noted_is_his() => Assert.Equal(2, NotedBefore.Of(Log([Shut, Open]), "bob", Drafted([Shut, Open])).Fresh.Count);

    private static int Fresh(string[] noted, params string[] given)
    {
        var before = NotedBefore.Of(Log(noted), "ann", Drafted(given));
        Assert.Equal(before.Fresh.Count < given.Length, before.Repeats.Count > 0);
        return before.Fresh.Count;
    }

    private static LogDocument Log(string[] bodies)
    {
        var entries = new List<Entry>();
        foreach (var draft in Drafted(bodies))
        {
            entries.Add(Pen.Seal("garden", "ann", entries.LastOrDefault()?.Header, new HybridTime(1_900_000_000_000 + entries.Count, 0), draft.Body).Value);
        }

        return LogDocument.Read(ReadOnlyMemory<byte>.Empty).With(entries);
    }

    private static IReadOnlyList<Draft> Drafted(string[] bodies) => Drafts.Read(Encoding.UTF8.GetBytes(string.Join('\n', bodies))).Notes;
}
