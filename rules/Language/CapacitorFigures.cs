using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Reads a capacitor: what is printed on it, and what a meter said of it.</summary>
internal sealed class CapacitorFigures(Scene scene, List<Quantity> open)
{
    private const int SaidJustBefore = 2;
    private const int NearVolts = 4;
    private const double WidestRange = 2;
    private const double LeastOfRange = 10;
    private const double MostOfShort = 2;
    private const double LeastVolts = 100;
    private static readonly string[] Told = ["measured", "marked"]; // "the meter says" is both

    /// <summary>"45+5 µF", "45/5 µF": two capacitors in one can; which of them the motor has is not told by it.</summary>
    public (int First, int Last)? OfTwo(Quantity q) => q is { IsRange: false, Values: [var more, var less] } && more > WidestRange * less ? (q.First, q.Last)
        : q.Values.Count == 1 && scene.IsWord(q.First - 1, "+") && scene[q.First - 2] is { Kind: TokenKind.Number } ? (q.First - 2, q.Last)
        : null;

    /// <summary>Files a can with two capacitors by its volts alone; answers those.</summary>
    public IReadOnlyList<Quantity> ReadTwo(Quantity q, int first, int last)
    {
        var volts = Volts(q);
        scene.Unsettled.Add(new Leftover(scene.Span(first, last)));
        scene.Use(first, last);
        scene.Add(first, last, new Fact.Capacitor { Volts = volts?.Values[0] });
        return Used(volts);
    }

    /// <summary>Files the capacitor of these microfarads; answers the other quantities that belong to it.</summary>
    public IReadOnlyList<Quantity> Read(Quantity q)
    {
        var upTo = UpTo(q);
        var elsewhere = MarkedElsewhere(q);
        var measured = elsewhere is null ? Follows(q, "measured") : null;
        var marked = elsewhere ?? (measured is null && !SpareCapacitor.IsOffered(scene, q.First) ? Follows(q, "marked") : null);
        var volts = (marked is null ? null : Volts(marked)) ?? Volts(q);
        var isMeasured = marked is not null || (measured is null && IsRead(q) && !scene.InSentence("marked", q.First));
        var mark = isMeasured ? marked : q;
        scene.Add(q.First, q.Last, new Fact.Capacitor
        {
            Microfarads = mark?.Values[0],
            MicrofaradsTo = WithVolts(mark) is not null ? null : mark?.Values.Count > 1 ? mark.Values[1] : ReferenceEquals(mark, q) ? upTo?.Values[0] : null,
            MeasuredMicrofarads = isMeasured ? q.Values[0] : measured?.Values[0],
            Volts = volts?.Values[0] ?? WithVolts(mark),
            Use = UseBeside(q) ?? UseBefore(q) ?? UseInSentenceBefore(q) ?? "unknown",
        });
        return Used(volts, measured, marked, upTo);
    }

    /// <summary>"35 µF measured, 40 µF 370 V printed on it": the word of measuring stands right behind this figure, and another one in the sentence is said to be printed.</summary>
    private Quantity? MarkedElsewhere(Quantity q) =>
        !scene.Hits.Exists(hit => hit.Concept == "measured" && hit.First == q.Last + 1 && scene.Tokens[hit.First].Clause == scene.Tokens[q.First].Clause) ? null
        : open.Find(other => other is { UnitId: "microfarad" } && other.First > q.Last && scene.Tokens[other.First].Sentence == scene.Tokens[q.First].Sentence
            && scene.Tokens[other.First].Clause != scene.Tokens[q.First].Clause && scene.InClause("marked", other.First));

    /// <summary>"40/370": what stands behind the stroke is far too much for a range and is the volts.</summary>
    private static double? WithVolts(Quantity? mark) => mark is { Values: [var microfarads, >= LeastVolts and var volts] } && volts > WidestRange * microfarads ? volts : null;

    /// <summary>"330 V across it and 4.2 A through it": a capacitor on an alternating supply; answers the two quantities.</summary>
    public IReadOnlyList<Quantity> ReadAcross()
    {
        var volts = open.Find(q => q.UnitId == "volt" && q.Values.Count == 1 && Behind(q, "across"));
        var amps = open.Find(q => q.UnitId == "amp" && q.Values.Count == 1 && Behind(q, "through"));
        if (volts is null || amps is null || scene.Tokens[volts.First].Sentence != scene.Tokens[amps.First].Sentence)
        {
            return [];
        }

        var named = scene.Hits.Find(hit => hit.Concept == "capacitor");
        if (named is null && scene.Asked?.Unit != "microfarad" && !scene.Facts.Any(fact => fact.Fact is Fact.Capacitor))
        {
            return LeaveAcross(volts, amps);
        }

        scene.Add(Math.Min(volts.First, amps.First), Math.Max(volts.Last, amps.Last), new Fact.Capacitor { AcrossVolts = volts.Values[0], ThroughAmps = amps.Values[0] });
        if (named is not null)
        {
            scene.Use(named);
        }

        return [volts, amps];
    }

