using Underturf.Quantities;

namespace Underturf.Networks.Wiring.Instruments;

/// <summary>What must hold of a bundle and what feeds it.</summary>
internal static class BundleCheck
{
    internal static Problem? Check(Bundle bundle, IReadOnlyList<BundleDrive> drives, double hertz)
    {
        if (!(hertz > 0 && hertz <= 1e6))
        {
            return new Problem(
                "frequency", $"{hertz} Hz couples nothing that this model knows", "Give the mains' 50 or 60 Hz or the tone's frequency");
        }

        var pair = bundle.PairFaradsPerMetre;
        if (!(IsPositive(bundle.LengthMetres) && IsPositive(bundle.EarthFaradsPerMetre) && (pair == 0 || IsPositive(pair))))
        {
            return new Problem("bundle", "needs a length and a capacitance to the soil above zero", "Give metres and farads a metre");
        }

        if (!IsKnown(bundle, bundle.CommonNumber))
        {
            return new Problem(
                "bundle", $"has no conductor number {bundle.CommonNumber} for its common", "Give a place in the list, or Bundle.Earth");
        }

        return bundle.Conductors.Select((c, k) => Check(bundle, c, k)).FirstOrDefault(p => p is not null)
            ?? drives.Select(d => Check(bundle, d)).FirstOrDefault(p => p is not null);
    }

    private static Problem? Check(Bundle bundle, BundleConductor conductor, int number)
    {
        var place = $"conductor '{conductor.Name}'";
        var hasCoil = !double.IsPositiveInfinity(conductor.CoilOhms);
        if (!(conductor.EarthOhms > 0) || !(conductor.CoilOhms > 0) || !(conductor.CoilHenries >= 0 && double.IsFinite(conductor.CoilHenries)))
        {
            return new Problem(
                place, "has ohms or henries that are none", "Give positive ohms, infinity where nothing is connected, and zero or more henries");
        }

        return hasCoil && (bundle.CommonNumber == Bundle.Earth || bundle.CommonNumber == number)
            ? new Problem(place, "has a coil that returns to no other conductor", "Name the bundle's common, and put no coil on the common itself")
            : null;
    }

    private static Problem? Check(Bundle bundle, BundleDrive drive)
    {
        var known = IsKnown(bundle, drive.From) && IsKnown(bundle, drive.To) && drive.From != drive.To;
        if (!known)
        {
            return new Problem(
                "drive",
                $"stands between {drive.From} and {drive.To}, which are not two conductors of the bundle",
                "Give two places in the list, or Bundle.Earth for one");
        }

        return IsPositive(drive.SourceOhms) && double.IsFinite(drive.Volts)
            ? null
            : new Problem("drive", $"{drive.Volts} V behind {drive.SourceOhms} ohm is no source", "Give finite volts and ohms above zero");
    }

    private static bool IsKnown(Bundle bundle, int number) => number == Bundle.Earth || (number >= 0 && number < bundle.Conductors.Count);

    private static bool IsPositive(double value) => value > 0 && double.IsFinite(value);
}
