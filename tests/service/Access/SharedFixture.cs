using WireCoach.Service.Access;

namespace WireCoach.Service.Tests.Access;

/// <summary>One shared service for all tests of a class, with one browser signed in for each role.</summary>
public sealed class SharedFixture : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("wirecoach-");
    private readonly Dictionary<AccessRole, HttpClient> _browsers = [];

    public SharedFixture() => Service = new(_folder.FullName);

    internal SharedService Service { get; }

    internal async Task<HttpClient> As(AccessRole role)
    {
        if (!_browsers.TryGetValue(role, out var browser))
        {
            _browsers[role] = browser = await Service.SignedIn(role);
        }

        return browser;
    }

    public void Dispose()
    {
        Service.Dispose();
        TestFolder.Delete(_folder);
    }
}
