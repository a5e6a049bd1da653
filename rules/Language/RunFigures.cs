using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Reads what was measured on a motor under power: volts, amps and speed of one that runs, the amps of three lines.</summary>
internal sealed class RunFigures(Scene scene, List<Quantity> quantities, Belonging belonging)
{
    /// <summary>The least that line volts are.</summary>
    public const double LeastLineVolts = 80;

    private const string LineCurrents = "line-currents";
    private const string Amp = "amp";
    private const string OfLine = "run-current.";
    private const int Beside = 5;
    private const int JustBefore = 3;
    private const int OfThreeLines = 3;
    private const int Apart = 7;
    private const double MostTimes = 8;
    private const double LeastSpeed = 300;
    private const double MostSpeed = 6000;
    private const double Together = 1.15;
    private const double MostBareAmps = 200;
    private const double MostLineVolts = 700;
    private static readonly string[] Conductors = ["conductor.l1", "conductor.l2", "conductor.l3"];
    private static readonly string[] Either = ["or"];
    private static readonly string[] Doings = ["hum", "growl", "only-hum", "stall", "trip", "slow", "hot", "smoke"];
    private readonly List<Quantity> _drawn = [];

    /// <summary>Files them; answers the quantities that were used.</summary>
    public IReadOnlySet<Quantity> Read(List<Quantity> open)
    {
        var taken = new HashSet<Quantity>(open.FindAll(IsMultiple), ReferenceEqualityComparer.Instance);
        open = open.FindAll(q => !taken.Contains(q) && !IsUnsettled(q));
        taken.UnionWith(File(OnEachLine(open), LineCurrents));
        foreach (var sentence in open.Where(q => !taken.Contains(q)).GroupBy(q => scene.Tokens[q.First].Sentence).ToList())
        {
            List<Quantity> here = [.. sentence];
            taken.UnionWith(AgainstPlate(here));
            here.RemoveAll(taken.Contains);
            if (here.Count == 0)
            {
                continue;
            }

            taken.UnionWith(VoltsAtPlaces.Read(scene, here, Starting));
            here.RemoveAll(taken.Contains);
            taken.UnionWith(DueVolts.Read(scene, here, Starting));
            taken.UnionWith(File(PairVolts.Of(scene, here.FindAll(q => !taken.Contains(q))), "supply-voltage"));
            here.RemoveAll(taken.Contains);
            taken.UnionWith(Lines(here));
            taken.UnionWith(LineVolts(here.FindAll(q => !taken.Contains(q))));
            taken.UnionWith(here.FindAll(q => !taken.Contains(q) && Starting(q)));
            taken.UnionWith(Running(here.FindAll(q => !taken.Contains(q))));
            taken.UnionWith(VoltsAtPlaces.Left(scene, here.FindAll(q => !taken.Contains(q))));
        }

        return taken;
    }

    /// <summary>"Pulls 3x current", "2 times the nameplate": so many times something, and no figure of its own.</summary>
    private bool IsMultiple(Quantity q) => q.Unit is null && scene.IsWord(q.Last + 1, "x", "times", "fold") && scene[q.Last + 2] is { Kind: TokenKind.Word };

    /// <summary>"Supply is 120 or 240": which of them it is nobody has measured yet.</summary>
    public bool IsUnsettled(Quantity q) => quantities.Exists(other => (scene.AreJoined(q, other, Either) || scene.AreJoined(other, q, Either)) && scene.IsNominalVolts(q) && scene.IsNominalVolts(other));

    /// <summary>"Draws 9.5 amps where the plate says 7": the bare number behind the plate's word is amps too.</summary>
    public bool IsPlateAmps(Quantity q) => q.Values.Count == 1
        && _drawn.Exists(drawn => drawn.Last < q.First && scene.Tokens[drawn.First].Sentence == scene.Tokens[q.First].Sentence)
        && scene.Hits.Exists(hit => hit.Concept == "plate-cue" && (hit.First > q.Last ? IsOn(q, hit) : hit.Last < q.First && (hit.Places.Length > 1 ? q.First - hit.Last <= JustBefore : IsRightBehind(q, hit))));

    /// <summary>"With 11.3 on the plate".</summary>
    private bool IsOn(Quantity q, Hit plate) => plate.First - q.Last - 1 <= JustBefore && Enumerable.Range(q.Last + 1, plate.First - q.Last - 1).All(at => scene.IsWord(at, "on", "the", "its", "is"));

