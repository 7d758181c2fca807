namespace Underturf.FieldLog;

/// <summary>The file that holds the bytes of a photo, beside the log or packed with it.</summary>
public static class PhotoFile
{
    /// <summary>The folder beside the log, and inside a pack of log and photos.</summary>
    public const string Folder = "photos";

    private static readonly (string Media, string Ending)[] forms =
    [
        ("image/jpeg", "jpg"), ("image/png", "png"), ("image/webp", "webp"), ("image/gif", "gif"),
        ("image/heic", "heic"), ("image/avif", "avif"), ("image/tiff", "tif"),
    ];

    public static IReadOnlyList<string> MediaTypes { get; } = [.. forms.Select(form => form.Media)];

    /// <summary>"photos/" with the hash and the ending of its form.</summary>
    public static string NameOf(PhotoFact photo) => $"{Folder}/{photo.Hash}.{forms.First(form => form.Media == photo.Media).Ending}";

    /// <summary>The hash that names the bytes of a file.</summary>
    public static string HashOf(ReadOnlySpan<byte> bytes) => Sha256Hex.Of(bytes);
}
