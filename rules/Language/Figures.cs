using System.Globalization;
using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Decides what the numbers belong to: plate, supply, capacitor, insulation, or a motor that runs.</summary>
internal sealed class Figures
{
    private const double MostTestVolts = 60;
    private const double LeastSupplyVolts = 24;
    private const int NearTransformer = 6;
    private const double MostPlateAmps = 200;
    private const double MostSpeeds = 9;

    /// <summary>The instrument that feeds a winding on the bench.</summary>
    public const string Transformer = "low-voltage-ac";

    private readonly Scene _scene;
    private readonly List<Quantity> _quantities;
    private readonly bool _wishes;
    private readonly List<Quantity> _open;
    private readonly HashSet<Quantity> _gone = new(ReferenceEqualityComparer.Instance);
    private readonly SupplyDraft _supply;
    private readonly Belonging _belonging;
    private readonly RunFigures _runs;
    private readonly CapacitorFigures _capacitors;
    private readonly InsulationFigures _insulation;

    public Figures(Scene scene, List<Quantity> quantities)
    {
        (_scene, _quantities, _open, _wishes) = (scene, quantities, [.. quantities], quantities.Exists(scene.IsWished));
        (_supply, _belonging) = (new(scene), new(scene, quantities));
        (_runs, _capacitors, _insulation) = (new(scene, quantities, _belonging), new(scene, _open), new(scene, _open, _belonging));
    }

    public void Read()
    {
        Each(q => q.UnitId == "microfarad" && !_scene.Before(q.First, 2, "old-was"), Capacitors);
        Each(q => q.UnitId is "" or "microfarad", _capacitors.ReadOld);
        Each(q => q.UnitId == "microfarad", Capacitors);
        _open.RemoveAll(_capacitors.ReadAcross().Contains);
        Each(q => q.UnitId == "megohm" || (q.UnitId == "ohm" && q.Values[0] >= 1e5 && _scene.InSentence("insulation-word", q.First)), Insulation);
        Each(_insulation.IsBare, Insulation);
        Each(q => q.Unit is null, q => _capacitors.ReadBare(q, _gone));
        _open.RemoveAll(new WindingFigures(_scene).Read(_open).Contains);
        Each(q => q.UnitId == "ohm", Resistances);
        Each(q => q.UnitId == "celsius", Temperatures);
        Each(q => q.UnitId is "second" or "minute" or "metre" || q.Kind is "hour" or "day" or "year" or "inch" or "percent" or "gauge" or "cable-size" or "kilovolt-ampere" || q is { Kind: "speeds", Values: [< MostSpeeds] }, Others);
        _open.RemoveAll(_runs.Read(_open).Contains);
        Each(q => q.UnitId == "volt" && LeftVolts.Are(_scene, q), q => LeftVolts.Add(_scene, q));
        Each(q => q.UnitId == "volt" && q.Values.Count == 1 && q.Values[0] <= MostTestVolts && _scene.Near(q, NearTransformer, $"instrument.{Transformer}"), TestVolts); // a test transformer's own volts are no supply
        Each(q => q.UnitId == "amp" || q.UnitId == "milliamp", Amps);
        Each(q => q.UnitId is "horsepower" or "kilowatt" or "watt" or "rpm" || q.Kind is "service-factor" or "power-factor" or "efficiency" or "poles", Plate);
        _open.RemoveAll(new EitherVolts(_scene, _belonging).Read(_open).Contains);
        Each(q => q.UnitId == "volt" || q.UnitId == "hertz" || q.Kind == "phases", VoltsHertzPhases);
        Each(q => q.Unit is null, Bare);
        _supply.Finish();
    }

    private void Each(Func<Quantity, bool> which, Func<Quantity, bool> read)
    {
        var done = new HashSet<Quantity>(ReferenceEqualityComparer.Instance);
        foreach (var quantity in _open.Where(which).ToList())
        {
            if (!_gone.Contains(quantity) && read(quantity))
            {
                _scene.Use(quantity.First, quantity.Last);
                done.Add(quantity);
            }
        }

        _open.RemoveAll(quantity => done.Contains(quantity) || _gone.Contains(quantity));
        _gone.Clear();
    }

    private bool TestVolts(Quantity q)
    {
        _scene.Amend<Fact.Instrument>(instrument => instrument.Id == Transformer, instrument => instrument with { Volts = q.Values[0] });
        return true;
    }

    private bool Capacitors(Quantity q)
    {
        _gone.UnionWith(_capacitors.OfTwo(q) is var (first, last) ? _capacitors.ReadTwo(q, first, last) : _capacitors.Read(q));
        return true;
    }

