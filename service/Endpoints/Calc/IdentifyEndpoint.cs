using System.Text.Json;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.Rules.Windings;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>Which lead belongs to which winding, by readings in any order.</summary>
internal static class IdentifyEndpoint
{
    public static void MapIdentify(this RouteGroupBuilder calc) => calc.MapPost("/identify", Identify)
        .WithSummary("Tells the leads of a motor apart by meter readings in any order, and names the next reading")
        .WithDescription(
            "'plate' is what the plate says. 'leads' are tags, or {tag, marking}; tags that are markings themselves (T1, U1, or C, R and S) count as printed and are checked against the ohms. " +
            "'readings' are {from, to} with 'ohms' (null for over-range), or open, short or kick: true; 'from' and 'to' may be 'frame' or 'earth'; 'changesWithShaft' and 'together' are understood. " +
            "'meter' is {percent, counts, testLeadOhms, zeroed}; test leads that are not zeroed are taken off each reading; 'benchTests' may give their ohms as {test: probe-zero, value}. 'hasCapacitor' and 'capacitorBridged' may be left out, as may 'capacitorUse' (start or run, as printed on the one capacitor) and 'looks': " +
            "{bothWays, capacitorOutside, brushes, drags, speeds}, whether a control turns the motor either way, the capacitor's wires end on the leads, there are brushes, the shaft drags with the armature's ends held together, there are several speeds to choose from; 'ringLeads' are the tags of leads that were followed from the brushes of slip rings, one of a group is enough; " +
            "'benchTests' may also give what one winding showed of another, {test: induced-voltage, drive, read, appliedVolts, value} or {test: battery-flick, drive, read, outcome}, and 'instruments' (low-voltage-ac, battery) lets such a test be asked for: 'next' then has a 'setup' {drive, tie, read, appliedVolts}, null for a reading in ohms. " +
            "'unreadable' lists pairs that cannot be read; 'shortcuts' allows a next reading with several leads held together, 'checkFrame' wants one to the frame.");

    private static IResult Identify(IdentifyBody body, Identifier identifier, TradeKnowledge knowledge, Problems problems)
    {
        var wrong = new List<Problem>();
        var leads = (body.Leads ?? []).Select((lead, index) => Lead(lead, $"leads[{index}]", wrong)).OfType<(string Tag, string? Marking)>()
            .Where(lead => !IsFrame(lead.Tag)).ToList();
        if (body.Leads is null)
        {
            wrong.Add(Problem.NotGiven("leads"));
        }

        if (body.Readings is null)
        {
            wrong.Add(Problem.NotGiven("readings"));
        }

        var readings = (body.Readings ?? []).Select((reading, index) => Reading(reading, $"readings[{index}]", wrong)).ToList();
        wrong.AddRange((body.BenchTests ?? []).SelectMany((test, index) => Against(test, leads, $"benchTests[{index}]")));
        wrong.AddRange(InstrumentCheck.Of(knowledge, body.Instruments));
        return wrong.Count > 0 ? problems.Result(wrong) : problems.Result(identifier.Identify(new()
        {
            Leads = [.. leads.Select(lead => lead.Tag)],
            Markings = Markings(leads, identifier),
            Plate = (body.Plate ?? []).Where(field => field.Value is not null).Aggregate(PlateFields.Empty, (plate, field) => plate.With(field.Key, field.Value!)),
            HasCapacitor = body.HasCapacitor,
            CapacitorBridged = body.CapacitorBridged,
            CapacitorUse = body.CapacitorUse,
            Looks = body.Looks,
            RingLeads = [.. (body.RingLeads ?? []).OfType<string>()],
            Meter = MeterInput.Probed(body.Meter, (body.BenchTests ?? []).OfType<Fact.BenchTest>()),
            Readings = [.. readings.OfType<Fact.Reading>()],
            Unreadable = [.. (body.Unreadable ?? []).OfType<PairBody>().Select(pair => (pair.From, pair.To))],
            Tests = [.. (body.BenchTests ?? []).OfType<Fact.BenchTest>()],
            TestsAllowed = [.. (body.Instruments ?? []).Select(instrument => instrument switch { "low-voltage-ac" => "induced-voltage", "battery" => "battery-flick", _ => null }).OfType<string>()],
            Shortcuts = body.Shortcuts ?? false,
            CheckFrame = body.CheckFrame ?? false,
        }));
    }

