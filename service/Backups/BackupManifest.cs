namespace WireCoach.Service.Backups;

/// <summary>What a backup file says of itself.</summary>
internal sealed record BackupManifest
{
    public const string Kind = "wirecoach-backup";

    /// <summary>The version of the backup's shape; a reader refuses a newer one.</summary>
    public const int Current = 1;

    public required string Format { get; init; }

    public required int Version { get; init; }

    /// <summary>The version of the journal's lines.</summary>
    public required int Lines { get; init; }

    public required DateTimeOffset At { get; init; }

    public required IReadOnlyList<BackupPart> Parts { get; init; }
}

/// <summary>A segment of the journal in a backup.</summary>
/// <param name="Name">Its file name.</param>
/// <param name="Bytes">Its length.</param>
/// <param name="Events">How many lines it has.</param>
/// <param name="Sha256">The hash of its bytes.</param>
internal sealed record BackupPart(string Name, long Bytes, long Events, string Sha256);
