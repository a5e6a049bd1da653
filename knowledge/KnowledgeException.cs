namespace WireCoach.Knowledge;

/// <summary>A knowledge file is missing or wrong; the message names file, line and what.</summary>
public sealed class KnowledgeException : Exception
{
    public KnowledgeException()
    {
    }

    public KnowledgeException(string message)
        : base(message)
    {
    }

    public KnowledgeException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
