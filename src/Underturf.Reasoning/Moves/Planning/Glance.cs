namespace Underturf.Reasoning.Moves.Planning;

/// <summary>Every move one step ahead, the most promising first; the room for one step of a look ahead.</summary>
internal sealed class Glance
{
    private readonly Sheet sheet;
    private readonly double[] minutes;
    private readonly double[] scores;
    private readonly double[] shares;
    private readonly double[] acts;
    private readonly double[] known;
    private readonly double[] doubts;
    private readonly int[] first;
    private readonly double[] classes;
    private readonly List<int> order = [];
    private readonly Comparison<int> byScore;

    public Glance(Sheet sheet)
    {
        this.sheet = sheet;
        After = new double[sheet.Worlds];
        (minutes, scores, shares) = (new double[sheet.Moves], new double[sheet.Moves], new double[sheet.Moves]);
        first = [.. sheet.Outcomes.Select((_, m) => sheet.Outcomes.Take(m).Sum())];
        var count = sheet.Outcomes.Sum();
        (acts, known, doubts) = (new double[count], new double[count], new double[count]);
        classes = new double[sheet.Classes.Max() + 1];
        byScore = (a, b) => scores[a] != scores[b] ? scores[a].CompareTo(scores[b]) : a.CompareTo(b);
    }

    /// <summary>Room for what is left of belief after an outcome.</summary>
    public double[] After { get; }

    /// <summary>The moves that tell something and may be better than acting now.</summary>
    public IReadOnlyList<int> Order => order;

    /// <summary>Fewest minutes of any of them, acting after it; times the mass.</summary>
    public double Least { get; private set; }

    /// <summary>Minutes by way of a move, acting after it; times the mass.</summary>
    public double Minutes(int move) => minutes[move];

    /// <summary>Share of the doubt that a move takes away.</summary>
    public double DoubtShare(int move) => shares[move];

    /// <param name="act">Minutes of acting now: a move that even with all known after it takes more is left out.</param>
    /// <returns>Chances multiplied.</returns>
    public int Look(double[] mass, double total, int place, bool[] made, double act, double[] cured)
    {
        order.Clear();
        var (doubt, rate, work) = (Doubt(mass, total), double.PositiveInfinity, 0);
        for (var move = 0; move < made.Length; move++)
        {
            var cost = sheet.Minutes(move, place) * total;
            if (!made[move] && cost + sheet.Known(mass, sheet.PlaceOf(move)) < act)
            {
                work += sheet.Worlds * sheet.Outcomes[move];
                var less = doubt - Try(mass, move, cost, cured);
                if (less > Sheet.Never * total)
                {
                    (rate, shares[move]) = (Math.Min(rate, cost / less), less / doubt);
                    order.Add(move);
                }
            }
        }

        Sort(rate);
        return work;
    }

    /// <summary>What each outcome of a move leaves; the doubt that is left after it.</summary>
    private double Try(double[] mass, int move, double cost, double[] cured)
    {
        var left = 0.0;
        minutes[move] = scores[move] = cost;
        for (var o = 0; o < sheet.Outcomes[move]; o++)
        {
            var (at, total) = (first[move] + o, sheet.After(mass, move, o, After));
            var any = total > Sheet.Never;
            acts[at] = any ? sheet.ActNow(After, total, sheet.PlaceOf(move), cured).Minutes : 0;
            known[at] = any ? sheet.Known(After, sheet.PlaceOf(move)) : 0;
            doubts[at] = any ? Doubt(After, total) : 0;
            minutes[move] += acts[at];
            left += doubts[at];
        }

        return left;
    }

    /// <summary>
    /// By the minutes that would follow if one acted after it or bought the rest of the doubt at the best price of any move here: a move that only
    /// pays together with another stands where it belongs.
    /// </summary>
    private void Sort(double rate)
    {
        Least = double.PositiveInfinity;
        foreach (var move in order)
        {
            for (var at = first[move]; at < first[move] + sheet.Outcomes[move]; at++)
            {
                scores[move] += Math.Min(acts[at], known[at] + (rate * doubts[at]));
            }

            Least = Math.Min(Least, minutes[move]);
        }

        order.Sort(byScore);
    }

    /// <summary>Chance that two draws from the belief need different repairs, times the mass.</summary>
    private double Doubt(double[] mass, double total)
    {
        Array.Clear(classes);
        for (var w = 0; w < mass.Length; w++)
        {
            classes[sheet.Classes[w]] += mass[w];
        }

        var same = 0.0;
        foreach (var together in classes)
        {
            same += together * together;
        }

        return total - (same / total);
    }
}
