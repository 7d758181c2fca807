namespace Underturf.Reasoning.Moves;

/// <summary>
/// What to do in the minutes that there are: of all sets of visits and all orders of walking them the one that saves most, what it takes taken off, within the time. A question
/// that several visits serve counts by the one that serves it best.
/// </summary>
internal sealed class Round(IReadOnlyList<Visit> visits, Walks walks, string start)
{
    /// <summary>Every subset in every order of so many is looked at; more would take longer than their difference is worth.</summary>
    public const int MostVisits = 8;

    /// <summary>The visits in walking order, each with the walk from the one before it.</summary>
    public IReadOnlyList<Visit> Within(double minutes)
    {
        var shortest = Shortest();
        var best = (Saves: 0.0, Set: 0, Last: -1);
        for (var set = 1; set < 1 << visits.Count; set++)
        {
            for (var last = 0; last < visits.Count; last++)
            {
                var takes = shortest[set, last].Minutes;
                var saves = takes <= minutes ? Worth(set) - takes : double.NegativeInfinity;
                best = saves > best.Saves ? (saves, set, last) : best;
            }
        }

        return Order(best.Set, best.Last, shortest);
    }

    /// <summary>For each set and its last visit the fewest minutes, and the visit before the last.</summary>
    private (double Minutes, int Before)[,] Shortest()
    {
        var shortest = new (double Minutes, int Before)[1 << visits.Count, visits.Count];
        for (var set = 1; set < 1 << visits.Count; set++)
        {
            for (var last = 0; last < visits.Count; last++)
            {
                shortest[set, last] = Shortest(shortest, set, last);
            }
        }

        return shortest;
    }

    private (double Minutes, int Before) Shortest((double Minutes, int Before)[,] known, int set, int last)
    {
        if ((set >> last & 1) == 0)
        {
            return (double.PositiveInfinity, -1);
        }

        var rest = set & ~(1 << last);
        var best = rest == 0 ? (Minutes: walks.Minutes(start, visits[last].Place), Before: -1) : (Minutes: double.PositiveInfinity, Before: -1);
        for (var before = 0; before < visits.Count && rest != 0; before++)
        {
            var minutes = known[rest, before].Minutes + walks.Minutes(visits[before].Place, visits[last].Place);
            best = minutes < best.Minutes ? (minutes, before) : best;
        }

        return (best.Minutes + visits[last].StepMinutes, best.Before);
    }

    private double Worth(int set) => visits
        .Where((_, v) => (set >> v & 1) == 1)
        .SelectMany(v => v.Worths)
        .GroupBy(w => w.Key)
        .Sum(g => g.Max(w => w.Value));

    private List<Visit> Order(int set, int last, (double Minutes, int Before)[,] shortest)
    {
        var order = new List<Visit>();
        while (last >= 0)
        {
            var before = shortest[set, last].Before;
            order.Insert(0, visits[last] with { WalkMinutes = walks.Minutes(before < 0 ? start : visits[before].Place, visits[last].Place) });
            (set, last) = (set & ~(1 << last), before);
        }

        return order;
    }
}
