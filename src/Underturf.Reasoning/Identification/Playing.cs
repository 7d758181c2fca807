using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>A plan played through once, on a truth drawn from what is believed.</summary>
internal sealed class Playing
{
    private const int Balancing = 12;

    private readonly Stage stage;
    private readonly Plan plan;
    private readonly SeededGenerator random;
    private readonly int[] truth;
    private readonly int[] states;
    private Standing standing;

    public Playing(Stage stage, Plan plan, Standing start, SeededGenerator random)
    {
        (this.stage, this.plan, this.random) = (stage, plan, random);
        standing = start with { Table = start.Table.Clone(), Ready = [.. start.Ready], Tried = [.. start.Tried], Shares = Believed(start.Table) };
        truth = Truth();
        states = [.. truth.Select(wire => standing.Table.States(plan.Way).Draw(wire, random))];
    }

    public double Minutes { get; private set; }

    public int Rounds { get; private set; }

    /// <summary>Ends that no wire was sure enough for.</summary>
    public int Unnamed => Enumerable.Range(0, standing.Table.Ends).Count(e => Top(e) < stage.Book.NameAt);

    /// <summary>What is left to lose.</summary>
    public double Left => Enumerable.Range(0, standing.Table.Ends).Sum(e => stage.Book.Left(Top(e)));

    /// <summary>Goes on as long as a round costs less than there is to lose, and no longer than it may take.</summary>
    public void Play(double mostMinutes)
    {
        // Three times the rounds that would do without error is as long as anybody goes on.
        var halvings = Math.Ceiling(Math.Log2(standing.Table.Wires + 2) * Math.Max(1, standing.Table.Wires / (2.0 * plan.Way.Most)));
        var most = 3 * (plan.Routine == Routine.ByHalves ? halvings : plan.Routine == Routine.TouchByTouch ? halvings * standing.Table.Ends : standing.Table.Wires);
        while (Rounds < most && Minutes < mostMinutes && Unnamed > 0 && Choice.Of(plan, standing) is { } next && (Rounds > 0 && plan.Routine == Routine.OneTrip ? plan.Way.PutMinutes : standing.Minutes(next)) < Left)
        {
            Do(next);
            Rounds++;
            standing = standing with { Shares = Believed(standing.Table) };
        }
    }

    private void Do(NextTouches next)
    {
        var way = plan.Way;
        Minutes += (plan.Routine == Routine.OneTrip && Rounds > 0 ? way.PutMinutes : standing.Crew.Change(way)) + (next.Put.Count(p => p) * way.WireMinutes);
        var wire = Array.IndexOf(next.Put, true);
        standing.Tried[wire] |= plan.Routine is Routine.OneByOne or Routine.OneTrip;
        var (touched, answered) = (new List<int>(), new HashSet<int>());
        foreach (var end in next.Touch)
        {
            touched.Add(end);
            Minutes += standing.TouchMinutes(way, end);
            standing.Ready[end] = true;
            if (way.Shows == NamingSign.Answers && Answers(end, next.Put) && answered.Add(end) && plan.Routine == Routine.OneByOne)
            {
                break;
            }
        }

        standing.Table.Take(new Touching(way, next.Put, touched, way.Shows == NamingSign.Loudest ? Loudest(wire, touched) : answered)
        {
            Ohms = way.Shows == NamingSign.Ohms ? stage.Kit!.Reading(touched, Array.IndexOf(truth, wire), way, random) : null,
            Against = way.NeedsCommon ? standing.Common : -1,
        });
    }

    private bool Answers(int end, bool[] put) =>
        random.NextDouble() < standing.Table.States(plan.Way).Chance(truth[end], truth[end] < put.Length && put[truth[end]], states[end]);

    private HashSet<int> Loudest(int wire, List<int> touched)
    {
        var holder = touched.IndexOf(Array.IndexOf(truth, wire));
        var heard = holder >= 0 && random.NextDouble() >= plan.Way.Missed ? holder : random.NextInt(touched.Count);
        return [touched[heard]];
    }

    private double Top(int end)
    {
        var best = 0.0;
        for (var w = 0; w <= standing.Table.Wires; w++)
        {
            best = Math.Max(best, standing.Share(end, w));
        }

        return best;
    }

    private static double[] Believed(NamingTable table) => MatchingBalance.Of(table.Weights(), Balancing);

    /// <summary>Ends one after the other by their shares, no wire twice.</summary>
    private int[] Truth()
    {
        var (table, wide) = (standing.Table, standing.Table.Wires + 1);
        var (drawn, free) = (new int[table.Ends], standing.Shares.ToArray());
        for (var e = 0; e < table.Ends; e++)
        {
            var mine = free.AsSpan(e * wide, wide);
            mine[^1] = Math.Max(mine[^1], 1e-12);
            drawn[e] = random.Choose(mine);
            for (var other = e + 1; other < table.Ends && drawn[e] < table.Wires; other++)
            {
                free[(other * wide) + drawn[e]] = 0;
            }
        }

        return drawn;
    }
}
