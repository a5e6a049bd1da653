using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using WireCoach.Rules.Reference;
using WireCoach.Service;
using WireCoach.Service.Sessions;

[assembly: AssemblyFixture(typeof(WireCoach.Browser.Tests.Bench))]

namespace WireCoach.Browser.Tests;

/// <summary>The service on a port of its own and one browser; for all tests together.</summary>
public sealed class Bench : IAsyncLifetime
{
    private static readonly string[] Arguments =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
    ];

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("wirecoach-");
    private WebApplicationFactory<Program>? _service;
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>How far the service's clock is ahead.</summary>
    public TimeSpan Ahead { get; set; }

    /// <summary>Where the pages are.</summary>
    public Uri Address => _service!.ClientOptions.BaseAddress;

    /// <summary>What a job is shown asking.</summary>
    public AskedQuestions Asked { get; } = new();

    /// <summary>The facts of the trade.</summary>
    public TradeKnowledge Knowledge => _service!.Services.GetRequiredService<TradeKnowledge>();

    /// <summary>Asks the service without a browser.</summary>
    public HttpClient Http { get; private set; } = default!;

    public async ValueTask InitializeAsync()
    {
        Serve();
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = "/usr/bin/chromium", Args = Arguments });
    }

    /// <summary>The service alone, to be visited with the browser of another bench.</summary>
    public void Serve()
    {
        _service = new WebApplicationFactory<Program>().WithWebHostBuilder(host => host
            .UseSetting("urls", "http://127.0.0.1:0").UseSetting("Data:Folder", _folder.FullName)
            .ConfigureTestServices(services => services
                .AddSingleton<TimeProvider>(new AheadClock(this)).AddSingleton(provider => AskedDesk.Over(provider.GetRequiredService<CoachDesk>(), Asked))));
        _service.UseKestrel();
        _service.StartServer();
        Http = _service.CreateClient();
    }

    /// <summary>Somebody opens the pages on a device.</summary>
    /// <param name="device">The device.</param>
    /// <param name="service">Another service than that of all tests.</param>
    public async Task<Visitor> Visit(Device device, HttpClient? service = null)
    {
        async Task<IPage> Window(bool scripts)
        {
            var context = await _browser!.NewContextAsync(new()
            {
                BaseURL = (service?.BaseAddress ?? Address).ToString(),
                ViewportSize = new() { Width = device.Width, Height = device.Height },
                JavaScriptEnabled = scripts,
                HasTouch = device.Width < 700,
                ColorScheme = device.Dark ? ColorScheme.Dark : ColorScheme.Light,
                ReducedMotion = ReducedMotion.Reduce,
            });
            context.SetDefaultTimeout(Visitor.MostPatience);
            return await context.NewPageAsync();
        }

        return new Visitor(await Window(device.Scripts), device, service ?? Http, () => Window(scripts: true));
    }

    private sealed class AheadClock(Bench bench) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => base.GetUtcNow() + bench.Ahead;
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _playwright?.Dispose();
        Http.Dispose();
        if (_service is not null)
        {
            await _service.DisposeAsync();
        }
    }
}

/// <summary>What the pages are seen on.</summary>
public sealed record Device(string Name, int Width, int Height, bool Scripts = true, bool Dark = false)
{
    public static Device Phone { get; } = new("phone", 390, 844);

    public static Device Desk { get; } = new("desk", 1280, 800);

    /// <summary>A device by its name.</summary>
    public static Device Of(string name) => name switch
    {
        "phone" => Phone,
        "phone-no-scripts" => Phone with { Name = name, Scripts = false },
        "phone-dark" => Phone with { Name = name, Dark = true },
        "desk" => Desk,
        "desk-no-scripts" => Desk with { Name = name, Scripts = false },
        "desk-dark" => Desk with { Name = name, Dark = true },
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "There is no such device."),
    };
}
