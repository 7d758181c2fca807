namespace Underturf.Property;

/// <summary>Names in the order people count: "box 2" before "box 11".</summary>
public sealed class NaturalOrder : IComparer<string>
{
    public static NaturalOrder Instance { get; } = new();

    public int Compare(string? x, string? y)
    {
        var (a, b) = (x ?? string.Empty, y ?? string.Empty);
        var (i, j) = (0, 0);
        while (i < a.Length && j < b.Length)
        {
            var order = char.IsAsciiDigit(a[i]) && char.IsAsciiDigit(b[j]) ? Numbers(a, ref i, b, ref j) : a[i++].CompareTo(b[j++]);
            if (order != 0)
            {
                return order;
            }
        }

        var rest = (a.Length - i).CompareTo(b.Length - j);
        return rest != 0 ? rest : string.CompareOrdinal(a, b);
    }

    /// <summary>Compares by length without leading zeros, then by digits: no number is too long.</summary>
    private static int Numbers(string a, ref int i, string b, ref int j)
    {
        var (first, second) = (Digits(a, ref i), Digits(b, ref j));
        return first.Length != second.Length ? first.Length.CompareTo(second.Length) : string.CompareOrdinal(first, second);
    }

    private static string Digits(string text, ref int at)
    {
        var from = at;
        while (at < text.Length && char.IsAsciiDigit(text[at]))
        {
            at++;
        }

        return text[from..at].TrimStart('0');
    }
}
