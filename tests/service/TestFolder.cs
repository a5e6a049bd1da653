using WireCoach.Service.Sessions;

namespace WireCoach.Service.Tests;

/// <summary>The end of a test's data folder. A host in process ends on a thread of its own, after the test has let it go: whoever deletes its folder before that trips it, and is tripped.</summary>
internal static class TestFolder
{
    /// <summary>Waits until no host has the folder any more, and deletes it.</summary>
    public static void Delete(DirectoryInfo folder)
    {
        Release(folder.FullName);
        folder.Delete(recursive: true);
    }

    /// <summary>Waits until no host has the folder any more: it gives back the lock last of all.</summary>
    public static void Release(string folder)
    {
        for (var tries = 0; ; tries++)
        {
            try
            {
                FolderLock.Take(folder).Dispose();
                return;
            }
            catch (StoreException) when (tries < 1500)
            {
                Thread.Sleep(20);
            }
        }
    }
}
