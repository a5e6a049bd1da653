using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Reads the answer to the open question out of words that mean nothing by themselves: "1.7", "OL", "yes", "240".</summary>
internal sealed class AnswerGrammar(Scene scene, ReadingGrammar readings, List<Quantity> quantities, ShortForms forms, HashSet<string> smallTalk)
{
    private const double Enough = 0.5;
    private const double EnoughAmongFacts = 0.75;
    private const double AsGoodAsNamed = 0.9;
    private const string Agreed = "answer-agreed";
    private const string PlateField = "plate.";
    private const string Transformer = "instrument.low-voltage-ac";
    private static readonly string[] Unsure = ["what", "how", "why", "who", "which", "where", "when", "whether", "if", "do", "does", "think", "guess", "suppose", "hope"];

    /// <summary>The answer with its facts, or <see langword="null"/> where the message holds none.</summary>
    public (HeardAnswer Answer, IReadOnlyList<Fact> Facts)? Read()
    {
        if (scene.Asked is not { } asked)
        {
            return null;
        }

        return asked.Kind switch
        {
            QuestionKind.Reading => Reading(asked) ?? Unknown(asked),
            QuestionKind.Quantity => Unknown(asked, onlyWithoutNumber: true) ?? Open(asked) ?? Quantity(asked),
            QuestionKind.Confirm or QuestionKind.Choice when Asks && asked.About != "goal" => null,
            QuestionKind.Confirm => Confirm(asked),
            QuestionKind.Choice => Choice(asked) ?? Unknown(asked),
            _ => Unknown(asked) ?? Text(asked),
        };
    }

    /// <summary>"Is the earth ok?": a question back answers nothing, also without its sign; what is wanted is often said as one.</summary>
    private bool Asks => (scene.IsWord(0, "is", "are", "was", "were", "should", "shall", "can", "could", "would", "may", "must", "does") && scene.IsWord(1, "it", "i", "we", "you", "he", "she", "they", "this", "that", "the", "there", "everything", "my"))
        || (scene.IsWord(scene.Tokens.Count - 1, "?")
        && scene.IsWord(0, "is", "are", "was", "does", "do", "did", "can", "could", "should", "shall", "will", "would", "may", "must", "what", "why", "how", "where", "which", "who", "when"));

    /// <summary>What says that it is ohms goes before a bare figure, which may be anything: "wires 3, 4.4 ohm".</summary>
    private (HeardAnswer, IReadOnlyList<Fact>)? Reading(OpenQuestion asked) => Reading(asked, needsUnit: true) ?? Reading(asked, needsUnit: false);

    private (HeardAnswer, IReadOnlyList<Fact>)? Reading(OpenQuestion asked, bool needsUnit)
    {
        for (var at = 0; at < scene.Tokens.Count; at++)
        {
            if (scene.Tokens[at].Used || readings.ValueAt(at, needsUnit) is not { } value || IsOneOfSeveral(value.First, value.Last))
            {
                continue;
            }

            var reading = new Fact.Reading
            {
                From = asked.Between is [var from, ..] ? from : string.Empty,
                To = asked.Between is [_, var to, ..] ? to : string.Empty,
                Ohms = value.Ohms,
                Open = value.Open,
                Short = value.Short,
                Kick = value.Kick,
                Span = scene.Span(value.First, value.Last),
            };
            scene.Use(value.First, value.Last);
            return (new HeardAnswer { QuestionId = asked.Id, Reading = reading }, asked.Between is [_, _] ? File(value.First, value.Last, reading) : []);
        }

        return null;
    }

    /// <summary>"OL" where a number of ohms was asked for.</summary>
    private (HeardAnswer, IReadOnlyList<Fact>)? Open(OpenQuestion asked)
    {
        if (!asked.CanBeOpen || quantities.Exists(Free) || Enumerable.Range(0, scene.Tokens.Count).Select(at => readings.ValueAt(at, false)).FirstOrDefault(value => value is { Open: true }) is not { } open)
        {
            return null;
        }

        var reading = new Fact.Reading { From = Fact.Reading.Frame, To = Fact.Reading.Earth, Open = true };
        var answer = new HeardAnswer { QuestionId = asked.Id, Reading = reading };
        return (answer, File(open.First, open.Last, new Fact.BenchTest { Test = asked.About ?? asked.Id, Outcome = Fact.BenchTest.NoPath }));
    }

    private (HeardAnswer, IReadOnlyList<Fact>)? Quantity(OpenQuestion asked)
    {
        var fitting = quantities.Find(q => Free(q) && (q.UnitId == asked.Unit || (q.Unit is null && !IsOneOfSeveral(q.First, q.Last)))) ?? Similar(asked);
        if (fitting is null)
        {
            InWords(asked);
            return null;
        }

        var value = fitting.Values[0] * Factor(fitting.UnitId, asked.Unit);
        var answer = new HeardAnswer { QuestionId = asked.Id, Value = value, Unit = asked.Unit ?? (fitting.UnitId.Length > 0 ? fitting.UnitId : null) };
        return (answer, File(fitting.First, fitting.Last, Of(asked, value, fitting)));
    }