    /// <summary>"330 V across it and 0.82 A through it", of nothing that is named: no plate says such a thing, and of what it was measured is not guessed.</summary>
    private List<Quantity> LeaveAcross(Quantity volts, Quantity amps)
    {
        if (!scene.Hits.Exists(hit => hit.Concept == "pronoun" && hit.First > volts.Last && hit.First - volts.Last <= SaidJustBefore + 1))
        {
            return [];
        }

        var (first, last) = (Math.Min(volts.First, amps.First), Math.Max(volts.Last, amps.Last));
        scene.Unsettled.Add(new Leftover(scene.Span(first, last)));
        scene.Use(first, last);
        return [volts, amps];
    }

    private bool Behind(Quantity q, string word) => scene.IsWord(q.Last + 1, word) || (scene.IsWord(q.Last + 2, word) && scene.Tokens[q.Last + 2].Clause == scene.Tokens[q.First].Clause);

    /// <summary>Whether a word of measuring is of this figure and not of another one behind it: "25 µF reads 0.4 ohm".</summary>
    private bool IsRead(Quantity q) => scene.Hits.Exists(hit => hit.Concept == "measured" && scene.Tokens[hit.First].Sentence == scene.Tokens[q.First].Sentence
        && (hit.Last < q.First || scene[hit.Last + 1] is not { Kind: TokenKind.Number }));

    private Quantity? Volts(Quantity q) =>
        open.Find(v => v.UnitId == "volt" && ((v.First > q.Last && v.First - q.Last <= NearVolts) || (v.First > q.Last && scene.Tokens[v.First].Clause == scene.Tokens[q.First].Clause)
            || (v.Last < q.First && q.First - v.Last <= 2)) && v.Values.Count == 1)
        ?? open.Find(v => v.Unit is null && v.First > q.Last && v.First - q.Last <= 2 && v.Values.Count == 1 && v.Values[0] >= LeastVolts);

    /// <summary>"7.5 µF, measures 4.1", "8 µF, 4.1 measured": a number after it in its sentence, with the word that tells right beside it; or a bare one before it, as in "reads 24.8 and it is a 25 µF".</summary>
    private Quantity? Follows(Quantity q, string concept) => open.Find(other =>
        other.First > q.Last && other.UnitId is "" or "microfarad" && other.Values.Count <= 2 && scene.Tokens[other.First].Sentence == scene.Tokens[q.First].Sentence
        && scene.Hits.Exists(hit => hit.Concept == concept && hit.First > q.Last && ((hit.Last < other.First && other.First - hit.Last <= SaidJustBefore) || (concept == "measured" && hit.First == other.Last + 1))))
        ?? (concept == "measured" ? open.Find(other => other is { Unit: null, Values.Count: 1 } && other.Last < q.First && scene.Tokens[other.First].Sentence == scene.Tokens[q.First].Sentence && SaidOf(other) == "measured") : null);

    /// <summary>What it is for by the word right behind it or else the nearest in its clause; words before it go first: "start cap 189 µF and run cap 30 µF", "a 30 µF 370 V run cap and a 189 µF start cap".</summary>
    private string? UseBeside(Quantity q)
    {
        var clause = scene.Tokens[q.First].Clause;
        var told = scene.Hits.Where(hit => hit.Concept is "start-use" or "run-use" && scene.Tokens[hit.First].Clause == clause).ToList();
        var behind = open.Find(other => other.First == q.Last + 1)?.Last ?? q.Last;
        var nearest = told.Find(hit => hit.First == behind + 1) ?? told.FindLast(hit => hit.First < q.First) ?? told.Find(hit => hit.First > q.Last);
        return UseOf(nearest);
    }

    /// <summary>"The run cap, 7.5 µF": what it is for stands right before the comma.</summary>
    private string? UseBefore(Quantity q)
    {
        var before = scene.Hits.FindLast(hit => hit.Concept is "start-use" or "run-use" && hit.Places.Length > 1 && hit.Last < q.First && q.First - hit.Last <= SaidJustBefore);
        return UseOf(before);
    }

    /// <summary>"The start cap has burst. Says 80-100 µF on it": the sentence before names the one that is meant.</summary>
    private string? UseInSentenceBefore(Quantity q)
    {
        var sentence = scene.Tokens[q.First].Sentence;
        var named = scene.Hits.FindAll(hit => hit.Concept is "start-use" or "run-use" && hit.Places.Length > 1 && hit.Last < q.First && sentence - scene.Tokens[hit.First].Sentence is 1 or 2);
        return named.DistinctBy(hit => hit.Concept).Count() == 1 && !scene.InSentence("capacitor", q.First) ? UseOf(named[0]) : null;
    }

    private static string? UseOf(Hit? hit) => hit?.Concept switch { "start-use" => "start", "run-use" => "run", _ => null };

