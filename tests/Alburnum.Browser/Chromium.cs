using Microsoft.Playwright;

namespace Alburnum.Browser;

/// <summary>The Chromium of this machine, without a window and without talking to anyone.</summary>
internal static class Chromium
{
    private static readonly string[] Names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

    public static Task<IBrowserContext> StartAsync(IPlaywright playwright, string profile) =>
        playwright.Chromium.LaunchPersistentContextAsync(
            profile,
            new()
            {
                ExecutablePath = Find(),
                Headless = true,
                // axe is put into the page by the test; the page's own policy would not let it in.
                BypassCSP = true,
                Args =
                [
                    "--no-sandbox",
                    "--disable-gpu",
                    "--disable-quic",
                    "--no-first-run",
                    "--disable-background-networking",
                    "--disable-component-update",
                    "--disable-sync",
                ],
            }
        );

    private static string Find() =>
        Environment.GetEnvironmentVariable("ALBURNUM_CHROMIUM") is { Length: > 0 } named
            ? named
            : Names
                .SelectMany(name =>
                    (Environment.GetEnvironmentVariable("PATH") ?? "")
                        .Split(Path.PathSeparator)
                        .Select(folder => Path.Combine(folder, name))
                )
                .FirstOrDefault(File.Exists)
                ?? throw new InvalidOperationException(
                    "No Chromium on the PATH. Install the system's package \"chromium\", or name another in ALBURNUM_CHROMIUM."
                );
}
