using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>What a plan would take: minutes, rounds, ends left without a name.</summary>
/// <param name="IsBrokenOff">True where it takes longer than the minutes say.</param>
/// <param name="Loss">Minutes, and what wrong and missing names cost later.</param>
internal sealed record Rehearsed(Plan Plan, double Minutes, double Rounds, double Unnamed, double Loss, bool IsBrokenOff = false);

/// <summary>What every plan is played with.</summary>
/// <param name="GivesUp">False where somebody wants this plan followed: then only a round that costs more than there is to lose ends it.</param>
internal sealed record Stage(NamingPractice Book, Kits Kits, bool GivesUp)
{
    private const int Balancing = 12;

    /// <summary>The shares that plays go by.</summary>
    public static double[] Believed(NamingTable table) => Supposed.Mixed(Supposed.All(table, weights => MatchingMarginals.Balanced(weights, Balancing)));
}

/// <summary>
/// Plays a plan through on made-up truths drawn from what is believed, with the errors of its way. Shares are the balanced ones: quick, a little flatter than the exact ones, and
/// the same for every plan.
/// </summary>
internal sealed class Rehearsal(Stage stage)
{
    /// <summary>Plays of a plan; fewer where a play has more ends to average over.</summary>
    private static int Times(int ends) => Math.Clamp(144 / ends, 4, 12);

    /// <summary>What wrong and missing names cost if nothing more is done.</summary>
    public double Stopping(Standing start) => (start with { Shares = Stage.Believed(start.Table) }).Left(stage.Book);

    /// <param name="mostMinutes">A play is broken off when it has taken so long: it is out of the question.</param>
    public Rehearsed Of(Plan plan, Standing start, ulong seed, double mostMinutes)
    {
        var (random, times) = (new SeededGenerator(seed), Times(start.Table.Ends));
        start = start with { Shares = Stage.Believed(start.Table) };
        var sum = new Rehearsed(plan, 0, 0, 0, 0);
        for (var time = 0; time < times; time++)
        {
            var played = new Playing(stage, plan, start, random.Fork($"{time}"));
            played.Play(mostMinutes);
            sum = sum with
            {
                IsBrokenOff = sum.IsBrokenOff || played.Minutes >= mostMinutes,
                Minutes = sum.Minutes + (played.Minutes / times),
                Rounds = sum.Rounds + ((double)played.Rounds / times),
                Unnamed = sum.Unnamed + ((double)played.Unnamed / times),
                Loss = sum.Loss + ((played.Minutes + played.Left) / times),
            };
        }

        return sum;
    }
}
