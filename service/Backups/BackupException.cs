namespace WireCoach.Service.Backups;

/// <summary>A backup cannot be made or put back; the message is one clear sentence.</summary>
internal sealed class BackupException : Exception
{
    public BackupException()
    {
    }

    public BackupException(string message)
        : base(message)
    {
    }

    public BackupException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