    /// <summary>"1440 on the plate, and 1490 with the belt off": one plate has one speed.</summary>
    public bool HasSpeed(Quantity q) => !scene.InSentence("old-past", q.First) && scene.Facts.Any(fact => fact.Fact is Fact.Plate { Field: "rpm" } && scene.Tokens[fact.At].Sentence == scene.Tokens[q.First].Sentence);

    /// <summary>"2 hp, just hums, 30 amps": behind what it does and with nothing of a plate beside them amps may be drawn as well as marked.</summary>
    public bool MayBeDrawn(Quantity q)
    {
        var sentence = scene.Tokens[q.First].Sentence;
        var does = scene.Hits.FindLast(hit => Doings.Contains(hit.Concept) && hit.Last < q.First && scene.Tokens[hit.First].Sentence == sentence);
        return does is not null && q.Values.Count == 1 && !scene.InSentence("plate-cue", q.First)
            && (scene.IsWord(q.First - 1, "at") || !quantities.Exists(other => other.First > does.Last && !ReferenceEquals(other, q) && scene.Tokens[other.First].Sentence == sentence));
    }

    private bool IsRightBehind(Quantity q, Hit hit) =>
        q.First - hit.Last - 1 <= JustBefore && Enumerable.Range(hit.Last + 1, q.First - hit.Last - 1).All(at => scene.At(at, "reads") is not null || scene.At(at, "only") is not null || scene.IsWord(at, "at", "of", "a", "is"));

    /// <summary>"6.8 A against 4.1 plate", "1390 rpm, plate 1460", "plate says 1725, it is doing 1140": what was measured and what the plate says, side by side.</summary>
    private List<Quantity> AgainstPlate(List<Quantity> sentence)
    {
        List<Quantity> ordered = LineAmps(sentence).Count > 0 ? [] : [.. sentence.OrderBy(q => q.First)];
        var used = new List<Quantity>();
        for (var at = 0; at + 1 < ordered.Count; at++)
        {
            var (one, other) = (ordered[at], ordered[at + 1]);
            if (one.Values.Count != 1 || other.Values.Count != 1 || other.First - one.Last > Apart || IsOfOther(one) || scene.Near(one, JustBefore, "protection") || Compared(one, other) is not { } unit || WhichIsRead(one, other) is not { } read)
            {
                continue;
            }

            var plate = ReferenceEquals(read, one) ? other : one;
            scene.Add(read.First, read.Last, new Fact.Running { Amps = unit == Amp ? read.Values[0] : null, Rpm = unit == Amp ? null : read.Values[0] });
            scene.Add(plate.First, plate.Last, new Fact.Plate { Field = unit == Amp ? "amps" : "rpm", Value = PlateValue.Of(plate.Values), Unit = unit });
            used.AddRange([read, plate]);
            at++;
        }

        return used;
    }

    /// <summary>The unit of two figures that are compared: one of them has it, or the words around two bare ones tell it.</summary>
    private string? Compared(Quantity one, Quantity other) => (one.UnitId, other.UnitId) switch
    {
        (Amp or "rpm", _) when other.UnitId == one.UnitId || (other.Unit is null && IsLike(one, other)) => one.UnitId,
        ("", Amp) when IsLike(one, other) => other.UnitId,
        ("", "rpm") when scene.InSentence("turns-at", one.First) => other.UnitId,
        ("", "") when IsOfSpeed(one) && IsOfSpeed(other) => scene.InSentence("turns-at", one.First) || Math.Min(one.Values[0], other.Values[0]) > MostLineVolts ? "rpm" : null,
        ("", "") when one.Values[0] < LeastLineVolts && other.Values[0] < LeastLineVolts => scene.InSentence("amps-word", one.First) ? Amp : null,
        _ => null,
    };

    /// <summary>"15 amps at 230": a figure many times the other is of something else.</summary>
    private bool IsLike(Quantity one, Quantity other) => Math.Max(one.Values[0], other.Values[0]) <= MostTimes * Math.Min(one.Values[0], other.Values[0]) && !scene.IsWord(other.First - 1, "at", "@");

    private static bool IsOfSpeed(Quantity q) => q.Values[0] is >= LeastSpeed and <= MostSpeed;