    /// <summary>"It reads open": an outcome that was told in words counts where a number was asked for.</summary>
    private void InWords(OpenQuestion asked)
    {
        if (asked.About is { } test && forms.Option(asked.Id, scene, Telling, consents: false, refuses: false) is { } outcome)
        {
            scene.Add(0, scene.Tokens.Count - 1, new Fact.BenchTest { Test = test, Outcome = outcome });
        }
    }

    private Quantity? Similar(OpenQuestion asked) => quantities.Find(q => Free(q) && Factor(q.UnitId, asked.Unit) != 1 && !IsOtherTest(q, asked));

    /// <summary>"Megger 500 V gave 0.4 megohm": an insulation test answers no question for the ohms of something else, and no two probes held together show megohms.</summary>
    private bool IsOtherTest(Quantity q, OpenQuestion asked) => q.UnitId == "megohm" && asked.About != "insulation" && (asked.About == Fact.BenchTest.ProbeZero || scene.Hits.Exists(hit => hit.Concept is "instrument.insulation-tester" or "insulation-noun" or "megohm-word" && hit.Last < q.First && scene.Tokens[hit.First].Sentence == scene.Tokens[q.First].Sentence));

    /// <summary>"Swapped 3 and 5": a bare number beside another one is not what the meter shows.</summary>
    private bool IsOneOfSeveral(int first, int last) => first == last && scene.Tokens[first].Kind == TokenKind.Number
        && Enumerable.Range(0, scene.Tokens.Count).Any(at => at != first && scene.Tokens[at] is { Used: false, Kind: TokenKind.Number } && scene.Tokens[at].Clause == scene.Tokens[first].Clause);

    /// <summary>What a transformer gives is no answer to what the meter shows, nor is what is printed on a capacitor.</summary>
    private bool Free(Quantity q) => !scene.Tokens[q.First].Used && !IsPrinted(q) && !IsOfTransformer(q);

    /// <summary>"With 12 V from the transformer I measured 5.2 V": the nearer of the two words says whose volts they are.</summary>
    private bool IsOfTransformer(Quantity q) => scene.Hits.Where(hit => hit.Concept is Transformer or "measured" && scene.Tokens[hit.First].Sentence == scene.Tokens[q.First].Sentence)
        .MinBy(hit => Math.Max(hit.First - q.Last, q.First - hit.Last)) is { Concept: Transformer };

    private bool IsPrinted(Quantity q) => scene.Asked?.Unit == "microfarad"
        && (q.Values.Count > 1 || (scene.Hits.FindLast(hit => hit.Last < q.First && q.First - hit.Last <= 2 && hit.Concept is "marked" or "measured") ?? PrintedBehind(q)) is { Concept: "marked" });

    /// <summary>"30 uF printed on it", but not "28.1 marked 30".</summary>
    private Hit? PrintedBehind(Quantity q) =>
        scene.Hits.Find(hit => hit.First > q.Last && hit.First - q.Last <= 2 && hit.Concept == "marked" && !quantities.Exists(other => other.First > hit.Last));

    private static double Factor(string from, string? to) => (from, to) switch
    {
        ("megohm", "ohm") => 1e6,
        ("ohm", "megohm") => 1e-6,
        ("milliamp", "amp") => 1e-3,
        ("kilowatt", "watt") => 1e3,
        ("watt", "kilowatt") => 1e-3,
        _ => 1,
    };

    private static Fact Of(OpenQuestion asked, double value, Quantity q) => asked.About switch
    {
        "supply" => asked.Unit == "hertz" ? new Fact.Supply { Hertz = value } : new Fact.Supply { Volts = value },
        "insulation" when asked.Unit != "celsius" => new Fact.Insulation { Megohms = value },
        "capacitor" or "capacitance" => new Fact.Capacitor { MeasuredMicrofarads = value },
        "resistance" when asked.Between is [var from, var to] => new Fact.Reading { From = from, To = to, Ohms = value },
        "plate" => OfPlate(asked.Id, asked, q),
        "running" => asked.Unit switch { "amp" => new Fact.Running { Amps = value }, "rpm" => new Fact.Running { Rpm = value }, _ => new Fact.Running { Volts = value } },
        { } about when about.StartsWith(PlateField, StringComparison.Ordinal) => OfPlate(about, asked, q),
        "resistance" or "insulation" or null => new Fact.BenchTest { Test = asked.Id, Value = value, Unit = asked.Unit },
        { } test => new Fact.BenchTest { Test = test, Value = value, Unit = asked.Unit },
    };

