namespace WireCoach.Rules.Connections;

/// <summary>How tags and ends are strung together inside a sentence.</summary>
internal static class Words
{
    public static string All(IReadOnlyList<string> tags) => string.Join(" + ", tags);

    public static string Rotation(string rotation) => rotation;

    public static string End(string end) => end == "shaft-end" ? "the shaft end" : "the end opposite the shaft";
}
