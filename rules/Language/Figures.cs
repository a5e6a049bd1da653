using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Decides what the numbers belong to: plate, supply, capacitor, insulation, or a motor that runs.</summary>
internal sealed class Figures(Scene scene, List<Quantity> quantities)
{
    private readonly List<Quantity> _open = [.. quantities];
    private readonly SupplyDraft _supply = new(scene);

    public void Read()
    {
        Each(q => q.UnitId == "microfarad", Capacitors);
        Each(q => q.UnitId == "megohm" || (q.UnitId == "ohm" && q.Values[0] >= 1e5 && scene.InSentence("insulation-word", q.First)), Insulation);
        Each(q => q.UnitId is "ohm" or "kilohm", Resistances);
        Each(q => q.UnitId == "celsius", Temperatures);
        Each(q => q.UnitId is "second" or "minute" or "metre" || q.Kind is "hour" or "day" or "year" or "inch" or "percent", Others);
        Running();
        Each(q => q.UnitId == "volt" && Residual(q), Left);
        Each(q => q.UnitId == "amp" || q.UnitId == "milliamp", Amps);
        Each(q => q.UnitId is "horsepower" or "kilowatt" or "watt" or "rpm" || q.Kind is "service-factor" or "power-factor" or "efficiency" or "poles", Plate);
        Each(q => q.UnitId == "volt" || q.UnitId == "hertz" || q.Kind == "phases", VoltsHertzPhases);
        Each(q => q.Unit is null, Bare);
        _supply.Finish();
    }

    private void Each(Func<Quantity, bool> which, Func<Quantity, bool> read)
    {
        foreach (var quantity in _open.Where(which).ToList())
        {
            if (read(quantity))
            {
                scene.Use(quantity.First, quantity.Last);
                _open.Remove(quantity);
            }
        }
    }

    private bool Capacitors(Quantity q)
    {
        var volts = _open.Find(v => v.UnitId == "volt" && ((v.First > q.Last && v.First - q.Last <= 3) || (v.First > q.Last && scene.Tokens[v.First].Clause == scene.Tokens[q.First].Clause)
            || (v.Last < q.First && q.First - v.Last <= 2)) && v.Values.Count == 1);
        var bare = volts is null ? _open.Find(v => v.Unit is null && v.First > q.Last && v.First - q.Last <= 2 && v.Values.Count == 1 && v.Values[0] >= 100) : volts;
        var measured = scene.InClause("measured", q.First) && !scene.InClause("marked", q.First);
        var fact = new Fact.Capacitor
        {
            Microfarads = measured ? null : q.Values[0],
            MicrofaradsTo = !measured && q.Values.Count > 1 ? q.Values[1] : null,
            MeasuredMicrofarads = measured ? q.Values[0] : null,
            Volts = bare?.Values[0],
            Use = scene.InClause("start-use", q.First) ? "start" : scene.InClause("run-use", q.First) ? "run" : "unknown",
        };
        scene.Add(q.First, q.Last, fact);
        if (bare is not null)
        {
            scene.Use(bare.First, bare.Last);
            _open.Remove(bare);
        }

        return true;
    }

    private bool Insulation(Quantity q)
    {
        var sentence = scene.Tokens[q.First].Sentence;
        var celsius = _open.Find(t => t.UnitId == "celsius" && scene.Tokens[t.First].Sentence == sentence);
        var volts = _open.Find(v => v.UnitId == "volt" && scene.Tokens[v.First].Sentence == sentence && v.Values[0] >= 100);
        var minute = _open.Find(t => t.UnitId == "minute" && scene.Tokens[t.First].Sentence == sentence);
        scene.Add(q.First, q.Last, new Fact.Insulation
        {
            Megohms = q.UnitId == "megohm" ? q.Values[0] : q.Values[0] / 1e6,
            Celsius = celsius?.Values[0],
            TestVolts = volts?.Values[0],
            AtMinute = minute?.Values[0],
        });
        foreach (var used in new[] { celsius, volts, minute }.OfType<Quantity>())
        {
            scene.Use(used.First, used.Last);
            _open.Remove(used);
        }

        return true;
    }

    /// <summary>The probes alone, the resistor for the discharge; other ohms without leads stay open.</summary>
    private bool Resistances(Quantity q)
    {
        if (scene.InSentence("probes-together", q.First) && q.UnitId == "ohm")
        {
            scene.Add(q.First, q.Last, new Fact.BenchTest { Test = "probe-zero", Value = q.Values[0], Unit = "ohm" });
            return true;
        }

        return scene.InClause("resistor", q.First);
    }

