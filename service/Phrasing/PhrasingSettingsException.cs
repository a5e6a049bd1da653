namespace WireCoach.Service.Phrasing;

/// <summary>What is configured for the language model cannot be used; the message says what to change.</summary>
internal sealed class PhrasingSettingsException : Exception
{
    public PhrasingSettingsException()
    {
    }

    public PhrasingSettingsException(string message)
        : base(message)
    {
    }

    public PhrasingSettingsException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
