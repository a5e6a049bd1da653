using System.Text.RegularExpressions;
using WireCoach.Rules.Tests;

namespace WireCoach.WebUi.Tests;

/// <summary>Words that a person reads stand in knowledge, never in markup or code, so that a translation needs no code.</summary>
public sealed partial class WordsInCodeTest
{
    /// <summary>The name of the program, and what is the same in every language.</summary>
    private static readonly string[] Names = ["WireCoach", "UTC", "HH:mm", "yyyy-MM-dd", "PDF", "CSV", "JSON"];

    [Fact]
    public void No_markup_has_words_of_its_own()
    {
        var files = Directory.EnumerateFiles(Path.Combine(Repository.Root, "web-ui"), "*.razor", SearchOption.AllDirectories).ToList();
        Assert.True(files.Count > 30, "The pages are somewhere else.");
        Assert.Empty(files.SelectMany(file => InMarkup(File.ReadAllText(file)).Select(words => $"{Path.GetFileName(file)}: {words}")));
    }

    [Fact]
    public void No_code_of_a_page_has_a_sentence_of_its_own()
    {
        string[] rooms = ["web-ui", Path.Combine("service", "Endpoints"), Path.Combine("service", "Access")];
        var files = rooms.SelectMany(room => Directory.EnumerateFiles(Path.Combine(Repository.Root, room), "*", SearchOption.AllDirectories)).Where(file => Path.GetExtension(file) is ".cs" or ".razor" or ".js").ToList();
        Assert.True(files.Count > 80, "The code is somewhere else.");
        string[] found = [.. files.SelectMany(file => InCode(CodeOf(file)).Select(words => $"{Path.GetFileName(file)}: {words}"))];
        Assert.True(found.Length == 0, string.Join(Environment.NewLine, found));
    }

    [Theory]
    [InlineData("<p>Take the plug out</p>")]
    [InlineData("<button aria-label=\"Take back\">@Words[\"page.x\"]</button>")]
    [InlineData("<p>@Words[\"page.x\"] leads</p>")]
    [InlineData("<td>@(open ? Words[\"page.x\"] : \"no\") then</td>")]
    [InlineData("<input placeholder=\"ohms\" />")]
    public void Words_in_markup_are_found(string markup) => Assert.NotEmpty(InMarkup(markup));

    [Theory]
    [InlineData("<p class=\"one two\">@Words[\"page.x\"]</p>\n@if (a < b && c > d)\n{\n<b>@x</b>\n}")]
    [InlineData("<title>@Words[\"page.x\"] · WireCoach</title>")]
    [InlineData("<li>@(string.Join(\", \", all.Select(one => one.Name)))</li>")]
    public void Markup_without_words_passes(string markup) => Assert.Empty(InMarkup(markup));

    [Theory]
    [InlineData("canvas.Text(56, y, \"frame, to protective earth\", 11);")]
    [InlineData("return $\"each winding gets {each}\";")]
    [InlineData("canvas.Text(Margin, y, \"open\", 11);")]
    public void Words_in_code_are_found(string code) => Assert.NotEmpty(InCode(code));

    [Theory]
    [InlineData("throw new InvalidOperationException(\"The font is missing.\");")]
    [InlineData("var id = $\"role-{role}\"; // two words")]
    [InlineData("canvas.Text(Margin, y, words[\"picture.no-place\"], 11, anchor: \"end\");")]
    public void Code_without_words_passes(string code) => Assert.Empty(InCode(code));

    /// <summary>What it does: of a page the part behind its markup; what only programs are told is left out.</summary>
    private static string CodeOf(string file)
    {
        var text = File.ReadAllText(file);
        var begins = Path.GetExtension(file) == ".razor" ? text.IndexOf("@code {", StringComparison.Ordinal) : 0;
        return begins < 0 ? string.Empty : ForPrograms().Replace(text[begins..], string.Empty);
    }

    /// <summary>What stands between tags or in an attribute that is read out, once expressions are gone.</summary>
    private static IEnumerable<string> InMarkup(string razor)
    {
        var code = razor.IndexOf("@code {", StringComparison.Ordinal);
        var markup = string.Join('\n', WithoutExpressions(code < 0 ? razor : razor[..code]).Split('\n').Where(line => line.Contains('<', StringComparison.Ordinal) || !Statement().IsMatch(line)));
        return TextNode().Matches(markup).Concat(Spoken().Matches(markup)).Select(match => match.Groups[1].Value.Trim()).Where(text => Letters().IsMatch(Names.Aggregate(text, (rest, name) => rest.Replace(name, string.Empty, StringComparison.Ordinal))));
    }

    /// <summary>Sentences in strings, and any word that is drawn or written on paper as it stands.</summary>
    private static IEnumerable<string> InCode(string code)
    {
        foreach (var line in code.Split('\n').Where(line => !Unseen().IsMatch(line)))
        {
            var drawn = Drawn().IsMatch(line);
            foreach (var text in Strings(GapName().Replace(Comment().Replace(line, string.Empty), string.Empty)).Select(text => Names.Aggregate(text, (rest, name) => rest.Replace(name, string.Empty, StringComparison.Ordinal))))
            {
                if (drawn ? Letters().IsMatch(text) && !Id().IsMatch(text) : Sentence().IsMatch(text) && !Technical().IsMatch(text))
                {
                    yield return text;
                }
            }
        }
    }

