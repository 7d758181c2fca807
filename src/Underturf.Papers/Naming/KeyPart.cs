using Underturf.Reasoning;

namespace Underturf.Papers;

/// <summary>How to read off which wire an end is.</summary>
internal static class KeyPart
{
    /// <summary>Rounds are set in groups of so many, to be counted at a glance.</summary>
    private const int Group = 5;

    public static IEnumerable<Block> Patterns(PageForm form, NamingSheet sheet)
    {
        var table = new Table(form.LeftPoints, [new("Ticks, round by round", 200), new("It is", form.InnerWidthPoints - 200)]) { PaddingPoints = 2.5 };
        return
        [
            .. Paragraph.Minor(form, "Key: + ticked, - not"),
            .. table.Blocks(sheet.Keys.OrderBy(k => k.Sign, StringComparer.Ordinal).Select(key => (IReadOnlyList<Cell>)[Cell.Of(Spaced(key.Sign), Styles.StrongCell), Cell.Of(key.Name)])),
            .. Paragraph.Of(form, "A row without a tick is none of these. A row that is not in the key has a tick too many or too few: touch that end again in every round, or type the ticks into the notebook, which reckons with errors.", Styles.Small, 4),
        ];
    }

    public static IEnumerable<Block> Ohms(PageForm form, NamingSheet sheet)
    {
        var table = new Table(form.LeftPoints, [new("Reads about", 120), new("It is", form.InnerWidthPoints - 120)]) { PaddingPoints = 2.5 };
        return
        [
            .. Paragraph.Minor(form, "Key: the resistor with the wire's own ohms"),
            .. table.Blocks(sheet.Keys.Select(key => (IReadOnlyList<Cell>)[Cell.Of(key.Sign, Styles.StrongCell), Cell.Of(key.Name)])),
            .. Paragraph.Of(form, "Over range: the wire ends at none of these. Take every resistor off again.", Styles.Small, 4),
        ];
    }

    private static string Spaced(string sign) => string.Join("  ", sign.Chunk(Group).Select(part => string.Join(' ', part)));
}
