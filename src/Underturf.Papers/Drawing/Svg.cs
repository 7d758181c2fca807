using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;

namespace Underturf.Papers;

/// <summary>Elements of a drawing. Text goes through <see cref="PlainText"/>, so that the file is well formed whatever people wrote.</summary>
internal static class Svg
{
    public static readonly XNamespace Space = "http://www.w3.org/2000/svg";

    /// <summary>The face of all text; further rules follow it in a drawing's style.</summary>
    public const string Lettering = """
        text { font-family: "Atkinson Hyperlegible Next", "Atkinson Hyperlegible", "Segoe UI", "DejaVu Sans", sans-serif; fill: #1a211e; unicode-bidi: plaintext; }
        """;

    /// <summary>A drawing as a file.</summary>
    public static byte[] Bytes(XDocument drawing)
    {
        using var stream = new MemoryStream();
        var settings = new XmlWriterSettings { Encoding = new UTF8Encoding(false), Indent = true, NewLineChars = "\n" };
        using (var writer = XmlWriter.Create(stream, settings))
        {
            drawing.Save(writer);
        }

        return stream.ToArray();
    }

    public static string N(double number) => Math.Round(number, 2).ToString("0.##", CultureInfo.InvariantCulture);

    public static XElement Element(string name, params IEnumerable<(string Name, string Value)> attributes) =>
        new(Space + name, attributes.Select(a => new XAttribute(a.Name, a.Value)));

    public static XElement Group(string kind, params IEnumerable<XElement> children) => new(Space + "g", new XAttribute("class", kind), children);

    public static XElement Text(double x, double y, string text, string kind, params IEnumerable<(string Name, string Value)> more)
    {
        var element = Element("text", [("x", N(x)), ("y", N(y)), ("class", kind), .. more]);
        element.Value = PlainText.Of(text);
        return element;
    }

    public static XElement Rect(double x, double y, double width, double height, params IEnumerable<(string Name, string Value)> more) =>
        Element("rect", [("x", N(x)), ("y", N(y)), ("width", N(width)), ("height", N(height)), .. more]);

    public static XElement Circle(double x, double y, double radius, params IEnumerable<(string Name, string Value)> more) =>
        Element("circle", [("cx", N(x)), ("cy", N(y)), ("r", N(radius)), .. more]);

    public static XElement Path(string path, params IEnumerable<(string Name, string Value)> more) => Element("path", [("d", path), .. more]);

    public static XElement Line(IReadOnlyList<(double X, double Y)> points, bool closed, params IEnumerable<(string Name, string Value)> more) =>
        Element(closed ? "polygon" : "polyline", [("points", string.Join(' ', points.Select(p => $"{N(p.X)},{N(p.Y)}"))), .. more]);
}
