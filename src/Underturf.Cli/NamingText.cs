using Underturf.Reasoning;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Cli;

/// <summary>Conductor ends with their names, as text for a terminal.</summary>
internal static class NamingText
{
    /// <summary>The cheapest and those that come next.</summary>
    private const int MostPlans = 4;

    public static string Write(NamingAnswer naming, bool sheet) => string.Join(Environment.NewLine, (IEnumerable<string>)
    [
        $"{naming.Place}: {naming.Ends.Count(e => e.Named)} of {naming.Ends.Count} ends have their name.",
        .. naming.Doubts.Select(d => $"! {d.Entry}: {d.Why}"),
        string.Empty,
        .. Enough(naming),
        .. Next(naming.Next),
        TextTable.Of(["end", "looks", "it is", "sure", "or"], naming.Ends.Select(End)),
        .. Plans(naming),
        .. Sheet(sheet ? naming.Sheet : null),
        .. Onward(naming),
        .. Spares(naming),
        string.Empty,
        $"{(naming.Exact ? string.Empty : $"{naming.Precision} ")}Engine {naming.Engine}, practice book {naming.Book}. Local codes and licensed practice prevail.",
    ]);

    private static IEnumerable<string> Enough(NamingAnswer naming)
    {
        if (naming is { EnoughKnown: true, Next: { } next })
        {
            yield return $"Enough known: one more round takes {next.Minutes:0} min and could save {naming.MinutesAtStake:0}.";
            yield return string.Empty;
        }
    }

    private static IEnumerable<string> Next(NamingRound? next)
    {
        if (next is null)
        {
            yield break;
        }

        yield return "NEXT ROUND";
        yield return $"  {next.Caution}";
        yield return $"  {next.Say}.";
        foreach (var fit in next.Fit)
        {
            yield return $"  Fit {fit.Sign} to {fit.Name}.";
        }

        yield return $"  {next.How} on {next.On}{(next.AgainstName is { } common ? $", against {common}" : string.Empty)}: {string.Join(", ", next.TouchNames)}{(next.UntilOne ? ", until one answers" : string.Empty)}.";
        yield return $"  About {Math.Max(1, next.Minutes):0} min, walk included.";
        yield return string.Empty;
    }

    private static string[] End(EndNaming end)
    {
        var best = end.Shares[0];
        return [end.Name, end.Looks, end.Named ? best.Name : $"{best.Name}?", Say.Share(best.Probability), string.Join(", ", end.Shares.Skip(1).Select(s => $"{s.Name} {Say.Share(s.Probability)}").Concat(end.FarPartOf.Select(s => $"cut-off {s.Name} {Say.Share(s.Probability)}")))];
    }

    private static IEnumerable<string> Plans(NamingAnswer naming)
    {
        if (naming.Plans.Count == 0)
        {
            yield break;
        }

        yield return string.Empty;
        yield return $"Why {naming.Plans[0].Way}: {naming.Why}.";
        yield return TextTable.Of(["plan", "minutes", "rounds", "left unnamed"], naming.Plans.Take(MostPlans).Select(p => (string[])[p.Way, $"{p.Minutes:0}{(p.OrMore ? " or more" : string.Empty)}", p.OrMore ? string.Empty : $"{p.Rounds:0}", p.OrMore ? string.Empty : $"{p.Unnamed:0.0}"]));
    }

    private static IEnumerable<string> Sheet(NamingSheet? sheet)
    {
        if (sheet is null)
        {
            yield break;
        }

        yield return string.Empty;
        yield return $"ON PAPER: {sheet.Way}";
        foreach (var key in sheet.Fitted)
        {
            yield return $"  {key.Sign} on {key.Name}";
        }

        foreach (var (index, round) in sheet.Rounds.Index())
        {
            yield return $"  {index + 1}. on {round.On}";
        }

        foreach (var key in sheet.Keys)
        {
            yield return $"  {key.Sign}  {key.Name}";
        }
    }

    private static IEnumerable<string> Onward(NamingAnswer naming)
    {
        foreach (var way in naming.Onward.GroupBy(test => test.Say))
        {
            yield return string.Empty;
            yield return $"FROM NO CONTROLLER: {string.Join(", ", way.Select(test => test.Name))}, each perhaps the far part of a conductor that is cut.";
            yield return $"  {way.First().Caution}";
            yield return $"  One end at a time: {way.Key} ({way.First().Among}).";
        }
    }

    private static IEnumerable<string> Spares(NamingAnswer naming)
    {
        foreach (var spare in naming.Spares)
        {
            yield return string.Empty;
            yield return $"Spare: {spare.Name}, to {spare.To}: {(spare.Proven ? "proven to there, and no farther" : $"not proven: {string.Join("; ", spare.Missing)}")}.";
        }
    }
}
