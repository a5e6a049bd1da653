using WireCoach.Service.Backups;

namespace WireCoach.Service.Hosting;

/// <summary>What the program does instead of serving: <c>backup FILE</c>, <c>restore FILE</c> and <c>restore FILE --check</c>.</summary>
internal static class Commands
{
    private const string Usage = "Commands: backup FILE; restore FILE; restore FILE --check. Name the data folder with --Data:Folder.";

    /// <summary>Runs the command that the arguments begin with.</summary>
    /// <returns>The exit code; <see langword="null"/> when the service is to be started.</returns>
    public static async Task<int?> Run(string[] args)
    {
        if (args is not [var first, ..] || first.StartsWith('-') || first.StartsWith('/'))
        {
            return null;
        }

        if (args is not [_, var file, .. var more] || first is not ("backup" or "restore") || file.StartsWith('-'))
        {
            await Console.Error.WriteLineAsync(Usage);
            return 2;
        }

        var onlyCheck = more.Contains("--check", StringComparer.Ordinal);
        var builder = WebApplication.CreateBuilder([.. more.Where(word => word != "--check")]);
        var folder = DataFolder.Of(builder.Configuration, builder.Environment.ContentRootPath).Path;
        await Console.Out.WriteLineAsync(first == "backup" ? Backup(folder, file) : onlyCheck ? Check(file) : Restore(folder, file));
        return 0;
    }

    private static string Backup(string folder, string file) => $"Backed up {Amount(BackupWriter.Write(folder, file, TimeProvider.System.GetUtcNow()))} to {file}.";

    private static string Check(string file) => $"The backup {file} is whole: {Amount(Restoring.Check(file, TimeProvider.System))}.";

    private static string Restore(string folder, string file)
    {
        var (manifest, aside) = Restoring.PutBack(folder, file, TimeProvider.System);
        return $"Put back {Amount(manifest)} from {manifest.At:yyyy-MM-dd HH:mm} UTC into {folder}." + (aside is null ? string.Empty : $" What was there before lies in {aside}.");
    }

    private static string Amount(BackupManifest manifest) => $"{manifest.Parts.Sum(part => part.Events)} events";
}
