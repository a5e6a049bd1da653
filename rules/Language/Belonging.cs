namespace WireCoach.Rules.Language;

/// <summary>Decides whether volts, hertz and phases belong to the plate or to the supply: by the nearest word that tells, and by what stands beside them.</summary>
internal sealed class Belonging
{
    private const int FarthestCue = 40;
    private const int ReachBehind = 3;
    private const int NearFeed = 4;
    private const int NearDevice = 2;
    private static readonly string[] Joining = ["and", "but"];
    private static readonly string[] Owners = ["the", "my", "our", "its"];
    private readonly Scene _scene;
    private readonly HashSet<int> _companionSentences = [];
    private readonly HashSet<int> _companionClauses = [];
    private readonly List<int> _companions = [];
    private readonly List<Quantity> _volts;
    private readonly HashSet<int> _atMotor;
    private readonly Dictionary<int, int> _electric = [];

    public Belonging(Scene scene, List<Quantity> quantities)
    {
        _scene = scene;
        _atMotor = scene.Places("at-the-motor");
        _volts = quantities.FindAll(quantity => quantity.UnitId == "volt" || (quantity.Unit is null && scene.IsNominalVolts(quantity)));
        foreach (var quantity in quantities)
        {
            var token = scene.Tokens[quantity.First];
            if (quantity.UnitId is "horsepower" or "kilowatt" or "watt" or "rpm" || quantity.Kind is "service-factor" or "sfa" || (quantity.Kind is "amp" && !scene.Near(quantity, NearDevice, "protection")))
            {
                _companionSentences.Add(token.Sentence);
                _companionClauses.Add(token.Clause);
                _companions.Add(quantity.First);
            }

            if (quantity.UnitId is "volt" or "hertz" || quantity.Kind == "phases" || (quantity.Unit is null && scene.IsNominalVolts(quantity)))
            {
                _electric[token.Sentence] = _electric.GetValueOrDefault(token.Sentence) + 1;
            }
        }
    }

    /// <summary>Whether power, amps or speed stand in the same sentence: plates are read out in one breath.</summary>
    public bool HasCompanion(Quantity q) => _companionSentences.Contains(_scene.Tokens[q.First].Sentence);

    /// <summary>Whether volts are plainly those of the supply.</summary>
    public bool IsSupply(Quantity q) => q.UnitId == "volt" && (Cue(q) == "supply-cue" || Behind(q) == "supply" || FeedsConverter(q));

    /// <summary>Whether the noun behind it says that it is the motor's own: "230 V motor".</summary>
    public bool IsPlate(Quantity q) => Behind(q) == "plate";

    /// <summary><c>plate</c>, <c>supply</c>, or <see langword="null"/> where nothing tells.</summary>
    /// <param name="q">Volts, hertz or phases.</param>
    /// <param name="suppliesVolts">Whether volts of the supply were said already.</param>
    public string? Of(Quantity q, bool suppliesVolts)
    {
        if (IsRuledOut(q))
        {
            return null;
        }

        if (FeedsConverter(q) || _scene.IsOfferedSupply(q) || (_scene.IsWord(q.First - 1, "to") && _scene.InSentence("voltage-change", q.First)))
        {
            return "supply";
        }

        if (Behind(q) is { } behind)
        {
            return behind;
        }

        if (IsAtHand(q))
        {
            return "supply";
        }

        if (q.Kind == "phases" && _volts.Find(volts => volts.Last == q.First - 1 || volts.First == q.Last + 1) is { } beside)
        {
            return Of(beside, suppliesVolts); // "on 230 single phase", "single phase 230 here"
        }

        var cue = Cue(q);
        if (cue == "supply-cue" || _scene.IsWished(q))
        {
            return "supply";
        }

        if (cue == "plate-cue" || HasCompanion(q))
        {
            return cue == "supply-weak" && q.Values.Count == 1 && (!_companionClauses.Contains(_scene.Tokens[q.First].Clause) || IsSetApart(q)) ? "supply" : "plate";
        }

        return cue == "supply-weak" ? "supply" : Lonely(q, suppliesVolts);
    }

    /// <summary>"On a converter, 230 V single-phase in": what goes in is no figure of a plate.</summary>
    public bool FeedsConverter(Quantity q) => q.Values.Count == 1 && _scene.InSentence("converter", q.First) && _scene.Near(q, NearFeed, "converter-feed");

    /// <summary>"A 4 kW motor and my shop only has 230": what it has stands behind power, amps and speed, and none of them follows.</summary>
    private bool IsSetApart(Quantity q)
    {
        var weak = _scene.Hits.FindLast(hit => hit.Concept == "supply-weak" && hit.Last < q.First && _scene.Tokens[hit.First].Sentence == _scene.Tokens[q.First].Sentence);
        return weak is not null && !_companions.Exists(at => at > weak.First && _scene.Tokens[at].Clause == _scene.Tokens[q.First].Clause);
    }

