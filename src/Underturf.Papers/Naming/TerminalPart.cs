using Underturf.FieldLog;
using Underturf.Reasoning;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Papers;

/// <summary>Which wire is which end as far as it is known, and what each end may be.</summary>
internal static class TerminalPart
{
    public static IEnumerable<Block> Blocks(PageForm form, PaperMatter matter, NamingAnswer naming) =>
    [
        .. Paragraph.Heading(form, "Terminal list"),
        new Block(Styles.Cell.LeadingPoints, (sheet, y) => GradeMark.DrawLegend(sheet, form.LeftPoints, y + Styles.Cell.AscentPoints, Styles.Cell)) { BeforePoints = 4, WithNext = true },
        .. Wires(form, matter, naming),
        .. Ends(form, matter, naming),
        .. Spares(form, naming),
    ];

    private static IEnumerable<Block> Wires(PageForm form, PaperMatter matter, NamingAnswer naming)
    {
        var table = new Table(form.LeftPoints, [new("Wire", 170), new("End here", form.InnerWidthPoints - 270), new("Found here", 100)]);
        return naming.Wires.Count == 0
            ? Paragraph.Of(form, "No wire is likelier here than not.", Styles.Body, 4)
            : table.Blocks(naming.Wires.Select(w => (IReadOnlyList<Cell>)
                [Cell.Of(Sentence.Upper(w.Name), Styles.StrongCell), Cell.Of(w.End ?? "unknown", null, Grade(matter, naming, w)), Cell.Of(Say.Share(w.Probability))]));
    }

    /// <summary>As somebody noted what one of these ends carries; a name that only the touches gave is inferred.</summary>
    private static Grade Grade(PaperMatter matter, IReadOnlyList<string> ends) => ends
        .Select(id => matter.View.Ends.GetValueOrDefault(id))
        .FirstOrDefault(e => e is not null && (e.Station is not null || e.Common == true))?.Sure ?? FieldLog.Grade.Inferred;

    private static Grade Grade(PaperMatter matter, NamingAnswer naming, WireFound wire) =>
        wire.End is null ? FieldLog.Grade.Unknown : Grade(matter, naming.Ends.First(e => e.Named && e.Shares[0].Wire == wire.Wire).Ids);

    private static IEnumerable<Block> Ends(PageForm form, PaperMatter matter, NamingAnswer naming)
    {
        var table = new Table(form.LeftPoints, [new("End", 80), new("Looks", 84), new("Most likely", 136), new("How likely", 56), new("Or", form.InnerWidthPoints - 356)]);
        return
        [
            .. Paragraph.Minor(form, "What each end may be"),
            .. table.Blocks(naming.Ends.Select(end => (IReadOnlyList<Cell>)
            [
                Cell.Of(end.Name, Styles.StrongCell),
                Cell.Of(end.Looks),
                Cell.Of(end.Named ? end.Shares[0].Name : $"{end.Shares[0].Name}?", null, Grade(matter, end.Ids)),
                Cell.Of(Say.Share(end.Shares[0].Probability)),
                Cell.Of(string.Join(", ", end.Shares.Skip(1).Where(_ => !end.Named).Select(s => $"{s.Name} {Say.Share(s.Probability)}").Concat(end.FarPartOf.Select(s => $"the far part of {s.Name}, cut off {Say.Share(s.Probability)}"))), Styles.Small),
            ])),
            .. naming.Exact ? [] : Paragraph.Of(form, naming.Precision, Styles.Small, 4),
        ];
    }

    private static IEnumerable<Block> Spares(PageForm form, NamingAnswer naming) => naming.Spares.Count == 0 ? [] :
    [
        .. Paragraph.Minor(form, "Spares"),
        .. naming.Spares.SelectMany(s => Paragraph.Of(
            form,
            $"{Sentence.Upper(s.Name)}, to {s.To}: {(s.Proven ? "proven to there, and no farther" : $"not proven: {string.Join("; ", s.Missing)}")}.",
            Styles.Body,
            3)),
    ];
}
