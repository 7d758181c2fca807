using QRCoder;

namespace Underturf.Server;

/// <summary>An address as a picture that a phone's camera reads.</summary>
public static class QrPicture
{
    /// <summary>For a terminal with light letters on dark, two rows of it in one line of text.</summary>
    public static string Terminal(Uri address)
    {
        using var code = Of(address);
        using var drawn = new AsciiQRCode(code);
        return drawn.GetGraphicSmall();
    }

    public static string Svg(Uri address)
    {
        using var code = Of(address);
        using var drawn = new SvgQRCode(code);
        return drawn.GetGraphic(8);
    }

    private static QRCodeData Of(Uri address) => QRCodeGenerator.GenerateQrCode(address.AbsoluteUri, QRCodeGenerator.ECCLevel.M);
}
