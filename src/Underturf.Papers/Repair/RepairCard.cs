using Underturf.Planning.Repair;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Papers;

/// <summary>One repair as a card to work by: what to wait for, parts to lay out, steps with their cautions and what must be seen.</summary>
internal static class RepairCard
{
    /// <param name="alone">With its estimate, which otherwise stands before all cards.</param>
    public static IReadOnlyList<Sheet> Sheets(PaperMatter matter, RepairAnswer plan, bool alone)
    {
        var form = PageForm.Desk(matter.UsesUsUnits);
        return Flow.Pages(
        [
            .. Title(form, matter, plan),
            .. First(form, matter, plan),
            .. plan.Choice.Parts.Count > 0 ? Parts(form, plan) : [],
            .. plan.Joints.Count > 0 ? Joints(form, plan) : [],
            .. plan.Steps.Count > 0 ? Steps(form, plan) : [],
            .. Options(form, plan),
            .. alone ? RepairPaper.Estimate(form, plan) : [],
        ], form);
    }

    private static IEnumerable<Block> Title(PageForm form, PaperMatter matter, RepairAnswer plan)
    {
        var (choice, where) = (plan.Choice, plan.Place == plan.Thing ? string.Empty : $" in {plan.Where}");
        return
        [
            .. Paragraph.Of(form, Shorten.Name($"Step card · {matter.PropertyName}", Styles.Over, form.InnerWidthPoints, 1), Styles.Over, 0, 0, true),
            .. Paragraph.Of(form, Shorten.Name(Sentence.Upper($"{plan.Name}{where}"), Styles.Title, form.InnerWidthPoints, 2), Styles.Title, 2, 0, true),
            .. Paragraph.Of(form, $"{Sentence.Upper(choice.Say)}: {choice.Cost.Minutes:0} ± {choice.SpreadMinutes:0} min, {choice.Cost.Price:0.00} ± {choice.SpreadPrice:0.00} {plan.Money}.", Styles.Lead, 10),
            .. Paragraph.Of(form, Known(plan), Styles.Body, 5),
        ];
    }

    private static string Known(RepairAnswer plan)
    {
        var sure = plan.Chance is { } chance ? $"{Say.Share(chance)} that something is wrong with it" : "No open question is about it";
        return plan.Causes.Count == 0 ? $"{sure}."
            : $"{sure}; if so: {string.Join(", ", plan.Causes.Take(5).Select(c => $"{c.Say} {Say.Share(c.Share)}{(c.Seen ? " (seen)" : string.Empty)}"))}. {Say.Share(plan.Choice.Cures)} that this cures it; else {plan.Choice.Then}.";
    }

    /// <summary>What to wait for, roots, what has to be shut, and what nobody noted.</summary>
    private static IEnumerable<Block> First(PageForm form, PaperMatter matter, RepairAnswer plan)
    {
        var rows = plan.Permissions.Select(p => ($"{Sentence.Upper(p.Say)}", p.Why))
            .Concat(plan.Shut is { } shut ? [(Sentence.Upper(shut.Say), $"{Say.Share(shut.Holds)} that it holds; without water meanwhile: {shut.SayDry}")] : [])
            .Concat(plan.Roots.Select(r => ($"Roots of {r.Name}", $"{Say.Length(r.DistanceMetres, matter.UsesUsUnits)} away; protected ground {Say.Length(r.RadiusMetres, matter.UsesUsUnits)} round its trunk: {(r.Air ? "dig with air" : "dig by hand")}")))
            .Concat(plan.Donors.Where(d => d.Spare).Take(1).Select(d => ($"Donor: {d.Name}", $"{Say.Share(d.Fits)} that it fits; the same: {string.Join(", ", d.Same)}{(d.Unknown.Count > 0 ? $"; compare first: {string.Join(", ", d.Unknown)}" : string.Empty)}")))
            .Concat(plan.Fit is { Needed: { } needed } fit ? [($"Box that fits: {needed}", $"{fit.Why}; noted: {fit.Noted ?? "nothing"}")] : [])
            .Concat(plan.Unknown.Count > 0 ? [("Nobody noted", string.Join("; ", plan.Unknown))] : [])
            .ToList();
        var table = new Table(form.LeftPoints, [new("", 22), new("", form.InnerWidthPoints - 22)]);
        return rows.Count == 0 ? [] :
        [
            .. Paragraph.Heading(form, "Before you start"),
            .. table.Blocks(rows.Select(r => (IReadOnlyList<Cell>)[Cell.Tick(), new Cell((r.Item1, Styles.StrongCell), (Sentence.Ended(Sentence.Upper(r.Item2)), Styles.Small))])),
        ];
    }

