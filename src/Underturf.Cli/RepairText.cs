using Underturf.Planning.Repair;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Telling;

namespace Underturf.Cli;

/// <summary>A repair as text for a terminal: next step first.</summary>
internal static class RepairText
{
    public static string Write(RepairAnswer answer, bool usUnits) => string.Join(Environment.NewLine, (IEnumerable<string>)
    [
        .. answer.Steps is [var next, ..] ? Next(next) : ["Nothing is left to do."],
        string.Empty,
        $"[{answer.Name}]{Where(answer)} {Known(answer)}",
        .. answer.Causes.Count > 0 ? [$"   if so: {string.Join(", ", answer.Causes.Select(c => $"{c.Say} {Say.Share(c.Share)}{(c.Seen ? " (seen)" : string.Empty)}"))}"] : (string[])[],
        .. answer.Roots.Select(r => $"   roots: {Say.Length(r.DistanceMetres, usUnits)} from {r.Name}, whose ground of {Say.Length(r.RadiusMetres, usUnits)} is protected"),
        .. answer.Shut is { } shut ? [$"   {shut.Say}, {Say.Share(shut.Holds)} that it holds; dry meanwhile: {shut.SayDry}"] : (string[])[],
        string.Empty,
        Options(answer),
        .. answer.Options.Where(o => o.Why is not null).Select(o => $"   {o.Say}: {o.Why}; then {o.Then}"),
        .. Sum(answer),
        .. Parts(answer.Choice),
        .. Joints(answer),
        .. answer.Fit is { } fit ? [$"BOX: {fit.Needed ?? "none of the catalogue"} ({fit.Why}); noted: {fit.Noted ?? "nothing"}{(fit.IsEnough == false ? ", too small" : string.Empty)}"] : (string[])[],
        .. answer.Donors.Select(d => $"{(d.Spare ? "DONOR" : "SAME PARTS")}: {d.Name}, {Say.Share(d.Fits)} that it fits; the same: {List(d.Same)}; not known of both: {List(d.Unknown)}"),
        .. answer.Permissions.Select(p => $"FIRST: {p.Say} ({p.Why})"),
        .. answer.Unknown.Select(u => $"! not noted: {u}"),
        .. answer.Steps.Count > 0 ? Steps(answer) : [],
        string.Empty,
        Foot(answer.Engine, answer.Book),
    ]);

    public static string Write(RepairListAnswer answer) => string.Join(Environment.NewLine, (IEnumerable<string>)
    [
        answer.Items.Count == 0 ? "Nothing is known well enough to be repaired." : $"TO REPAIR: {answer.Items.Count}, {answer.Minutes:0.#} min, {answer.Price:0.00} {answer.Money}; what saves most for its minutes first",
        string.Empty,
        .. answer.Items.Count > 0
            ? [TextTable.Of(["where", "what", "of", "sure", "min", "±", answer.Money, "saves, min"], answer.Items.Select(i => new[] { i.Name, i.Say, i.Question, Say.Share(i.Chance), $"{i.Minutes:0.#}", i.Plan is null ? string.Empty : $"{i.SpreadMinutes:0.#}", $"{i.Price:0.00}", $"{i.Worth:0}" })), .. answer.Items.Where(i => i.LeavesOut.Length > 0).Select(i => $"   {i.Name}: {i.LeavesOut}"), string.Empty]
            : (string[])[],
        Foot(answer.Engine, answer.Book),
    ]);

    private static IEnumerable<string> Next(RepairStep step) =>
    [
        "NEXT STEP",
        $"  > {step.Say}, at {step.Where}{(step.Minutes > 0 ? $": {step.Minutes:0.#} min" : string.Empty)}",
        .. step.Expect is { } expect ? [$"    expect: {expect}"] : (string[])[],
        .. step.Caution.Length > 0 ? [$"    {step.Caution}"] : (string[])[],
    ];

    private static string Where(RepairAnswer answer) => answer.Place == answer.Thing ? string.Empty : $" in {answer.Where},";

    private static string Known(RepairAnswer answer) => answer.Chance is { } chance ? $"{Say.Share(chance)} that something is wrong with it" : "no open question is about it: shares are those of the practice book";

    private static string Options(RepairAnswer answer) => TextTable.Of(["", "what", "min", "±", answer.Money, "±", "expected", "cures"], answer.Options.Select((o, i) =>
        new[] { i == 0 ? ">" : " ", o.Say, $"{o.Cost.Minutes:0.#}", $"{o.SpreadMinutes:0.#}", $"{o.Cost.Price:0.00}", $"{o.SpreadPrice:0.00}", o.IsPossible ? $"{o.Expected:0.00}" : "no", Say.Share(o.Cures) }));

    private static IEnumerable<string> Sum(RepairAnswer answer) =>
    [
        string.Empty,
        TextTable.Of(["line", "min", "work", "parts"], answer.Choice.Cost.Lines.Select(l => new[] { l.What, $"{l.Minutes:0.#}", $"{l.Work:0.00}", $"{l.Parts:0.00}" })),
        $"Together {answer.Choice.Cost.Minutes:0.#} min, {answer.Estimate.Work:0.00} {answer.Money} of work and {answer.Estimate.Parts:0.00} {answer.Money} of parts; with {answer.Estimate.Contingency:0.00} {answer.Money} on top for what may come, no more than {answer.Estimate.Total:0.00} {answer.Money}.",
    ];

    private static IEnumerable<string> Parts(RepairOption option) => option.Parts.Count == 0 ? []
        : ["", "LAY OUT", .. option.Parts.Select(p => $"  {p.Count:0.##}{(p.Unit.Length > 0 ? $" {p.Unit}" : string.Empty)} {p.What}: {p.Price:0.00}")];

    private static IEnumerable<string> Joints(RepairAnswer answer) => answer.Joints.Count == 0 ? []
        : ["", TextTable.Of(["joint", "conductors", "gauges", "connector"], answer.Joints.Select(j => new[] { (j.Suspected ? "? " : string.Empty) + j.Name, $"{j.Ends.Count}", string.Join(", ", j.Gauges.GroupBy(g => g).Select(g => $"{g.Count()} x {g.Key}")), j.Trouble ?? string.Join(", ", j.Connectors.Select(c => $"{c.Count:0} x {c.What}")) }))];

    private static IEnumerable<string> Steps(RepairAnswer answer) =>
        ["", "STEPS", .. answer.Steps.SelectMany((s, i) => new[] { $"  {i + 1}. {s.Where}: {s.Say}" }.Concat(s.Expect is { } expect ? [$"     expect: {expect}"] : []).Concat(s.Caution.Length > 0 ? [$"     {s.Caution}"] : []))];

    private static string List(IReadOnlyList<string> things) => things.Count == 0 ? "nothing" : string.Join(", ", things);

    private static string Foot(string engine, string book) => $"{PriceWords.Repair} ± is a standard deviation. Engine {engine}, practice book {book}. Local codes and licensed practice prevail.";
}
