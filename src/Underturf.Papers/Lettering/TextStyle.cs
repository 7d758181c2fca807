namespace Underturf.Papers;

/// <summary>The few colours of the papers. One accent; everything else is ink on white.</summary>
internal enum Ink
{
    Ink,
    Muted,
    Accent,
    Rule,
    Pale,
    White,
}

/// <summary>The colours as numbers: the same that the screen uses.</summary>
internal static class Inks
{
    public static (byte Red, byte Green, byte Blue) Rgb(Ink ink) => ink switch
    {
        Ink.Ink => (0x1a, 0x21, 0x1e),
        Ink.Muted => (0x55, 0x5d, 0x58),
        Ink.Accent => (0x0c, 0x4a, 0x4e),
        Ink.Rule => (0xd5, 0xcd, 0xb8),
        Ink.Pale => (0xf3, 0xee, 0xe0),
        _ => (0xff, 0xff, 0xff),
    };

    /// <summary>"#0c4a4e".</summary>
    public static string Hex(Ink ink)
    {
        var (red, green, blue) = Rgb(ink);
        return $"#{red:x2}{green:x2}{blue:x2}";
    }
}

internal readonly record struct TextStyle(Weight Weight, double SizePoints, Ink Ink)
{
    private const double LeadingRatio = 1.36;

    /// <summary>From one baseline to the next.</summary>
    public double LeadingPoints => SizePoints * LeadingRatio;

    /// <summary>From the top of a line to its baseline.</summary>
    public double AscentPoints => SizePoints * 1.02;
}

/// <summary>The styles of a paper to read at a desk.</summary>
internal static class Styles
{
    public static readonly TextStyle Over = new(Weight.SemiBold, 9, Ink.Accent);
    public static readonly TextStyle Title = new(Weight.Bold, 25, Ink.Ink);
    public static readonly TextStyle Heading = new(Weight.Bold, 15, Ink.Ink);
    public static readonly TextStyle Minor = new(Weight.SemiBold, 10, Ink.Accent);
    public static readonly TextStyle Lead = new(Weight.SemiBold, 12.5, Ink.Ink);
    public static readonly TextStyle Body = new(Weight.Regular, 10, Ink.Ink);
    public static readonly TextStyle Strong = new(Weight.SemiBold, 10, Ink.Ink);
    public static readonly TextStyle Cell = new(Weight.Regular, 9, Ink.Ink);
    public static readonly TextStyle StrongCell = new(Weight.SemiBold, 9, Ink.Ink);
    public static readonly TextStyle Small = new(Weight.Regular, 8.5, Ink.Muted);
    public static readonly TextStyle SmallStrong = new(Weight.SemiBold, 8.5, Ink.Ink);
}
