using System.Text;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;

namespace WireCoach.Service.Tests;

/// <summary>A test's own data folder.</summary>
public abstract class DataFolderTest : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("wirecoach-");

    protected string Folder => _folder.FullName;

    protected string Database => Path.Combine(Folder, "sessions.db");

    protected string Journal => Directory.EnumerateFiles(Folder, "journal-????-??.jsonl").Single();

    public void Dispose()
    {
        Dispose(disposing: true);
        GC.SuppressFinalize(this);
    }

    protected virtual void Dispose(bool disposing) => TestFolder.Delete(_folder);

    /// <summary>The service on this folder, with some of its parts in the place of its own.</summary>
    private protected WebApplicationFactory<Program> Hosted(Action<IServiceCollection> parts) =>
        new WebApplicationFactory<Program>().WithWebHostBuilder(host => host.UseSetting("Data:Folder", Folder).ConfigureTestServices(parts));

    protected async Task Append(string text) => await File.AppendAllTextAsync(Journal, text, Encoding.UTF8);

    /// <summary>Turns one bit of a file round.</summary>
    protected static void Flip(string file, long at, int bit = 0)
    {
        using var stream = new FileStream(file, FileMode.Open);
        stream.Position = at;
        var value = stream.ReadByte();
        stream.Position = at;
        stream.WriteByte((byte)(value ^ (1 << bit)));
    }
}
