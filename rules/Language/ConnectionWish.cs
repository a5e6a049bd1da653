using System.Globalization;
using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Reads which connection a person wants: "connect it in delta", "wire it for high voltage", "hook it up for 460".</summary>
internal sealed class ConnectionWish(Scene scene)
{
    private const string As = "connect-as.";
    private const double LeastVolts = 48;

    public void Read()
    {
        for (var first = 0; first < scene.Tokens.Count; first++)
        {
            if (scene.Tokens[first].Used || !scene.IsWord(first, "connect", "wire", "hook", "jumper", "strap", "link") || scene.IsWord(first - 1, "not", "dont", "don't", "never"))
            {
                continue;
            }

            var at = first + 1;
            while (scene.IsWord(at, "it", "this", "that", "them", "the", "my", "motor", "up", "me", "windings"))
            {
                at++;
            }

            if (scene.IsWord(at, "for", "in", "as", "on", "to"))
            {
                Wanted(first, at, scene.IsWord(at, "for"));
            }
        }
    }

    private void Wanted(int first, int at, bool volts)
    {
        at = scene.IsWord(at + 1, "the", "a") ? at + 2 : at + 1;
        if (scene.Like(at, As) is { } named)
        {
            Add(first, named.Last, named.Concept[As.Length..]);
        }
        else if (volts && scene[at] is { Kind: TokenKind.Number, Used: false, Value: >= LeastVolts } number)
        {
            Add(first, scene.IsWord(at + 1, "v", "volt", "volts") ? at + 1 : at, number.Value.ToString("0.##", CultureInfo.InvariantCulture));
        }
    }

    private void Add(int first, int last, string option) => scene.Add(first, last, new Fact.Choice { Question = Fact.Choice.Connection, Option = option });
}
