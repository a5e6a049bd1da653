using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Reads meter readings between leads in any common writing.</summary>
internal sealed class ReadingGrammar(Scene scene, LeadReader leads, UnitBook units)
{
    /// <summary>Ohms from which a reading to the frame tells of insulation.</summary>
    public const double InsulationFrom = 1e5;
    private const int MostBetween = 6;
    private Value? _last;
    private int _valueFirst = -2;

    /// <summary>What a meter showed.</summary>
    internal sealed record Value(double? Ohms, bool Open, bool Short, bool Kick, int First, int Last);

    /// <summary>What the probes were on, and where it was said.</summary>
    internal sealed record Probed(string From, string To, int First, int Last)
    {
        /// <summary>Leads that were held together with the first.</summary>
        public IReadOnlyList<string> Together { get; init; } = [];
    }

    public void Read()
    {
        var (several, frame) = (new SeveralLeads(scene, leads, this), new FrameReadings(scene, leads, this));
        for (var at = 0; at < scene.Tokens.Count; at++)
        {
            if (!scene.Tokens[at].Used && (NamesOfCounted(at) ?? several.Line(at) ?? Line(at, frame)) is { } last)
            {
                at = last;
            }
        }
    }

    /// <summary>"six leads 1 to 6" names them all, and no pair of them.</summary>
    private int? NamesOfCounted(int at)
    {
        var number = scene[at] is { IsWhole: true } figure ? figure.Text : scene.Like(at, "number.")?.Concept["number.".Length..];
        var behind = at + 1;
        while ((scene.At(behind, "look-of-lead")?.Last ?? (scene.IsWord(behind, "motor", "stator", "winding") ? behind : null)) is { } look)
        {
            behind = look + 1;
        }

        if (number is null || scene.At(behind, "lead-noun") is not { } noun)
        {
            return null;
        }

        var first = noun.Last + 1;
        scene.SkipSigns(ref first, ",", ":", "(", "-", "numbered", "called", "marked", "tagged");
        return scene.IsWord(first, "1") && scene.IsWord(first + 1, "to", "-", "through", "thru") && scene.IsWord(first + 2, number) ? first + 2 : null;
    }

    /// <summary>A value that starts at the token: a figure in ohms, "OL", "beeps", "jumps, then OL".</summary>
    public Value? ValueAt(int at, bool needsUnit)
    {
        if (scene[at] is not { Used: false } token)
        {
            return null;
        }

        if (scene.At(at, "reading-kick") is { } kick)
        {
            return new Value(null, true, false, true, at, kick.Last);
        }

        if (scene.At(at, "reading-open") is { } open)
        {
            var kicks = scene.At(open.Last + 1, "reading-kick-after");
            return new Value(null, true, false, kicks is not null, at, kicks?.Last ?? open.Last);
        }

        if (scene.At(at, "reading-short") is { } shorted)
        {
            return new Value(null, false, true, false, at, shorted.Last);
        }

        return token.Kind == TokenKind.Number && !token.Negative ? Figure(at, token, needsUnit) : null;
    }

    private Value? Figure(int at, Token token, bool needsUnit)
    {
        if (token.InOhms)
        {
            return new Value(token.Value, false, false, false, at, units.At(scene, at + 1, true) is { Unit.Unit: "ohm" } said ? said.Last : at);
        }

        var unit = units.At(scene, at + 1, true);
        if (unit is { } found && found.Unit.Unit is "ohm" or "megohm")
        {
            var ohms = token.Value * found.Unit.Factor * (found.Unit.Unit == "megohm" ? 1e6 : 1);
            return new Value(ohms, false, false, false, at, found.Last);
        }

        if (scene[at + 1] is { Text: "k", Kind: TokenKind.Word })
        {
            return new Value(token.Value * 1000, false, false, false, at, at + 1);
        }

        return unit is null && !needsUnit && !Continues(at) ? new Value(token.Value, false, false, false, at, at) : null;
    }

    /// <summary>"4-6" and "1/2" are not one figure.</summary>
    private bool Continues(int at) => scene.IsWord(at + 1, "-", "/") && scene[at + 2] is { Glued: true } && scene[at + 1]!.Glued;

    private int? Line(int at, FrameReadings frame)
    {
        if ((frame.Read(at) ?? ValueFirst(at)) is { } last)
        {
            return last;
        }

        var start = scene.At(at, "between") is { } between ? between.Last + 1 : at;
        var pairs = new List<Probed>();
        var next = start;
        var byAnd = false;
        while (Pair(next, start > at) is { } pair)
        {
            if (pairs.Count > 0 && start == at && pair.IsByAnd && !byAnd)
            {
                return pair.Last; // "1 to 2, 3 and 4 open": from 1 to each of three, or two pairs
            }

            byAnd = pair.IsByAnd;
            pairs.Add(new(pair.From, pair.To, pairs.Count == 0 ? at : next, pair.Last));
            next = pair.Last + 1;
            var value = pairs.Count == 1 && start > at ? Before(at) ?? After(next, true) : After(next, start > at);
            if (value is not null)
            {
                return Add(pairs, value);
            }

            while (scene.IsWord(next, "and", ",", "&", "also"))
            {
                next++;
            }

            if (scene.At(next, "reads") is not null && After(next, true) is { } told && HasUnit(told))
            {
                return Add(pairs, told);
            }
        }

        return null;
    }

