using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Supply;

/// <summary>What cannot be a question about a supply.</summary>
internal static class SupplyProblems
{
    private static readonly string[] Starters = ["direct", "star-delta", "autotransformer"];
    private static readonly string[] Rectifiers = ["half-wave", "full-wave"];
    private static readonly string[] Layings = ["b2", "c"];
    private static readonly string[] Earthings = ["tn", "tn-s", "tn-c-s", "tt"];

    public static IEnumerable<Problem> Of(TradeKnowledge knowledge, SupplyInput input) =>
        Ranges(knowledge, input).Concat(Choices(knowledge, input)).Concat(Together(knowledge, input)).Concat(Frequency(knowledge, input));

    private static IEnumerable<Problem> Ranges(TradeKnowledge knowledge, SupplyInput input)
    {
        var rule = knowledge.Rules["supply-range"];
        var plate = knowledge.Rules["plate-range"];
        var edition = knowledge.Rules[input.Region == Region.Iec ? "iec-edition" : "nec-edition"];
        (string Field, double? Value, string Unit, double Least, double Most)[] figures =
        [
            ("volts", input.Volts, "volt", Above, rule["most-volts"]),
            ("horsepower", input.Horsepower, "horsepower", Above, rule["most-horsepower"]),
            ("kilowatts", input.Kilowatts, "kilowatt", Above, rule["most-kilowatts"]),
            ("plateAmps", input.PlateAmps, "amp", Above, rule["most-amps"]),
            ("plateVolts", input.PlateVolts, "volt", Above, rule["most-volts"]),
            ("plateHertz", input.PlateHertz, "hertz", plate["least-hertz"], plate["most-hertz"]),
            ("hertz", input.Hertz, "hertz", plate["least-hertz"], plate["most-hertz"]),
            ("serviceFactor", input.ServiceFactor, "ratio", 1, rule["most-service-factor"]),
            ("temperatureRise", input.TemperatureRise, "kelvin", Above, rule["most-rise"]),
            ("rpm", input.Rpm, "rpm", Above, rule["most-rpm"]),
            ("lengthMetres", input.LengthMetres, "metre", 0, rule["most-metres"]),
            ("loadKilogramSquareMetres", input.LoadKilogramSquareMetres, "ratio", Above, rule["most-amps"]),
            ("acceleratingNewtonMetres", input.AcceleratingNewtonMetres, "newton-metre", Above, rule["most-metres"]),
            ("faultAmps", input.FaultAmps, "amp", Above, rule["most-fault-amps"]),
            ("faultSeconds", input.FaultSeconds, "second", Above, rule["most-fault-seconds"]),
            ("tap", input.Tap, "ratio", Above, 1),
            ("singlePhaseVolts", input.SinglePhaseVolts, "volt", Above, rule["most-volts"]),
            ("powerFactor", input.PowerFactor, "ratio", Above, 1),
            ("efficiency", input.Efficiency, "ratio", Above, 1),
            ("conductors", input.Together, "count", 1, rule["most-conductors"]),
            ("edition", input.Region == Region.Iec ? input.Edition : null, "count", edition["first"], edition["last"]),
        ];
        foreach (var (field, value, unit, least, most) in figures.Where(figure => figure.Value is { } given && !(given >= figure.Least && given <= figure.Most)))
        {
            yield return new Problem("invalid-fact", field, Statement.Of(least is > 0 and <= Above ? "supply.out-of-range" : "supply.out-of-span",
                ("field", field), ("value", Units.Given(value!.Value, unit, 4)), ("least", Units.Text(least is > 0 and <= Above ? 0 : least, unit, 4)), ("most", Units.Text(most, unit, 4))));
        }

        foreach (var (_, at) in input.OtherMotorAmps.Select((amps, at) => (amps, at)).Where(other => !(other.amps > 0 && other.amps <= rule["most-amps"])))
        {
            yield return new Problem("invalid-fact", $"otherMotorAmps[{at}]", Statement.Of("supply.out-of-range",
                ("field", $"otherMotorAmps[{at}]"), ("value", Units.Given(input.OtherMotorAmps[at], "amp")), ("least", Units.Text(0, "amp")), ("most", Units.Text(rule["most-amps"], "amp"))));
        }

        var insulation = input.InsulationCelsius ?? knowledge.Rules[input.Region == Region.Iec ? "iec-cable-ambient" : "nec-terminal"][input.Region == Region.Iec ? "insulation-celsius" : "unmarked-celsius"];
        var hottest = input.Region == Region.Iec ? Math.Min(insulation, knowledge.Rules["iec-cable-ambient"]["insulation-celsius"]) : insulation;
        if (input.AmbientCelsius is { } ambient && !(ambient >= rule["least-ambient"] && ambient < hottest))
        {
            yield return new Problem("invalid-fact", "ambientCelsius", Statement.Of("supply.too-warm", ("ambient", Units.Given(ambient, "celsius")), ("insulation", Units.Text(hottest, "celsius"))));
        }
    }

