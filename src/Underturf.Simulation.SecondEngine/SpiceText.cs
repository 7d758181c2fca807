using System.Globalization;
using System.Text;

namespace Underturf.Simulation.SecondEngine;

/// <summary>Text as the engine reads it.</summary>
internal static class SpiceText
{
    /// <summary>A number with all its digits.</summary>
    internal static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    internal static StringBuilder Line(this StringBuilder text, string line) => text.Append(line).Append('\n');
}
