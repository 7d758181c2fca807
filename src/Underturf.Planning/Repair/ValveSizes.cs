using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Planning.Repair;

/// <summary>What a size of valve takes, from the catalogue.</summary>
internal static class ValveSizes
{
    /// <summary>The size nearest by ratio; of a valve without one the middle of the catalogue's smaller half, as most valves are.</summary>
    public static ValveSizePractice Of(RepairingPractice book, ValveFact valve) => valve.Size is { Metres: > 0 } size && Units.In(size.Metres, "in") is var inches
        ? book.Sizes.MinBy(s => Math.Abs(Math.Log(s.Inches / inches)))!
        : Usual(book);

    /// <summary>Of all valves in a box.</summary>
    public static IReadOnlyList<ValveSizePractice> In(RepairSite site, string box) =>
        [.. site.View.Valves.Values.Where(v => v.Box is { } b && site.View.Identity.Of(b) == box).Select(v => Of(site.Numbers, v))];

    private static ValveSizePractice Usual(RepairingPractice book) => book.Sizes.OrderBy(s => s.Inches).ElementAt((book.Sizes.Count - 1) / 4);
}
