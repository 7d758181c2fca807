using Underturf.FieldLog;

namespace Underturf.FieldApp;

/// <summary>A mark as the map draws it: one for each place, so that no two figures lie on each other.</summary>
/// <param name="Next">True for the place of the next move.</param>
public sealed record GroundSign(bool Next, string Words, IReadOnlyList<Position> Line)
{
    /// <summary>Several questions can suspect one place: the likeliest is written, the others are counted.</summary>
    public static IReadOnlyList<GroundSign> Of(IReadOnlyList<GroundMark> marks) =>
    [
        .. marks.Where(mark => mark.Probability is null).Select(mark => new GroundSign(true, "next", mark.Line)),
        .. marks.Where(mark => mark.Probability is not null).GroupBy(mark => (mark.Line[0], mark.Line[^1])).Select(Suspected),
    ];

    private static GroundSign Suspected(IEnumerable<GroundMark> place)
    {
        var likeliest = place.OrderByDescending(mark => mark.Probability).ToList();
        var more = likeliest.Count > 1 ? $" +{likeliest.Count - 1}" : "";
        return new GroundSign(false, Wording.Percent(likeliest[0].Probability!.Value) + more, likeliest[0].Line);
    }
}