    private static Fact.Plate OfPlate(string field, OpenQuestion asked, Quantity q) => new()
    {
        Field = field.StartsWith(PlateField, StringComparison.Ordinal) ? field[PlateField.Length..] : field,
        Value = PlateValue.Of([.. q.Values.Select(one => one * Factor(q.UnitId, asked.Unit))]),
        Unit = asked.Unit,
    };

    private (HeardAnswer, IReadOnlyList<Fact>)? Confirm(OpenQuestion asked)
    {
        var id = asked.About is null or "confirm" ? asked.Id : asked.About;
        var cannot = scene.Hits.Find(hit => hit.Concept is "answer-cannot" or "answer-unknown" || (hit.Concept == "answer-no" && !DeniesNoun(hit) && !Corrects(hit)));
        var done = scene.Hits.Find(Consents);
        var undone = scene.Hits.Find(hit => hit.Concept is "answer-yes" or "answer-done" or Agreed && hit.Denied);
        var inShort = forms.Done(asked.Id, scene);
        if (scene.Facts.Any(fact => fact.Fact is Fact.Confirm confirm && confirm.Id == id))
        {
            return null;
        }

        if (forms.LessThan(asked.Id, scene, inShort is not null, done is not null) is (var missing, var from, var to))
        {
            scene.Use(from, to);
            return (new HeardAnswer { QuestionId = asked.Id, Less = missing }, []);
        }

        if ((cannot ?? undone) is { } no)
        {
            scene.Use(no);
            return (new HeardAnswer { QuestionId = asked.Id, Confirmed = false }, File(no.First, no.Last, new Fact.Confirm { Id = id, Confirmed = false }));
        }

        if ((done is null ? inShort : (done.First, done.Last)) is not var (first, last))
        {
            return null;
        }

        scene.Hits.FindAll(Consents).ForEach(scene.Use); // "yes, done" says it twice
        forms.ClaimParts(asked.Id, scene);
        return (new HeardAnswer { QuestionId = asked.Id, Confirmed = true }, File(first, last, new Fact.Confirm { Id = id }));
    }

    /// <summary>"Yes" agrees wherever it stands; "ok", "it is" and "done" only by themselves: "it is five years old", "the capacitor looks ok" and "had its bearings done" agree to nothing.</summary>
    private bool Consents(Hit hit) => !hit.Denied && (hit.Concept == "answer-yes" || (hit.Concept is "answer-done" or Agreed && StandsAlone(hit)));

    /// <summary>"What do you think it is" and "I hope it is" agree to nothing.</summary>
    private bool StandsAlone(Hit hit) => Enumerable.Range(0, scene.Tokens.Count).Where(at => scene.Tokens[at].Clause == scene.Tokens[hit.First].Clause && scene.Tokens[at].Kind != TokenKind.Mark)
        .All(at => !scene.IsWord(at, Unsure) && (smallTalk.Contains(scene.Tokens[at].Text) || scene.Hits.Exists(other => other.Concept.StartsWith("answer-", StringComparison.Ordinal) && other.Places.Contains(at))));

    /// <summary>"No, red to blue was 5.1": a no before a reading or a joint takes back what was said of it, and leaves open what is to be confirmed.</summary>
    private bool Corrects(Hit no) => no.First == 0 && scene.Facts.Any(fact => fact.Fact is Fact.Reading or Fact.Joint);

    /// <summary>"No meter here", "no smell": a no that belongs to the noun behind it is no answer to what is to be confirmed.</summary>
    private bool DeniesNoun(Hit no) => scene.StartingAt(no.Last + 1).Any(hit => hit.Denied && !hit.Concept.StartsWith("answer-", StringComparison.Ordinal)) && !scene.IsWord(no.Last + 1, "i", "not", "it", "we", "way", "still", "yet");

    /// <summary>The option that the words name; else the one whose own words, those that no other option has, the message shares the most of.</summary>
    private (HeardAnswer, IReadOnlyList<Fact>)? Choice(OpenQuestion asked)
    {
        var text = scene.Text.Trim();
        var yes = scene.Hits.Exists(Consents);
        var no = scene.Hits.Exists(hit => hit.Concept is "answer-no");
        var chosen = asked.Options.FirstOrDefault(option => string.Equals(option.Id, text, StringComparison.OrdinalIgnoreCase) || string.Equals(option.Text, text, StringComparison.OrdinalIgnoreCase))
            ?? (forms.Option(asked.Id, scene, Telling, yes, no) is { } named ? asked.Options.FirstOrDefault(option => option.Id == named) : null)
            ?? Nearest(asked, yes, no);
        if (chosen is null || scene.Tokens.Count == 0)
        {
            return null;
        }

        foreach (var token in scene.Tokens.Where(token => token.Kind == TokenKind.Word))
        {
            token.Used = true;
        }

        if (!scene.HasFacts)
        {
            scene.Unsettled.Clear(); // "it is 230 volts" chose the option for 230 V, and asks no more whose volts they are
        }

        return (new HeardAnswer { QuestionId = asked.Id, Choice = chosen.Id }, File(0, scene.Tokens.Count - 1, new Fact.Choice { Question = asked.Id, Option = chosen.Id }));
    }