    private bool Insulation(Quantity q)
    {
        _gone.UnionWith(_insulation.Read(q));
        return true;
    }

    /// <summary>The probes alone, the resistor for the discharge; other ohms without leads stay open.</summary>
    private bool Resistances(Quantity q)
    {
        if (Winding(q))
        {
            return true;
        }

        if (_scene.InSentence("probes-together", q.First))
        {
            _scene.Add(q.First, q.Last, new Fact.BenchTest { Test = Fact.BenchTest.ProbeZero, Value = q.Values[0], Unit = "ohm" });
            return true;
        }

        return _capacitors.ReadShorted(q) || _scene.InClause("resistor", q.First);
    }

    /// <summary>"Hot ohms 12.6, cold 10 at 20 °C": the winding under load against itself before.</summary>
    private bool Winding(Quantity q)
    {
        var hot = _scene.InClause("hot-winding", q.First);
        if (q.Values.Count != 1 || !(hot || IsCold(q)))
        {
            return false;
        }

        _scene.Add(q.First, q.Last, new Fact.BenchTest { Test = hot ? "hot-resistance" : "cold-resistance", Value = q.Values[0], Unit = "ohm" });
        return true;
    }

    /// <summary>Whether it is said of the cold winding; beside its hot ohms "cold" alone says so.</summary>
    private bool IsCold(Quantity q) => _scene.InClause("cold-winding", q.First)
        || (_scene.InSentence("hot-winding", q.First) && _scene.Tokens.Exists(token => token.Is("cold") && token.Clause == _scene.Tokens[q.First].Clause));

    /// <summary>The temperatures that belong to a winding read hot and cold.</summary>
    private bool Beside(Quantity q)
    {
        var cold = IsCold(q);
        if (!cold && !_scene.InSentence("hot-winding", q.First))
        {
            return false;
        }

        _scene.Add(q.First, q.Last, new Fact.BenchTest { Test = cold ? "cold-celsius" : "ambient-celsius", Value = q.Values[0], Unit = "celsius" });
        return true;
    }

    private bool Temperatures(Quantity q)
    {
        if (Beside(q))
        {
            return true;
        }

        if (_scene.InSentence("frame-metal", q.First))
        {
            _scene.Add(q.First, q.Last, new Fact.BenchTest { Test = "frame-heat", Value = q.Values[0], Unit = "celsius" });
            return true;
        }

        if (_scene.InClause("ambient", q.First))
        {
            AddPlate(q, "ambientCelsius");
            return true;
        }

        if (_scene.InClause("rise", q.First))
        {
            AddPlate(q, "temperatureRise");
            return true;
        }

        return false;
    }

    /// <summary>Times, lengths and the like belong to the sentence around them; a cord's length is kept.</summary>
    private bool Others(Quantity q)
    {
        if (q.UnitId == "metre" && q.Kind is not "inch" && (_scene.InClause("cord", q.First) || BesideSize(q)))
        {
            _scene.Add(q.First, q.Last, new Fact.Choice { Question = "supply.length-metres", Option = Text(q) });
        }

        if (q.Kind is "gauge" or "cable-size")
        {
            _scene.Add(q.First, q.Last, new Fact.Choice { Question = "supply.conductor", Option = _scene.Span(q.First, q.Last) });
        }

        return true;
    }

    /// <summary>"100 ft of 16 gauge": a length right beside a conductor's size, in a sentence that speaks of a cord.</summary>
    private bool BesideSize(Quantity length) => _scene.InSentence("cord", length.First)
        && _quantities.Exists(size => size.Kind is "gauge" or "cable-size" && _scene.Tokens[size.First].Clause == _scene.Tokens[length.First].Clause);

