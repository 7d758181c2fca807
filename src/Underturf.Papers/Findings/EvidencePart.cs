using Underturf.Reasoning;
using Underturf.Reasoning.Telling;

namespace Underturf.Papers;

/// <summary>What the leading explanation predicts beside what was read.</summary>
internal static class EvidencePart
{
    public static IEnumerable<Block> Blocks(PageForm form, PaperMatter matter, OpenQuestion question)
    {
        if (question.Explanations is not [{ Evidence.Count: > 0 } first, ..])
        {
            return [];
        }

        var table = new Table(form.LeftPoints, [new("What was read", 148), new("Read", 108), new("Predicted", form.InnerWidthPoints - 388), new("Speaks", 74), new("Note", 58)]);
        var rows = EvidenceRow.Of(first.Evidence).Select(line => (IReadOnlyList<Cell>)
        [
            Cell.Of(line.What),
            Cell.Of(line.Observed, Styles.StrongCell, matter.GradeOf(line.Lines[0].Entry)),
            Cell.Of(line.Predicted),
            Cell.Of(line.Speaks["speaks ".Length..]),
            Cell.Of(line.Entries, Styles.Small),
        ]);
        return [.. Paragraph.Minor(form, "What speaks for and against the first"), .. table.Blocks(rows)];
    }
}
