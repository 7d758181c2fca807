namespace Underturf.Server;

/// <summary>The codes for phones, on a page that only this machine is given: one of them is the key to the log.</summary>
internal static class PhonesPage
{
    public const string Path = "/phones";

    public static string Of(NetworkDoors doors) => PlainPage.Of(
        "Let a phone in",
        $"""
        {(doors.Authority is { } authority
            ? $"<h2>1. Once for each phone: trust this server</h2>{QrPicture.Svg(authority)}<p>{authority}</p><p>Fingerprint of its authority (SHA-256): <code>{doors.Fingerprint}</code></p><h2>2. Open the page</h2>"
            : "")}
        {QrPicture.Svg(doors.Page)}
        <p>Whoever has this code reads the log and adds to it.</p>
        """);
}