    /// <summary>"1.3 ohm T1-T2, 1.3 T2-T3": the value stands before its pair; the first tells its unit, those behind it need not.</summary>
    private int? ValueFirst(int at)
    {
        var follows = _valueFirst == at - 1;
        var first = follows && scene.IsWord(at, ",", "and", ";") ? at + 1 : at;
        if (scene[first]?.Kind != TokenKind.Number || ValueAt(first, !follows) is not { } value || Pair(Across(value.Last + 1), false) is not { } pair || !EndsInPair(pair.Last + 1))
        {
            return null;
        }

        return _valueFirst = Add([new(pair.From, pair.To, value.Last + 1, pair.Last)], value);
    }

    /// <summary>"5.1 ohm T1-T2 5.2 T2-T3": a value behind a pair is that of the pair behind it, where the row ends in a pair.</summary>
    private bool EndsInPair(int at) => After(at, false) is not { } value || (Pair(Across(value.Last + 1), false) is { } pair && EndsInPair(pair.Last + 1));

    /// <summary>"5 ohm on U-V": the word between a value and its pair.</summary>
    private int Across(int at) => scene.IsWord(at, "on", "across", "from", "between", "at", "for") ? at + 1 : at;

    private static bool HasUnit(Value value) => value.Last > value.First || value.Open || value.Short;

    /// <summary>Files a value for each of the pairs that it was read of.</summary>
    /// <returns>The last token of them.</returns>
    public int Add(IReadOnlyList<Probed> pairs, Value value)
    {
        var end = Math.Max(value.Last, pairs[^1].Last);
        var degrees = Degrees(end + 1);
        foreach (var pair in pairs)
        {
            var (first, last) = (Math.Min(pair.First, value.First < pair.First ? value.First : pair.First), pair == pairs[^1] ? end : pair.Last);
            if (value is { Ohms: >= InsulationFrom } && pair.To is Fact.Reading.Frame or Fact.Reading.Earth)
            {
                scene.Add(first, last, new Fact.Insulation { Megohms = value.Ohms.GetValueOrDefault() / 1e6, Celsius = degrees?.Celsius });
                continue;
            }

            scene.Add(first, last, Reading(pair.From, pair.To, value) with { Together = pair.Together, Celsius = degrees?.Celsius, ChangesWithShaft = ChangesWithShaft(end) });
        }

        if (degrees is { } at)
        {
            scene.Use(end + 1, at.Last);
            end = at.Last;
        }

        _last = value;
        return end;
    }

    /// <summary>What the meter showed between two leads.</summary>
    public static Fact.Reading Reading(string from, string to, Value value) =>
        new() { From = from, To = to, Ohms = value.Ohms, Open = value.Open, Short = value.Short, Kick = value.Kick };

    private bool ChangesWithShaft(int at) => scene.InSentence("changes-with-shaft", at);

    /// <summary>"at 20 °C": the temperature that is told behind a reading.</summary>
    public (double Celsius, int Last)? Degrees(int at)
    {
        at = scene.IsWord(at, "at", "@", "(") ? at + 1 : at;
        return scene[at] is { Kind: TokenKind.Number } number && units.At(scene, at + 1, true) is { Unit.Unit: "celsius" } unit
            ? ((number.Value - unit.Unit.Less) * unit.Unit.Factor, unit.Last)
            : null;
    }

    /// <summary>Two leads with something that joins them.</summary>
    private (string From, string To, int Last, bool IsByAnd)? Pair(int at, bool introduced)
    {
        if (leads.At(at, introduced || scene.IsWord(at + 1, "-") || IsPinPair(at)) is not { } from)
        {
            return null;
        }

        var joint = from.Last + 1;
        var (sign, width) = Joiner(joint);
        if (width == 0)
        {
            return SideBySide(from.Tag, joint);
        }

        if (sign == "and" && !introduced && !HasVerb(joint + width) && !HasFigure(from.Tag, joint + width))
        {
            return null;
        }

        var frame = leads.Frame(joint + width);
        return (frame ?? leads.At(joint + width, introduced || sign == "-" || IsPinPair(at))) is { } to && !string.Equals(from.Tag, to.Tag, StringComparison.Ordinal)
            ? (from.Tag, to.Tag, to.Last, sign == "and")
            : null;
    }

    /// <summary>"red blue 21": two known leads with nothing between them and a figure behind that is no lead itself.</summary>
    private (string From, string To, int Last, bool IsByAnd)? SideBySide(string from, int at) =>
        MarksWithOhms(from, at) ?? (IsKnown(from) && (leads.Frame(at) ?? leads.At(at)) is { } to && to.Tag != from && (IsKnown(to.Tag) || leads.Frame(at) is not null)
        && ValueAt(to.Last + 1, false) is { } value && !(value.First == value.Last && IsKnown(scene.Tokens[value.First].Text))
            ? (from, to.Tag, to.Last, false)
            : null);

