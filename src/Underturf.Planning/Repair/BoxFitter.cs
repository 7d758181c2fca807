using Underturf.Property.Practice;

namespace Underturf.Planning.Repair;

/// <summary>Which box of the catalogue holds valves with room for a hand round each, and joints with their slack.</summary>
internal sealed class BoxFitter(RepairingPractice book)
{
    private const double CubicMillimetresPerCentimetre = 1000;

    /// <summary>Smallest first.</summary>
    private IEnumerable<BoxPractice> Boxes => book.Boxes.OrderBy(Room);

    /// <param name="valves">In a row.</param>
    /// <param name="cubicCentimetres">Of joints.</param>
    public (BoxPractice? Box, double LengthMillimetres, double WidthMillimetres) ForValves(IReadOnlyList<ValveSizePractice> valves, double cubicCentimetres)
    {
        var length = valves.Count == 0 ? 0 : valves.Sum(v => v.BonnetMillimetres + book.ClearMillimetres) + book.ClearMillimetres;
        var width = valves.Select(v => v.BonnetMillimetres + (2 * book.ClearMillimetres)).DefaultIfEmpty(0).Max();
        return (Boxes.FirstOrDefault(b => Holds(b, length, width, cubicCentimetres)), length, width);
    }

    /// <summary>The box that somebody noted, by its name in the catalogue.</summary>
    public BoxPractice? Named(string? size) => size is null ? null : book.Boxes.FirstOrDefault(b => size.Contains(b.Name, StringComparison.OrdinalIgnoreCase));

    public bool Holds(BoxPractice box, double length, double width, double cubicCentimetres) =>
        box.LengthMillimetres >= length && box.WidthMillimetres >= width && Room(box) * book.Joints.FillShare >= cubicCentimetres;

    private static double Room(BoxPractice box) => box.LengthMillimetres * box.WidthMillimetres * box.DepthMillimetres / CubicMillimetresPerCentimetre;
}
