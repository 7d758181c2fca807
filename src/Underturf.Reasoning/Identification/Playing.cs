using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>A plan played through once, on a truth drawn from what is believed.</summary>
internal sealed class Playing
{
    /// <summary>The common stands out at this share, so that another way takes over.</summary>
    private const double Clear = 0.7;

    private readonly Stage stage;
    private readonly SeededGenerator random;
    private readonly int[] truth;

    /// <summary>What each that can be touched is of those that carry; their number where it is none.</summary>
    private readonly int[] hidden;
    private Plan plan;
    private int[] states;
    private Standing standing;

    /// <param name="start">With the shares that plays go by.</param>
    public Playing(Stage stage, Plan plan, Standing start, SeededGenerator random)
    {
        (this.stage, this.plan, this.random) = (stage, plan, random);
        standing = start with { Table = start.Table.Clone(), Ready = [.. start.Ready], Spent = [.. start.Spent], Tried = [.. start.Tried] };
        truth = Truth();
        hidden = standing.Turned ? Holders() : truth;
        states = States();
    }

    public double Minutes { get; private set; }

    public int Rounds { get; private set; }

    /// <summary>Ends that no wire was sure enough for.</summary>
    public int Unnamed => Enumerable.Range(0, standing.Table.Ends).Count(e => standing.Top(e) < stage.Book.NameAt);

    /// <summary>What is left to lose.</summary>
    public double Left => standing.Left(stage.Book);

    /// <summary>Goes on as long as it costs less than there is to lose, and no longer than it may take.</summary>
    public void Play(double mostMinutes)
    {
        while (Rounds < MostRounds && Minutes < mostMinutes && Unnamed > 0 && Choice.Of(plan, standing) is { } next && (stage.GivesUp ? standing.MinutesToEnd(next) : standing.Minutes(next)) < Left)
        {
            Do(next);
            Rounds++;
            Believe();
        }
    }

    /// <summary>Three times the rounds that would do without error is as long as anybody goes on.</summary>
    private double MostRounds
    {
        get
        {
            var halvings = Math.Ceiling(Math.Log2(standing.Carriers + 2) * Math.Max(1, standing.Carriers / (2.0 * plan.Way.Most)));
            return 3 * (plan.Then is not null ? halvings + standing.Carriers : plan.Routine == Routine.ByHalves ? halvings : plan.Routine == Routine.TouchByTouch ? halvings * standing.Touchables : standing.Carriers);
        }
    }

    private void Do(NextTouches next)
    {
        var way = plan.Way;
        Minutes += standing.MinutesBefore(next);
        var carrier = Array.IndexOf(next.Put, true);
        var together = plan.Routine == Routine.OneTrip && next.Put.Count(p => p) > 1;
        standing.Tried[carrier] |= !together && plan.Routine is Routine.OneByOne or Routine.OneTrip;
        standing = standing with { Checked = standing.Checked || together };
        var (touched, answered) = (new List<int>(), new HashSet<int>());
        foreach (var one in next.Touch)
        {
            touched.Add(one);
            Minutes += standing.TouchMinutes(way, one);
            (standing.Ready[one], standing.Spent[one]) = (true, Math.Max(standing.Spent[one], way.ReadyMinutes));
            if (way.Shows == NamingSign.Answers && Answers(one, next.Put) && answered.Add(one) && plan.Routine == Routine.OneByOne)
            {
                break;
            }
        }

        standing.Table.Take(new Touching(way, next.Put, touched, way.Shows == NamingSign.Loudest ? Loudest(carrier, touched) : answered)
        {
            Ohms = way.Shows == NamingSign.Ohms ? stage.Kits.Of(standing.Turned)!.Reading(touched, !Through ? -1 : together ? touched[0] : Array.IndexOf(hidden, carrier), way, random) : null,
            Turned = standing.Turned,
            Against = standing.Lead(way),
        });
    }

    /// <summary>Shares anew; where another end is the likelier common now, the lead goes there and every wire is open again.</summary>
    private void Believe()
    {
        var shares = Stage.Believed(standing.Table);
        var common = Standing.LikelyCommon(standing.Table, shares, plan.Then is null ? stage.Book.CommonAt : Clear);
        if (plan.Then is { } then && common != NamingTable.NoLead)
        {
            plan = then;
            standing = standing with { Shares = shares, Common = common, Tried = new bool[standing.Table.Wires], Ready = new bool[standing.Table.Ends], Checked = false };
            states = States();
            return;
        }

        common = plan.Way.NeedsCommon ? common : standing.Common;
        standing = common == standing.Common
            ? standing with { Shares = shares }
            : standing with { Shares = shares, Common = common, Tried = new bool[standing.Carriers], Checked = false };
    }

    private int[] States() => [.. hidden.Select(carrier => standing.States(plan.Way).Draw(carrier, random))];

    /// <summary>False where the other lead is on no common, so that nothing can come through.</summary>
    private bool Through => standing.Lead(plan.Way) is var lead && (lead == NamingTable.NoLead || standing.Table.IsCommon(truth[lead]));

    private bool Answers(int touched, bool[] put) => random.NextDouble() < (Through
        ? standing.States(plan.Way).Chance(hidden[touched], hidden[touched] < put.Length && put[hidden[touched]], states[touched])
        : plan.Way.Imagined);

    private HashSet<int> Loudest(int carrier, List<int> touched)
    {
        var holder = touched.IndexOf(Array.IndexOf(hidden, carrier));
        var heard = holder >= 0 && random.NextDouble() >= plan.Way.Missed ? holder : random.NextInt(touched.Count);
        return [touched[heard]];
    }

    private int[] Holders() => [.. Enumerable.Range(0, standing.Table.Wires).Select(wire => Array.IndexOf(truth, wire) is var end and >= 0 ? end : standing.Table.Ends)];

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
