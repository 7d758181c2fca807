using System.Globalization;
using System.Text;
using Underturf.Reasoning;

namespace Underturf.Cli;

/// <summary>Moves as text for a terminal, numbered in the order in which they are best done.</summary>
internal static class MovesText
{
    public static string Write(Answers answers, Standpoint standpoint)
    {
        var text = new StringBuilder();
        text.AppendLine(Heading(answers, standpoint));
        foreach (var (number, move) in answers.Moves.Index())
        {
            text.AppendLine();
            Move(text, number + 1, move, answers.Questions.FirstOrDefault(q => q.Id == move.Question)?.Symptom);
        }

        foreach (var naming in answers.Naming)
        {
            text.AppendLine();
            Naming(text, naming);
        }

        text.AppendLine();
        text.Append($"Engine {answers.Engine}, practice book {answers.Book}. Local codes and licensed practice prevail.");
        return text.ToString();
    }

    private static string Heading(Answers answers, Standpoint standpoint) => answers switch
    {
        { Questions.Count: 0 } => "No open question.",
        { Moves.Count: 0 } => standpoint.Minutes is { } few ? $"No move is worth its minutes within {Minutes(few)}." : "No move is worth its minutes.",
        _ => standpoint.Minutes is { } some ? $"WITHIN {Minutes(some).ToUpperInvariant()}, in walking order" : "NEXT MOVES, best first",
    };

    private static void Move(StringBuilder text, int number, Move move, string? symptom)
    {
        text.AppendLine($"{number}. At {move.Where}: {Minutes(move.Minutes)}, {Minutes(move.WalkMinutes)} of it to get there; saves {Minutes(move.Worth)}");
        foreach (var step in move.Steps)
        {
            text.AppendLine(move.IsRepair ? $"   - {move.Action}" : $"   - {step.Action}: {Minutes(step.Minutes)}");
            text.AppendLine($"     {step.Caution}");
        }

        if (move.Why.Length > 0)
        {
            text.AppendLine($"   Why: {move.Why}");
        }

        text.AppendLine($"   For: [{move.Question}] {symptom}");
    }

    /// <summary>Beside the moves: what its rounds are, <c>identify</c> says.</summary>
    private static void Naming(StringBuilder text, NamingMove move)
    {
        text.AppendLine($"Or name the ends of {move.Where}, {move.Unnamed} of {move.Ends} without a name: {Minutes(move.Minutes)}, {Minutes(move.WalkMinutes)} of it to get there; saves {Minutes(move.Worth)}");
        text.AppendLine($"   - {move.Plan}: see identify");
        text.AppendLine($"     {move.Caution}");
        if (move.Why.Length > 0)
        {
            text.AppendLine($"   Why: {move.Why}");
        }
    }

    private static string Minutes(double minutes) => string.Create(CultureInfo.InvariantCulture, $"{minutes:0.#} min");
}