    /// <summary>Which of two compared figures was measured: a word of the plate belongs to the other.</summary>
    private Quantity? WhichIsRead(Quantity one, Quantity other)
    {
        var cue = Enumerable.Range(one.Last + 1, other.First - one.Last - 1).Where(IsCue).Select(at => (int?)at).FirstOrDefault();
        var told = scene.Hits.Exists(hit => hit.Concept is "turns-at" or "draws" or "measured" && hit.First > Math.Max(one.Last, cue ?? 0) && hit.Last < other.First);
        return told && (Stated(one) || cue == one.Last + 1) ? other
            : !Stated(one) && (cue is not null || IsCue(other.Last + 1) || IsNamed(other) || (Told(one) == "turns-at" && belonging.IsPlate(other))) ? one
            : null;
    }

    private bool IsCue(int at) => scene.StartingAt(at).Any(hit => hit.Concept == "plate-cue");

    /// <summary>Three lines read one after the other; a single one compares with nothing.</summary>
    private List<Quantity> Lines(List<Quantity> sentence)
    {
        if (LineAmps(sentence) is { Count: > 0 } row)
        {
            return File(row, LineCurrents);
        }

        if (sentence.Exists(q => scene.IsWord(q.First - 1, "between")))
        {
            return []; // "swings between 30 and 50 amps": the ends of a span
        }

        var said = scene.Asked?.About == LineCurrents || sentence.Exists(q => scene.InSentence(LineCurrents, q.First)) || sentence.Exists(Lined);
        List<Quantity> amps = said ? sentence.FindAll(q => q.UnitId == "amp" && !scene.Near(q, Beside, "protection") && !Stated(q)) : [];
        if (said && (amps.Count > 0 || scene.Hits.Exists(hit => hit.Concept == "amps-word" && scene.Tokens[hit.First].Sentence == scene.Tokens[sentence[0].First].Sentence) || scene.Asked?.About == LineCurrents))
        {
            amps.AddRange(sentence.FindAll(q => q.Unit is null && !scene.IsNominalVolts(q) && !Stated(q) && !IsCount(q)));
        }

        return amps.Sum(q => q.Values.Count) < 2 ? [] : File(amps, LineCurrents);
    }

    /// <summary>"1 leg 0 amps, the other 2 way over": how many, and no amps.</summary>
    private bool IsCount(Quantity q) => scene.IsWord(q.Last + 1, "leg", "legs", "line", "lines", "phase", "phases", "wire", "wires") || scene.IsWord(q.First - 1, "other");

    /// <summary>Three amps in a row; without their unit where the words around them speak of amps.</summary>
    private List<Quantity> LineAmps(List<Quantity> sentence)
    {
        if (Row(sentence, Amp) is { Count: > 0 } row)
        {
            return row;
        }

        var bare = Row(sentence, string.Empty, MostBareAmps);
        var spoken = bare.Count > 0 && (scene.Before(bare[0].First, JustBefore, "amps-word")
            || (OfLines && scene.Hits.Exists(hit => hit.Concept is "amps-word" or "instrument.clamp-meter" || (hit.Concept == "draws" && scene.At(hit.First, "measured") is null))));
        return spoken ? bare : [];
    }

    /// <summary>Whether the message speaks of three lines, or of a motor that has them.</summary>
    private bool OfLines => quantities.Exists(q => q is { Kind: "phases", Values: [OfThreeLines] })
        || scene.Hits.Exists(hit => hit.Concept is LineCurrents or "family.three-phase" or "links-star" or "links-delta" || Conductors.Contains(hit.Concept));

    /// <summary>"L1 12.4 A L2 12.1 A L3 15.9", "11.2 on L1, 11.4 on L2 and 7.9 on L3", also in several sentences: the figure beside each of the three lines, too small for volts; other amps are the plate's.</summary>
    private List<Quantity> OnEachLine(List<Quantity> open)
    {
        List<Hit> lines = [.. Conductors.Select(line => scene.Hits.Find(hit => hit.Concept == line)).OfType<Hit>()];
        List<Quantity> small = open.FindAll(q => q.Values is [< LeastLineVolts] && (q.Unit is null || q.UnitId == "amp"));
        if (lines.Count != OfThreeLines)
        {
            return [];
        }

        var behind = lines.ConvertAll(line => small.Find(q => q.First > line.Last && q.First - line.Last <= JustBefore));
        var before = lines.ConvertAll(line => small.FindLast(q => q.Last < line.First && line.First - q.Last <= JustBefore));
        var each = (behind.Contains(null) ? before : behind).OfType<Quantity>().Distinct().ToList();
        var told = open.Exists(q => q.UnitId == "amp") || open.TrueForAll(each.Contains) || lines.Exists(line => scene.InSentence("draws", line.First) || scene.InSentence("measured", line.First) || scene.InSentence("amps-word", line.First));
        if (each.Count != OfThreeLines || !told)
        {
            return [];
        }

        lines.ForEach(scene.Use);
        return each;
    }

