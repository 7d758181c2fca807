using System.Globalization;
using System.Text;

namespace Underturf.Cli;

/// <summary>Somebody's notes may hold characters that steer a terminal or turn the writing direction: they are printed as question marks.</summary>
internal sealed class PrintableWriter(TextWriter inner) : TextWriter(CultureInfo.InvariantCulture)
{
    public override Encoding Encoding => inner.Encoding;

    public override void Write(char value) => inner.Write(Printable(value));

    public override void Write(string? value) => inner.Write(value is null ? null : string.Create(value.Length, value, (span, text) =>
    {
        for (var i = 0; i < span.Length; i++)
        {
            span[i] = Printable(text[i]);
        }
    }));

    public override void WriteLine(string? value)
    {
        Write(value);
        inner.WriteLine();
    }

    public override void Flush() => inner.Flush();

    private static char Printable(char letter) =>
        letter is not ('\n' or '\r' or '\t') && (char.IsControl(letter) || char.GetUnicodeCategory(letter) == UnicodeCategory.Format) ? '?' : letter;
}
