using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Simulation;

/// <summary>What became of a made-up box: minutes, rounds, names given and whether they are right.</summary>
/// <param name="Stated">For each end the probability of its likeliest name at the end, and whether that is the truth.</param>
public sealed record NamingOutcome(ulong Seed, double Minutes, int Rounds, int Named, int Wrong, IReadOnlyList<(double Probability, bool Right)> Stated);

/// <summary>A virtual technician names the ends of a made-up box round by round, as the notebook says.</summary>
public static class NamingTrial
{
    /// <summary>Who was told to choose among some plans chooses anew after so many rounds: plans come to be possible when the common is known.</summary>
    private const int Again = 5;

    /// <summary>As long as anybody goes on.</summary>
    private const int MostRounds = 400;

    private static readonly DateTimeOffset Noon = new(2031, 5, 6, 12, 0, 0, TimeSpan.FromHours(-6));

    /// <param name="crew">Whose plan it is; the notebook's own choice anew before each round where it names none.</param>
    public static NamingOutcome Run(NamingScene scene, NamingCrew crew, PracticeBook book)
    {
        var (hand, keeper) = (new NamingHand(scene, book), LogKeeper.After(scene.Log));
        string? kept = null;
        var (minutes, rounds) = (0.0, 0);
        while (true)
        {
            var naming = Name(Notebook.Open(keeper.Log(), book), crew, kept);
            kept = crew.Plan is null || rounds % Again == 0 ? null : naming.Sheet?.Way;
            if (naming.EnoughKnown || rounds == MostRounds || naming.Next is not { } next)
            {
                return Outcome(scene, naming, minutes, rounds);
            }

            foreach (var fact in hand.Do(next, out var touched))
            {
                keeper.Note("maren", Noon.AddMinutes(rounds), fact);
                minutes += fact is TouchFact ? next.Minutes - ((next.Touch.Count - touched) * next.Minutes / Math.Max(1, next.Touch.Count)) : 0;
            }

            rounds++;
        }
    }

    private static NamingAnswer Name(Notebook notebook, NamingCrew crew, string? kept) =>
        kept is not null && notebook.Name(NamingScene.Box, crew with { Plan = kept }) is { Succeeded: true } same ? same.Value : notebook.Name(NamingScene.Box, crew).Value;

    private static NamingOutcome Outcome(NamingScene scene, NamingAnswer naming, double minutes, int rounds)
    {
        var stated = naming.Ends.Select(e => (e.Shares[0].Probability, Right: e.Shares[0].Wire == scene.Truth[e.Ids[0]], e.Named)).ToList();
        return new NamingOutcome(scene.Seed, minutes, rounds, stated.Count(s => s.Named), stated.Count(s => s.Named && !s.Right), [.. stated.Select(s => (s.Probability, s.Right))]);
    }
}
