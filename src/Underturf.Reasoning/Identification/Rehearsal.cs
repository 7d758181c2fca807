using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>What a plan would take: minutes, rounds, ends left without a name.</summary>
/// <param name="IsBrokenOff">True where it takes longer than the minutes say.</param>
/// <param name="Loss">Minutes, and what wrong and missing names cost later.</param>
internal sealed record Rehearsed(Plan Plan, double Minutes, double Rounds, double Unnamed, double Loss, bool IsBrokenOff = false);

/// <summary>What every plan is played with.</summary>
/// <param name="Kit">Known resistors, one for each end; nothing where the bag has too few.</param>
internal sealed record Stage(NamingPractice Book, ResistorKit? Kit);

/// <summary>
/// Plays a plan through on made-up truths drawn from what is believed, with the errors of its way. Shares are the balanced ones: quick, a little flatter than the exact ones, and
/// the same for every plan.
/// </summary>
internal sealed class Rehearsal(Stage stage)
{
    private const int Times = 6;

    /// <param name="mostMinutes">A play is broken off when it has taken so long: it is out of the question.</param>
    public Rehearsed Of(Plan plan, Standing start, ulong seed, double mostMinutes)
    {
        var random = new SeededGenerator(seed);
        var sum = new Rehearsed(plan, 0, 0, 0, 0);
        for (var time = 0; time < Times; time++)
        {
            var played = new Playing(stage, plan, start, random.Fork($"{time}"));
            played.Play(mostMinutes);
            sum = sum with
            {
                IsBrokenOff = sum.IsBrokenOff || played.Minutes >= mostMinutes,
                Minutes = sum.Minutes + (played.Minutes / Times),
                Rounds = sum.Rounds + ((double)played.Rounds / Times),
                Unnamed = sum.Unnamed + ((double)played.Unnamed / Times),
                Loss = sum.Loss + ((played.Minutes + played.Left) / Times),
            };
        }

        return sum;
    }
}
