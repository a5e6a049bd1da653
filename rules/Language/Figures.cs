using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Decides what the numbers belong to: plate, supply, capacitor, insulation, or a motor that runs.</summary>
internal sealed class Figures(Scene scene, List<Quantity> quantities)
{
    private const double MostTestVolts = 60;
    private const int NearTransformer = 6;
    private const double CapacitorShort = 2;

    /// <summary>The instrument that feeds a winding on the bench.</summary>
    public const string Transformer = "low-voltage-ac";

    private readonly List<Quantity> _open = [.. quantities];
    private readonly HashSet<Quantity> _gone = new(ReferenceEqualityComparer.Instance);
    private readonly SupplyDraft _supply = new(scene);
    private readonly Belonging _belonging = new(scene, quantities);
    private readonly RunFigures _runs = new(scene, quantities);

    public void Read()
    {
        Each(q => q.UnitId == "microfarad", Capacitors);
        _open.RemoveAll(new CapacitorFigures(scene, _open).ReadAcross().Contains);
        Each(q => q.UnitId == "megohm" || (q.UnitId == "ohm" && q.Values[0] >= 1e5 && scene.InSentence("insulation-word", q.First)), Insulation);
        Each(new InsulationFigures(scene, _open, _belonging).IsBare, Insulation);
        Each(q => q.Unit is null, q => new CapacitorFigures(scene, _open).ReadBare(q, _gone));
        _open.RemoveAll(new WindingFigures(scene).Read(_open).Contains);
        Each(q => q.UnitId is "ohm" or "kilohm", Resistances);
        Each(q => q.UnitId == "celsius", Temperatures);
        Each(q => q.UnitId is "second" or "minute" or "metre" || q.Kind is "hour" or "day" or "year" or "inch" or "percent" or "gauge" or "cable-size", Others);
        _open.RemoveAll(_runs.Read(_open).Contains);
        Each(q => q.UnitId == "volt" && Residual(q), Left);
        Each(q => q.UnitId == "volt" && q.Values.Count == 1 && q.Values[0] <= MostTestVolts && scene.Near(q, NearTransformer, $"instrument.{Transformer}"), TestVolts); // a test transformer's own volts are no supply
        Each(q => q.UnitId == "amp" || q.UnitId == "milliamp", Amps);
        Each(q => q.UnitId is "horsepower" or "kilowatt" or "watt" or "rpm" || q.Kind is "service-factor" or "power-factor" or "efficiency" or "poles", Plate);
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
                scene.Use(quantity.First, quantity.Last);
                done.Add(quantity);
            }
        }

        _open.RemoveAll(quantity => done.Contains(quantity) || _gone.Contains(quantity));
        _gone.Clear();
    }

    private bool TestVolts(Quantity q)
    {
        scene.Amend<Fact.Instrument>(instrument => instrument.Id == Transformer, instrument => instrument with { Volts = q.Values[0] });
        return true;
    }

    private bool Capacitors(Quantity q)
    {
        var others = new CapacitorFigures(scene, _open).Read(q);
        foreach (var other in others)
        {
            scene.Use(other.First, other.Last);
            _gone.Add(other);
        }

        return true;
    }

    private bool Insulation(Quantity q)
    {
        _gone.UnionWith(new InsulationFigures(scene, _open, _belonging).Read(q));
        return true;
    }

    /// <summary>The probes alone, the resistor for the discharge; other ohms without leads stay open.</summary>
    private bool Resistances(Quantity q)
    {
        if (Winding(q))
        {
            return true;
        }

        if (scene.InSentence("probes-together", q.First) && q.UnitId == "ohm")
        {
            scene.Add(q.First, q.Last, new Fact.BenchTest { Test = "probe-zero", Value = q.Values[0], Unit = "ohm" });
            return true;
        }

        if (q.Values is [<= CapacitorShort] && scene.InSentence("capacitor", q.First) && scene.InClause("measured", q.First) && !scene.InClause("winding-word", q.First))
        {
            scene.Add(q.First, q.Last, new Fact.BenchTest { Test = "capacitance", Outcome = "shorted" });
            return true;
        }

        return scene.InClause("resistor", q.First);
    }

    /// <summary>"Hot ohms 12.6, cold 10 at 20 °C": the winding under load against itself before.</summary>
    private bool Winding(Quantity q)
    {
        var hot = scene.InClause("hot-winding", q.First);
        if (q.Values.Count != 1 || !(hot || scene.InClause("cold-winding", q.First)))
        {
            return false;
        }

        scene.Add(q.First, q.Last, new Fact.BenchTest { Test = hot ? "hot-resistance" : "cold-resistance", Value = q.UnitId == "kilohm" ? 1000 * q.Values[0] : q.Values[0], Unit = "ohm" });
        return true;
    }

    /// <summary>The temperatures that belong to a winding read hot and cold.</summary>
    private bool Beside(Quantity q)
    {
        var cold = scene.InClause("cold-winding", q.First);
        if (!cold && !scene.InSentence("hot-winding", q.First))
        {
            return false;
        }

        scene.Add(q.First, q.Last, new Fact.BenchTest { Test = cold ? "cold-celsius" : "ambient-celsius", Value = q.Values[0], Unit = "celsius" });
        return true;
    }

    private bool Temperatures(Quantity q)
    {
        if (Beside(q))
        {
            return true;
        }

        if (scene.InSentence("frame-metal", q.First))
        {
            scene.Add(q.First, q.Last, new Fact.BenchTest { Test = "frame-heat", Value = q.Values[0], Unit = "celsius" });
            return true;
        }

        if (scene.InClause("ambient", q.First))
        {
            AddPlate(q, "ambientCelsius");
            return true;
        }

        if (scene.InClause("rise", q.First))
        {
            AddPlate(q, "temperatureRise");
            return true;
        }

        return false;
    }

    /// <summary>Times, lengths and the like belong to the sentence around them; a cord's length is kept.</summary>
    private bool Others(Quantity q)
    {
        if (q.UnitId == "metre" && q.Kind is not "inch" && (scene.InClause("cord", q.First) || BesideSize(q)))
        {
            scene.Add(q.First, q.Last, new Fact.Choice { Question = "supply.length-metres", Option = q.Values[0].ToString("0.##", System.Globalization.CultureInfo.InvariantCulture) });
        }

        if (q.Kind is "gauge" or "cable-size")
        {
            scene.Add(q.First, q.Last, new Fact.Choice { Question = "supply.conductor", Option = scene.Span(q.First, q.Last) });
        }

        return true;
    }

    /// <summary>"100 ft of 16 gauge": a length right beside a conductor's size, in a sentence that speaks of a cord.</summary>
    private bool BesideSize(Quantity length) => scene.InSentence("cord", length.First)
        && quantities.Exists(size => size.Kind is "gauge" or "cable-size" && scene.Tokens[size.First].Clause == scene.Tokens[length.First].Clause);

    /// <summary>"3 volts left", "the cap is under 5 V": what is still on a capacitor, or on a frame.</summary>
    private bool Residual(Quantity q) => scene.InClause("left-over", q.First) || scene.InClause("shock-word", q.First)
        || (q.Values.Count == 1 && q.Values[0] < 24 && (scene.InClause("capacitor", q.First) || scene.InSentence("discharged", q.First)));

    private bool Left(Quantity q)
    {
        var frame = scene.InClause("shock-word", q.First);
        scene.Add(q.First, q.Last, new Fact.BenchTest { Test = frame ? "frame-voltage" : "capacitor-residual", Value = q.Values[0], Unit = "volt" });
        return true;
    }

    private bool Amps(Quantity q)
    {
        var near = Near(q, 5);
        if (q.UnitId == "milliamp")
        {
            return true; // a device's residual current; no motor is rated in milliamps
        }

        if (near("protection") || Enumerable.Range(q.First, q.Last - q.First + 1).Any(at => scene.At(at, "protection-size") is not null))
        {
            scene.Add(q.First, q.Last, new Fact.Choice { Question = "supply.protection-amps", Option = q.Values[0].ToString("0.##", System.Globalization.CultureInfo.InvariantCulture) });
            return true;
        }

        if (near("line-currents") && q.Values.Count == 1 && !quantities.Exists(power => power.UnitId is "horsepower" or "kilowatt" && scene.Tokens[power.First].Sentence == scene.Tokens[q.First].Sentence))
        {
            return true; // one line alone compares with nothing; amps read out with the power are the plate's
        }

        AddPlate(q, q.Kind == "sfa" || scene.InClause("service-factor-amps", q.First) ? "serviceFactorAmps" : near("locked-rotor") || q.Kind == "lra" ? "lockedRotorAmps" : "amps");
        return true;
    }

    private Func<string, bool> Near(Quantity q, int reach) => concept => scene.Near(q, reach, concept);

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
        scene.Add(q.First, q.Last, new Fact.Plate { Field = field, Value = PlateValue.Of(values), Unit = q.UnitId.Length == 0 || q.Unit!.Unit is "ratio" or "count" ? null : field == "kilowatts" ? "kilowatt" : q.UnitId });
    }

    /// <summary>"It was on 110 before", "wired for 230 and fed 115": volts of the links as they are.</summary>
    private bool WiredFor(Quantity q)
    {
        if (q.Values.Count != 1 || !(q.UnitId == "volt" || (q.Unit is null && scene.IsNominalVolts(q))))
        {
            return false;
        }

        var before = scene.Hits.Exists(hit => hit.Concept == "was-on" && hit.Last < q.First && q.First - hit.Last <= 2);
        var links = IsLink(q) && quantities.Exists(other => !ReferenceEquals(other, q) && (_belonging.IsSupply(other) || _belonging.Of(other, false) == "supply"));
        if (before || links)
        {
            scene.Add(q.First, q.Last, new Fact.Choice { Question = Fact.Choice.WiredFor, Option = q.Values[0].ToString("0.##", System.Globalization.CultureInfo.InvariantCulture) });
        }

        return before || links;
    }

    private bool VoltsHertzPhases(Quantity q)
    {
        if (WiredFor(q))
        {
            return true;
        }

        if (q.UnitId == "volt" && (q.Values.All(value => value <= 1) || IsBenchVolts(q)))
        {
            return false;
        }

        if (_belonging.IsLeftBehind(q) || (q.Kind == "phases" && (q.Values[0] == 1 || scene.IsWord(q.First - 1, "all", "each")) && scene.At(q.First, "line-currents") is not null))
        {
            return true;
        }

        switch (_belonging.Of(q, _supply.HasVolts))
        {
            case "supply":
                _supply.Take(q);
                return true;
            case "plate" when IsLink(q):
                Unsettle(q);
                return true;
            case "plate":
                AddPlate(q, q.Kind == "phases" ? "phases" : q.UnitId == "hertz" ? "hertz" : "volts");
                return true;
            default:
                Unsettle(q);
                return true;
        }
    }

    /// <summary>"12 V AC on T1-T2, read 5 V from T1 to T4": low volts among leads are of a test and no supply.</summary>
    private bool IsBenchVolts(Quantity q) => q.Values.All(volts => volts <= MostTestVolts) && !_belonging.IsSupply(q)
        && scene.Tokens.Count(token => token.Kind == TokenKind.Tag && token.Sentence == scene.Tokens[q.First].Sentence) > 1;

    private void Unsettle(Quantity q)
    {
        var member = q.Kind == "phases" ? "phases" : q.UnitId == "hertz" ? "hertz" : "volts";
        scene.Unsettled.Add(new Leftover(scene.Span(q.First, q.Last), [$"plate/{member}", $"supply/{member}"]));
    }

    /// <summary>"Wired for 115" may mean the links inside or the supply; it never takes the place of the plate's pair.</summary>
    private bool IsLink(Quantity q) => q.UnitId is "volt" or "" && Near(q, 1)("wired-for");

    /// <summary>Numbers without a unit: nominal volts and plate speeds are known by their figure, where the words around them agree.</summary>
    private bool Bare(Quantity q)
    {
        if (scene.InClause("probes-together", q.First) && q.Values.Count == 1)
        {
            scene.Add(q.First, q.Last, new Fact.BenchTest { Test = "probe-zero", Value = q.Values[0], Unit = "ohm" });
            return true;
        }

        if (RunFigures.IsOfLineVolts(q) && scene.InSentence("measured", q.First) && Near(q, 4)("supply-noun") && !scene.InSentence("capacitor", q.First))
        {
            scene.Add(q.First, q.Last, new Fact.BenchTest { Test = "supply-voltage", Value = q.Values[0], Unit = "volt" });
            return true;
        }

        if (Winding(q))
        {
            return true;
        }

        if (MeasuredOnRange(q) is { } range)
        {
            scene.Add(q.First, range.Last, new Fact.Capacitor { MeasuredMicrofarads = q.Values[0], Microfarads = range.Values[0], MicrofaradsTo = range.Values[1] });
            _gone.Add(range);
            return true;
        }

        if (q.Values.Count == 1 && scene.Hits.Exists(hit => hit.Concept == "in-place-of" && hit.Last == q.First - 1) && quantities.Exists(other => other.UnitId == "microfarad" && scene.Tokens[other.First].Sentence == scene.Tokens[q.First].Sentence))
        {
            scene.Add(q.First, q.Last, new Fact.Capacitor { Microfarads = q.Values[0] });
            return true;
        }

        if (scene.Asked?.Unit == "microfarad" && (q.Values is [var least, var most] && least < most || scene.Hits.Exists(hit => hit.Concept == "marked" && hit.Last < q.First && q.First - hit.Last <= 2)))
        {
            scene.Add(q.First, q.Last, new Fact.Capacitor { Microfarads = q.Values[0], MicrofaradsTo = q.Values.Count > 1 ? q.Values[1] : null });
            return true;
        }

        if (_runs.IsPlateAmps(q))
        {
            scene.Add(q.First, q.Last, new Fact.Plate { Field = "amps", Value = PlateValue.Of(q.Values), Unit = "amp" });
            return true;
        }

        var companions = _belonging.HasCompanion(q);
        if (scene.IsNominalVolts(q))
        {
            return _belonging.IsLeftBehind(q) || NominalVolts(q, companions);
        }

        if (q.Values.Count == 1 && scene.At(q.First, "plate-speed") is not null && scene.Hits.Exists(hit => hit.Concept == "turns-at" && hit.Last == q.First - 1))
        {
            scene.Add(q.First, q.Last, new Fact.Running { Rpm = q.Values[0] });
            return true;
        }

        if (q.Values.Count == 1 && scene.At(q.First, "plate-speed") is not null && (companions || scene.InSentence("plate-cue", q.First)))
        {
            scene.Add(q.First, q.Last, new Fact.Plate { Field = "rpm", Value = PlateValue.Of(q.Values), Unit = "rpm" });
            return true;
        }

        return false;
    }

    /// <summary>"The cap reads 180 on 161-193": a figure and the printed range right behind it.</summary>
    private Quantity? MeasuredOnRange(Quantity q) => q.Values.Count == 1 && scene.InClause("capacitor", q.First) && scene.InClause("measured", q.First)
        ? _open.Find(range => range.Unit is null && range.Values is [var low, var high] && low < high && range.First > q.Last && range.First - q.Last <= 3)
        : null;

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
            scene.Add(q.First, q.Last, new Fact.Plate { Field = "volts", Value = PlateValue.Of(q.Values), Unit = "volt" });
            return true;
        }

        if (scene.Asked is not null)
        {
            return false;
        }

        scene.Unsettled.Add(new Leftover(scene.Span(q.First, q.Last), ["plate/volts", "supply/volts"]));
        return true;
    }
}
