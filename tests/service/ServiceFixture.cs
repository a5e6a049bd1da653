using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;

namespace WireCoach.Service.Tests;

/// <summary>The service in process with a data folder of its own; one for all tests of a class.</summary>
public sealed class ServiceFixture : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("wirecoach-");
    private readonly WebApplicationFactory<Program> _factory;

    public ServiceFixture()
        : this([])
    {
    }

    internal ServiceFixture(params (string Name, string Value)[] settings)
    {
        _factory = new WebApplicationFactory<Program>().WithWebHostBuilder(host =>
        {
            host.UseSetting("Data:Folder", _folder.FullName);
            foreach (var (name, value) in settings)
            {
                host.UseSetting(name, value);
            }
        });
        Client = _factory.CreateClient();
    }

    public HttpClient Client { get; }

    /// <summary>Where this service keeps its sessions.</summary>
    public string Folder => _folder.FullName;

    /// <summary>Posts a body as it stands and reads the answer, whatever its status.</summary>
    public async Task<(int Status, JsonElement Body)> PostText(string path, string json)
    {
        using var content = new StringContent(json, System.Text.Encoding.UTF8, "application/json");
        using var response = await Client.PostAsync(path, content, TestContext.Current.CancellationToken);
        return ((int)response.StatusCode, await response.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken));
    }

    /// <summary>Posts an object and reads the answer, which must be good.</summary>
    public async Task<JsonElement> Post(string path, object body)
    {
        var (status, answer) = await PostText(path, JsonSerializer.Serialize(body));
        Assert.True(status is 200 or 201, $"{path}: {status} {answer}");
        return answer;
    }

    /// <summary>Reads an answer, whatever its status.</summary>
    public async Task<(int Status, JsonElement Body)> Get(string path)
    {
        using var response = await Client.GetAsync(path, TestContext.Current.CancellationToken);
        return ((int)response.StatusCode, await response.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken));
    }

    public void Dispose()
    {
        Client.Dispose();
        _factory.Dispose();
        TestFolder.Delete(_folder);
    }
}