    private bool Amps(Quantity q)
    {
        var near = Near(q, 5);
        if (q.UnitId == "milliamp")
        {
            return true; // a device's residual current; no motor is rated in milliamps
        }

        if (near("protection") || Enumerable.Range(q.First, q.Last - q.First + 1).Any(at => _scene.At(at, "protection-size") is not null))
        {
            _scene.Add(q.First, q.Last, new Fact.Choice { Question = "supply.protection-amps", Option = Text(q) });
            return true;
        }

        if (near("relay-setting") || _scene.IsWord(q.First - 1, "old", "bigger", "smaller", "larger"))
        {
            return false; // "turned the overload relay up from 6.5 to 9 amps", "on the old 16 amp it tripped"
        }

        if (near("line-currents") && q.Values.Count == 1 && !_quantities.Exists(power => power.UnitId is "horsepower" or "kilowatt" && _scene.Tokens[power.First].Sentence == _scene.Tokens[q.First].Sentence))
        {
            return true; // one line alone compares with nothing; amps read out with the power are the plate's
        }

        if (q.Kind == "amp" && _runs.MayBeDrawn(q))
        {
            return Unsettle(q, "plate/amps", "running/amps");
        }

        AddPlate(q, q.Kind == "sfa" || _scene.InClause("service-factor-amps", q.First) ? "serviceFactorAmps" : near("locked-rotor") || q.Kind == "lra" ? "lockedRotorAmps" : "amps");
        return true;
    }

    private Func<string, bool> Near(Quantity q, int reach) => concept => _scene.Near(q, reach, concept);

    private bool Plate(Quantity q)
    {
        AddPlate(q, q.Kind switch
        {
            "service-factor" => "serviceFactor",
            "power-factor" => "powerFactor",
            "efficiency" => "efficiency",
            "poles" => "poles",
            _ => q.UnitId switch { "horsepower" => "horsepower", "rpm" => "rpm", _ => "kilowatts" },
        });
        return true;
    }

    private void AddPlate(Quantity q, string field)
    {
        var values = field == "kilowatts" && q.UnitId == "watt" ? [.. q.Values.Select(value => value / 1000)]
            : field is "efficiency" or "powerFactor" && q.Values[0] > 1 ? [.. q.Values.Select(value => value / 100)]
            : q.Values;
        _scene.Add(q.First, q.Last, new Fact.Plate { Field = field, Value = PlateValue.Of(values), Unit = q.UnitId.Length == 0 || q.Unit!.Unit is "ratio" or "count" ? null : field == "kilowatts" ? "kilowatt" : q.UnitId });
    }

    /// <summary>"It was on 110 before", "wired for 230 and fed 115": volts of the links as they are.</summary>
    private bool WiredFor(Quantity q)
    {
        if (q.Values.Count != 1 || !(q.UnitId == "volt" || (q.Unit is null && _scene.IsNominalVolts(q))))
        {
            return false;
        }

        var before = (_scene.Before(q.First, 2, "was-on") && !_scene.InClause("ask", q.First)) || (_scene.IsWord(q.First - 1, "from") && _scene.InSentence("supply-moved", q.First) && _quantities.Exists(other => other.First > q.Last && _scene.Tokens[other.First].Sentence == _scene.Tokens[q.First].Sentence && (other.UnitId == "volt" || _scene.IsNominalVolts(other))));
        var links = IsLink(q) && _quantities.Exists(other => !ReferenceEquals(other, q) && (_belonging.IsSupply(other) || _belonging.Of(other, false) == "supply"));
        if (before || links || IsOfNow(q))
        {
            _scene.Add(q.First, q.Last, new Fact.Choice { Question = Fact.Choice.WiredFor, Option = Text(q) });
            return true;
        }

        return false;
    }

    /// <summary>"Runs on 115 now, want 230": what the motor is to leave, where other volts are wished for.</summary>
    private bool IsOfNow(Quantity q) => !_scene.IsWished(q) && _wishes && !Near(q, 3)("supply-noun") && !Near(q, 3)("premises") && (Near(q, 3)("as-it-is-now") || IsLink(q));

    private bool VoltsHertzPhases(Quantity q)
    {
        if (WiredFor(q))
        {
            return true;
        }

        if (q.Kind == "phases" && (q.Values[0] is not (1 or 2 or 3) || (q.Values[0] == 2 && _scene.IsWord(q.First - 1, "on", "of", "between", "only", "any"))))
        {
            return false; // "amps per phase 4.2", "it runs on two phases"
        }

        if (q.UnitId == "volt" && (q.Values.All(value => value <= 1) || IsBenchVolts(q)))
        {
            return false;
        }

        if (_belonging.IsLeftBehind(q) || (q.Kind == "phases" && (q.Values[0] == 1 || _scene.IsWord(q.First - 1, "all", "each")) && _scene.At(q.First, "line-currents") is not null))
        {
            return true;
        }

        switch (q.Kind == "phases" && _supply.EndsBefore(q) ? "supply" : _belonging.Of(q, _supply.HasVolts))
        {
            case "supply" when q.UnitId == "volt" && q.Values[0] < LeastSupplyVolts && !_belonging.IsSupply(q):
                return Unsettle(q, "plate/volts", "supply/volts"); // "3 volts with it off"
            case "supply":
                _supply.Take(q);
                _supply.TakePhases(q);
                return true;
            case "plate" when !IsLink(q):
                AddPlate(q, Member(q));
                return true;
            default:
                return Unsettle(q, $"plate/{Member(q)}", $"supply/{Member(q)}");
        }
    }

