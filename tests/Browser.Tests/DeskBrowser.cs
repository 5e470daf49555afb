using System.Collections.Concurrent;
using System.Net;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Playwright;
using PostFrame.SizingApi.Sizings;
using Xunit;

namespace PostFrame.BrowserTests;

/// <summary>
/// The desk page in a real browser on the loopback. Screenshots go to <c>artifacts/desk</c> beside
/// the solution, to be looked at.
/// </summary>
public sealed class DeskBrowser : IAsyncLifetime
{
    private static readonly string[] Arguments =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
        "--disable-background-networking", "--disable-component-update", "--disable-sync",
    ];

    private readonly Host host = new();
    private IPlaywright? playwright;
    private IBrowser? browser;

    /// <summary>What went wrong in any page: console errors, failed or foreign requests.</summary>
    public ConcurrentQueue<string> Troubles { get; } = new();

    public async ValueTask InitializeAsync()
    {
        if (ChromiumPath() is not { } chromium)
        {
            return;
        }

        host.UseKestrel(options => options.Listen(IPAddress.Loopback, 0));
        host.StartServer();
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = chromium,
            Args = Arguments,
        });
    }

    /// <summary>The desk page, loaded and answered once.</summary>
    public async Task<IPage> OpenAsync(
        int width = 1440, int height = 1000, Uri? address = null)
    {
        if (browser is null)
        {
            Assert.Skip("No Chromium on this machine.");
        }

        var page = await browser.NewPageAsync(new()
        {
            ViewportSize = new() { Width = width, Height = height },
        });
        var home = address ?? host.ClientOptions.BaseAddress;
        page.Console += (_, message) =>
        {
            // A refusal is an answer here, though Chromium logs its status as an error.
            if (message.Type == "error" && !message.Text.Contains("422"))
            {
                Troubles.Enqueue($"{message.Location} {message.Text}");
            }
        };
        page.PageError += (_, error) => Troubles.Enqueue(error);
        page.Request += (_, request) =>
        {
            if (new Uri(request.Url) is { Scheme: not ("blob" or "data") } address
                && address.Authority != home.Authority)
            {
                Troubles.Enqueue($"asked elsewhere: {request.Url}");
            }
        };
        await page.GotoAsync(home.ToString());
        await Drawn(page);
        return page;
    }

    /// <summary>Waits until the drawing on show belongs to what is in the form.</summary>
    public static async Task Drawn(IPage page) => await page.WaitForFunctionAsync(
        "() => document.body.dataset.state === 'answered'");

    public static async Task Refused(IPage page) => await page.WaitForFunctionAsync(
        "() => document.body.dataset.state === 'refused'");

    /// <summary>Where a file to be looked at goes.</summary>
    public static string Artifact(string name) => Path.Combine(ScreenshotFolder(), name);

    public static Task Shoot(IPage page, string name) => page.ScreenshotAsync(new()
    {
        Path = Path.Combine(ScreenshotFolder(), name + ".png"),
    });

    public static Task ShootPart(IPage page, string part, string name) =>
        page.Locator(part).ScreenshotAsync(new()
        {
            Path = Path.Combine(ScreenshotFolder(), name + ".png"),
        });

    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.DisposeAsync();
        }

        playwright?.Dispose();
        await host.DisposeAsync();
    }

    private static string ScreenshotFolder()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "PostFrameServices.sln")))
        {
            folder = Path.GetDirectoryName(folder)
                ?? throw new InvalidOperationException("The tests run outside the tree.");
        }

        return Directory.CreateDirectory(Path.Combine(folder, "artifacts", "desk")).FullName;
    }

    private static string? ChromiumPath() => new[]
    {
        "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome",
    }.FirstOrDefault(File.Exists);

    private sealed class Host : WebApplicationFactory<SizingAnswer>
    {
        /// <summary>No file watchers: their number is limited for the whole machine.</summary>
        protected override void ConfigureWebHost(IWebHostBuilder builder) => builder
            .UseSetting("Logging:LogLevel:Default", "Warning")
            .UseSetting("hostBuilder:reloadConfigOnChange", "false");
    }
}
