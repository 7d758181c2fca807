using Underturf.Property.Practice;

namespace Underturf.Planning.Repair;

/// <summary>What to lay out before a valve is opened, from the catalogue.</summary>
internal sealed class PartsList(ValveCase valve)
{
    private readonly RepairingPractice book = valve.Site.Numbers;

    public IReadOnlyList<PartLine> Of(RepairKind kind)
    {
        var size = valve.Size;
        var inside = book.Parts.Where(p => p.For.Contains(kind.ToString())).Select(p => Line(p.Name, p.Screws ? valve.Fact.Screws ?? p.Count : p.Count, p.Price * (IsOfEverySize(p) ? 1 : size.PartsFactor)));
        return kind is RepairKind.Replace or RepairKind.Move
            ? [Line($"valve, {size.Inches:0.##} in", 1, size.ValvePrice), Line("fittings, primer and cement", 1, size.FittingsPrice), .. inside, .. Box is { } box ? [Line(box.Name, 1, box.Price)] : Array.Empty<PartLine>()]
            : [.. inside];
    }

    /// <summary>The box that a new valve gets where there is none.</summary>
    public BoxPractice? Box => valve.Box is null ? new BoxFitter(book).Smallest([valve.Size], 0) : null;

    /// <summary>A connector is the same on every valve: it is for a new one too.</summary>
    private static bool IsOfEverySize(ValvePart part) => part.For.Contains(nameof(RepairKind.Replace));

    public static PartLine Line(string what, decimal count, decimal each, string unit = "")
    {
        var cents = decimal.Round(each, 2, MidpointRounding.AwayFromZero);
        return new PartLine(what, count, unit, cents, decimal.Round(cents * count, 2, MidpointRounding.AwayFromZero));
    }
}
