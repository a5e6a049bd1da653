using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace WireCoach.Browser.Tests;

/// <summary>Somebody at a page: taps, types, and keeps pictures of what is seen.</summary>
public sealed class Visitor : IAsyncDisposable
{
    /// <summary>Where pictures and figures are left.</summary>
    internal static string Pictures { get; } = Folder();

    /// <summary>Milliseconds until something is taken for never coming; long, as a machine that does other work beside the tests is no fault of a page.</summary>
    internal const int MostPatience = 60_000;

    private const string Marked = """
        () => document.querySelector('.skip') && new URL(document.querySelector('.skip').href).pathname !== location.pathname ? null
          : [location.href, ...[...document.querySelectorAll("input[name$='.Key']")].map(key => key.value), document.querySelectorAll('.wrong, .wrong-line').length].join(' ')
        """;

    private readonly Device _device;
    private readonly HttpClient _http;
    private readonly List<string> _complaints = [];

    private readonly Func<Task<IPage>> _beside;
    private IPage? _twin;

    internal Visitor(IPage page, Device device, HttpClient http, Func<Task<IPage>> beside)
    {
        (Page, _device, _http, _beside) = (page, device, http, beside);
        page.Console += (_, message) =>
        {
            // The browser notes a page that is refused or missing as a failed load; an asset that is missing is a fault.
            var isAnswer = message.Text.StartsWith("Failed to load resource", StringComparison.Ordinal) && !message.Location.Contains("/_", StringComparison.Ordinal);
            if (message.Type is "error" or "warning" && !isAnswer)
            {
                _complaints.Add(message.Text);
            }
        };
        page.PageError += (_, error) => _complaints.Add(error);
    }

    public IPage Page { get; }

    /// <summary>What the browser complained of.</summary>
    public IReadOnlyList<string> Complaints => _complaints;

    /// <summary>The session of the page.</summary>
    public string Session => new Uri(Page.Url).Segments is [_, "sessions/", var id, ..] ? id.TrimEnd('/') : throw new InvalidOperationException($"{Page.Url} is no session.");

    public Task Go(string path) => Page.GotoAsync(path);

    /// <summary>Unfolds the menu where the window is too narrow to show it.</summary>
    public async Task OpenMenu()
    {
        var menu = Page.Locator(".menu summary");
        if (await menu.IsVisibleAsync())
        {
            await menu.ClickAsync();
        }
    }

