using System.Text;

namespace Underturf.Cli;

/// <summary>Columns of text, as wide as they need to be; a cell is one line and at most so long, whatever somebody noted.</summary>
internal static class TextTable
{
    private const int Longest = 48;

    public static string Of(IReadOnlyList<string> heads, IEnumerable<string[]> rows)
    {
        var all = rows.Select(r => r.Select(Cell).ToArray()).Prepend([.. heads]).ToList();
        var widths = heads.Select((_, c) => all.Max(r => r[c].Length)).ToArray();
        var text = new StringBuilder();
        foreach (var row in all)
        {
            text.AppendLine(string.Join("  ", row.Select((cell, c) => cell.PadRight(widths[c]))).TrimEnd());
        }

        return text.ToString().TrimEnd();
    }

    /// <summary>On one line, cut where it is too long to be read in a table.</summary>
    public static string Cell(string text)
    {
        var line = string.Join(' ', text.Split(['\n', '\r', '\t', '\v', '\f', '\u0085', '\u2028', '\u2029'], StringSplitOptions.RemoveEmptyEntries));
        return line.Length <= Longest ? line : $"{line[..(Longest - 1)]}…";
    }
}
