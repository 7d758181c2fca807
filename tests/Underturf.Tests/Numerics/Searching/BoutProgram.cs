using Underturf.Numerics;

namespace Underturf.Tests.Numerics;

/// <summary>
/// The yardstick: minutes at each stop in bouts, and the least expected loss over all orders of all bouts, by dynamic programming over how many bouts each stop had and where one
/// stands. Exact for these bouts, coming back counted in.
/// </summary>
internal sealed class BoutProgram
{
    private readonly SearchErrand errand;
    private readonly double[][] levels;
    private readonly int[] steps;
    private readonly int states;

    /// <param name="levels">For each stop the minutes after each bout, rising.</param>
    public BoutProgram(SearchErrand errand, double[][] levels)
    {
        (this.errand, this.levels, steps, states) = (errand, levels, new int[levels.Length], 1);
        for (var stop = 0; stop < levels.Length; stop++)
        {
            (steps[stop], states) = (states, states * (levels[stop].Length + 1));
        }
    }

    public SearchWalk Best()
    {
        var (stops, bouts) = (errand.Count, Bouts());
        var (value, next) = (new double[states * stops], new sbyte[states * stops]);
        var level = new int[stops];
        var start = (Value: errand.WorthMinutes, Stop: -1);
        for (var state = states - 1; state >= 0; state--)
        {
            var missing = 1.0;
            for (var stop = 0; stop < stops; stop++)
            {
                level[stop] = state / steps[stop] % (levels[stop].Length + 1);
                missing -= level[stop] == 0 ? 0 : errand.Stop(stop).Found(levels[stop][level[stop] - 1]);
            }

            for (var at = state == 0 ? -1 : 0; at < (state == 0 ? 0 : stops); at++)
            {
                var best = (Value: missing * errand.WorthMinutes, Stop: -1);
                for (var to = 0; to < stops; to++)
                {
                    if (level[to] < levels[to].Length)
                    {
                        var (minutes, spared) = bouts[to][level[to]];
                        var then = (missing * (minutes + (at == to ? 0 : errand.TravelMinutes(at, to)))) - spared + value[((state + steps[to]) * stops) + to];
                        best = then < best.Value ? (then, to) : best;
                    }
                }

                if (at < 0)
                {
                    start = best;
                }
                else
                {
                    (value[(state * stops) + at], next[(state * stops) + at]) = (best.Value, (sbyte)best.Stop);
                }
            }
        }

        return Walk(start.Stop, bouts, next);
    }

    private (double Minutes, double Spared)[][] Bouts() => [.. levels.Select((own, stop) => own.Select((until, k) =>
    {
        var (curve, from) = (errand.Stop(stop), k == 0 ? 0 : own[k - 1]);
        return (until - from, curve.SparedMinutes(until) - curve.SparedMinutes(from) - (curve.Found(from) * (until - from)));
    }).ToArray())];

    private SearchWalk Walk(int first, (double Minutes, double Spared)[][] bouts, sbyte[] next)
    {
        var (visits, level, state) = (new List<(int Stop, double EffortMinutes)>(), new int[errand.Count], 0);
        for (var to = first; to >= 0; to = next[(state * errand.Count) + to])
        {
            var minutes = bouts[to][level[to]++].Minutes;
            state += steps[to];
            if (visits.Count > 0 && visits[^1].Stop == to)
            {
                minutes += visits[^1].EffortMinutes;
                visits.RemoveAt(visits.Count - 1);
            }

            visits.Add((to, minutes));
        }

        return SearchWalk.Of(errand, visits);
    }
}