    /// <summary>Presses the button or link with this name and waits until the page has changed.</summary>
    public async Task Press(string name)
    {
        var target = Page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true }).Or(Page.GetByRole(AriaRole.Link, new() { Name = name, Exact = true })).First;
        await Press(target);
    }

    /// <summary>Presses it, by a click unless another way is given, and waits until the page has changed.</summary>
    public async Task Press(ILocator target, Func<Task>? press = null)
    {
        var before = await Mark();
        await (press?.Invoke() ?? target.ClickAsync());
        for (var waited = Stopwatch.StartNew(); waited.ElapsedMilliseconds < MostPatience;)
        {
            await Task.Delay(15);
            if (await Mark() is { } now && now != before)
            {
                return;
            }
        }

        throw new TimeoutException($"Nothing changed on {Page.Url} after pressing {target}.");
    }

    /// <summary>Picks an answer by its text.</summary>
    public Task Pick(string label) => Page.Locator(".tile label", new() { HasText = label }).First.ClickAsync();

    /// <summary>Gives the first answer of the open question that fits: one touch at a practice motor, a tile and the button below it elsewhere.</summary>
    /// <returns>How many touches it took; none where the question has no choices.</returns>
    public async Task<int> Choose(Regex? wanted = null)
    {
        var all = Page.Locator(".ask .tile label, .ask .once");
        var fit = wanted is null ? all : Page.Locator(".ask .tile label, .ask .once", new() { HasTextRegex = wanted });
        if (await all.CountAsync() == 0)
        {
            return 0;
        }

        var answer = await fit.CountAsync() > 0 ? fit.First : all.First;
        if (await Page.Locator(".ask .once").CountAsync() > 0)
        {
            await Press(answer);
            return 1;
        }

        await answer.ClickAsync();
        await Press(Page.Locator(".ask .save .go"));
        return 2;
    }

    /// <summary>The session of this page, as programs get it.</summary>
    public Task<JsonElement> Read() => _http.GetFromJsonAsync<JsonElement>($"/api/sessions/{Session}");

    /// <summary>Puts an answer of the contract into the form of the open question and saves it.</summary>
    public async Task Answer(JsonElement ask, object given)
    {
        var answer = JsonSerializer.SerializeToElement(given);
        if (answer.TryGetProperty("unknown", out _))
        {
            await Press(Page.Locator("button[name='Given.CannotTell']"));
            return;
        }

        var form = Page.Locator(".ask form");
        if (answer.TryGetProperty("choice", out var choice))
        {
            await form.Locator($"label[for='Given-Choice-{choice.GetString()}']").ClickAsync();
        }
        else if (answer.TryGetProperty("confirmed", out var confirmed))
        {
            await form.Locator($"label[for='Given-Choice-{(confirmed.GetBoolean() ? "yes" : "no")}']").ClickAsync();
        }
        else if (answer.TryGetProperty("quantity", out var quantity))
        {
            await form.Locator("#value").FillAsync(Text(quantity.GetProperty("value")));
        }
        else if (answer.GetProperty("reading").TryGetProperty("ohms", out var ohms))
        {
            await form.Locator("#value").FillAsync(Text(ohms));
        }
        else
        {
            await form.Locator("label[for='Given-Shown-open']").ClickAsync();
        }

        await Press(form.Locator("button.go").First);
        Assert.False(await Page.Locator(".wrong, .wrong-line").IsVisibleAsync(), $"{ask.GetProperty("id").GetString()} was refused: {answer}");
    }

    /// <summary>Keeps a picture: what the screen shows at first.</summary>
    public Task Picture(string name, bool whole = false) =>
        Page.ScreenshotAsync(new() { Path = Path.Combine(Pictures, $"{name}-{_device.Name}.png"), FullPage = whole });

    /// <summary>Prints the page: two sheets at most, without anything to press.</summary>
    public async Task CheckPrint(string name, string paper)
    {
        await Page.EmulateMediaAsync(new() { Media = Media.Print, ColorScheme = ColorScheme.Light });
        foreach (var control in await Page.Locator("button, nav a, input:not([type=hidden])").AllAsync())
        {
            Assert.False(await control.IsVisibleAsync(), "Paper has nothing to press.");
        }

        var pdf = await Page.PdfAsync(new() { Path = Path.Combine(Pictures, $"{name}-{paper}.pdf"), Format = paper, Margin = new() { Top = "12mm", Bottom = "12mm", Left = "14mm", Right = "12mm" } });
        var sheets = System.Text.RegularExpressions.Regex.Count(Encoding.Latin1.GetString(pdf), @"/Type /Page\b", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(2));
        Assert.InRange(sheets, 1, 2);
        await Page.EmulateMediaAsync(new() { Media = Media.Screen });
    }

    /// <summary>What is looked at by a script of the tests: this page, or where no script runs in it, the same markup in a window where none of its own runs.</summary>
    internal async Task<IPage> Seen()
    {
        if (_device.Scripts)
        {
            return Page;
        }

        _twin ??= await _beside();
        var (address, markup) = (Page.Url, await Page.ContentAsync());
        await _twin.RouteAsync("**/*", route => route.Request.Url == address ? route.FulfillAsync(new() { Body = markup, ContentType = "text/html; charset=utf-8" })
            : route.Request.ResourceType == "script" ? route.AbortAsync() : route.ContinueAsync());
        await _twin.GotoAsync(address);
        await _twin.UnrouteAllAsync();
        return _twin;
    }

    public async ValueTask DisposeAsync()
    {
        if (_twin is not null)
        {
            await _twin.Context.CloseAsync();
        }

        await Page.Context.CloseAsync();
    }

    /// <summary>Changes with every page and every stored answer; <see langword="null"/> while a page loads, also where the address is there before its page.</summary>
    private async Task<string?> Mark()
    {
        try
        {
            return await Page.EvaluateAsync<string?>(Marked);
        }
        catch (PlaywrightException)
        {
            return null;
        }
    }

    private static string Text(JsonElement number) => number.GetDouble().ToString("0.####", CultureInfo.InvariantCulture);

    private static string Folder()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && folder.Name != ".artifacts")
        {
            folder = folder.Parent;
        }

        return Directory.CreateDirectory(Path.Combine(folder?.FullName ?? Path.GetTempPath(), "screens")).FullName;
    }
}
