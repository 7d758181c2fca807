using Underturf.Quantities;

namespace Underturf.Networks.Wiring.Instruments;

/// <summary>Ohms that somebody measured or knows.</summary>
/// <param name="SpreadOhms">Standard deviation; zero where the value is exact.</param>
public readonly record struct MeasuredOhms(double Ohms, double SpreadOhms)
{
    internal Problem? Check(string place, bool mayBeZero = false) => Measured.Check(place, Ohms, SpreadOhms, "ohm", mayBeZero);
}

/// <summary>Farads that somebody measured or knows.</summary>
/// <param name="SpreadFarads">Standard deviation; zero where the value is exact.</param>
public readonly record struct MeasuredFarads(double Farads, double SpreadFarads)
{
    internal Problem? Check(string place, bool mayBeZero = false) => Measured.Check(place, Farads, SpreadFarads, "F", mayBeZero);
}

/// <summary>Volts that somebody measured, of either sign.</summary>
/// <param name="SpreadVolts">Standard deviation; zero where the value is exact.</param>
public readonly record struct MeasuredVolts(double Volts, double SpreadVolts);

/// <summary>Amperes that somebody measured.</summary>
/// <param name="SpreadAmperes">Standard deviation; zero where the value is exact.</param>
public readonly record struct MeasuredAmperes(double Amperes, double SpreadAmperes);

/// <summary>What holds for every measured amount that cannot be below zero.</summary>
internal static class Measured
{
    internal static Problem? Check(string place, double value, double spread, string unit, bool mayBeZero)
    {
        if (!double.IsFinite(value) || value < 0 || (value == 0 && !mayBeZero))
        {
            var least = mayBeZero ? "zero or more" : "more than zero";
            return new Problem(place, $"{value} {unit} is no reading", $"Give a finite number, {least}; swap the leads or measure again");
        }

        return double.IsFinite(spread) && spread >= 0
            ? null
            : new Problem(place, $"{spread} {unit} is no standard deviation", "Give zero or a positive number");
    }
}
