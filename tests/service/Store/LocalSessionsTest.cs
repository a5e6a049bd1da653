using System.Text;
using Microsoft.Extensions.Logging.Abstractions;
using WireCoach.Service.Sessions;

namespace WireCoach.Service.Tests.Store;

/// <summary>The journal with its database as a store.</summary>
public sealed class LocalSessionsTest : SessionStoreTest
{
    internal override Opened Open() => new(LocalStore.Open(Folder, TimeProvider.System, NullLogger<LocalStore>.Instance));

    internal override async Task<bool> Keeps(ISessionStore store, string word)
    {
        await ((LocalStore)store).DisposeAsync();
        return Directory.EnumerateFiles(Folder).Any(file => Encoding.UTF8.GetString(File.ReadAllBytes(file)).Contains(word, StringComparison.Ordinal));
    }
}
