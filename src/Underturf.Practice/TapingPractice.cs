using Underturf.FieldLog;

namespace Underturf.Property.Practice;

/// <summary>Taped distances.</summary>
/// <param name="TapeMetres">The longest that is taped in one go.</param>
/// <param name="TieMetres">Standard deviation of a tie where none was noted, the part that is the same for all.</param>
/// <param name="TieShare">The part in proportion to the distance.</param>
/// <param name="MarkMetres">Standard deviation of where a mark is, as drawn.</param>
/// <param name="PlacedMetres">Of where a buried thing was placed by hand on the plan: a hint, which ties outdo.</param>
/// <param name="Marks">What on the surface is sharp enough to tape from.</param>
/// <param name="DisagreeSpreads">A tie further off than so many standard deviations is to be taped again.</param>
public sealed record TapingPractice(
    string Source,
    double TapeMetres,
    ByGrade TieMetres,
    ByGrade TieShare,
    ByGrade MarkMetres,
    ByGrade PlacedMetres,
    IReadOnlyList<string> Marks,
    double DisagreeSpreads)
{
    /// <summary>Standard deviation of a tie: as noted, else by how it is known.</summary>
    public double SpreadMetres(Tie tie)
    {
        var (fixedPart, share) = (TieMetres.Of(tie.Grade), TieShare.Of(tie.Grade) * tie.Distance.Metres);
        return tie.Spread is { Metres: > 0 } noted ? noted.Metres : Math.Sqrt((fixedPart * fixedPart) + (share * share));
    }
}

/// <summary>A number by how something is known.</summary>
public sealed record ByGrade(double Measured, double Told, double Estimated, double Inferred, double Unknown)
{
    public double Of(Grade grade) => grade switch
    {
        Grade.Measured => Measured,
        Grade.Told => Told,
        Grade.Estimated => Estimated,
        Grade.Inferred => Inferred,
        _ => Unknown,
    };

    internal bool All(Func<double, bool> holds) => holds(Measured) && holds(Told) && holds(Estimated) && holds(Inferred) && holds(Unknown);
}

/// <summary>What must hold between the numbers of taping.</summary>
internal static class TapingCheck
{
    public static IEnumerable<(bool Holds, string Place, string Reason)> Of(TapingPractice taping)
    {
        yield return (taping.TapeMetres > 0, "taping.tapeMetres", "must be more than zero");
        yield return (taping.DisagreeSpreads > 0, "taping.disagreeSpreads", "must be more than zero");
        yield return (taping.TieShare.All(share => share is >= 0 and < 1), "taping.tieShare", "must be shares from 0 to 1");
        foreach (var (place, metres) in new[] { ("tieMetres", taping.TieMetres), ("markMetres", taping.MarkMetres), ("placedMetres", taping.PlacedMetres) })
        {
            yield return (metres.All(m => m > 0 && double.IsFinite(m)), $"taping.{place}", "must be metres above zero");
        }
    }
}
