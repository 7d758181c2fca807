namespace Underturf.Property.Practice;

/// <summary>What must hold between the numbers of repairs.</summary>
internal static class RepairingCheck
{
    /// <summary>As options of a repair are named.</summary>
    private static readonly string[] Kinds = ["Coil", "Clean", "Rebuild", "Donor", "Replace", "Move"];

    public static IEnumerable<(bool Holds, string Place, string Reason)> Of(PracticeBook book) =>
        Spans(book.Repairing).Concat(Amounts(book.Repairing)).Concat(Shares(book.Repairing)).Concat(Causes(book)).Concat(Catalogue(book.Repairing));

    private static IEnumerable<(bool Holds, string Place, string Reason)> Spans(RepairingPractice book) => new (string Place, Span Span)[]
    {
        ("openMinutes", book.OpenMinutes), ("exposeMinutes", book.ExposeMinutes), ("coilMinutes", book.CoilMinutes), ("cleanMinutes", book.CleanMinutes),
        ("rebuildMinutes", book.RebuildMinutes), ("replaceMinutes", book.ReplaceMinutes), ("proofMinutes", book.ProofMinutes), ("closeMinutes", book.CloseMinutes),
        ("paving.minutes", book.Paving.Minutes), ("moving.minutes", book.Moving.Minutes), ("donors.minutes", book.Donors.Minutes),
        ("joints.clearMinutes", book.Joints.ClearMinutes), ("joints.endMinutes", book.Joints.EndMinutes), ("joints.jointMinutes", book.Joints.JointMinutes),
        ("joints.stationMinutes", book.Joints.StationMinutes), ("joints.houseMinutes", book.Joints.HouseMinutes), ("joints.boxMinutes", book.Joints.BoxMinutes),
    }.Select(s => (s.Span.Least >= 0 && s.Span.Least <= s.Span.Likely && s.Span.Likely <= s.Span.Most, $"repairing.{s.Place}", "needs minutes of zero or more, least no more than likely and likely no more than most"));

    private static IEnumerable<(bool Holds, string Place, string Reason)> Amounts(RepairingPractice book) => new (string Place, double Value)[]
    {
        ("agreeAbove", (double)book.AgreeAbove), ("readyMinutes", (double)book.ReadyMinutes), ("clearMillimetres", book.ClearMillimetres),
        ("roots.leastMetres", book.Roots.LeastMetres), ("roots.trunkFactor", book.Roots.TrunkFactor), ("roots.airPrice", (double)book.Roots.AirPrice), ("roots.arboristMillimetres", book.Roots.ArboristMillimetres), ("roots.arboristPrice", (double)book.Roots.ArboristPrice),
        ("paving.reachMetres", book.Paving.ReachMetres), ("paving.price", (double)book.Paving.Price),
        ("moving.clearMetres", book.Moving.ClearMetres), ("moving.pipeMetreMinutes", (double)book.Moving.PipeMetreMinutes), ("moving.pipeMetrePrice", (double)book.Moving.PipeMetrePrice),
        ("joints.slackMetres", book.Joints.SlackMetres),
    }.Select(a => (a.Value >= 0, $"repairing.{a.Place}", "must not be below zero"))
        .Append((book.Roots.HandFactor >= 1 && book.Roots.AirFactor >= 1, "repairing.roots", "needs factors of one or more: roots make no digging quicker"));

    private static IEnumerable<(bool Holds, string Place, string Reason)> Shares(RepairingPractice book) => new (string Place, double Value)[]
    {
        ("contingency", (double)book.Contingency), ("sureAt", book.SureAt), ("roots.arboristChance", book.Roots.ArboristChance), ("moving.good", book.Moving.Good),
        ("donors.unknownFits", book.Donors.UnknownFits), ("joints.shortEnds", book.Joints.ShortEnds), ("joints.fillShare", book.Joints.FillShare), ("joints.oldFails", book.Joints.OldFails),
    }.Select(s => (s.Value is > 0 and < 1, $"repairing.{s.Place}", "must be a share between 0 and 1"));

    private static IEnumerable<(bool Holds, string Place, string Reason)> Causes(PracticeBook book)
    {
        var known = book.Faults.Select(f => f.Id).Concat(book.Water.Faults.Select(f => f.Id)).ToHashSet(StringComparer.Ordinal);
        foreach (var cause in book.Repairing.Causes)
        {
            var place = $"cause {cause.Name}";
            yield return (cause.Of.Keys.All(known.Contains), place, "names a fault that is not in the book");
            yield return (cause.Of.Values.All(s => s is > 0 and <= 1), place, "needs shares above 0 and no more than 1");
            yield return (cause is { Seen: > 0 and < 1, Imagined: > 0 and < 1 }, place, "needs chances to be seen and imagined between 0 and 1");
            yield return (new[] { cause.Coil, cause.Clean, cause.Rebuild, cause.Replace }.All(c => c is >= 0 and <= 1), place, "needs chances of a cure from 0 to 1");
        }

        yield return (book.Repairing.Causes.Count > 0, "repairing.causes", "must name at least one");
        yield return (book.Repairing.Causes.Select(c => c.Name).Distinct().Count() == book.Repairing.Causes.Count, "repairing.causes", "has a name twice");
        foreach (var fault in book.Repairing.Causes.SelectMany(c => c.Of).GroupBy(o => o.Key))
        {
            yield return (fault.Sum(o => o.Value) <= 1 + 1e-9, $"fault {fault.Key}", "has causes whose shares come to more than 1");
        }
    }

    private static IEnumerable<(bool Holds, string Place, string Reason)> Catalogue(RepairingPractice book)
    {
        yield return (book.Sizes.Count > 0 && book.Sizes.All(s => s is { Inches: > 0, BonnetMillimetres: > 0, PartsFactor: > 0, ValvePrice: >= 0, FittingsPrice: >= 0 }), "repairing.sizes", "needs at least one size, with inches, bonnet and factor above zero and prices of zero or more");
        yield return (book.Sizes.Select(s => s.Inches).Distinct().Count() == book.Sizes.Count, "repairing.sizes", "has a size twice");
        yield return (book.Parts.All(p => p is { Count: > 0, Price: >= 0 } && p.For.Count > 0 && p.For.All(Kinds.Contains)), "repairing.parts", $"needs counts above zero, prices of zero or more and what each is for: {string.Join(", ", Kinds)}");
        yield return (book.Connectors.Count > 0 && book.Connectors.All(c => c is { MostWires: > 1, Price: >= 0, CubicCentimetres: > 0, LeastSquareMillimetres: > 0 } && c.MostSquareMillimetres > c.LeastSquareMillimetres), "repairing.connectors", "needs at least one, each for two wires or more, with room above zero and least copper above zero and below most");
        yield return (book.Boxes.Count > 0 && book.Boxes.All(b => b is { LengthMillimetres: > 0, WidthMillimetres: > 0, DepthMillimetres: > 0, Price: >= 0 }), "repairing.boxes", "needs at least one, each longer, wider and deeper than nothing");
        yield return (book.Donors.InStock.All(d => d.Inches > 0), "repairing.donors.inStock", "needs sizes above zero");
    }
}
