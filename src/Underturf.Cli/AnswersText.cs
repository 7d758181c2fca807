using System.Text;
using Underturf.Reasoning;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Telling;
using Underturf.Reasoning.Water;

namespace Underturf.Cli;

/// <summary>Answers as text for a terminal.</summary>
internal static class AnswersText
{
    private const int MostPlaces = 4;
    private const int MostMoves = 3;
    private const int MostExplanations = 5;

    /// <summary>Places less likely than this are said to be "under 1 %".</summary>
    private const double LeastPlace = 0.005;

    public static string Write(Answers answers, bool usUnits)
    {
        var text = new StringBuilder();
        if (answers.Moves.Count > 0)
        {
            text.AppendLine("NEXT MOVE");
            Move(text, answers.Moves[0]);
            text.AppendLine();
        }
        else if (answers.Questions.Count > 0)
        {
            text.AppendLine("NEXT MOVE: none is worth its minutes.");
            text.AppendLine();
        }

        text.AppendLine(answers.Questions.Count == 0 ? "No open question." : $"OPEN QUESTIONS: {answers.Questions.Count}");
        foreach (var question in answers.Questions)
        {
            text.AppendLine();
            Question(text, question, usUnits);
        }

        text.AppendLine();
        text.Append($"{(answers.Moves.Count > 0 ? $"{PriceWords.Move} " : string.Empty)}Engine {answers.Engine}, practice book {answers.Book}. Local codes and licensed practice prevail.");
        return text.ToString();
    }

    private static void Question(StringBuilder text, OpenQuestion question, bool usUnits)
    {
        text.AppendLine($"[{question.Id}] {question.Symptom}");
        if (question.WaterLost is { } lost)
        {
            text.AppendLine($"  LOST: {lost.Say(new WaterSay(usUnits))}, nine times in ten");
        }

        foreach (var repeat in question.Repeats)
        {
            text.AppendLine($"  TAKE AGAIN: {repeat.What}, at {repeat.Where} ({repeat.Why}); until then no explanation is more than a guess");
        }

        foreach (var explanation in question.Explanations.Where(e => !e.RuledOut).Take(MostExplanations))
        {
            Explanation(text, explanation);
        }

        var ruledOut = question.Explanations.Where(e => e.RuledOut).Select(e => e.Summary).ToList();
        if (ruledOut.Count > 0)
        {
            text.AppendLine($"   under 1 %  each of: {string.Join("; ", ruledOut)}");
        }

        if (question.Valves.Count > 0)
        {
            text.AppendLine($"      valves: {string.Join(", ", question.Valves.Where(v => v.Probability > 0.001).Select(v => $"{v.Count}: {Say.Share(v.Probability)}"))}");
        }

        foreach (var line in EvidenceRow.Of(question.Explanations[0].Evidence))
        {
            text.AppendLine($"      {line.Entries}: {line.What}: read {line.Observed}; predicted {line.Predicted}; {line.Speaks}");
        }

        if (question.Overturn is { } overturn)
        {
            text.AppendLine($"      what would change it: {overturn.Say}");
        }

        foreach (var move in question.Moves.Take(MostMoves))
        {
            Move(text, move);
        }
    }

    private static void Explanation(StringBuilder text, Explanation explanation)
    {
        text.AppendLine($"  {Say.Share(explanation.Probability),10}  {explanation.Summary}");
        foreach (var alike in explanation.Alike)
        {
            text.AppendLine($"              {Say.Share(alike.Probability)} {alike.Summary}{(alike.Repair.Length > 0 ? $"; cure: {alike.Repair}" : string.Empty)}");
        }

        var places = explanation.Places.Where(p => p.Probability >= LeastPlace).ToList();
        if (places.Count > 1)
        {
            text.AppendLine($"              where: {string.Join(", ", places.Take(MostPlaces).Select(p => $"{p.Label} {Say.Share(p.Probability)}"))}{(places.Count > MostPlaces ? ", ..." : string.Empty)}");
        }
    }

    private static void Move(StringBuilder text, Move move)
    {
        text.AppendLine($"  > {move.Action}, at {move.Where}: {MoveText.Figures(move)}");
        foreach (var left in MoveText.LeavesOut(move))
        {
            text.AppendLine($"    {left}");
        }

        text.AppendLine($"    {move.Caution}");
    }
}