    private static IEnumerable<Block> Parts(PageForm form, RepairAnswer plan)
    {
        var table = new Table(form.LeftPoints, [new("", 22), new("", 44), new("Part", form.InnerWidthPoints - 138), new(plan.Money, 72, true)]) { PaddingPoints = 2.5 };
        return
        [
            .. Paragraph.Heading(form, "Lay out"),
            .. table.Blocks(plan.Choice.Parts.Select(p => (IReadOnlyList<Cell>)[Cell.Tick(), Cell.Of($"{p.Count:0.##}{(p.Unit.Length > 0 ? $" {p.Unit}" : string.Empty)}", Styles.StrongCell), Cell.Of(Sentence.Upper(p.What)), Cell.Of($"{p.Price:0.00}")])),
        ];
    }

    private static IEnumerable<Block> Joints(PageForm form, RepairAnswer plan)
    {
        var table = new Table(form.LeftPoints, [new("Joint", 110), new("Conductors", 66, true), new("Gauges", 120), new("Connector", form.InnerWidthPoints - 296)]) { PaddingPoints = 2.5 };
        return
        [
            .. Paragraph.Heading(form, "Joints"),
            .. table.Blocks(plan.Joints.Select(j => (IReadOnlyList<Cell>)
            [
                Cell.Of(Sentence.Upper(j.Name) + (j.Suspected ? " ?" : string.Empty), j.Suspected ? Styles.StrongCell : Styles.Cell),
                Cell.Of($"{j.Ends.Count}"),
                Cell.Of(string.Join(", ", j.Gauges.GroupBy(g => g).Select(g => $"{g.Count()} × {g.Key}"))),
                Cell.Of(j.Trouble ?? string.Join(", ", j.Connectors.Select(c => $"{c.Count:0} × {c.What}"))),
            ])),
            .. Paragraph.Of(form, $"In brackets: nobody noted the size, it is taken as usual.{(plan.Joints.Any(j => j.Suspected) ? " ?: belief points here." : string.Empty)}", Styles.Small, 3),
        ];
    }

    private static IEnumerable<Block> Steps(PageForm form, RepairAnswer plan)
    {
        var table = new Table(form.LeftPoints, [new("", 22), new("Where", 80), new("What to do, what can hurt, what must be seen", form.InnerWidthPoints - 192), new("Done", 40), new("Not so", 50)]) { PaddingPoints = 5 };
        return
        [
            .. Paragraph.Heading(form, "Step by step"),
            .. table.Blocks(plan.Steps.Select((s, i) => (IReadOnlyList<Cell>)
            [
                Cell.Of($"{i + 1}", Styles.StrongCell),
                Cell.Of(Sentence.Upper(s.Where)),
                new Cell(
                    (Sentence.Upper(s.Say) + (s.Minutes > 0 ? $" ({s.Minutes:0} min)" : string.Empty), Styles.StrongCell),
                    (s.Expect is { } expect ? $"Expect: {expect}" : string.Empty, Styles.Cell),
                    (s.Caution.Length > 0 ? $"Caution: {s.Caution}" : string.Empty, Styles.Cell with { Ink = Ink.Accent })),
                Cell.Tick(),
                s.IsCheck ? Cell.Tick() : Cell.Of(string.Empty),
            ])),
            .. Paragraph.Of(form, "Where something is not so: stop, note it, and have the card made anew. Look again in one to two weeks.", Styles.Small, 4),
        ];
    }

    private static IEnumerable<Block> Options(PageForm form, RepairAnswer plan)
    {
        var table = new Table(form.LeftPoints, [new("What can be done", form.InnerWidthPoints - 290), new("Minutes", 80, true), new(plan.Money, 84, true), new("Expected", 66, true), new("Cures", 60, true)]);
        return
        [
            .. Paragraph.Heading(form, "Why this and not another"),
            .. table.Blocks(plan.Options.Select((o, i) => (IReadOnlyList<Cell>)
            [
                new Cell((Sentence.Upper(o.Say), i == 0 ? Styles.StrongCell : Styles.Cell), (o.Why is { } why ? Sentence.Upper(why) : string.Empty, Styles.Small)),
                Cell.Of($"{o.Cost.Minutes:0} ± {o.SpreadMinutes:0}"),
                Cell.Of($"{o.Cost.Price:0.00} ± {o.SpreadPrice:0}"),
                Cell.Of(o.IsPossible ? $"{o.Expected:0.00}" : "no", i == 0 ? Styles.StrongCell : null),
                Cell.Of(Say.Share(o.Cures)),
            ])),
            .. Paragraph.Of(form, "Expected: its price with what follows where it does not cure.", Styles.Small, 3),
        ];
    }
}
