using Microsoft.Playwright;

namespace Underturf.Browser;

/// <summary>Debian's Chromium, without a sandbox or calls of its own; the study of speed in a browser uses it too.</summary>
internal static class Chromium
{
    private static readonly string[] args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    public static Task<IBrowser> LaunchAsync(IPlaywright playwright) =>
        playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = Find(), Args = args });

    /// <summary>A browser process of its own whose profile stays in a folder.</summary>
    public static Task<IBrowserContext> LaunchAsync(IPlaywright playwright, string profile) =>
        playwright.Chromium.LaunchPersistentContextAsync(profile, new BrowserTypeLaunchPersistentContextOptions { ExecutablePath = Find(), Args = args });

    private static string Find() =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Select(folder => Path.Combine(folder, "chromium")).FirstOrDefault(File.Exists)
        ?? throw new InvalidOperationException("Chromium is not on PATH. Install the Debian package: apt-get install chromium");
}
