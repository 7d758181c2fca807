using Underturf.Numerics;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Tests.Reasoning;

/// <summary>The sieve looks at a few amounts and still keeps what looking at all would keep.</summary>
public sealed class AmountSieveTests
{
    [Fact]
    public void Every_amount_that_the_notes_leave_is_found_and_most_others_are_never_looked_at()
    {
        var chance = new SeededGenerator(4711).Fork("sieve");
        var (asked, all) = (0, 0);
        for (var draw = 0; draw < 500; draw++)
        {
            var amounts = Enumerable.Range(0, 1 + chance.NextInt(30)).Select(_ => chance.NextDouble()).Order().ToArray();
            var notes = Enumerable.Range(0, 1 + chance.NextInt(3)).Select(_ => (At: chance.NextDouble(), Width: 0.02 + (0.1 * chance.NextDouble()))).ToArray();
            var seen = new HashSet<int>();
            AmountSieve.Run(amounts.Length, i => { seen.Add(i); return Verdict(amounts[i], notes); }, _ => { });
            Assert.All(amounts.Index().Where(a => Verdict(a.Item, notes).Note < 0), a => Assert.Contains(a.Index, seen));
            (asked, all) = (asked + seen.Count, all + amounts.Length);
        }

        Assert.InRange(asked, 1, all * 2 / 3);
    }

    [Fact]
    public void What_is_dropped_unseen_is_bounded_by_the_likelier_end()
    {
        var left = double.NegativeInfinity;
        AmountSieve.Run(10, i => new Verdict(0, -1, -20 - i), bound => left = LogMath.LogAdd(left, bound));
        Assert.Equal(-20 + Math.Log(8), left, 12);
    }

    [Theory]
    [InlineData(0, 0, 9)]
    [InlineData(4, 3, 4)]
    [InlineData(10, 0, 9)]
    public void The_amounts_on_either_side_of_a_note_are_found(int above, int low, int high) =>
        Assert.Equal((low, high), AmountSieve.Crossing(10, i => i < above ? -1 : 1));

    /// <summary>Dropped by the first note that it is too far from.</summary>
    private static Verdict Verdict(double amount, (double At, double Width)[] notes)
    {
        for (var i = 0; i < notes.Length; i++)
        {
            if (Math.Abs(amount - notes[i].At) > notes[i].Width)
            {
                return new Verdict(i, Math.Sign(amount - notes[i].At), -20);
            }
        }

        return new Verdict(-1, 0, 0);
    }
}