    /// <summary>"8.1 8.3 10.9 amps", "amps 7.9 8 7.9", "12/12.3/17.9 A": three figures in a row, one of them with the unit; without a unit they are of the size of line volts, or up to a limit.</summary>
    private List<Quantity> Row(List<Quantity> sentence, string unit, double? most = null)
    {
        List<Quantity> ordered = [.. sentence.OrderBy(q => q.First)];
        for (var at = 0; at < ordered.Count; at++)
        {
            if (ordered[at] is { Values.Count: OfThreeLines } whole && whole.UnitId == unit && !Stated(whole))
            {
                return [whole];
            }

            if (at >= OfThreeLines - 1 && ordered[(at - OfThreeLines + 1)..(at + 1)] is var three && three.TrueForAll(q => q.Values.Count == 1 && (q.Unit is null || q.UnitId == unit))
                && (unit.Length == 0 ? three.TrueForAll(q => most is null ? IsOfLineVolts(q) : q.Values[0] < most) : three.Exists(q => q.UnitId == unit)) && Follows(three[0], three[1]) && Follows(three[1], three[2]) && !Stated(three[0]))
            {
                return three;
            }
        }

        return [];
    }

    /// <summary>Whether it is one number of the size that line volts have.</summary>
    public static bool IsOfLineVolts(Quantity q) => q.Values is [>= LeastLineVolts and <= MostLineVolts];

    /// <summary>Whether it is such a number with the unit of volts, or without any.</summary>
    public static bool IsBareOrVolts(Quantity q) => IsOfLineVolts(q) && q.UnitId is "" or "volt";

    private bool Follows(Quantity one, Quantity next) => Enumerable.Range(one.Last + 1, next.First - one.Last - 1).All(at => scene.IsWord(at, ",", "/", "-", "and", "&", ";", "by", "then"));

    /// <summary>"398 402 397 V": volts of three lines that lie close together, or are said to be between lines, are no list of plate volts.</summary>
    private List<Quantity> LineVolts(List<Quantity> sentence)
    {
        var row = Row(sentence, "volt");
        row = row.Count == 0 && sentence.Exists(q => scene.InSentence("measured", q.First) || scene.InSentence("supply-noun", q.First) || scene.InSentence(LineCurrents, q.First) || scene.InSentence("line-volts", q.First)) ? Row(sentence, string.Empty) : row;
        row = row.Count == 0 && IsWholeMessage(sentence) ? Row(sentence, string.Empty) : row;
        var ofPairs = row.Count == 0 || (scene.InSentence("between-lines", row[0].First) && !scene.InSentence("plate-cue", row[0].First));
        row = row.Count == 0 ? sentence.FindAll(IsBetweenLines) : row;
        List<double> volts = [.. row.SelectMany(q => q.Values)];
        return volts.Count == OfThreeLines && (ofPairs || volts.Max() <= Together * volts.Min()) && volts.Distinct().Count() > 1 ? File(row, "supply-voltage") : [];
    }

    /// <summary>"L1-L2 462": volts right behind two lines.</summary>
    private bool IsBetweenLines(Quantity q) => IsBareOrVolts(q)
        && Conductors.Count(line => scene.Hits.Exists(hit => hit.Concept == line && hit.First < q.First && q.First - hit.Last <= Beside && scene.Tokens[hit.First].Clause == scene.Tokens[q.First].Clause)) == 2;

    /// <summary>Three figures and nothing else, where no figure was asked for.</summary>
    private bool IsWholeMessage(List<Quantity> sentence) => sentence.Count == OfThreeLines && scene.Asked?.Kind is not (QuestionKind.Reading or QuestionKind.Quantity)
        && scene.Tokens.TrueForAll(token => token.Kind is TokenKind.Number or TokenKind.Mark);

