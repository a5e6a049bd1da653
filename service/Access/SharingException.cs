namespace WireCoach.Service.Access;

/// <summary>The service would be reachable from a network without what that takes; the message is one clear sentence.</summary>
internal sealed class SharingException : Exception
{
    public SharingException()
    {
    }

    public SharingException(string message)
        : base(message)
    {
    }

    public SharingException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
