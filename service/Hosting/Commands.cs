using WireCoach.Service.Access;
using WireCoach.Service.Backups;

namespace WireCoach.Service.Hosting;

/// <summary>What the program does instead of serving: <c>backup FILE</c>, <c>restore FILE</c> and <c>restore FILE --check</c>, and <c>access-code ROLE</c>.</summary>
internal static class Commands
{
    private const string Usage = "Commands: backup FILE; restore FILE; restore FILE --check; access-code ROLE (technician, manager, homeowner or apprentice), which reads the code as one line. Name the data folder with --Data:Folder.";

    /// <summary>Runs the command that the arguments begin with.</summary>
    /// <returns>The exit code; <see langword="null"/> when the service is to be started.</returns>
    public static async Task<int?> Run(string[] args)
    {
        if (args is not [var first, ..] || first.StartsWith('-') || first.StartsWith('/'))
        {
            return null;
        }

        if (args is not [_, var file, .. var more] || first is not ("backup" or "restore" or "access-code") || file.StartsWith('-'))
        {
            await Console.Error.WriteLineAsync(Usage);
            return 2;
        }

        var onlyCheck = more.Contains("--check", StringComparer.Ordinal);
        var builder = WebApplication.CreateBuilder([.. more.Where(word => word != "--check")]);
        var folder = DataFolder.Of(builder.Configuration).Path;
        if (first == "access-code" && !Enum.TryParse<AccessRole>(file, ignoreCase: true, out _))
        {
            await Console.Error.WriteLineAsync(Usage);
            return 2;
        }

        if (first != "access-code" && !onlyCheck && !string.IsNullOrWhiteSpace(builder.Configuration[DataFolder.Postgres]))
        {
            await Console.Error.WriteLineAsync("The sessions are in PostgreSQL: back them up and put them back with pg_dump and pg_restore.");
            return 2;
        }

        await Console.Out.WriteLineAsync(first switch
        {
            "backup" => Backup(folder, file),
            "access-code" => SetCode(folder, Enum.Parse<AccessRole>(file, ignoreCase: true)),
            _ => onlyCheck ? Check(file) : Restore(folder, file),
        });
        return 0;
    }

    private static string Backup(string folder, string file) => $"Backed up {Amount(BackupWriter.Write(folder, file, TimeProvider.System.GetUtcNow()))} to {file}.";

    private static string Check(string file) => $"The backup {file} is whole: {Amount(Restoring.Check(file, TimeProvider.System))}.";

    private static string Restore(string folder, string file)
    {
        var (manifest, aside) = Restoring.PutBack(folder, file, TimeProvider.System);
        return $"Put back {Amount(manifest)} from {manifest.At:yyyy-MM-dd HH:mm} UTC into {folder}." + (aside is null ? string.Empty : $" What was there before lies in {aside}.");
    }

    /// <summary>The code comes on the standard input: an argument would stand in the system's list of processes.</summary>
    private static string SetCode(string folder, AccessRole role)
    {
        new AccessCodes(folder).Set(role, Console.In.ReadLine() ?? string.Empty);
        return $"The {role.ToString().ToLowerInvariant()}'s access code is set.";
    }

    private static string Amount(BackupManifest manifest) => $"{manifest.Parts.Sum(part => part.Events)} events";
}