    private List<Quantity> File(List<Quantity> row, string test)
    {
        var unit = test == LineCurrents ? "amp" : "volt";
        _drawn.AddRange(unit == "amp" ? row : []);
        foreach (var q in row.OrderBy(q => q.First))
        {
            scene.Use(q.First, q.Last);
            foreach (var value in q.Values)
            {
                scene.Note(q.First, q.Last, new Fact.BenchTest { Test = test, Value = value, Unit = unit });
            }
        }

        return row;
    }

    /// <summary>"96 V at the motor while it tries to start".</summary>
    private bool Starting(Quantity q)
    {
        var atMotor = q.UnitId == "volt" && scene.InClause("energise", q.First) && scene.Hits.Exists(hit => hit.Concept == "at-the-motor" && hit.First > q.Last && hit.First - q.Last <= JustBefore);
        var whileStarting = (q.UnitId == "volt" || (q.Unit is null && (scene.InSentence("volts-read", q.First) || scene.InSentence("at-the-motor", q.First)))) && scene.Hits.Exists(hit => hit.Concept == "while-starting" && hit.First > q.Last && hit.First - q.Last <= Beside);
        if (q.Values.Count > 1 || !(atMotor || (whileStarting && IsOfLineVolts(q))))
        {
            return false;
        }

        scene.Add(q.First, q.Last, new Fact.BenchTest { Test = "voltage-at-motor-starting", Value = q.Values[0], Unit = "volt" });
        return true;
    }

    /// <summary>"L1 12.4 A, L2 12.1 A": the first and the second line in one sentence.</summary>
    private bool Lined(Quantity q) => q.UnitId == "amp" && scene.InSentence("conductor.l1", q.First) && scene.InSentence("conductor.l2", q.First);

    private List<Quantity> Running(List<Quantity> sentence)
    {
        if (sentence.Count == 0)
        {
            return [];
        }

        if (scene.Asked?.Id.StartsWith(OfLine, StringComparison.Ordinal) == true)
        {
            return []; // the figure of a second or third line is the answer itself
        }

        var asked = scene.Asked?.About is "running" or "run-current" or "run-speed" or "voltage-at-motor-starting";
        var said = scene.Hits.Where(hit => scene.Tokens[hit.First].Sentence == scene.Tokens[sentence[0].First].Sentence).ToLookup(hit => hit.Concept, StringComparer.Ordinal);
        var runs = said["running-now"].FirstOrDefault(hit => !hit.Denied);
        var turns = said["wrong-way"].Any() || said["right-way"].Any() || sentence.Exists(q => IsBareSpeed(q) && Told(q) == "turns-at");
        var power = sentence.Exists(q => q.UnitId is "horsepower" or "kilowatt");
        Quantity[] bare = [.. sentence.Where(IsBareAmps)];
        if (bare.Length == 1 && !sentence.Exists(q => q.UnitId == "amp"))
        {
            scene.Add(bare[0].First, bare[0].Last, new Fact.Running { Amps = bare[0].Values[0] });
            _drawn.Add(bare[0]);
            return [bare[0]];
        }

        var measured = sentence.FindAll(q => IsMeasured(q) && !(runs is null && !asked && q.UnitId == "volt" && scene.IsNominalVolts(q)) && (asked || ((runs is not null || turns) && !power && !OnPlate(q)) || Drawn(q)));
        if (measured.Count == 0)
        {
            return [];
        }

        double? Of(string unit) => measured.Find(q => (IsBareSpeed(q) ? "rpm" : IsBareVolts(q) ? "volt" : q.UnitId) == unit)?.Values[0];
        var (first, last) = (Math.Min(runs?.First ?? int.MaxValue, measured.Min(q => q.First)), measured.Max(q => q.Last));
        measured.ForEach(q => scene.Use(q.First, q.Last));
        if (runs is not null)
        {
            scene.Use(runs);
        }

        scene.Note(first, last, new Fact.Running
        {
            Volts = Of("volt"),
            Amps = Of("amp"),
            Rpm = Of("rpm"),
            Direction = said["wrong-way"].Any() ? "wrong" : said["right-way"].Any() ? "right" : null,
            Outcome = runs is not null ? "ran" : null,
        });
        _drawn.AddRange(measured.Where(q => q.UnitId == "amp"));
        return measured;
    }

