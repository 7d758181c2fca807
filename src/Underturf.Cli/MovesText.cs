using System.Text;
using Underturf.Reasoning;
using Underturf.Reasoning.Telling;

namespace Underturf.Cli;

/// <summary>Moves as text for a terminal, numbered in the order in which they are best done.</summary>
internal static class MovesText
{
    public static string Write(Answers answers, Standpoint standpoint)
    {
        var text = new StringBuilder();
        text.AppendLine(Heading(answers, standpoint));
        foreach (var (number, move) in answers.Together.Index())
        {
            text.AppendLine();
            Move(text, number + 1, move, answers.Questions.FirstOrDefault(q => q.Id == move.Question)?.Symptom);
        }

        if (answers.Nearest is { } nearest)
        {
            text.AppendLine($"The nearest that is wants {Math.Ceiling(nearest.Minutes):0} min:");
            text.AppendLine();
            Move(text, 1, nearest, answers.Questions.FirstOrDefault(q => q.Id == nearest.Question)?.Symptom);
        }

        text.AppendLine();
        text.Append($"{(answers.Together.Count > 0 || answers.Nearest is not null ? $"{PriceWords.Move} " : string.Empty)}Engine {answers.Engine}, practice book {answers.Book}. Local codes and licensed practice prevail.");
        return text.ToString();
    }

    private static string Heading(Answers answers, Standpoint standpoint) => answers switch
    {
        { Questions.Count: 0, Naming.Count: 0 } => "No open question.",
        { Together.Count: 0 } => standpoint.Minutes is { } few ? $"No move is worth its minutes within {MoveText.Minutes(few)}." : "No move is worth its minutes.",
        _ => standpoint.Minutes is { } some ? $"WITHIN {MoveText.Minutes(some).ToUpperInvariant()}, in walking order" : "NEXT MOVES, best first",
    };

    private static void Move(StringBuilder text, int number, Move move, string? symptom)
    {
        text.AppendLine($"{number}. At {move.Where}: {MoveText.Figures(move)}");
        foreach (var step in move.Steps)
        {
            text.AppendLine(move.IsRepair ? $"   - {move.Action}" : $"   - {step.Action}: {MoveText.Minutes(step.Minutes)}");
            text.AppendLine($"     {step.Caution}");
        }

        if (move.Steps.Count == 0)
        {
            text.AppendLine($"   - {move.Action}");
            text.AppendLine($"     {move.Caution}");
        }

        foreach (var left in MoveText.LeavesOut(move))
        {
            text.AppendLine($"   {left}");
        }

        if (move.Why.Length > 0)
        {
            text.AppendLine($"   Why: {move.Why}");
        }

        text.AppendLine(symptom is null ? "   For: names; the rounds, one by one: identify" : $"   For: [{move.Question}] {symptom}");
    }
}
