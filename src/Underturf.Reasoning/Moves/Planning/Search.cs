namespace Underturf.Reasoning.Moves.Planning;

/// <summary>
/// One look ahead: at each step the most promising moves by <see cref="Glance"/>, with every outcome; beyond the depth that is looked at in full only the
/// most promising one, until somebody would act. Every value is that of a plan that can be carried out, so acting at once is never taken for worse than it is.
/// </summary>
internal sealed class Search
{
    /// <summary>
    /// Chances multiplied in one look ahead: a few milliseconds natively. Enough to look at small decisions in full, and two steps ahead of the likeliest moves at eighty worlds, forty
    /// moves and ten outcomes.
    /// </summary>
    public const int MostWork = 600_000;

    /// <summary>Moves tried at each step. Wider costs depth: five did best on decisions that are not reported (docs/reports/diagnosis.md).</summary>
    private const int Width = 5;

    /// <summary>Further than this nothing was gained; it ends what the amount of work does not.</summary>
    private const int Deepest = 6;

    /// <summary>An outcome this rare is not followed further: one acts there. What it could save is at most this share of the cost of being wrong.</summary>
    private const double Rare = 1e-3;

    private readonly Sheet sheet;
    private readonly bool[] made;
    private readonly int most;
    private readonly List<Glance> glances = [];
    private readonly double[] cured;
    private int depth;
    private int tail;
    private int work;
    private bool isWhole;
    private double start;

    public Search(Sheet sheet, IReadOnlySet<int> made, int most)
    {
        (this.sheet, this.most) = (sheet, most);
        this.made = [.. Enumerable.Range(0, sheet.Moves).Select(made.Contains)];
        cured = new double[sheet.Decision.Acts.Count];
    }

    public Plan Best(double[] mass, int place)
    {
        start = mass.Sum();
        var (now, act) = sheet.ActNow(mass, start, place, cured);
        var settled = IsSettled(mass, start, place, now);
        var values = Glimpse(mass, place);
        if (!settled)
        {
            Deepen(mass, place, values);
        }

        var options = values.Select(v => new PlanOption(v.Key, v.Value / start, GlanceAt(0).DoubtShare(v.Key))).OrderBy(o => o.Minutes).ThenBy(o => o.Move).ToList();
        var pays = !settled && options.Count > 0 && options[0].Minutes < now / start;
        return new Plan(pays ? options[0].Move : null, act < 0 ? null : act, pays ? options[0].Minutes : now / start, now / start, settled, options);
    }

    /// <summary>Every move that tells something, one step ahead.</summary>
    private Dictionary<int, double> Glimpse(double[] mass, int place)
    {
        var glance = GlanceAt(0);
        glance.Look(mass, start, place, made, double.PositiveInfinity, cured);
        return glance.Order.ToDictionary(m => m, glance.Minutes);
    }

    /// <summary>The most promising first moves, each time a step deeper or with a longer tail, as long as there is work left; then the others, two steps.</summary>
    private void Deepen(double[] mass, int place, Dictionary<int, double> values)
    {
        int[] order = [.. GlanceAt(0).Order];
        isWhole = false;
        for (var round = 0; round < 2 * Deepest && !isWhole && work <= most; round++)
        {
            (depth, tail, isWhole) = (1 + (round / 2), (round + 1) / 2, true);
            Follow(mass, place, order.Take(Width), values);
        }

        (depth, tail) = (1, 0);
        Follow(mass, place, order.Skip(Width), values);
    }

    private void Follow(double[] mass, int place, IEnumerable<int> moves, Dictionary<int, double> values)
    {
        foreach (var move in moves)
        {
            if (work <= most && Follow(mass, start, place, move, 0, double.PositiveInfinity) is var minutes && work <= most)
            {
                values[move] = Math.Min(values[move], minutes);
            }
        }
    }

    /// <summary>Expected minutes to the end, times the mass.</summary>
    private double Value(double[] mass, double total, int place, int step)
    {
        var best = sheet.ActNow(mass, total, place, cured).Minutes;
        if (total < Rare * start || IsSettled(mass, total, place, best) || work > most)
        {
            return best;
        }

        var glance = GlanceAt(step);
        work += glance.Look(mass, total, place, made, best, cured);
        var width = step < depth ? Width : step < depth + tail ? 1 : 0;
        isWhole &= glance.Order.Count <= width;
        for (var i = 0; i < Math.Min(width, glance.Order.Count); i++)
        {
            best = Math.Min(best, Follow(mass, total, place, glance.Order[i], step, best));
        }

        return width == 0 ? Math.Min(best, glance.Least) : best;
    }

    /// <summary>Minutes by way of a move; what is beyond the best known is only bounded.</summary>
    private double Follow(double[] mass, double total, int place, int move, int step, double best)
    {
        var (there, after) = (sheet.PlaceOf(move), GlanceAt(step).After);
        var sum = (sheet.Minutes(move, place) * total) + sheet.Known(mass, there);
        made[move] = true;
        for (var o = 0; o < sheet.Outcomes[move] && sum < best; o++)
        {
            var left = sheet.After(mass, move, o, after);
            if (left > Sheet.Never)
            {
                sum += Value(after, left, there, step + 1) - sheet.Known(after, there);
            }
        }

        made[move] = false;
        return sum;
    }

    private bool IsSettled(double[] mass, double total, int place, double act) => act - sheet.Known(mass, place) <= sheet.Decision.SettledMinutes * total;

    private Glance GlanceAt(int step)
    {
        while (glances.Count <= step)
        {
            glances.Add(new Glance(sheet));
        }

        return glances[step];
    }
}