    /// <summary>How many words of the message say something; where it holds nothing but symptoms they tell the same thing as the answer.</summary>
    private int Telling => scene.Facts.All(fact => fact.Fact is Fact.Symptom) ? 0 : scene.Tokens.Count(token => token.Kind == TokenKind.Word && !smallTalk.Contains(token.Text));

    private OpenOption? Nearest(OpenQuestion asked, bool yes, bool no)
    {
        var words = asked.Options.ToDictionary(option => option.Id, option => Words(option.Text), StringComparer.Ordinal);
        var shared = words.Values.SelectMany(own => own).GroupBy(word => word, StringComparer.Ordinal).Where(same => same.Count() > 1).Select(same => same.Key).ToHashSet(StringComparer.Ordinal);
        var said = scene.Tokens.Where((token, at) => token.Kind != TokenKind.Mark && !token.Denied && !(scene.HasFacts && (token.Used || NamesFigure(at)))).Select(token => token.Stem).ToHashSet(StringComparer.Ordinal);
        var denied = scene.Tokens.Where(token => token.Denied).Select(token => token.Stem).ToHashSet(StringComparer.Ordinal);
        var scored = asked.Options.Select(option => (Option: option, Score: Math.Max(Score([.. words[option.Id].Except(shared, StringComparer.Ordinal)], said, denied), Agrees(option, yes, no) ? AsGoodAsNamed : 0)))
            .OrderByDescending(option => option.Score).ToList();
        return scored.Count > 0 && scored[0].Score >= (scene.HasFacts ? EnoughAmongFacts : Enough) && (scored.Count == 1 || scored[1].Score < scored[0].Score) ? scored[0].Option : null;
    }

    /// <summary>"Plate 460 V", "numbered 1 to 9": a word that a figure follows says what that is, and answers nothing.</summary>
    private bool NamesFigure(int at) => at + 1 < scene.Tokens.Count && scene.Tokens[at + 1].Kind == TokenKind.Number;

    private List<string> Words(string text) =>
        [.. Tokenizer.Cut(text).Where(token => token.Kind != TokenKind.Mark && (token.Text.Length > 2 || token.Kind != TokenKind.Word) && !smallTalk.Contains(token.Text)).Select(token => Stem.Of(token.Text)).Distinct(StringComparer.Ordinal)];

    /// <summary>How many of the option's own words were said; none where one of them was denied.</summary>
    private static double Score(List<string> own, HashSet<string> said, HashSet<string> denied) =>
        own.Count == 0 || own.Exists(denied.Contains) ? 0 : own.Count(said.Contains) / (double)own.Count;

    private static bool Agrees(OpenOption option, bool yes, bool no) =>
        (yes && !no && (option.Id == "yes" || option.Text.StartsWith("Yes", StringComparison.OrdinalIgnoreCase)))
        || (no && !yes && (option.Id is "no" or "none" || option.Text.StartsWith("No", StringComparison.Ordinal) && (option.Text.Length == 2 || !char.IsLetter(option.Text[2]))));

    private (HeardAnswer, IReadOnlyList<Fact>)? Unknown(OpenQuestion asked, bool onlyWithoutNumber = false)
    {
        var unknown = scene.Hits.Find(hit => hit.Concept is "answer-unknown" or "answer-cannot");
        if (unknown is null || (onlyWithoutNumber && quantities.Exists(Free)))
        {
            return null;
        }

        scene.Use(unknown);
        return (new HeardAnswer { QuestionId = asked.Id, Unknown = true }, File(unknown.First, unknown.Last, new Fact.Unknown { Question = asked.Id }));
    }

    private (HeardAnswer, IReadOnlyList<Fact>)? Text(OpenQuestion asked) =>
        scene.HasFacts || scene.Text.Trim().Length == 0 || scene.Hits.Exists(hit => hit.Concept is "undo" or "why" or "what-is" or "what-means")
            ? null
            : (new HeardAnswer { QuestionId = asked.Id, Text = scene.Text.Trim() }, []);

    private List<Fact> File(int first, int last, Fact fact)
    {
        var filed = fact with { Span = scene.Span(first, last) };
        scene.Add(first, last, filed);
        return [filed];
    }
}
