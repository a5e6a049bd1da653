using System.Text;

namespace WireCoach.Service.Tests;

/// <summary>Bodies that no careful client sends: the shape of the contract with wrong, odd and broken parts, or plain noise. Seeded.</summary>
internal sealed class BodyFuzz(int seed)
{
    private static readonly string[] Paths = ["facts", "messages", "answers", "probe", "review", "close", ""];

    private static readonly string[] Kinds =
    [
        "reading", "plate", "supply", "symptom", "lead", "capacitor", "bench-test", "insulation", "running", "joint", "goal", "confirm",
        "instrument", "application", "choice", "unknown", "nonsense", "", "Reading",
    ];

    private static readonly string[] Members =
    [
        "from", "to", "ohms", "open", "short", "kick", "celsius", "together", "field", "value", "unit", "volts", "phases", "hertz", "system", "id",
        "present", "tag", "colour", "marking", "microfarads", "use", "measuredMicrofarads", "test", "drive", "tie", "read", "appliedVolts", "outcome",
        "megohms", "testVolts", "atMinute", "amps", "rpm", "direction", "seenFrom", "leads", "conductor", "confirmed", "text", "application", "question",
        "option", "factId", "how", "span", "replaces", "at", "kind", "questionId", "choice", "quantity", "reading", "unknown", "verdict", "note", "role",
        "region", "instruments", "who", "motorTag", "motor", "practice", "facts",
    ];

    private static readonly string[] Texts =
    [
        "1", "2", "T1", "t1", "frame", "earth", "red", "", " ", "a\\u0000b", "\\uD800", "Ω", "漢字", "🙂", "<script>alert(1)</script>", "'; drop table", "../../etc/passwd",
        "1-4 is 3.2 ohm", "it just hums", "230", "115/230", "208-230/460", "volts", "horsepower", "ok", "technician", "na", "iec", "typed", "%s%n", "{0}", "{tag}",
        "no, red to blue was 5.1", "undo", "why?", "what does that mean?", "skip", "don't know", "isolated", "capacitor-start-dual-6", "1e309", "NaN", "-0", "٣",
    ];

    private static readonly string[] Numbers =
    [
        "0", "-1", "1", "3.2", "1e308", "-1e308", "1e999", "1e-400", "0.1", "99999999999999999999", "2147483648", "-2147483649", "1.0000000000000000000001",
    ];

    private readonly Random _chance = new(seed);

    /// <summary>Where it goes below a session, and what.</summary>
    public (string Part, string Body) Next() => (Paths[_chance.Next(Paths.Length)], _chance.Next(10) switch
    {
        0 => Noise(),
        1 => Cut(Body()),
        _ => Body(),
    });

    private string Body() => _chance.Next(4) switch
    {
        0 => $$"""{"facts":[{{string.Join(',', Enumerable.Range(0, _chance.Next(4)).Select(_ => Fact()))}}]}""",
        1 => $$"""{"text":{{Value(2)}}}""",
        2 => $$"""{"questionId":{{Value(1)}},{{Member(2)}},{{Member(2)}}}""",
        _ => $$"""{{{string.Join(',', Enumerable.Range(0, 1 + _chance.Next(5)).Select(_ => Member(3)))}}}""",
    };

    private string Fact() => _chance.Next(20) == 0
        ? $$"""{{{Member(1)}}}"""
        : $$"""{"kind":"{{Kinds[_chance.Next(Kinds.Length)]}}",{{string.Join(',', Enumerable.Range(0, 1 + _chance.Next(5)).Select(_ => Member(2)))}}}""";

    private string Member(int depth) => $"\"{Members[_chance.Next(Members.Length)]}\":{Value(depth)}";

    private string Value(int depth) => _chance.Next(depth > 0 ? 9 : 6) switch
    {
        0 or 1 => $"\"{Texts[_chance.Next(Texts.Length)]}\"",
        2 or 3 => Numbers[_chance.Next(Numbers.Length)],
        4 => _chance.Next(2) == 0 ? "true" : "false",
        5 => _chance.Next(6) == 0 ? $"\"{new string('x', _chance.Next(3000))}\"" : "null",
        6 => $"[{string.Join(',', Enumerable.Range(0, _chance.Next(4)).Select(_ => Value(depth - 1)))}]",
        7 => $$"""{{{string.Join(',', Enumerable.Range(0, _chance.Next(3)).Select(_ => Member(depth - 1)))}}}""",
        _ => string.Concat(Enumerable.Repeat("[", _chance.Next(90))),
    };

    private string Cut(string body) => body[.._chance.Next(body.Length)];

    private string Noise()
    {
        var text = new StringBuilder();
        for (var length = _chance.Next(200); length > 0; length--)
        {
            text.Append((char)_chance.Next(0x20, 0x7f));
        }

        return _chance.Next(20) == 0 ? new string('[', 5000) : text.ToString();
    }
}