    private static IEnumerable<Problem> Choices(TradeKnowledge knowledge, SupplyInput input)
    {
        if (input.Phases is not (1 or 3))
        {
            yield return new Problem("invalid-fact", "phases", Statement.Of("supply.phases", ("value", Units.Number(input.Phases))));
        }

        if (input.Region == Region.NorthAmerica && input.Edition is { } year && NecEditions(knowledge) is var editions && !editions.Contains(year))
        {
            yield return new Problem("invalid-fact", "edition", Statement.Of("supply.unknown-edition", ("edition", year.ToString(CultureInfo.InvariantCulture)),
                ("known", string.Join(", ", editions)), ("nearest", editions.MinBy(one => Math.Abs(one - year)).ToString(CultureInfo.InvariantCulture))));
        }

        if (input.Region == Region.NorthAmerica)
        {
            var columns = knowledge.Tables["nec-310-16-2011"].Columns.Select(double.Parse).ToList();
            foreach (var (field, value) in new[] { ("insulationCelsius", input.InsulationCelsius), ("terminalCelsius", input.TerminalCelsius) })
            {
                if (value is { } celsius && !columns.Contains(celsius))
                {
                    yield return new Problem("invalid-fact", field, Statement.Of("supply.celsius-column", ("value", Units.Given(celsius, "celsius")),
                        ("nearest", Units.Text(columns.MinBy(column => Math.Abs(column - celsius)), "celsius")), ("columns", string.Join(", ", columns.Select(column => Units.Text(column, "celsius"))))));
                }
            }
        }
        else if (input.InsulationCelsius is { } celsius && celsius < knowledge.Rules["iec-cable-ambient"]["insulation-celsius"])
        {
            yield return new Problem("invalid-fact", "insulationCelsius", Statement.Of("supply.celsius-column", ("value", Units.Given(celsius, "celsius")),
                ("nearest", Units.Text(knowledge.Rules["iec-cable-ambient"]["insulation-celsius"], "celsius")), ("columns", Units.Text(knowledge.Rules["iec-cable-ambient"]["insulation-celsius"], "celsius"))));
        }

        var motors = knowledge.Tables["nec-430-52"].Rows.Select(row => row.Key).ToArray();
        var devices = (input.Region == Region.Iec ? InternationalProtection.Names : ShortCircuitDevice.Names).Keys.ToArray();
        (string Field, string? Value, string[] Known)[] words =
        [
            ("protection", input.Protection, devices), ("motorType", input.MotorType, motors), ("starter", input.Starter, Starters),
            ("rectifier", input.Rectifier, Rectifiers), ("laying", input.Laying, Layings), ("earthing", input.Earthing, Earthings),
        ];
        foreach (var (field, value, known) in words.Where(word => word.Value is { } given && !word.Known.Contains(given, StringComparer.OrdinalIgnoreCase)))
        {
            yield return new Problem("invalid-fact", field, Statement.Of("supply.unknown-word", ("field", field), ("value", value!), ("known", string.Join(", ", known))));
        }

        if (input.Material is { } material && !string.Equals(material, "copper", StringComparison.OrdinalIgnoreCase))
        {
            yield return new Problem("invalid-fact", "material", Statement.Of("supply.material", ("material", material)));
        }

        if (input.CodeLetter is { } letter && knowledge.Tables["nec-430-7-b"].Row(letter.Trim()) is null)
        {
            yield return new Problem("invalid-fact", "codeLetter", Statement.Of("nameplate.code-unknown", ("letter", letter), ("letters", string.Join(' ', knowledge.Tables["nec-430-7-b"].Rows.Select(row => row.Key)))));
        }
    }

