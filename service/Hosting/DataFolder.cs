namespace WireCoach.Service.Hosting;

/// <summary>Where the sessions lie.</summary>
/// <param name="Path">The folder.</param>
internal sealed record DataFolder(string Path)
{
    /// <summary>The setting that names a PostgreSQL to keep the sessions in instead.</summary>
    public const string Postgres = "Data:Postgres";

    /// <summary>The folder that is configured as <c>Data:Folder</c>, or <c>data</c> where the service was started.</summary>
    public static DataFolder Of(IConfiguration configuration)
    {
        var configured = configuration["Data:Folder"];
        return new(System.IO.Path.GetFullPath(string.IsNullOrWhiteSpace(configured) ? "data" : configured));
    }

    /// <summary>Says so when less than this many bytes are free.</summary>
    public string? Trouble(long leastFree)
    {
        try
        {
            var free = new DriveInfo(Path).AvailableFreeSpace;
            return free >= leastFree ? null : $"Only {free >> 20} MiB are free where the sessions lie.";
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return $"The data folder cannot be looked at: {wrong.Message}";
        }
    }
}
