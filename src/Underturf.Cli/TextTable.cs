using System.Text;

namespace Underturf.Cli;

/// <summary>Columns of text, as wide as they need to be.</summary>
internal static class TextTable
{
    public static string Of(IReadOnlyList<string> heads, IEnumerable<string[]> rows)
    {
        var all = rows.Prepend([.. heads]).ToList();
        var widths = heads.Select((_, c) => all.Max(r => r[c].Length)).ToArray();
        var text = new StringBuilder();
        foreach (var row in all)
        {
            text.AppendLine(string.Join("  ", row.Select((cell, c) => cell.PadRight(widths[c]))).TrimEnd());
        }

        return text.ToString().TrimEnd();
    }
}
