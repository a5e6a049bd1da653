using System.Globalization;
using WireCoach.Service.Sessions;

namespace WireCoach.Service.Backups;

/// <summary>Puts a backup in the place of a data folder's sessions. What was there is moved aside, never deleted.</summary>
internal static class Restoring
{
    /// <returns>What was put back, and the folder into which the sessions before it were moved.</returns>
    /// <exception cref="BackupException">The backup is not whole; nothing was changed.</exception>
    /// <exception cref="StoreException">The service runs on the folder, or it cannot be written.</exception>
    public static (BackupManifest Manifest, string? Aside) PutBack(string folder, string file, TimeProvider clock)
    {
        if (!File.Exists(file))
        {
            throw new BackupException($"There is no file {file}.");
        }

        using var held = FolderLock.Take(folder);
        var staged = Staged(folder);
        try
        {
            var manifest = BackupReader.Unpack(file, staged);
            using var whole = Journal.Open(staged, clock);
            Mark(folder);
            var aside = MoveAside(folder, clock);
            foreach (var part in manifest.Parts)
            {
                File.Move(Path.Combine(staged, part.Name), Path.Combine(folder, part.Name));
            }

            DirectorySync.Flush(folder);
            File.Delete(Path.Combine(folder, Journal.Unfinished));
            return (manifest, aside);
        }
        finally
        {
            Directory.Delete(staged, recursive: true);
            DirectorySync.Flush(folder);
        }
    }

    /// <summary>Checks a backup without touching any sessions.</summary>
    /// <exception cref="BackupException">It is not whole.</exception>
    public static BackupManifest Check(string file, TimeProvider clock)
    {
        if (!File.Exists(file))
        {
            throw new BackupException($"There is no file {file}.");
        }

        var into = Directory.CreateTempSubdirectory("wirecoach-check-");
        try
        {
            var manifest = BackupReader.Unpack(file, into.FullName);
            using var whole = Journal.Open(into.FullName, clock);
            return manifest;
        }
        finally
        {
            into.Delete(recursive: true);
        }
    }

    private static string Staged(string folder)
    {
        var staged = Path.Combine(folder, "unpacking");
        if (Directory.Exists(staged))
        {
            Directory.Delete(staged, recursive: true);
        }

        Directory.CreateDirectory(staged);
        return staged;
    }

    /// <summary>From here until the mark is gone, the service does not start on the folder: its sessions are not whole.</summary>
    private static void Mark(string folder)
    {
        using (var mark = new FileStream(Path.Combine(folder, Journal.Unfinished), FileMode.Create, FileAccess.Write))
        {
            mark.Flush(flushToDisk: true);
        }

        DirectorySync.Flush(folder);
    }

    private static string? MoveAside(string folder, TimeProvider clock)
    {
        string[] files = [.. Journal.Segments(folder).Select(name => Path.Combine(folder, name)), .. Directory.EnumerateFiles(folder, "sessions*.db")];
        if (files.Length == 0)
        {
            return null;
        }

        var aside = Path.Combine(folder, $"before-restore-{clock.GetUtcNow().UtcDateTime.ToString("yyyyMMdd'T'HHmmssfff", CultureInfo.InvariantCulture)}");
        Directory.CreateDirectory(aside);
        foreach (var file in files)
        {
            File.Move(file, Path.Combine(aside, Path.GetFileName(file)));
        }

        DirectorySync.Flush(aside);
        return aside;
    }
}
