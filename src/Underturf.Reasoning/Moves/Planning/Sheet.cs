namespace Underturf.Reasoning.Moves.Planning;

/// <summary>
/// A decision laid out for arithmetic. Belief is a mass a world, not divided by its sum, so that an expected value over outcomes is a plain sum. Hypotheses
/// that no move and no act tells apart are one world.
/// </summary>
internal sealed class Sheet
{
    /// <summary>Chances closer than this are the same: far below what any table of outcomes means.</summary>
    private const double Same = 1e-9;

    /// <summary>Masses below this are rounding.</summary>
    public const double Never = 1e-12;

    private readonly double[][] chances;
    private readonly double[] walk;
    private readonly int places;
    private readonly int[][] curedBy;
    private readonly double[] actMinutes;
    private readonly int[] actPlaces;
    private readonly double[] known;

    public Sheet(Decision decision)
    {
        Decision = decision;
        WorldOf = Merge(decision);
        Worlds = WorldOf.Max() + 1;
        var first = Enumerable.Range(0, Worlds).Select(w => Array.IndexOf(WorldOf, w)).ToArray();
        places = decision.WalkMinutes.Count;
        walk = [.. decision.WalkMinutes.SelectMany(row => row)];
        Outcomes = [.. decision.Moves.Select(m => m.Outcomes[0].Count)];
        chances = [.. decision.Moves.Select((m, i) => Enumerable.Range(0, Outcomes[i]).SelectMany(o => first.Select(h => m.Outcomes[h][o])).ToArray())];
        curedBy = [.. first.Select(h => Enumerable.Range(0, decision.Acts.Count).Where(a => decision.Acts[a].Cures[h]).ToArray())];
        Classes = ClassesOf(curedBy);
        actMinutes = [.. decision.Acts.Select(a => a.Minutes)];
        actPlaces = [.. decision.Acts.Select(a => a.Place ?? -1)];
        known = [.. Enumerable.Range(0, places).SelectMany(p => curedBy.Select(acts => acts.Select(a => Cost(a, p)).Append(decision.WrongMinutes).Min()))];
    }

    public Decision Decision { get; }

    public int Worlds { get; }

    public int Moves => Outcomes.Length;

    /// <summary>The world that stands for each hypothesis.</summary>
    public int[] WorldOf { get; }

    /// <summary>Number of outcomes of each move.</summary>
    public int[] Outcomes { get; }

    /// <summary>Worlds that the same acts cure have the same number.</summary>
    public int[] Classes { get; }

    /// <summary>The masses of the worlds for chances of the hypotheses.</summary>
    public double[] Masses(IReadOnlyList<double> belief)
    {
        var mass = new double[Worlds];
        for (var h = 0; h < belief.Count; h++)
        {
            mass[WorldOf[h]] += belief[h];
        }

        return mass;
    }

    public int PlaceOf(int move) => Decision.Moves[move].Place;

    /// <summary>Minutes of a move, from a place, its walk included.</summary>
    public double Minutes(int move, int from) => walk[(from * places) + Decision.Moves[move].Place] + Decision.Moves[move].Minutes;

    /// <summary>Minutes of an act, from a place, its walk included.</summary>
    public double Cost(int act, int from) => (actPlaces[act] < 0 ? 0 : walk[(from * places) + actPlaces[act]]) + actMinutes[act];

    /// <summary>What is left of belief after an outcome, and its sum.</summary>
    public double After(ReadOnlySpan<double> mass, int move, int outcome, Span<double> after)
    {
        var row = chances[move].AsSpan(outcome * Worlds, Worlds);
        var total = 0.0;
        for (var w = 0; w < row.Length; w++)
        {
            var left = mass[w] * row[w];
            after[w] = left;
            total += left;
        }

        return total;
    }

    /// <summary>Expected minutes of the best act now, times the mass; doing nothing and being wrong is an act too, with the number -1.</summary>
    /// <param name="cured">Room for a number an act.</param>
    public (double Minutes, int Act) ActNow(ReadOnlySpan<double> mass, double total, int place, Span<double> cured)
    {
        cured.Clear();
        for (var w = 0; w < mass.Length; w++)
        {
            if (mass[w] > 0)
            {
                foreach (var act in curedBy[w])
                {
                    cured[act] += mass[w];
                }
            }
        }

        var wrong = Decision.WrongMinutes;
        var best = (Minutes: wrong * total, Act: -1);
        for (var act = 0; act < cured.Length; act++)
        {
            var minutes = cured[act] > 0 ? (Cost(act, place) * total) + (wrong * (total - cured[act])) : double.PositiveInfinity;
            best = minutes < best.Minutes ? (minutes, act) : best;
        }

        return best;
    }

    /// <summary>Expected minutes if all were known, times the mass: no plan can do better.</summary>
    public double Known(ReadOnlySpan<double> mass, int place)
    {
        var row = known.AsSpan(place * Worlds, Worlds);
        var sum = 0.0;
        for (var w = 0; w < row.Length; w++)
        {
            sum += mass[w] * row[w];
        }

        return sum;
    }

    private static int[] Merge(Decision decision)
    {
        var (worlds, firsts) = (new int[decision.Chances.Count], new List<int>());
        for (var h = 0; h < worlds.Length; h++)
        {
            var like = firsts.FindIndex(f => IsSame(decision, f, h));
            worlds[h] = like < 0 ? firsts.Count : like;
            if (like < 0)
            {
                firsts.Add(h);
            }
        }

        return worlds;
    }

    private static bool IsSame(Decision decision, int a, int b)
    {
        foreach (var act in decision.Acts)
        {
            if (act.Cures[a] != act.Cures[b])
            {
                return false;
            }
        }

        foreach (var move in decision.Moves)
        {
            var (one, other) = (move.Outcomes[a], move.Outcomes[b]);
            for (var o = 0; o < one.Count; o++)
            {
                if (Math.Abs(one[o] - other[o]) > Same)
                {
                    return false;
                }
            }
        }

        return true;
    }

    private static int[] ClassesOf(int[][] curedBy)
    {
        var firsts = new List<int[]>();
        return [.. curedBy.Select(acts =>
        {
            var like = firsts.FindIndex(f => f.AsSpan().SequenceEqual(acts));
            if (like < 0)
            {
                firsts.Add(acts);
            }

            return like < 0 ? firsts.Count - 1 : like;
        })];
    }
}
