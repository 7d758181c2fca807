using Underturf.Reasoning;
using Underturf.Reasoning.Translation;

namespace Underturf.Simulation.Trials;

/// <summary>
/// Rules of thumb. They get the notebook's belief, its candidates, its word that enough is known, and they pay for walking; they stop where
/// no candidate of a question is worth its minutes. They only choose in another order, among candidates that are worth something; ties by worth less minutes.
/// </summary>
internal static class RuleOfThumb
{
    /// <summary>A candidate that saves less than this many minutes is none: nobody makes a move that tells nothing.</summary>
    public const double LeastWorthMinutes = 1;

    /// <summary>The act of the first question of which enough is known.</summary>
    public static Move? Settled(TrialScene scene) => scene.Answers.Questions.FirstOrDefault(q => q.Settled && q.Moves.Any(CanBeDone))?.Moves.First(CanBeDone);

    /// <summary>It says what is to be noted; one that does not is for people.</summary>
    public static bool CanBeDone(Move move) => move.Steps.Count > 0;

    /// <summary>One question after the other; within it the candidate for which the rule gives least.</summary>
    public static Move? EachQuestion(TrialScene scene, Func<TrialScene, OpenQuestion, Func<Move, double>> rule) => Settled(scene) ?? scene.Answers.Questions
        .Select(q => Least(Candidates(q), rule(scene, q)))
        .FirstOrDefault(m => m is not null);

    /// <summary>All questions together.</summary>
    public static Move? AllQuestions(TrialScene scene, Func<Move, double> rule) => Settled(scene) ?? Least(scene.Answers.Questions.SelectMany(Candidates), rule);

    /// <summary>From the controller outward, by metres of wire.</summary>
    public static Func<Move, double> Outwards(TrialScene scene, OpenQuestion question) => move => Path(scene, question) is { } path ? Metres(path, path.LegTo(move.Place)) : 0;

    /// <summary>Where as much of the fault is believed to lie before as behind.</summary>
    public static Func<Move, double> Halving(TrialScene scene, OpenQuestion question)
    {
        var shares = Shares(question);
        var total = shares.Values.Sum();
        return move => Path(scene, question) is { } path ? Math.Abs(UpTo(scene, path, move.Place, shares) - (total / 2)) : 0;
    }

    /// <summary>Where the fault is believed likeliest.</summary>
    public static Func<Move, double> LikeliestPlace(TrialScene scene, OpenQuestion question)
    {
        var shares = Shares(question);
        return move => -shares.GetValueOrDefault(scene.View.Name(move.Place));
    }

    /// <summary>The candidates of a question that are worth something; none where none is worth its minutes.</summary>
    private static IEnumerable<Move> Candidates(OpenQuestion question) =>
        question.Moves.Any(m => m.Worth > m.Minutes) ? question.Moves.Where(m => CanBeDone(m) && !m.IsRepair && m.Worth >= LeastWorthMinutes) : [];

    private static Move? Least(IEnumerable<Move> candidates, Func<Move, double> rule) => candidates
        .OrderBy(rule)
        .ThenByDescending(m => m.Worth - m.Minutes)
        .FirstOrDefault();

    private static StationPath? Path(TrialScene scene, OpenQuestion question) =>
        scene.Paths.Values.FirstOrDefault(p => question.Stations.Contains(scene.View.StationNumber(p.Station)));

    private static double Metres(StationPath path, int leg) => leg < 0 ? 0 : path.Legs[leg].LengthMetres + Metres(path, path.Legs[leg].Parent);

    /// <summary>How probable it is that the fault lies at a place, by the place's label.</summary>
    private static Dictionary<string, double> Shares(OpenQuestion question) => question.Explanations
        .SelectMany(e => e.Places.Select(p => (p.Place, Probability: p.Probability * e.Probability)))
        .GroupBy(p => p.Place)
        .ToDictionary(g => g.Key, g => g.Sum(p => p.Probability), StringComparer.Ordinal);

    /// <summary>Between the controller and a place, the place itself counted.</summary>
    private static double UpTo(TrialScene scene, StationPath path, string place, Dictionary<string, double> shares)
    {
        var sum = 0.0;
        for (var leg = path.LegTo(place); leg >= 0; leg = path.Legs[leg].Parent)
        {
            sum += shares.GetValueOrDefault(scene.View.Name(path.Legs[leg].To));
        }

        return sum;
    }
}