    /// <summary>The strings of a line, with a figure for each gap, and the strings within the gaps.</summary>
    private static List<string> Strings(string line)
    {
        var (whole, open) = (new List<string>(), new Stack<(System.Text.StringBuilder Text, bool Gaps)>());
        var within = new Stack<bool>(); // whether each open brace began a gap of a string
        for (var at = 0; at < line.Length; at++)
        {
            var inText = open.Count > 0 && open.Count > within.Count(gap => gap);
            switch (line[at])
            {
                case '\\' when inText:
                    at++;
                    break;
                case '"' when inText:
                    whole.Add(open.Pop().Text.ToString());
                    break;
                case '"':
                    open.Push((new(), at > 0 && line[at - 1] == '$'));
                    break;
                case '{' when !inText || open.Peek().Gaps:
                    within.Push(inText);
                    _ = inText ? open.Peek().Text.Append('0') : null;
                    break;
                case '}' when within.Count > 0 && (!inText || open.Peek().Gaps):
                    _ = within.Pop();
                    break;
                default:
                    _ = inText ? open.Peek().Text.Append(line[at]) : null;
                    break;
            }
        }

        return whole;
    }

    /// <summary>Razor comments and expressions, with whatever brackets they have, are replaced by a figure.</summary>
    private static string WithoutExpressions(string razor)
    {
        var text = new System.Text.StringBuilder();
        for (var at = 0; at < razor.Length; at++)
        {
            if (razor[at] != '@')
            {
                _ = text.Append(razor[at]);
                continue;
            }

            _ = text.Append('0');
            at = End(razor, at + 1) - 1;
        }

        return text.ToString();
    }

    private static int End(string razor, int at)
    {
        while (at < razor.Length && (char.IsLetterOrDigit(razor[at]) || razor[at] is '.' or '_' or '?' or '!' or '(' or '['))
        {
            at = razor[at] is '(' or '[' ? Closed(razor, at) : at + 1;
        }

        // the condition behind a keyword
        return at + 1 < razor.Length && razor[at] == ' ' && razor[at + 1] == '(' ? Closed(razor, at + 1) : at;
    }

    private static int Closed(string razor, int at)
    {
        for (var depth = 0; at < razor.Length; at++)
        {
            depth += razor[at] is '(' or '[' or '{' ? 1 : razor[at] is ')' or ']' or '}' ? -1 : 0;
            if (depth == 0)
            {
                return at + 1;
            }
        }

        return at;
    }

    [GeneratedRegex(@"^\s*(?:[{}]|0|else|case|default|break|var |return)|;\s*$", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Statement();

    [GeneratedRegex(@"(?<![=\s-])>([^<>{}=;]+)<", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex TextNode();

    [GeneratedRegex(@"\b(?:aria-label|aria-description|title|alt|placeholder|label|summary)=""([^""]*)""", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Spoken();

    [GeneratedRegex(@"\p{L}{2,}", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Letters();

    [GeneratedRegex(@"\p{L}{2,}[,.:;]? \p{L}{2,}", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Sentence();

    /// <summary>Read by nobody who uses the pages: comments, notes for programs and for who runs the service.</summary>
    [GeneratedRegex(@"^\s*(?://|\*)|\bthrow new\b|\?\? throw|LoggerMessage|\blogger\.|\[Obsolete|SuppressMessage|ContentSecurityPolicy", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Unseen();

    [GeneratedRegex(@"With(?:Description|Summary|Tags)\((?:\s*""(?:[^""\\]|\\.)*""\s*\+?)+", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex ForPrograms();

    [GeneratedRegex(@"(?<!:)//.*$", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Comment();

    /// <summary>The name of a sentence's gap, before what fills it.</summary>
    [GeneratedRegex(@"(?<=[ ,(]\()""[a-zA-Z]+""(?=, )", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex GapName();

    [GeneratedRegex(@"\b(?:canvas|Canvas|_canvas|writer|graphics)\.(?:Text|Chip|Heading|Item|Row|Note|Svg|DrawString)\(", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Drawn();

    /// <summary>Ids, and the words in which a drawing is asked for.</summary>
    [GeneratedRegex(@"^(?:[a-z0-9]+(?:[.-][a-z0-9]+)+|start|middle|end|volt|volts|amp|amps|rpm|ohm|direction|check|coil|verdict|status)$", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Id();

    /// <summary>Markup, selectors, styles, headers, and lists of names that programs use.</summary>
    [GeneratedRegex(@"[<>=|{}#]|^\.|: var|charset|color-scheme|light dark|max-age|no-store|select |'self'|^[a-z]+(?:, [a-z]+)+$|^[a-z]+(?:,[a-z]+(?: [a-z]+)?)+$", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Technical();
}
