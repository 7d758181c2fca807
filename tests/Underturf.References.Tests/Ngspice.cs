using System.Numerics;
using Underturf.Simulation.SecondEngine;

namespace Underturf.References.Tests;

/// <summary>Asks the engine of <see cref="RawFile"/>; a complaint, or the missing engine, throws.</summary>
internal static class Ngspice
{
    /// <summary>Runs one analysis, "op" or "ac lin 1 60 60".</summary>
    /// <returns>Complex values by vector name in lower case, as in "v(n1)".</returns>
    internal static Dictionary<string, Complex> Run(string elements, string analysis) => RawFile.Run(elements, analysis).Value.First();
}
