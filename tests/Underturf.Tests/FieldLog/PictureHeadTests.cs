using System.Text;
using Underturf.FieldLog;

namespace Underturf.Tests.FieldLog;

/// <summary>Heads of pictures, written by hand from the standards of their forms.</summary>
public sealed class PictureHeadTests
{
    /// <summary>SOI, an APP1 segment of 8 bytes, a Huffman table whose marker is no frame, then SOF2 with 300 lines of 400 samples (ITU-T T.81, B.2).</summary>
    private static readonly byte[] jpeg =
        [0xFF, 0xD8, 0xFF, 0xE1, 0, 8, 1, 2, 3, 4, 5, 6, 0xFF, 0xC4, 0, 4, 0, 0, 0xFF, 0xC2, 0, 17, 8, 0x01, 0x2C, 0x01, 0x90, 3, 0, 0];

    [Fact]
    public void A_jpeg_says_its_size_behind_what_the_camera_says_of_itself() =>
        Assert.Equal(new PictureHead("image/jpeg", 400, 300), PictureHead.Read(jpeg));

    [Fact]
    public void A_jpeg_that_is_cut_off_anywhere_is_still_one_and_never_a_fault()
    {
        for (var length = 3; length < jpeg.Length; length++)
        {
            Assert.Equal("image/jpeg", PictureHead.Read(jpeg.AsSpan(0, length))!.Media);
        }
    }

    [Fact]
    public void A_png_says_its_size_in_its_first_chunk() => Assert.Equal(
        new PictureHead("image/png", 640, 480),
        PictureHead.Read([0x89, .. "PNG\r\n\u001a\n"u8, 0, 0, 0, 13, .. "IHDR"u8, 0, 0, 2, 128, 0, 0, 1, 224, 8, 6, 0, 0, 0]));

    [Theory]
    [InlineData("GIF89a", "image/gif")]
    [InlineData("II*\0", "image/tiff")]
    [InlineData("MM\0*", "image/tiff")]
    [InlineData("RIFF....WEBPVP8 ", "image/webp")]
    [InlineData("....ftypheic", "image/heic")]
    [InlineData("....ftypmif1", "image/heic")]
    [InlineData("....ftypavif", "image/avif")]
    [InlineData("....ftypmp42", null)]
    [InlineData("RIFF....WAVE", null)]
    [InlineData("<svg>", null)]
    [InlineData("", null)]
    public void A_form_is_known_by_its_first_bytes_and_not_by_its_name(string bytes, string? media) =>
        Assert.Equal(media, PictureHead.Read(Encoding.Latin1.GetBytes(bytes))?.Media);

    [Fact]
    public void Every_form_has_a_file_name() => Assert.All(
        PhotoFile.MediaTypes,
        media => Assert.StartsWith("photos/ab.", PhotoFile.NameOf(new PhotoFact { Hash = "ab", Media = media }), StringComparison.Ordinal));
}