    /// <summary>"12 V AC on T1-T2, read 5 V from T1 to T4": low volts among leads are of a test and no supply.</summary>
    private bool IsBenchVolts(Quantity q) => q.Values.All(volts => volts <= MostTestVolts) && !_belonging.IsSupply(q)
        && _scene.Tokens.Count(token => token.Kind == TokenKind.Tag && token.Sentence == _scene.Tokens[q.First].Sentence) > 1;

    private static string Member(Quantity q) => q.Kind == "phases" ? "phases" : q.UnitId == "hertz" ? "hertz" : "volts";

    private bool Unsettle(Quantity q, params IReadOnlyList<string> reads)
    {
        _scene.Unsettled.Add(new Leftover(_scene.Span(q.First, q.Last), reads));
        return true;
    }

    /// <summary>"Wired for 115" may mean the links inside or the supply; it never takes the place of the plate's pair.</summary>
    private bool IsLink(Quantity q) => q.UnitId is "volt" or "" && Near(q, 1)("wired-for") && !_belonging.FeedsConverter(q);

    /// <summary>Numbers without a unit: nominal volts and plate speeds are known by their figure, where the words around them agree.</summary>
    private bool Bare(Quantity q)
    {
        if (_scene.InClause("probes-together", q.First) && q.Values.Count == 1)
        {
            _scene.Add(q.First, q.Last, new Fact.BenchTest { Test = Fact.BenchTest.ProbeZero, Value = q.Values[0], Unit = "ohm" });
            return true;
        }

        if (RunFigures.IsOfLineVolts(q) && !_runs.IsUnsettled(q) && _scene.InSentence("measured", q.First) && Near(q, 4)("supply-noun") && !_scene.InSentence("capacitor", q.First))
        {
            _scene.Add(q.First, q.Last, DueVolts.Measured(_scene, q));
            return true;
        }

        if (Winding(q))
        {
            return true;
        }

        if (_capacitors.ReadInPlace(q, _quantities))
        {
            return true;
        }

        if (_runs.IsPlateAmps(q) || IsPairBehindVolts(q))
        {
            _scene.Add(q.First, q.Last, new Fact.Plate { Field = "amps", Value = PlateValue.Of(q.Values), Unit = "amp" });
            return true;
        }

        var companions = _belonging.HasCompanion(q);
        if (_scene.IsNominalVolts(q))
        {
            return _belonging.IsLeftBehind(q) || NominalVolts(q, companions);
        }

        if (q.Values.Count == 1 && _scene.At(q.First, "plate-speed") is not null && !_runs.HasSpeed(q) && (companions || _belonging.IsPlate(q) || _scene.InSentence("plate-cue", q.First)))
        {
            _scene.Add(q.First, q.Last, new Fact.Plate { Field = "rpm", Value = PlateValue.Of(q.Values), Unit = "rpm" });
            return true;
        }

        return false;
    }

    /// <summary>"115/230 8.8/4.4": the pair right behind the pair of volts is the amps, more of them for the lower volts.</summary>
    private bool IsPairBehindVolts(Quantity q) => q is { IsRange: false, Values: [var more, var less] } && more > less && more < MostPlateAmps
        && _quantities.Exists(volts => volts.Values.Count == 2 && q.First - volts.Last is 1 or 2 && (volts.UnitId == "volt" || (volts.Unit is null && _scene.IsNominalVolts(volts))));

    private bool NominalVolts(Quantity q, bool companions)
    {
        if (WiredFor(q))
        {
            return true;
        }

        var where = _belonging.Of(q, _supply.HasVolts);
        if (where == "supply")
        {
            _supply.TakeVolts(q);
            return true;
        }

        if ((where == "plate" || companions) && !IsLink(q))
        {
            _scene.Add(q.First, q.Last, new Fact.Plate { Field = "volts", Value = PlateValue.Of(q.Values), Unit = "volt" });
            return true;
        }

        if (_scene.Asked is not null)
        {
            return false;
        }

        return Unsettle(q, "plate/volts", "supply/volts");
    }

    private static string Text(Quantity q) => q.Values[0].ToString("0.##", CultureInfo.InvariantCulture);
}
