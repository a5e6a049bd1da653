namespace WireCoach.Service.Tests.Phrasing;

/// <summary>Rewordings by hand of real sentences, good and bad, as a person or a model would write them.</summary>
internal static class HandCorpus
{
    /// <summary>By a writer who was not told what the guard can follow: how much of the good ones it loses is only a figure.</summary>
    public const string Free = "rewordings-free.txt";

    /// <summary>The kind of those that say the same, but that the guard cannot follow.</summary>
    public const string Lost = "by hand, lost";

    /// <summary>Every rewording with the sentence above it: <c>+</c> says the same, <c>~</c> too, but the guard cannot follow it, <c>-</c> says something else.</summary>
    public static (List<(string Kind, string Source, string Text)> Good, List<(string Kind, string Source, string Text)> Bad) Read(string file = "rewordings.txt")
    {
        var (good, bad) = (new List<(string, string, string)>(), new List<(string, string, string)>());
        var source = "";
        foreach (var line in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Phrasing", file)).Where(line => line.Length > 2 && line[0] != '#'))
        {
            source = line[0] == '=' ? line[2..] : source;
            if (line[0] is '+' or '~' or '-')
            {
                (line[0] == '-' ? bad : good).Add((line[0] == '~' ? Lost : "by hand", source, line[2..]));
            }
        }

        return (good, bad);
    }
}