    /// <summary>"230 instead of 115": the second is not what there is or will be; "do I need 230" only asks.</summary>
    private bool IsRuledOut(Quantity q)
    {
        if (_scene.IsAskedAbout(q) || (_scene.IsWord(q.First - 1, "on") && _scene.Hits.Exists(hit => hit.Concept == "worked-fine" && hit.First > q.Last && _scene.Tokens[hit.First].Clause == _scene.Tokens[q.First].Clause)))
        {
            return true; // "on 120 it ran fine" tells what it had
        }

        for (var at = Math.Max(0, q.First - ReachBehind); at < q.First; at++)
        {
            if (_scene.At(at, "instead") is { } hit && hit.Last == q.First - 1)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>"Change it from 115 to 230": what it has now and is to leave.</summary>
    public bool IsLeftBehind(Quantity q) => _scene.IsWord(q.First - 1, "from") && _scene.InSentence("voltage-change", q.First);

    private string? Lonely(Quantity q, bool suppliesVolts)
    {
        var about = _scene.Asked is { Kind: QuestionKind.Text or QuestionKind.Quantity } open ? open.About : null; // a choice about the plate asks for no figures
        if (about == "plate" || (about?.StartsWith("plate.", StringComparison.Ordinal) ?? false) || (q.UnitId == "volt" && q.Values.Count > 1))
        {
            return "plate";
        }

        if (_scene.Asked?.About == "supply" || suppliesVolts || _scene.InSentence("supply-any", q.First))
        {
            return "supply";
        }

        if (_scene.InSentence("plate-cue", q.First))
        {
            return "plate";
        }

        var own = q.UnitId is "volt" or "hertz" || q.Kind == "phases" || _scene.IsNominalVolts(q) ? 1 : 0;
        return _electric.GetValueOrDefault(_scene.Tokens[q.First].Sentence) > own ? "supply" : q.Kind == "phases" ? "plate" : null;
    }

    /// <summary>"240 volt supply", "230 V motor", "400 V three-phase motor".</summary>
    private string? Behind(Quantity q)
    {
        if (_scene.StartingAt(q.First).Any(hit => hit.Last > q.Last && IsKindOfMotor(hit)))
        {
            return "plate";
        }

        for (var at = q.Last + 1; at <= q.Last + ReachBehind && _scene[at] is { } token && token.Clause == _scene.Tokens[q.First].Clause; at++)
        {
            if ((token.Kind == TokenKind.Number && !(_scene[at + 1] is { Kind: TokenKind.Word })) || (_scene.IsWord(at, Joining) && _scene.IsWord(at + 1, Owners)))
            {
                return null; // "the motor is 230 V and the panel is 208"
            }

            if (_scene.StartingAt(at).Any(IsKindOfMotor))
            {
                return "plate";
            }

            foreach (var hit in _scene.StartingAt(at))
            {
                if (hit.Concept == "supply-noun" || hit.Concept.StartsWith("supply.", StringComparison.Ordinal))
                {
                    return "supply";
                }

                if (hit.Concept == "at-the-motor")
                {
                    return null; // it was measured there
                }

                if (hit.Concept == "plate-noun")
                {
                    return "plate";
                }
            }
        }

        return null;
    }

    /// <summary>"Only single phase here", "230 at home": what there is where the person is, unless the clause speaks of a plate.</summary>
    private bool IsAtHand(Quantity q) =>
        _scene.StartingAt(q.Last + 1).Any(hit => hit.Concept == "at-hand")
        && !Enumerable.Range(0, q.First).Any(at => _scene.Tokens[at].Clause == _scene.Tokens[q.First].Clause && _scene.StartingAt(at).Any(hit => hit.Concept is "plate-cue" or "plate-noun"));

    /// <summary>The nearest telling words before it, in its sentence; those of the supply only in its clause.</summary>
    private string? Cue(Quantity q)
    {
        var mine = _scene.Tokens[q.First];
        string? noun = null;
        for (var at = q.First - 1; at >= 0 && at > q.First - FarthestCue && _scene.Tokens[at].Sentence == mine.Sentence; at--)
        {
            foreach (var hit in _scene.StartingAt(at))
            {
                var tells = Tells(hit, q, _scene.Tokens[at].Clause == mine.Clause);
                if (tells is "supply-cue" || (tells is not null && noun is null && hit.Concept != "plate-noun"))
                {
                    return noun is not null && tells != "supply-cue" ? noun : tells;
                }

                noun ??= tells;
            }
        }

        return noun;
    }

    /// <summary>"Three-phase motor": a kind of supply in the name of a motor tells of the motor.</summary>
    private bool IsKindOfMotor(Hit hit) => hit.Concept.StartsWith("family.", StringComparison.Ordinal) && _scene.IsWord(hit.Last, "motor", "motors");

    private string? Tells(Hit hit, Quantity q, bool sameClause) => hit.Concept switch
    {
        _ when hit.Last >= q.First => null,
        _ when IsKindOfMotor(hit) => "plate-cue",
        "supply-cue" or "supply-noun" when sameClause => "supply-cue",
        "supply-weak" when sameClause => "supply-weak",
        "supply-next" when hit.Last == q.First - 1 => "supply-cue",
        "plate-noun" when _atMotor.Contains(hit.First) => null, // it was measured there
        "plate-cue" or "plate-noun" => "plate-cue",
        _ when sameClause && hit.Concept.StartsWith("supply.", StringComparison.Ordinal) => "supply-cue",
        _ => null,
    };
}
