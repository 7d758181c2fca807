namespace Underturf.Reasoning.Diagnosis;

/// <summary>How a state fared against the notes: kept, or dropped at a note.</summary>
/// <param name="Note">The note that dropped it; -1 where it is kept.</param>
/// <param name="Side">On which side of that note its prediction lies (<see cref="Evidence.Side"/>).</param>
/// <param name="LogWeight">log of its weight with the notes weighed so far.</param>
internal readonly record struct Verdict(int Note, int Side, double LogWeight)
{
    /// <summary>Both dropped for the same reason, so that what lies between them would be too.</summary>
    public bool IsAlike(Verdict other) => Note >= 0 && Note == other.Note && Side != 0 && Side == other.Side;
}

/// <summary>
/// Weighs the amounts of one fault at one place from both ends inward: what lies between two amounts that the same note drops on the same side is
/// dropped unseen. Most faults are out of the question at any amount, and then two trials tell.
/// </summary>
internal static class AmountSieve
{
    /// <param name="count">Amounts, the smallest first.</param>
    /// <param name="weigh">Weighs one of them.</param>
    /// <param name="leaveOut">Takes a bound of the logarithm of what is dropped unseen.</param>
    public static void Run(int count, Func<int, Verdict> weigh, Action<double> leaveOut)
    {
        var first = weigh(0);
        if (count > 1)
        {
            Between(0, first, count - 1, weigh(count - 1), weigh, leaveOut);
        }
    }

    /// <summary>The two amounts between which the predictions pass over to the other side of a note; one of the ends twice where all lie on one side.</summary>
    public static (int Below, int Above) Crossing(int count, Func<int, int> sideOf)
    {
        var (low, high) = (0, count - 1);
        var (first, last) = (sideOf(low), sideOf(high));
        if (first == last)
        {
            // Which end is the nearer one is not known: both are asked.
            return (low, high);
        }

        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = sideOf(middle) == first ? (middle, high) : (low, middle);
        }

        return (low, high);
    }

    private static void Between(int low, Verdict atLow, int high, Verdict atHigh, Func<int, Verdict> weigh, Action<double> leaveOut)
    {
        if (high - low < 2)
        {
            return;
        }

        if (atLow.IsAlike(atHigh))
        {
            leaveOut(Math.Max(atLow.LogWeight, atHigh.LogWeight) + Math.Log(high - low - 1));
            return;
        }

        var middle = (low + high) / 2;
        var atMiddle = weigh(middle);
        Between(low, atLow, middle, atMiddle, weigh, leaveOut);
        Between(middle, atMiddle, high, atHigh, weigh, leaveOut);
    }
}