    /// <summary>"U1 U2 is 12 ohms": two printed marks side by side, known or not, with ohms behind them.</summary>
    private (string From, string To, int Last, bool IsByAnd)? MarksWithOhms(string from, int at) =>
        scene[at - 1]?.Kind == TokenKind.Tag && scene[at]?.Kind == TokenKind.Tag && leads.At(at) is { } to && to.Tag != from && After(to.Last + 1, false) is { } value && HasUnit(value)
            ? (from, to.Tag, to.Last, false)
            : null;

    /// <summary>"C to R open": two of the pins of a sealed compressor.</summary>
    private bool IsPinPair(int at) => scene.IsWord(at, "c", "r", "s") && scene.IsWord(at + 1, "to") && scene.IsWord(at + 2, "c", "r", "s") && ValueAt(at + 3, false) is not null;

    private bool IsKnown(string tag) => scene.Leads.Contains(tag, StringComparer.OrdinalIgnoreCase);

    private (string Sign, int Width) Joiner(int at) => scene[at]?.Text switch
    {
        "-" when scene.IsWord(at + 1, ">") => ("-", 2),
        "-" or "→" => ("-", 1),
        "to" or "against" or "onto" => ("to", 1),
        "and" when scene.IsWord(at + 1, "the") && scene.IsWord(at + 2, "other", "second") && scene.IsWord(at + 3, "on", "to") => ("to", 4), // "one probe on black and the other on white"
        "with" or "and" or "&" or "+" => ("and", 1),
        "/" when scene[at - 1]?.Kind == TokenKind.Tag || scene.Like(at - 1, "colour.") is not null => ("-", 1),
        _ => ("", 0),
    };

    /// <summary>"1 and 2 is 62 ohm": two leads joined by "and" need a verb and a value behind them.</summary>
    private bool HasVerb(int at) => leads.At(at) is { } to && (scene.At(to.Last + 1, "reads") is not null || scene.IsWord(to.Last + 1, ":", "=")
        || ValueAt(to.Last + 1, true) is not null || (scene.IsWord(to.Last + 1, "and", ",") && scene.InSentence("reads", at)));

    /// <summary>"black and white 3.2,": two known leads that are no numbers, and a figure that ends what is said of them.</summary>
    private bool HasFigure(string from, int at) => leads.At(at) is { } to && IsKnown(from) && IsKnown(to.Tag) && !char.IsAsciiDigit(from[0]) && !char.IsAsciiDigit(to.Tag[0])
        && ValueAt(to.Last + 1, false) is { Ohms: not null } value && scene.At(value.First, "nominal-volts") is null && (scene[value.Last + 1] is null || scene[value.Last + 1]!.Clause != scene.Tokens[at].Clause || scene.IsWord(value.Last + 1, ",", ";", "and") || scene.At(value.Last + 1, "other-pairs") is not null);

    /// <summary>The value behind a pair, over words like "is", "reads", "about".</summary>
    public Value? After(int at, bool introduced)
    {
        for (var skipped = 0; skipped <= MostBetween; skipped++)
        {
            if (ValueAt(at, false) is { } value)
            {
                return IsPair(at) && value.First == value.Last ? null : value;
            }

            if (scene.At(at, "same-again") is { } same && _last is { } last)
            {
                return last with { First = at, Last = same.Last };
            }

            var over = scene.At(at, "reads")?.Last ?? scene.At(at, "about")?.Last ?? scene.At(at, "filler-in-reading")?.Last
                ?? (scene.IsWord(at, ":", "=", "~", "≈", "(") || (introduced && scene.IsWord(at, ",")) || (scene.IsWord(at, ",") && (ValueIsWord(at + 1) || IsOwnValue(at + 1))) ? at : -1);
            if (over < 0)
            {
                return null;
            }

            at = over + 1;
        }

        return null;
    }

    /// <summary>"W1 to W2, 7.1 ohm": a figure with its unit behind the comma, and no other pair right behind it that it may belong to.</summary>
    private bool IsOwnValue(int at) => ValueAt(at, true) is { } value && Pair(Across(value.Last + 1), scene.At(value.Last + 1, "between") is not null) is null;

    private bool ValueIsWord(int at) => scene[at] is { Kind: TokenKind.Word } && ValueAt(at, true) is not null;

    /// <summary>"3 between 1 and 2": the value stands before.</summary>
    private Value? Before(int at)
    {
        for (var first = Math.Max(0, at - 4); first < at; first++)
        {
            if (scene.Tokens[first].Clause == scene.Tokens[at - 1].Clause && ValueAt(first, false) is { } value && value.Last >= at - 2 && value.Last < at
                && (value.Last == at - 1 || scene.At(at - 1, "about") is not null || scene.At(at - 1, "filler-in-reading") is not null))
            {
                return value;
            }
        }

        return null;
    }

    private bool IsPair(int at) => Pair(at, false) is not null;
}
