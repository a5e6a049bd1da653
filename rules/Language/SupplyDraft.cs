using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Collects what is said of the supply into one fact.</summary>
internal sealed class SupplyDraft(Scene scene)
{
    private const int ThreePhase = 3;
    private Fact.Supply? _fact;
    private int _first = int.MaxValue;
    private int _last = -1;
    private Quantity? _pair;

    public bool HasVolts => _fact?.Volts is not null || _pair is not null;

    public void Take(Quantity q)
    {
        if (q.UnitId == "volt")
        {
            TakeVolts(q);
        }
        else if (q.UnitId == "hertz")
        {
            Put(q, (_fact ?? new()) with { Hertz = q.Values[0] });
        }
        else
        {
            Put(q, (_fact ?? new()) with { Phases = (int)Math.Clamp(q.Values[0], 1, 3) });
        }
    }

    /// <summary>"208 3 ph": whether the supply's volts stand right before it.</summary>
    public bool EndsBefore(Quantity phases) => HasVolts && _last == phases.First - 1;

    /// <summary>"3 x 400 V".</summary>
    public void TakePhases(Quantity volts)
    {
        if (volts.UnitId == "volt" && scene.IsWord(volts.First - 1, "x", "×", "*") && scene[volts.First - 2] is { Kind: TokenKind.Number, Value: 3 })
        {
            Put(volts, (_fact ?? new()) with { Phases = 3 });
        }
    }

    public void TakeVolts(Quantity q)
    {
        if (q is { IsRange: false, Values.Count: > 1 })
        {
            _pair = q;
            Reach(q.First, q.Last);
            return;
        }

        if (_fact?.Volts is not null && _fact.Volts != q.Values[0])
        {
            Flush();
        }

        Put(q, (_fact ?? new()) with { Volts = q.Values[0] });
    }

    /// <summary>Adds what the words settle ("split phase", "a normal wall outlet") and files the fact.</summary>
    public void Finish()
    {
        foreach (var hit in scene.Hits.Where(hit => hit.Concept.StartsWith("supply.", StringComparison.Ordinal) && !hit.Denied))
        {
            scene.Use(hit);
            Named(hit);
        }

        OfPair();
        ThroughConverter();
        Flush();
    }

    /// <summary>"277/480 V, three phase": a line to neutral and between lines, and between lines is what a three-phase motor gets; "120/240" gives both, and which of them it is has to be asked.</summary>
    private void OfPair()
    {
        if (_pair is null || _fact?.Volts is not null)
        {
            return;
        }

        if (_fact?.Phases == ThreePhase && _pair.Values.Count == 2)
        {
            _fact = _fact with { Volts = _pair.Values.Max() };
        }
        else
        {
            scene.Unsettled.Add(new Leftover(scene.Span(_pair.First, _pair.Last), ["supply/volts"]));
        }
    }

    /// <summary>"On a converter, 230 V single-phase in": what reaches the motor are three phases.</summary>
    private void ThroughConverter()
    {
        if (_fact is { Phases: 1 } && scene.InSentence("converter", _first) && scene.InSentence("converter-feed", _first) && !scene.InSentence("ask", _first))
        {
            _fact = _fact with { Phases = 3 };
        }
    }

    private void Named(Hit hit)
    {
        var words = scene.Supplies[hit.Concept["supply.".Length..]];
        var region = scene.Region switch { Region.NorthAmerica => "na", Region.Iec => "iec", _ => null };
        var fact = _fact ?? new();
        double? volts = region is not null && words.Volts.TryGetValue(region, out var known) ? known : words.Volts.TryGetValue("any", out known) ? known : null;
        double? hertz = region is not null && words.Hertz.TryGetValue(region, out known) ? known : null;
        if (volts is null && words.Volts.Count > 0 && fact.Volts is null)
        {
            scene.Unsettled.Add(new Leftover(scene.Span(hit.First, hit.Last), ["supply/volts"]));
        }

        _fact = fact with
        {
            Volts = fact.Volts is { } said ? said * (words.VoltsFactor == 1 || said > 150 ? 1 : words.VoltsFactor) : volts,
            Hertz = fact.Hertz ?? hertz,
            Phases = fact.Phases ?? words.Phases,
            System = words.System ?? fact.System,
        };
        Reach(hit.First, hit.Last);
    }

    private void Put(Quantity q, Fact.Supply fact)
    {
        _fact = fact;
        Reach(q.First, q.Last);
    }

    private void Reach(int first, int last) => (_first, _last) = (Math.Min(_first, first), Math.Max(_last, last));

    private void Flush()
    {
        if (_fact is { Volts: not null } or { Hertz: not null } or { Phases: not null } or { System: not null })
        {
            scene.Note(_first, _last, _fact);
        }

        (_fact, _first, _last) = (null, int.MaxValue, -1);
    }
}
