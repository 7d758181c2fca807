using Underturf.Property.Practice;

namespace Underturf.Planning.Repair;

/// <summary>Which box of the catalogue holds valves with room for a hand round each, and joints with their slack.</summary>
internal sealed class BoxFitter(RepairingPractice book)
{
    private const double CubicMillimetresPerCentimetre = 1000;

    /// <summary>Smallest first.</summary>
    private IEnumerable<BoxPractice> Boxes => book.Boxes.OrderBy(Room);

    /// <summary>The smallest that holds them; nothing where none does.</summary>
    /// <param name="valves">In a row.</param>
    /// <param name="cubicCentimetres">Of joints.</param>
    public BoxPractice? Smallest(IReadOnlyList<ValveSizePractice> valves, double cubicCentimetres) => Boxes.FirstOrDefault(b => Holds(b, valves, cubicCentimetres));

    /// <param name="noted">Size of the box as somebody noted it.</param>
    /// <param name="why">What has to fit, in words.</param>
    public BoxFit Fit(string? noted, IReadOnlyList<ValveSizePractice> valves, double cubicCentimetres, string why)
    {
        var needed = Smallest(valves, cubicCentimetres);
        var known = noted is null ? null : book.Boxes.FirstOrDefault(b => noted.Contains(b.Name, StringComparison.OrdinalIgnoreCase));
        bool? enough = known is null ? IsNone(noted) ? false : null : needed is null || Holds(known, valves, cubicCentimetres);
        return new BoxFit(noted, needed?.Name, enough, needed is null ? $"{why}: no box of the catalogue is large enough, set two" : why);
    }

    /// <summary>Somebody noted that there is no box.</summary>
    private static bool IsNone(string? size) => size is not null && (size.Trim().Equals("none", StringComparison.OrdinalIgnoreCase) || size.Contains("no box", StringComparison.OrdinalIgnoreCase));

    private bool Holds(BoxPractice box, IReadOnlyList<ValveSizePractice> valves, double cubicCentimetres)
    {
        var length = valves.Count == 0 ? 0 : valves.Sum(v => v.BonnetMillimetres + book.ClearMillimetres) + book.ClearMillimetres;
        var width = valves.Select(v => v.BonnetMillimetres + (2 * book.ClearMillimetres)).DefaultIfEmpty(0).Max();
        return box.LengthMillimetres >= length && box.WidthMillimetres >= width && Room(box) * book.Joints.FillShare >= cubicCentimetres;
    }

    private static double Room(BoxPractice box) => box.LengthMillimetres * box.WidthMillimetres * box.DepthMillimetres / CubicMillimetresPerCentimetre;
}