    /// <summary>What is wrong with a test between windings: leads that are not there, or volts that cannot be.</summary>
    private static IEnumerable<Problem> Against(Fact.BenchTest? test, List<(string Tag, string? Marking)> leads, string at)
    {
        if (test is not { Test: "induced-voltage" or "battery-flick" })
        {
            yield break;
        }

        if (test.Drive.Concat(test.Read).FirstOrDefault(lead => !leads.Exists(known => string.Equals(known.Tag, lead, StringComparison.OrdinalIgnoreCase))) is { } unknown)
        {
            yield return new("unknown-lead", $"{at}.{(test.Drive.Contains(unknown) ? "drive" : "read")}", Statement.Of("problem.unknown-lead", ("lead", unknown), ("leads", string.Join(", ", leads.Select(lead => lead.Tag)))));
        }

        if (test.AppliedVolts is <= 0)
        {
            yield return new("invalid-fact", $"{at}.appliedVolts", Statement.Of("problem.not-positive", ("field", "appliedVolts"), ("value", test.AppliedVolts.Value.ToString(System.Globalization.CultureInfo.InvariantCulture))));
        }

        if (test.Value is < 0)
        {
            yield return new("invalid-fact", $"{at}.value", Statement.Of("problem.ends-negative", ("value", test.Value.Value.ToString(System.Globalization.CultureInfo.InvariantCulture))));
        }
    }

    private static (string Tag, string? Marking)? Lead(JsonElement lead, string at, List<Problem> wrong)
    {
        var tag = Text(lead.ValueKind == JsonValueKind.Object && lead.TryGetProperty("tag", out var named) ? named : lead);
        if (string.IsNullOrWhiteSpace(tag))
        {
            wrong.Add(Problem.NotGiven(at));
            return null;
        }

        return (tag.Trim(), lead.ValueKind == JsonValueKind.Object && lead.TryGetProperty("marking", out var marking) ? Text(marking) : null);
    }

    private static Fact.Reading? Reading(ReadingBody? reading, string at, List<Problem> wrong)
    {
        var (from, to) = (Text(reading?.From ?? default), Text(reading?.To ?? default));
        if (string.IsNullOrWhiteSpace(from) || string.IsNullOrWhiteSpace(to))
        {
            wrong.Add(Problem.NotGiven(string.IsNullOrWhiteSpace(from) ? $"{at}.from" : $"{at}.to"));
            return null;
        }

        double ohms = 0;
        var figure = reading!.Ohms.ValueKind == JsonValueKind.Number && reading.Ohms.TryGetDouble(out ohms);
        if (!figure && reading.Ohms.ValueKind is not (JsonValueKind.Undefined or JsonValueKind.Null))
        {
            wrong.Add(new("unreadable-quantity", $"{at}.ohms", Statement.Of("windings.absurd-ohms")));
            return null;
        }

        return new()
        {
            From = from.Trim(),
            To = to.Trim(),
            Ohms = figure ? ohms : null,
            Open = reading.Open ?? (reading.Ohms.ValueKind == JsonValueKind.Null && reading.Short != true && reading.Kick != true),
            Short = reading.Short ?? false,
            Kick = reading.Kick ?? false,
            ChangesWithShaft = reading.ChangesWithShaft ?? false,
            Celsius = reading.Celsius,
            Together = [.. (reading.Together ?? []).Select(Text).OfType<string>()],
        };
    }

    /// <summary>Markings that were given, or the tags themselves when all of them are markings.</summary>
    private static Dictionary<string, string> Markings(List<(string Tag, string? Marking)> leads, Identifier identifier)
    {
        var printed = leads.TrueForAll(lead => lead.Marking is not null) || identifier.AreMarkings([.. leads.Select(lead => lead.Marking ?? lead.Tag)]);
        return leads.Where(lead => lead.Marking is not null || printed).DistinctBy(lead => lead.Tag, StringComparer.Ordinal)
            .ToDictionary(lead => lead.Tag, lead => lead.Marking ?? lead.Tag, StringComparer.Ordinal);
    }

    private static bool IsFrame(string tag) =>
        string.Equals(tag, Fact.Reading.Frame, StringComparison.OrdinalIgnoreCase) || string.Equals(tag, Fact.Reading.Earth, StringComparison.OrdinalIgnoreCase);

    private static string? Text(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.String => value.GetString(),
        JsonValueKind.Number => value.GetRawText(),
        _ => null,
    };

    internal sealed record IdentifyBody(
        IReadOnlyList<JsonElement>? Leads, Dictionary<string, PlateValue?>? Plate, bool? HasCapacitor, bool? CapacitorBridged, string? CapacitorUse, Looks? Looks, IReadOnlyList<string?>? RingLeads, MeterInput? Meter,
        IReadOnlyList<ReadingBody?>? Readings, IReadOnlyList<Fact.BenchTest?>? BenchTests, IReadOnlyList<string?>? Instruments, IReadOnlyList<PairBody?>? Unreadable, bool? Shortcuts, bool? CheckFrame);

    internal sealed record ReadingBody(
        JsonElement From, JsonElement To, JsonElement Ohms, bool? Open, bool? Short, bool? Kick, bool? ChangesWithShaft, double? Celsius, IReadOnlyList<JsonElement>? Together);

    internal sealed record PairBody(string From, string To);
}
