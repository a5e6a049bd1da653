using System.IO.Compression;
using System.Security.Cryptography;
using System.Text.Json;
using WireCoach.Service.Sessions;

namespace WireCoach.Service.Backups;

/// <summary>Copies the journal of a data folder into one file, also while the service writes to it.</summary>
/// <remarks>Segments only grow, and one that has a successor does not: what is listed first and read after is one state of the whole journal.</remarks>
internal static class BackupWriter
{
    /// <exception cref="BackupException">There is nothing to back up, the file exists, or a line is damaged.</exception>
    public static BackupManifest Write(string folder, string file, DateTimeOffset at)
    {
        var segments = Directory.Exists(folder) ? Journal.Segments(folder) : [];
        if (segments.Length == 0)
        {
            throw new BackupException($"There are no sessions in {folder}; name the data folder with --Data:Folder.");
        }

        if (File.Exists(file))
        {
            throw new BackupException($"The file {file} exists already; a backup overwrites nothing.");
        }

        var partial = $"{file}.partial";
        try
        {
            var manifest = WriteParts(folder, segments, partial, at);
            File.Move(partial, file);
            DirectorySync.Flush(Path.GetDirectoryName(Path.GetFullPath(file))!);
            return manifest;
        }
        finally
        {
            File.Delete(partial);
        }
    }

    private static BackupManifest WriteParts(string folder, string[] segments, string partial, DateTimeOffset at)
    {
        using var stream = new FileStream(partial, FileMode.Create, FileAccess.ReadWrite, FileShare.None);
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(partial, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        }

        BackupManifest manifest;
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            manifest = new()
            {
                Format = BackupManifest.Kind,
                Version = BackupManifest.Current,
                Lines = EventFormat.Version,
                At = at,
                Parts = [.. segments.Select(segment => Copy(zip, folder, segment))],
            };
            using var entry = zip.CreateEntry("manifest.json").Open();
            JsonSerializer.Serialize(entry, manifest, JsonSerializerOptions.Web);
        }

        stream.Flush(flushToDisk: true);
        return manifest;
    }

    private static BackupPart Copy(ZipArchive zip, string folder, string segment)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        using var reader = new JournalReader(Path.Combine(folder, segment), 0);
        using var entry = zip.CreateEntry(segment, CompressionLevel.Fastest).Open();
        var (bytes, events) = (0L, 0L);
        while (reader.Next() is { } line)
        {
            if (!EventFormat.IsWhole(line.Span))
            {
                throw new BackupException($"The journal {Path.Combine(folder, segment)} is damaged at byte {bytes}; it was not backed up, so that no good backup is replaced by it.");
            }

            ReadOnlySpan<byte> feed = [EventFormat.LineFeed];
            hash.AppendData(line.Span);
            hash.AppendData(feed);
            entry.Write(line.Span);
            entry.Write(feed);
            (bytes, events) = (reader.Offset, events + 1);
        }

        return new(segment, bytes, events, Convert.ToHexStringLower(hash.GetHashAndReset()));
    }
}