    private bool Temperatures(Quantity q)
    {
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
        if (q.UnitId == "metre" && q.Kind is not "inch" && scene.InClause("cord", q.First))
        {
            scene.Add(q.First, q.Last, new Fact.Choice { Question = "supply.length-metres", Option = q.Values[0].ToString("0.##", System.Globalization.CultureInfo.InvariantCulture) });
        }

        return true;
    }

    private void Running()
    {
        var asked = scene.Asked?.About is "running" or "run-current" or "run-speed" or "voltage-at-motor-starting";
        foreach (var sentence in _open.GroupBy(q => scene.Tokens[q.First].Sentence).ToList())
        {
            var runs = scene.Hits.Find(hit => hit.Concept == "running-now" && !hit.Denied && scene.Tokens[hit.First].Sentence == sentence.Key);
            var draws = scene.Hits.Exists(hit => hit.Concept == "draws" && scene.Tokens[hit.First].Sentence == sentence.Key);
            if ((runs is null && !draws && !asked) || sentence.Any(q => q.UnitId is "horsepower" or "kilowatt") || scene.Hits.Exists(hit => hit.Concept == "plate-cue" && scene.Tokens[hit.First].Sentence == sentence.Key))
            {
                continue;
            }

            var measured = sentence.Where(q => q.Values.Count == 1 && q.UnitId is "volt" or "amp" or "rpm" && !IsSupply(q) && !scene.InClause("protection", q.First) && (runs is not null || asked || q.UnitId == "amp")).ToList();
            if (measured.Count == 0)
            {
                continue;
            }

            double? Of(string unit) => measured.Find(q => q.UnitId == unit)?.Values[0];
            var (first, last) = (Math.Min(runs?.First ?? int.MaxValue, measured.Min(q => q.First)), measured.Max(q => q.Last));
            scene.Add(first, last, new Fact.Running
            {
                Volts = Of("volt"),
                Amps = Of("amp"),
                Rpm = Of("rpm"),
                Direction = scene.Hits.Exists(hit => hit.Concept == "wrong-way" && scene.Tokens[hit.First].Sentence == sentence.Key) ? "wrong"
                    : scene.Hits.Exists(hit => hit.Concept == "right-way" && scene.Tokens[hit.First].Sentence == sentence.Key) ? "right" : null,
                Outcome = runs is not null ? "ran" : null,
            });
            measured.ForEach(q => _open.Remove(q));
        }
    }

    private bool Residual(Quantity q) => scene.InClause("left-over", q.First) || scene.InClause("shock-word", q.First);

    private bool Left(Quantity q)
    {
        var frame = scene.InClause("shock-word", q.First);
        scene.Add(q.First, q.Last, new Fact.BenchTest { Test = frame ? "frame-voltage" : "capacitor-residual", Value = q.Values[0], Unit = "volt" });
        return true;
    }

    private bool Amps(Quantity q)
    {
        var near = Near(q, 5);
        if (near("protection"))
        {
            scene.Add(q.First, q.Last, new Fact.Choice { Question = "supply.protection-amps", Option = q.Values[0].ToString("0.##", System.Globalization.CultureInfo.InvariantCulture) });
            return true;
        }

        if (near("line-currents"))
        {
            scene.Add(q.First, q.Last, new Fact.BenchTest { Test = "line-currents", Outcome = scene.Span(q.First, q.Last), Unit = "amp" });
            return true;
        }

        AddPlate(q, q.Kind == "sfa" || near("service-factor-amps") ? "serviceFactorAmps" : near("locked-rotor") || q.Kind == "lra" ? "lockedRotorAmps" : "amps");
        return true;
    }

    private Func<string, bool> Near(Quantity q, int reach) => concept => scene.Hits.Exists(hit =>
        hit.Concept == concept && scene.Tokens[hit.First].Sentence == scene.Tokens[q.First].Sentence && hit.First - q.Last <= reach && q.First - hit.Last <= reach);

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

    private bool VoltsHertzPhases(Quantity q)
    {
        if (q.UnitId == "volt" && q.Values.All(value => value <= 1))
        {
            return false;
        }

        switch (Where(q))
        {
            case "supply":
                _supply.Take(q);
                return true;
            case "plate":
                AddPlate(q, q.Kind == "phases" ? "phases" : q.UnitId == "hertz" ? "hertz" : "volts");
                return true;
            default:
                scene.Unsettled.Add(new Leftover(scene.Span(q.First, q.Last), [$"plate/{(q.Kind == "phases" ? "phases" : q.UnitId == "hertz" ? "hertz" : "volts")}", "supply/volts"]));
                return true;
        }
    }