    /// <summary>"Amps are 7.0": the unit stands in the words right before it.</summary>
    private bool IsBareAmps(Quantity q) => q.Unit is null && q.Values.Count == 1 && scene.Before(q.First, 1, "amps-are");

    private bool IsMeasured(Quantity q) => q.Values.Count == 1 && (q.UnitId != "volt" || IsOfLineVolts(q) || scene.Asked is not null) && (q.UnitId is "volt" or "amp" or "rpm" || IsBareSpeed(q) || IsBareVolts(q)) && !belonging.IsSupply(q) && !IsOfOther(q) && !scene.InClause("shock-word", q.First) && !(q.UnitId == "volt" && belonging.IsPlate(q)) && !scene.Near(q, JustBefore, "protection")
        && !scene.Near(q, Beside, LineCurrents);

    /// <summary>"The old one ran at 1450".</summary>
    private bool IsOfOther(Quantity q) => scene.Hits.Exists(hit => hit.Concept == "old-past" && hit.First < q.First && scene.Tokens[hit.First].Clause == scene.Tokens[q.First].Clause);

    /// <summary>Whether the plate's word before it claims it, or one behind it that no other figure follows: "12 A on the plate".</summary>
    private bool OnPlate(Quantity q) => Stated(q) || scene.Hits.Exists(hit => hit.Concept == "plate-cue" && hit.First > q.Last && scene.Tokens[hit.First].Sentence == scene.Tokens[q.First].Sentence
        && !quantities.Exists(other => other.First > hit.Last && scene.Tokens[other.First].Sentence == scene.Tokens[q.First].Sentence));

    /// <summary>"Tacho says 960", "3400 turns measured": a speed told without its unit.</summary>
    private bool IsBareSpeed(Quantity q) => q.Unit is null && q.Values.Count == 1 && scene.At(q.First, "plate-speed") is not null
        && (scene.Hits.Exists(hit => hit.Concept == "turns-at" && hit.Last < q.First && (hit.Last == q.First - 1 || IsRightBehind(q, hit)))
            || (scene.At(q.Last + 1, "turns-at") is not null && scene.InSentence("measured", q.First)));

    /// <summary>"Voltage at the motor is 238 while it runs": volts without their unit.</summary>
    private bool IsBareVolts(Quantity q) => q.Unit is null && IsOfLineVolts(q) && (IsUnderLoad(q) || (scene.InSentence("running-now", q.First)
        && ((VoltsAtPlaces.IsAtMotor(scene, q) && scene.InClause("running-now", q.First)) || scene.InSentence("low-volts", q.First) || (scene.InSentence("volts-noun", q.First) && scene.InSentence("at-the-motor", q.First)))));

    /// <summary>"With 230 at the motor it draws 5 A".</summary>
    private bool IsUnderLoad(Quantity q) => VoltsAtPlaces.IsAtMotor(scene, q) && scene.InSentence("draws", q.First) && quantities.Exists(amps => amps.UnitId == Amp && scene.Tokens[amps.First].Sentence == scene.Tokens[q.First].Sentence && !Stated(amps));

    /// <summary>"Draws 4.2 A at 236 V and turns 1440 rpm": the nearest telling word before it says that it was measured.</summary>
    private bool Drawn(Quantity q) => q.UnitId switch
    {
        "amp" => Told(q) == "draws",
        "volt" => (scene.IsWord(q.First - 1, "at") && Told(q) == "draws") || IsUnderLoad(q),
        _ => IsBareSpeed(q) || IsBareVolts(q) || Told(q) is "draws" or "turns-at",
    };

    /// <summary>"The plate says 12 amps".</summary>
    private bool Stated(Quantity q) => IsNamed(q) || Told(q) == "plate-cue";

    /// <summary>"FLA 17": its unit is a word of the plate.</summary>
    private bool IsNamed(Quantity q) => Enumerable.Range(q.First, q.Last - q.First + 1).Any(IsCue);

    private string? Told(Quantity q)
    {
        for (var at = q.First - 1; at >= 0 && scene.Tokens[at].Sentence == scene.Tokens[q.First].Sentence; at--)
        {
            if (scene.StartingAt(at).FirstOrDefault(hit => hit.Concept is "draws" or "turns-at" or "plate-cue" && hit.Last < q.First) is { } told)
            {
                return told.Concept;
            }
        }

        return null;
    }
}
