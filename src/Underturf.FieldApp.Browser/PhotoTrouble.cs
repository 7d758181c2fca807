using Underturf.Quantities;

namespace Underturf.FieldApp.Browser;

/// <summary>Why a photo was not kept, or a pack not read, by the name that the browser gives the reason.</summary>
internal static class PhotoTrouble
{
    public static Problem Of(string name) => name switch
    {
        "QuotaExceededError" => new Problem(
            "this device",
            "has no room left, so the photo was not kept",
            "Save it as a file now, or free space on the device and keep it again; it stays in hand until you leave this form"),
        "NotReadableError" or "NotFoundError" => new Problem(
            "this file",
            "could not be read",
            "Choose it again: a picture, or a pack that this page or \"underturf merge\" has made"),
        "DataError" => new Problem("this file", "is no zip file, or is cut off", "Copy it again from where it was saved"),
        "TooLarge" => new Problem("this pack", "would have more than 4 GB", "Save the log alone, and each photo from its own picture"),
        _ => StoreTrouble.Of(name),
    };
}
