using Underturf.Reasoning;

namespace Underturf.Papers;

/// <summary>How ticks are read off: which pattern is which wire.</summary>
internal static class PatternKey
{
    /// <summary>Rounds are set in groups of so many, to be counted at a glance.</summary>
    private const int Group = 5;

    public static IEnumerable<Block> Blocks(PageForm form, NamingSheet sheet)
    {
        var table = new Table(form.LeftPoints, [new("Ticks, round by round", 200), new("It is", form.InnerWidthPoints - 200)]) { PaddingPoints = 2.5 };
        return
        [
            .. Paragraph.Minor(form, "Key: + ticked, - not"),
            .. table.Blocks(sheet.Keys.OrderBy(k => k.Sign, StringComparer.Ordinal).Select(key => (IReadOnlyList<Cell>)[Cell.Of(Spaced(key.Sign), Styles.StrongCell), Cell.Of(key.Name)])),
            .. Paragraph.Of(form, "A row without a tick is none of these. A row that is not in the key has a tick too many or too few: touch it again in every round, or type the ticks into the notebook, which reckons with errors.", Styles.Small, 4),
        ];
    }

    private static string Spaced(string sign) => string.Join("  ", sign.Chunk(Group).Select(part => string.Join(' ', part)));
}
