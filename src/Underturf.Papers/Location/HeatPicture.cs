using Underturf.Reasoning;

namespace Underturf.Papers;

/// <summary>The heat as a picture, a pixel a cell, north up, clear where it is unlikely: to be laid over a plan.</summary>
public static class HeatPicture
{
    /// <summary>Darker the likelier, of the accent; clear beyond the widest ground that is told. Ink on the darkest still stands out by 7 to 1.</summary>
    private static readonly byte[] Opaque = [0, 28, 62, 104];

    public static byte[] Make(HeatMap heat)
    {
        var limits = heat.Limits.OrderByDescending(l => l.Probability).Select(l => l.Share).ToList();
        var pixels = new byte[heat.Shares.Length];
        for (var cell = 0; cell < pixels.Length; cell++)
        {
            var row = heat.Deep - 1 - (cell / heat.Wide);
            pixels[(row * heat.Wide) + (cell % heat.Wide)] = (byte)limits.Count(share => share > 0 && heat.Shares[cell] >= share);
        }

        var (red, green, blue) = Inks.Rgb(Ink.Accent);
        return PngWriter.Write(pixels, heat.Wide, [.. Opaque.Take(limits.Count + 1).Select(opaque => (red, green, blue, opaque))]);
    }
}
