using System.Globalization;

namespace Underturf.Quantities;

/// <summary>The size of a round copper conductor, by gauge number or by area.</summary>
/// <param name="DiameterMetres">Diameter of the solid conductor of this size.</param>
public readonly record struct WireSize(double DiameterMetres)
{
    public double AreaSquareMetres => Math.PI * DiameterMetres * DiameterMetres / 4;

    /// <summary>The gauge number, not rounded: d = 0.127 mm * 92^((36 - n) / 39) (ASTM B258, from memory).</summary>
    public double Awg => 36 - (39 * Math.Log(DiameterMetres / 0.127e-3) / Math.Log(92));

    public static WireSize FromAwg(double number) => new(0.127e-3 * Math.Pow(92, (36 - number) / 39));

    public static WireSize FromSquareMillimetres(double area) => new(Math.Sqrt(4 * area * 1e-6 / Math.PI));

    /// <summary>Reads "18 AWG" (also "18 ga") or "1.5 mm2".</summary>
    public static Outcome<WireSize> Parse(string text)
    {
        var trimmed = text.Trim();
        foreach (var (suffix, make, least, most) in Forms)
        {
            if (trimmed.EndsWith(suffix, StringComparison.OrdinalIgnoreCase)
                && double.TryParse(trimmed[..^suffix.Length].Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
                && number >= least && number <= most)
            {
                return make(number);
            }
        }

        return new Problem(Problem.Quote(text), "is not a wire size", "Write \"18 AWG\" (0 to 40) or \"1.5 mm2\" (0.05 to 100)");
    }

    /// <summary>"18 AWG" where the size is a whole gauge number, else the area in mm2.</summary>
    public override string ToString()
    {
        var nearest = Math.Round(Awg);
        return Math.Abs(Awg - nearest) < 0.01
            ? string.Create(CultureInfo.InvariantCulture, $"{nearest:0} AWG")
            : string.Create(CultureInfo.InvariantCulture, $"{AreaSquareMetres * 1e6:0.##} mm2");
    }

    /// <summary>As it is told on a property: by its gauge, where people there use US units and it has a whole one, else by its area.</summary>
    public string Say(bool usUnits) => usUnits ? ToString() : string.Create(CultureInfo.InvariantCulture, $"{AreaSquareMetres * 1e6:0.##} mm2");

    /// <summary>The same of a size that was written down.</summary>
    public static string Say(string written, bool usUnits) => Parse(written) is { Succeeded: true, Value: var size } ? size.Say(usUnits) : written;

    private static readonly (string Suffix, Func<double, WireSize> Make, double Least, double Most)[] Forms =
    [
        ("AWG", FromAwg, 0, 40),
        ("gauge", FromAwg, 0, 40),
        ("ga", FromAwg, 0, 40),
        ("mm2", FromSquareMillimetres, 0.05, 100),
        ("mm²", FromSquareMillimetres, 0.05, 100),
    ];
}
