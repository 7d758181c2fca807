using Underturf.Quantities;

namespace Underturf.Networks.Hydraulics;

/// <summary>What a pipe is made to.</summary>
public enum PipeSeries
{
    /// <summary>PVC, ASTM D1785, Schedule 40.</summary>
    Schedule40,

    /// <summary>PVC, ASTM D2241, SDR-21.</summary>
    Sdr21,

    /// <summary>PVC, ASTM D2241, SDR-26.</summary>
    Sdr26,

    /// <summary>Polyethylene, ASTM D2239: the inside is held to the figures of Schedule 40 (from memory).</summary>
    Polyethylene,
}

/// <summary>Inside diameters by nominal size: the outside less two walls at their least (seen quoted).</summary>
public static class PipeSize
{
    private static readonly string[] Sizes = ["1/2", "3/4", "1", "1 1/4", "1 1/2", "2", "2 1/2", "3", "4"];

    /// <summary>Inches, in the order of the sizes; NaN for what is not made.</summary>
    private static readonly Dictionary<PipeSeries, double[]> Inches = new()
    {
        [PipeSeries.Schedule40] = [.622, .824, 1.049, 1.380, 1.610, 2.067, 2.469, 3.068, 4.026],
        [PipeSeries.Sdr21] = [double.NaN, .930, 1.189, 1.502, 1.720, 2.149, 2.601, 3.166, 4.072],
        [PipeSeries.Sdr26] = [double.NaN, double.NaN, 1.195, 1.532, 1.754, 2.193, 2.655, 3.230, 4.154],
    };

    /// <param name="size">"3/4" or "1 1/4", inches.</param>
    public static Outcome<double> InsideDiameterMetres(PipeSeries series, string size)
    {
        var made = Inches[series == PipeSeries.Polyethylene ? PipeSeries.Schedule40 : series];
        var at = Array.IndexOf(Sizes, size.Trim());
        return at >= 0 && !double.IsNaN(made[at])
            ? Units.From(made[at], "in")
            : new Problem(
                $"pipe size {Problem.Quote(size)}",
                "is not in the table of its series",
                $"Give one of {string.Join(", ", Sizes.Where((_, k) => !double.IsNaN(made[k])))} inches, or measure the inside diameter");
    }
}
