using HarnessDraw.Checking;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Sheets;
using HarnessDraw.Writing;
using HarnessDraw.Writing.Html;
using Microsoft.Playwright;

namespace HarnessDraw.Tests.Writing;

/// <summary>One browser for all tests of the page: the machine's own Chromium, never one that is fetched.</summary>
public sealed class LivePageFixture : IAsyncLifetime
{
    private static readonly Lazy<string> Saloon = new(() => PageFile("brackmere-six", PageOf(ExamplePlans.Of("brackmere-six"))));
    private IPlaywright? playwright;
    private IBrowser? browser;

    /// <summary>Addresses other than the page itself that anything asked for.</summary>
    public List<string> Asked { get; } = [];

    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    public static byte[] PageOf(Plan plan, System.Collections.Immutable.ImmutableSortedDictionary<string, string>? build = null)
    {
        var order = new DrawOrder { Formats = [SheetFormat.Html], Build = build };
        var set = HarnessCompiler.LayOut(new CheckedPlan(plan, []), order);
        return LivePage.Write(set, order);
    }

    public static string PageFile(string name, byte[] page)
    {
        var file = Path.Combine(Directory.CreateTempSubdirectory("harnessdraw-page-").FullName, name + ".html");
        File.WriteAllBytes(file, page);
        return file;
    }

    public async Task<IPage> Open(string? file = null, int width = 1280, int height = 800, bool touch = false)
    {
        var chromium = OutsideTool.Find("chromium", "chromium-browser");
        playwright ??= await Playwright.CreateAsync();
        browser ??= await playwright.Chromium.LaunchAsync(new() { ExecutablePath = chromium, Args = ["--no-sandbox"] });
        var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = width, Height = height }, HasTouch = touch, IsMobile = touch });
        context.SetDefaultTimeout(10_000);
        var page = await context.NewPageAsync();
        var address = new Uri(file ?? Saloon.Value).AbsoluteUri;
        page.Request += (_, request) =>
        {
            if (request.Url != address && !request.Url.StartsWith("data:", StringComparison.Ordinal))
            {
                Asked.Add(request.Url);
            }
        };
        var errors = new List<string>();
        page.PageError += (_, error) => errors.Add(error);
        page.Console += (_, message) =>
        {
            if (message.Type == "error")
            {
                errors.Add(message.Text);
            }
        };
        await page.GotoAsync(address);
        var ready = page.Locator("html[data-ready]");
        try
        {
            await ready.WaitForAsync(new() { State = WaitForSelectorState.Attached });
        }
        catch (TimeoutException)
        {
            Assert.Fail("the page did not get ready: " + string.Join('\n', errors));
        }

        Assert.Empty(errors);
        return page;
    }

    /// <summary>A picture of the page for HARNESSDRAW_PICTURES; nothing without it.</summary>
    public static async Task Picture(IPage page, string name)
    {
        if (Environment.GetEnvironmentVariable("HARNESSDRAW_PICTURES") is { Length: > 0 } folder)
        {
            Directory.CreateDirectory(folder);
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"page.{name}.png") });
        }
    }

    public static async Task Find(IPage page, string text)
    {
        await page.Locator("#find").FillAsync(text);
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#chosen")).ToBeVisibleAsync();
    }

    public static Task<int> StateOf(IPage page, string state) => page.EvaluateAsync<int>("s => [...document.getElementById('state').options].findIndex(o => o.textContent.startsWith(s))", state);

    public static async Task Note(IPage page, string reading)
    {
        await page.Locator("#reading").FillAsync(reading);
        await page.Keyboard.PressAsync("Enter");
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.DisposeAsync();
        }

        playwright?.Dispose();
    }
}