    /// <summary>Plate or supply, by the nearest word that tells; by what stands beside it; <see langword="null"/> where nothing tells.</summary>
    private string? Where(Quantity q)
    {
        var (sentence, clause) = (scene.Tokens[q.First].Sentence, scene.Tokens[q.First].Clause);
        if (After(q, clause) is { } after)
        {
            return after;
        }

        var before = Cue(q, sentence, clause);
        var companions = quantities.Exists(other => scene.Tokens[other.First].Sentence == sentence && IsCompanion(other));
        if (before is "supply-cue")
        {
            return "supply";
        }

        if (before is "plate-cue" || companions)
        {
            return before is "supply-weak" && q.Values.Count == 1 && !quantities.Exists(other => scene.Tokens[other.First].Clause == clause && IsCompanion(other)) ? "supply" : "plate";
        }

        if (before is "supply-weak")
        {
            return "supply";
        }

        if (scene.Asked?.About is "plate" || (scene.Asked?.About?.StartsWith("plate.", StringComparison.Ordinal) ?? false) || (q.UnitId == "volt" && q.Values.Count > 1))
        {
            return "plate";
        }

        if (scene.Asked?.About is "supply" || _supply.HasVolts || scene.InSentence("supply-any", q.First))
        {
            return "supply";
        }

        if (scene.InSentence("plate-cue", q.First))
        {
            return "plate";
        }

        return quantities.Exists(other => other != q && scene.Tokens[other.First].Sentence == sentence && (other.UnitId is "volt" or "hertz" || other.Kind == "phases"))
            ? "supply"
            : q.Kind == "phases" ? "plate" : null;
    }

    private static bool IsCompanion(Quantity other) => other.UnitId is "horsepower" or "kilowatt" or "watt" or "rpm" || other.Kind is "service-factor" or "amp" or "sfa";

    private string? After(Quantity q, int clause)
    {
        foreach (var hit in scene.Hits)
        {
            if (hit.First > q.Last && hit.First - q.Last <= 3 && scene.Tokens[hit.First].Clause == clause && !quantities.Exists(other => other.First > q.Last && other.First < hit.First && other.Unit is null))
            {
                if (hit.Concept == "supply-noun" || hit.Concept.StartsWith("supply.", StringComparison.Ordinal))
                {
                    return "supply";
                }

                if (hit.Concept == "plate-noun")
                {
                    return "plate";
                }
            }
        }

        return null;
    }

    private string? Cue(Quantity q, int sentence, int clause)
    {
        string? cue = null;
        var nearest = -1;
        foreach (var hit in scene.Hits.Where(hit => hit.Last < q.First && scene.Tokens[hit.First].Sentence == sentence))
        {
            var tells = hit.Concept switch
            {
                "supply-cue" or "supply-noun" or "supply-weak" when scene.Tokens[hit.First].Clause != clause => null,
                "supply-cue" or "supply-noun" => "supply-cue",
                _ when hit.Concept.StartsWith("supply.", StringComparison.Ordinal) => "supply-cue",
                "supply-weak" => "supply-weak",
                "supply-next" when hit.Last == q.First - 1 => "supply-cue",
                "plate-noun" when cue == "supply-cue" => null,
                "plate-cue" or "plate-noun" => "plate-cue",
                _ => null,
            };
            if (tells is not null && hit.Last >= nearest)
            {
                (cue, nearest) = (tells, hit.Last);
            }
        }

        return cue;
    }

    private bool IsSupply(Quantity q) => q.UnitId == "volt" && Cue(q, scene.Tokens[q.First].Sentence, scene.Tokens[q.First].Clause) is "supply-cue";

    /// <summary>Numbers without a unit: nominal volts and plate speeds are known by their figure, where the words around them agree.</summary>
    private bool Bare(Quantity q)
    {
        if (scene.InClause("probes-together", q.First) && q.Values.Count == 1)
        {
            scene.Add(q.First, q.Last, new Fact.BenchTest { Test = "probe-zero", Value = q.Values[0], Unit = "ohm" });
            return true;
        }

        var sentence = scene.Tokens[q.First].Sentence;
        var companions = quantities.Exists(other => scene.Tokens[other.First].Sentence == sentence && IsCompanion(other));
        var nominal = Enumerable.Range(q.First, q.Last - q.First + 1).Where(at => scene.Tokens[at].Kind == TokenKind.Number).All(at => scene.At(at, "nominal-volts") is not null);
        if (nominal)
        {
            return NominalVolts(q, companions);
        }

        if (q.Values.Count == 1 && scene.At(q.First, "plate-speed") is not null && (companions || scene.InSentence("plate-cue", q.First)))
        {
            scene.Add(q.First, q.Last, new Fact.Plate { Field = "rpm", Value = PlateValue.Of(q.Values), Unit = "rpm" });
            return true;
        }

        return false;
    }

    private bool NominalVolts(Quantity q, bool companions)
    {
        var where = Where(q);
        if (where == "supply")
        {
            _supply.TakeVolts(q);
            return true;
        }

        if (where == "plate" || companions)
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
