using System.Text;
using Underturf.Property;
using Underturf.Reasoning;

namespace Underturf.Papers;

/// <summary>The places whose conductor ends want names, each with the name of its test sheet's file.</summary>
internal static class NamingPlaces
{
    private const int LongestName = 40;

    public static IReadOnlyList<(string Place, string File)> Of(Notebook notebook)
    {
        var view = notebook.History.Now;
        var taken = new Dictionary<string, int>(StringComparer.Ordinal);
        return [.. UnnamedEnds.Places(view).Select(place => (place, File(view.Name(place), taken)))];
    }

    /// <summary>"naming-box-10.pdf"; a second place of that name gets "naming-box-10-2.pdf".</summary>
    private static string File(string name, Dictionary<string, int> taken)
    {
        var plain = Plain(name);
        var number = taken[plain] = taken.GetValueOrDefault(plain) + 1;
        return number == 1 ? $"naming-{plain}.pdf" : $"naming-{plain}-{number}.pdf";
    }

    private static string Plain(string name)
    {
        var plain = new StringBuilder();
        foreach (var letter in name.ToLowerInvariant().Where(_ => plain.Length < LongestName))
        {
            if (char.IsAsciiLetterOrDigit(letter))
            {
                plain.Append(letter);
            }
            else if (plain.Length > 0 && plain[^1] != '-')
            {
                plain.Append('-');
            }
        }

        return plain.ToString().Trim('-') is { Length: > 0 } said ? said : "place";
    }
}
