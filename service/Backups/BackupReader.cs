using System.IO.Compression;
using System.Security.Cryptography;
using System.Text.Json;
using WireCoach.Service.Sessions;

namespace WireCoach.Service.Backups;

/// <summary>Unpacks a backup into an empty folder and checks every byte of it on the way.</summary>
internal static class BackupReader
{
    private const int LargestManifest = 1 << 20;

    /// <summary>A member that is missing is damage, not an empty value.</summary>
    private static readonly JsonSerializerOptions Strict = new(JsonSerializerDefaults.Web) { RespectNullableAnnotations = true, RespectRequiredConstructorParameters = true };

    /// <exception cref="BackupException">It is no backup, a newer one, or not as it was written.</exception>
    public static BackupManifest Unpack(string file, string into)
    {
        try
        {
            using var zip = ZipFile.OpenRead(file);
            var manifest = Manifest(zip, file);
            foreach (var part in manifest.Parts)
            {
                Unpack(zip, part, Path.Combine(into, part.Name), file);
            }

            DirectorySync.Flush(into);
            return manifest;
        }
        catch (Exception wrong) when (wrong is InvalidDataException or JsonException)
        {
            throw new BackupException($"The file {file} is no whole backup: {wrong.Message}", wrong);
        }
    }

    private static BackupManifest Manifest(ZipArchive zip, string file)
    {
        var entry = zip.GetEntry("manifest.json");
        if (entry is null || entry.Length > LargestManifest)
        {
            throw new BackupException($"The file {file} is no backup: it has no manifest.");
        }

        using var stream = entry.Open();
        var manifest = JsonSerializer.Deserialize<BackupManifest>(stream, Strict);
        if (manifest?.Format != BackupManifest.Kind)
        {
            throw new BackupException($"The file {file} is no backup of sessions.");
        }

        if (manifest.Version > BackupManifest.Current || manifest.Lines > EventFormat.Version)
        {
            throw new BackupException($"The backup {file} was made by a newer WireCoach; put it back with that one.");
        }

        return manifest.Parts.All(part => Journal.IsSegment(part.Name)) && manifest.Parts.DistinctBy(part => part.Name).Count() == manifest.Parts.Count
            ? manifest
            : throw new BackupException($"The backup {file} names a file that is no part of a journal.");
    }

    private static void Unpack(ZipArchive zip, BackupPart part, string path, string file)
    {
        var entry = zip.GetEntry(part.Name);
        if (entry is null || entry.Length != part.Bytes)
        {
            throw Damaged(file, part);
        }

        using (var from = entry.Open())
        using (var to = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None))
        {
            from.CopyTo(to);
            to.Flush(flushToDisk: true);
        }

        using var written = new FileStream(path, FileMode.Open, FileAccess.Read);
        if (Convert.ToHexStringLower(SHA256.HashData(written)) != part.Sha256)
        {
            throw Damaged(file, part);
        }
    }

    private static BackupException Damaged(string file, BackupPart part) => new($"The backup {file} is damaged: {part.Name} in it is not as it was written. Nothing was changed.");
}