    private static IEnumerable<Problem> Together(TradeKnowledge knowledge, SupplyInput input)
    {
        if (input.Horsepower is null && input.Kilowatts is null && input.PlateAmps is null)
        {
            yield return new Problem("invalid-fact", "horsepower", Statement.Of("supply.size-needed"));
        }

        var rule = knowledge.Rules["pc-kw-hp"];
        if (input is { Horsepower: { } horsepower and > 0, Kilowatts: { } kilowatts } && (kilowatts / horsepower < rule["least"] || kilowatts / horsepower > rule["most"]))
        {
            yield return new Problem("invalid-fact", "kilowatts", Statement.Of("supply.two-powers", ("horsepower", Units.Text(horsepower, "horsepower")), ("kilowatts", Units.Text(kilowatts, "kilowatt"))));
        }

        if (input.MotorType is "dc" && (input.Phases == 3 || input.Region == Region.Iec))
        {
            yield return new Problem("invalid-fact", "motorType", Statement.Of("supply.direct-current"));
        }

        if (input.Rectifier is not null && input.MotorType is not "dc")
        {
            yield return new Problem("invalid-fact", "rectifier", Statement.Of("supply.rectifier"));
        }

        if (input.MotorType is { } type && type is not "dc" && knowledge.Tables["nec-430-52"].Row(type) is not null && (type is "single-phase") != (input.Phases == 1) && input.Phases is 1 or 3 && input.Region == Region.NorthAmerica)
        {
            yield return new Problem("invalid-fact", "motorType", Statement.Of("supply.motor-type-phases", ("type", type), ("phases", Units.Number(input.Phases)), ("instead", input.Phases == 1 ? "single-phase" : "squirrel-cage, design-b, synchronous, wound-rotor")));
        }

        if (input.FaultAmps is null != input.FaultSeconds is null)
        {
            var absent = input.FaultAmps is null ? "faultAmps" : "faultSeconds";
            yield return Problem.NotGiven(absent);
        }

        if (input.FaultAmps is not null && input.Region == Region.NorthAmerica)
        {
            yield return new Problem("invalid-fact", "faultAmps", Statement.Of("supply.fault-elsewhere"));
        }

        foreach (var (field, given) in new[] { ("laying", input.Laying is not null), ("earthing", input.Earthing is not null), ("unitedKingdom", input.UnitedKingdom) }.Where(one => one.Item2 && input.Region == Region.NorthAmerica))
        {
            yield return new Problem("invalid-fact", field, Statement.Of("supply.iec-only", ("field", field)));
        }

        if (input.Tap is not null && input.Starter is not "autotransformer")
        {
            yield return new Problem("invalid-fact", "tap", Statement.Of("supply.tap-without"));
        }

        if (input.Starter is "autotransformer" && input.Tap is null)
        {
            yield return Problem.NotGiven("tap");
        }

        if (input.SinglePhaseVolts is not null && input.Phases == 1)
        {
            yield return new Problem("invalid-fact", "singlePhaseVolts", Statement.Of("supply.single-phase-volts"));
        }

        if (input.Starter is "star-delta" && input.Phases == 1)
        {
            yield return new Problem("invalid-fact", "starter", Statement.Of("supply.star-delta-three-phase"));
        }
    }

    private static List<int> NecEditions(TradeKnowledge knowledge)
    {
        var rule = knowledge.Rules["nec-edition"];
        return [.. Enumerable.Range(0, 1 + (int)((rule["last"] - rule["first"]) / rule["every"])).Select(at => (int)(rule["first"] + at * rule["every"]))];
    }

    /// <summary>Tables and reactances are those of the two public frequencies.</summary>
    private static IEnumerable<Problem> Frequency(TradeKnowledge knowledge, SupplyInput input)
    {
        var rule = knowledge.Rules["supply-frequencies"];
        double[] known = [rule["iec-hertz"], rule["na-hertz"]];
        if (input.Hertz is { } hertz && !Array.Exists(known, one => Math.Abs(hertz / one - 1) <= rule["band"]))
        {
            yield return new Problem("invalid-fact", "hertz", Statement.Of("supply.hertz",
                ("value", Units.Given(hertz, "hertz")), ("known", string.Join(", ", known.Select(one => Units.Text(one, "hertz")))), ("nearest", Units.Text(known.MinBy(one => Math.Abs(one - hertz)), "hertz"))));
        }
    }

    private const double Above = double.Epsilon;
}
