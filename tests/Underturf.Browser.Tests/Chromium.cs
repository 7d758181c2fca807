using Microsoft.Playwright;

namespace Underturf.Browser;

/// <summary>Debian's Chromium, without a sandbox or calls of its own; the study of speed in a browser uses it too.</summary>
internal static class Chromium
{
    public static Task<IBrowser> LaunchAsync(IPlaywright playwright) => playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
    {
        ExecutablePath = Find(),
        Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
    });

    private static string Find() =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Select(folder => Path.Combine(folder, "chromium")).FirstOrDefault(File.Exists)
        ?? throw new InvalidOperationException("Chromium is not on PATH. Install the Debian package: apt-get install chromium");
}