    /// <summary>"Start cap 161-193 reads 40", "it reads 8, marked 45": figures without a unit, where a capacitor is what is spoken of.</summary>
    public bool ReadBare(Quantity q, HashSet<Quantity> used)
    {
        var upTo = UpTo(q);
        var isRange = upTo is not null || (q is { IsRange: true, Values: [var low, var high] } && IsRange(low, high));
        var isMarked = q.Values.Count == 1 && SaidOf(q) == "marked";
        if (!(isRange || isMarked) || !IsSpokenOf(q))
        {
            return false;
        }

        var measured = open.Find(other => !ReferenceEquals(other, q) && other.Unit is null && other.Values.Count == 1 && scene.Tokens[other.First].Sentence == scene.Tokens[q.First].Sentence && SaidOf(other) == "measured");
        if (isMarked && measured is null)
        {
            return false;
        }

        var volts = open.Find(other => other.Values is [>= LeastVolts] && other.UnitId is "" or "volt" && other.First > q.Last && other.First - q.Last <= SaidJustBefore && !ReferenceEquals(other, measured) && !ReferenceEquals(other, upTo));
        scene.Add(q.First, q.Last, new Fact.Capacitor
        {
            Microfarads = q.Values[0],
            MicrofaradsTo = isRange ? upTo?.Values[0] ?? q.Values[1] : null,
            MeasuredMicrofarads = measured?.Values[0],
            Volts = volts?.Values[0],
            Use = UseBeside(q) ?? UseInSentenceBefore(q) ?? "unknown",
        });
        used.UnionWith(Used(measured, volts, upTo));
        return true;
    }

    /// <summary>"270 to 324": the upper end of the range that begins with a figure.</summary>
    private Quantity? UpTo(Quantity q) => q.Values.Count != 1 ? null
        : open.Find(other => other is { UnitId: "" or "microfarad", Values.Count: 1 } && other.First == q.Last + 2 && scene.IsWord(q.Last + 1, "to") && IsRange(q.Values[0], other.Values[0]));

    /// <summary>"161-193", "270 to 324": two figures that a start capacitor is marked with.</summary>
    private static bool IsRange(double low, double high) => low >= LeastOfRange && low < high && high <= WidestRange * low;

    /// <summary>"The cap reads 0.4 ohm and stays there".</summary>
    public bool ReadShorted(Quantity q)
    {
        var shorted = q.Values is [<= MostOfShort] && scene.InSentence("capacitor", q.First) && scene.InClause("measured", q.First) && !scene.InClause("winding-word", q.First);
        if (shorted)
        {
            scene.Add(q.First, q.Last, new Fact.BenchTest { Test = "capacitance", Outcome = "shorted" });
        }

        return shorted;
    }

    /// <summary>"New cap 20 µF, the old one was 7.5": what is fitted is not what was there.</summary>
    public bool ReadOld(Quantity q)
    {
        var fitted = scene.Facts.Select(fact => fact.Fact).OfType<Fact.Capacitor>().LastOrDefault(capacitor => capacitor.Microfarads is not null);
        if (fitted is null || q.Values.Count != 1 || q.UnitId is not ("" or "microfarad") || !scene.Before(q.First, SaidJustBefore, "old-was") || !scene.Hits.Exists(hit => hit.Concept == "new-capacitor"))
        {
            return false;
        }

        if (q.Values[0] < fitted.Microfarads || q.Values[0] > (fitted.MicrofaradsTo ?? fitted.Microfarads))
        {
            scene.Add(q.First, q.Last, new Fact.BenchTest { Test = "capacitor-look", Outcome = "wrong-marks" });
        }

        return true;
    }

    /// <summary>"15 µF in place of 5", "it says 25 µF, can I use 40", "I only have a 30 µF, the plate says 25": the bare figure is a capacitor too.</summary>
    public bool ReadInPlace(Quantity q, List<Quantity> all)
    {
        var others = all.FindAll(other => other.UnitId == "microfarad" && scene.Tokens[other.First].Sentence == scene.Tokens[q.First].Sentence);
        var replaced = q.Values.Count == 1 && others.Count > 0
            && (scene.Before(q.First, 1, "in-place-of") || (SpareCapacitor.IsOffered(scene, q.First) && !scene.IsWord(q.Last + 1, "of"))
                || (scene.Before(q.First, 1, "marked") && others.Exists(other => other.Last < q.First && SpareCapacitor.IsOffered(scene, other.First))));
        if (replaced)
        {
            scene.Add(q.First, q.Last, new Fact.Capacitor { Microfarads = q.Values[0] });
        }

        return replaced;
    }

    private List<Quantity> Used(params ReadOnlySpan<Quantity?> others)
    {
        var used = new List<Quantity>();
        foreach (var other in others)
        {
            if (other is not null)
            {
                scene.Use(other.First, other.Last);
                used.Add(other);
            }
        }

        return used;
    }

    private string? SaidOf(Quantity q) => Array.Find(Told, concept => scene.Before(q.First, SaidJustBefore, concept));

    /// <summary>Whether a capacitor stands in its sentence, or in one of the two before it.</summary>
    private bool IsSpokenOf(Quantity q) => scene.Asked?.Unit == "microfarad" || scene.Hits.Exists(hit => (hit.Concept is "capacitor" or "cap-state" or "cap-there" || (hit.Concept is "start-use" or "run-use" && hit.Places.Length > 1))
        && hit.First < q.Last && scene.Tokens[q.First].Sentence - scene.Tokens[hit.First].Sentence <= 2);
}
