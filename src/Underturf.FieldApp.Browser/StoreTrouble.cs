using Underturf.Quantities;

namespace Underturf.FieldApp.Browser;

/// <summary>Why a browser's database did not store something, by the name that it gives the reason, with what one can do.</summary>
internal static class StoreTrouble
{
    private const string Place = "this device";

    public static Problem Of(string name) => name switch
    {
        "QuotaExceededError" => new Problem(
            Place,
            "has no room left, so nothing was stored",
            "Save a copy of the log, free space on the device, and store it again; what you typed stays here"),
        "VersionError" => new Problem(
            Place,
            "is used by a newer version of this page, so nothing was stored",
            "Save a copy if there are notes, copy what you typed, and open the page again"),
        "SecurityError" or "InvalidAccessError" or "ReferenceError" or "TypeError" => new Problem(
            Place,
            "does not let this page keep notes",
            "Allow the page to store data, or leave the private window, and open it again"),
        "GoneError" => new Problem(
            Place,
            "holds this log no longer: another page took it off, so nothing was stored",
            "Copy what you typed, and open the log again"),
        _ => new Problem(
            Place,
            $"could not store it ({name})",
            "Store it again; if that fails too, save a copy of the log and open the page again"),
    };
}
