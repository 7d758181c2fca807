using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace Underturf.Server;

/// <summary>
/// What a phone is given before it trusts the server: the authority's certificate with words on what to do with it, over plain HTTP because nothing else works yet.
/// Nothing here is secret; the log, the page and the pairing secret are not behind this door.
/// </summary>
internal static class AuthorityDoor
{
    public const string Certificate = "/underturf-authority.crt";

    public static void Map(WebApplication app, Authority authority)
    {
        app.UseRouting();
        app.MapGet("/", () => Results.Content(Words(authority.Fingerprint), "text/html; charset=utf-8"));
        app.MapGet(Certificate, () => Results.Bytes(authority.Bytes, "application/x-x509-ca-cert", Path.GetFileName(Certificate)));
    }

    private static string Words(string fingerprint) => PlainPage.Of(
        "Trust this notebook's server",
        $"""
        <p>Once for each phone. After that the notebook opens without a warning and works without a signal.</p>
        <ol>
          <li><a class="button" href="{Certificate}">Fetch the certificate</a></li>
          <li>Install it. Where the phone does not offer that by itself: open its settings, search for "certificate", and choose to install one <strong>as an authority</strong> (CA) from the file. Some phones put
            it among the downloaded profiles, and want it switched on once more under the trusted certificates.</li>
          <li>Compare the fingerprint (SHA-256) that the phone shows with the one in the server's window:<br /><code>{fingerprint}</code></li>
          <li>Point the camera at the <strong>second</strong> code in the server's window.</li>
        </ol>
        <p>The certificate is good for this machine's names on a local network and for nothing on the internet. Take it off the phone in the same place where you put it.</p>
        """);
}
