namespace WireCoach.Service.Sessions;

/// <summary>The store cannot take or give what is asked; the message is one clear sentence.</summary>
internal sealed class StoreException : Exception
{
    public StoreException()
    {
    }

    public StoreException(string message)
        : base(message)
    {
    }

    public StoreException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
