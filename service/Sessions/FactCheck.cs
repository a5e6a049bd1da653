using System.Collections.Frozen;
using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.Rules.Windings;

namespace WireCoach.Service.Sessions;

/// <summary>Whether facts can be taken into a case at all; puts their leads into the person's own writing.</summary>
internal sealed class FactCheck(TradeKnowledge knowledge)
{
    public const int MostFacts = 200;
    public const int TagLength = 24;
    public const int TextLength = 2000;
    private const int IdLength = 64;
    private const string Goal = "goal";
    private const string TestName = "term.test.";
    private const string Confirmation = "confirm/";

    private static readonly FrozenSet<string> Conductors = FrozenSet.ToFrozenSet(["L1", "L2", "L3", "N", "PE"], StringComparer.Ordinal);
    private static readonly string[] CapacitorUses = ["start", "run", "both", "unknown"];
    private static readonly string[] Systems = ["single-phase", "split-phase", "three-phase-star", "three-phase-delta"];
    private static readonly string[] Directions = ["clockwise", "counterclockwise", "right", "wrong"];
    private static readonly string[] Ends = ["shaft-end", "opposite-end"];

    private readonly string[] _instruments = InstrumentsOf(knowledge);
    private readonly FrozenSet<string> _tests = FrozenSet.ToFrozenSet(
        knowledge.Tests.Keys.Concat(knowledge.Questions.Keys)
            .Concat(knowledge.Sentences.Ids.Where(id => id.StartsWith(TestName, StringComparison.Ordinal)).Select(id => id[TestName.Length..])),
        StringComparer.Ordinal);
    private readonly string[] _goals =
    [
        .. knowledge.Questions[Goal].Options.Select(option => option.Id)
            .Concat(knowledge.Words.Rules.Keys.Where(id => id.StartsWith(Goal + "/", StringComparison.Ordinal)).Select(id => id[(Goal.Length + 1)..]))
            .Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal),
    ];

    private readonly string[] _confirmations =
    [
        .. knowledge.Confirmations.Keys.Concat(knowledge.Questions.Values.Where(question => question.Kind == "confirm").Select(question => question.Id))
            .Concat(knowledge.Words.Rules.Keys.Where(id => id.StartsWith(Confirmation, StringComparison.Ordinal)).Select(id => id[Confirmation.Length..]))
            .Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal),
    ];

    /// <summary>The instruments of all tests, by id.</summary>
    public static string[] InstrumentsOf(TradeKnowledge knowledge) =>
        [.. knowledge.Tests.Values.SelectMany(test => test.Instruments).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>The facts as they enter the case, or what is wrong with them.</summary>
    /// <param name="file">The case that they enter.</param>
    /// <param name="facts">The facts in their order.</param>
    /// <param name="path">The member that holds them, for the problems.</param>
    public Answer<IReadOnlyList<Fact>> Check(CaseFile file, IReadOnlyList<Fact> facts, string path)
    {
        var problems = new List<Problem>();
        var leads = new Leads(file);
        var taken = facts.Select((fact, at) =>
        {
            var each = new Member($"{path}[{at.ToString(CultureInfo.InvariantCulture)}]", problems);
            Common(file, fact, each);
            return Checked(leads, fact, each);
        }).ToList();
        return problems.Count == 0 ? Answer<IReadOnlyList<Fact>>.Given(taken) : Answer<IReadOnlyList<Fact>>.Refused(problems);
    }

    /// <summary>What is wrong with a fact that came as a member of its own and not in a list: a plate's value and an instrument's id are that member.</summary>
    /// <param name="file">The case that it enters.</param>
    /// <param name="fact">The fact.</param>
    /// <param name="member">The member.</param>
    public IEnumerable<Problem> Against(CaseFile file, Fact fact, string member) => Check(file, [fact], member).Problems.Select(problem =>
    {
        var field = fact is Fact.Plate or Fact.Instrument ? member : problem.Field.Replace($"{member}[0]", member, StringComparison.Ordinal);
        return problem with { Field = field, Advice = problem.Advice.With("field", field) };
    });

    private static void Common(CaseFile file, Fact fact, Member each)
    {
        each.Text("span", fact.Span, TextLength);
        if (fact.Replaces is { } replaced && !file.Facts.Exists(known => known.FactId == replaced))
        {
            each.Refuse("replaces", field => Statement.Of("fact.replaces-nothing", ("field", field), ("fact", Shortened(replaced))));
        }
    }

    private Fact Checked(Leads leads, Fact fact, Member each)
    {
        switch (fact)
        {
            case Fact.Reading reading:
                return Reading(leads, reading, each) is var taken && taken.IsOfPair(Fact.Reading.Frame, Fact.Reading.Earth) ? EarthTest(taken) : taken;
            case Fact.Plate plate:
                Plate(plate, each);
                return plate;
            case Fact.Supply supply:
                Supply(supply, each);
                return supply;
            case Fact.Lead lead:
                return leads.Name(lead, each);
            case Fact.Capacitor capacitor:
                Range(each, "microfarads", capacitor.Microfarads, "input-microfarads", "µF");
                Range(each, "microfaradsTo", capacitor.MicrofaradsTo, "input-microfarads", "µF");
                Range(each, "measuredMicrofarads", capacitor.MeasuredMicrofarads, "input-microfarads", "µF");
                Range(each, "volts", capacitor.Volts, "input-capacitor-volts", "V");
                Range(each, "acrossVolts", capacitor.AcrossVolts, "input-capacitor-volts", "V");
                Range(each, "throughAmps", capacitor.ThroughAmps, "input-amps", "A");
                each.OneOf("use", capacitor.Use, CapacitorUses);
                return capacitor;
            case Fact.BenchTest test:
                return Test(leads, test, each);
            case Fact.Insulation insulation:
                Range(each, "megohms", insulation.Megohms, "input-megohms", "MΩ");
                Range(each, "testVolts", insulation.TestVolts, "input-test-volts", "V");
                Range(each, "celsius", insulation.Celsius, "input-insulation-celsius", "°C");
                Range(each, "atMinute", insulation.AtMinute, "input-minutes", "min");
                return insulation;
            case Fact.Running running:
                Running(running, each);
                return running;
            case Fact.Joint joint:
                return Joint(leads, joint, each);
            case Fact.Application application:
                each.Text("text", application.Text, TextLength, needed: true);
                each.Id("application", application.ApplicationId);
                return application;
            case Fact.Choice choice:
                each.Id("question", choice.Question, needed: true);
                each.Id("option", choice.Option, needed: true);
                return choice;
            case Fact.Unknown unknown:
                each.Id("question", unknown.Question, needed: true);
                return unknown;
            case Fact.Instrument instrument:
                each.Id("id", instrument.Id, needed: true);
                each.OneOf("id", instrument.Id, _instruments);
                Range(each, "volts", instrument.Volts, "input-transformer-volts", "V");
                return instrument;
            case Fact.Symptom symptom when symptom.Id is { Length: > 0 } id && !knowledge.Symptoms.ContainsKey(id):
                each.Refuse("id", field => Statement.Of("diagnose.unknown-symptom", ("field", field), ("value", Shortened(id))));
                return symptom;
            case Fact.Goal goal when goal.Id is { Length: > 0 }:
                each.OneOf("id", goal.Id, _goals);
                return goal;
            case Fact.Confirm confirm:
                each.Id("id", confirm.Id, needed: true);
                each.OneOf("id", confirm.Id, _confirmations);
                return confirm;
            default: // a symptom or a goal without an id
                each.Id("id", fact.Id, needed: true);
                return fact;
        }
    }

    private Fact.Reading Reading(Leads leads, Fact.Reading reading, Member each)
    {
        var (from, to) = (leads.Find(reading.From, each, "from"), leads.Find(reading.To, each, "to"));
        var together = reading.Together.Select(tag => leads.Find(tag, each, "together")).ToList();
        if (from == to)
        {
            each.Refuse("to", _ => Statement.Of("problem.same-lead", ("lead", Shortened(to))));
        }

        Range(each, "ohms", reading.Ohms, "input-ohms", "Ω");
        Range(each, "celsius", reading.Celsius, "input-celsius", "°C");
        if ((reading.Ohms is null ? 0 : 1) + (reading.Open ? 1 : 0) + (reading.Short ? 1 : 0) + (reading is { Kick: true, Open: false } ? 1 : 0) != 1)
        {
            each.Refuse("ohms", _ => Statement.Of("fact.one-outcome"));
        }

        return reading with { From = from, To = to, Together = together };
    }

    /// <summary>What is read from the frame to earth is no reading of a winding.</summary>
    private static Fact.BenchTest EarthTest(Fact.Reading reading) => new()
    {
        Test = Fact.BenchTest.EarthContinuity,
        Value = reading.Short ? 0 : reading.Ohms,
        Unit = "ohm",
        Outcome = reading.Open ? Fact.BenchTest.NoPath : null,
        FactId = reading.FactId,
        How = reading.How,
        Span = reading.Span,
        Replaces = reading.Replaces,
        At = reading.At,
    };

    private void Plate(Fact.Plate plate, Member each)
    {
        each.Id("field", plate.Field, needed: true);
        each.Text("unit", plate.Unit, IdLength);
        each.OneOf("of", plate.Of, [Fact.Plate.Old]);
        each.Text("value", plate.Value?.Text, TextLength, needed: plate.Value is null || plate.Value.Numbers.Count == 0);
        foreach (var number in plate.Value?.Numbers ?? [])
        {
            Range(each, "value", number, "input-plate", plate.Unit ?? string.Empty);
        }
    }

    private void Supply(Fact.Supply supply, Member each)
    {
        Range(each, "volts", supply.Volts, "input-volts", "V", aboveLeast: true);
        Range(each, "phases", supply.Phases, "input-phases", string.Empty);
        Range(each, "hertz", supply.Hertz, "input-hertz", "Hz");
        each.OneOf("system", supply.System, Systems);
        if (supply is { Volts: null, Phases: null, Hertz: null, System: null })
        {
            each.Refuse("volts", field => Statement.Of("fact.nothing-in-it", ("field", field), ("options", "volts, phases, hertz, system")));
        }
    }

    private Fact.BenchTest Test(Leads leads, Fact.BenchTest test, Member each)
    {
        each.Id("test", test.Test, needed: true);
        if (test.Test is { Length: > 0 } id && !_tests.Contains(id))
        {
            each.Refuse("test", field => Statement.Of("diagnose.unknown-test", ("field", field), ("value", Shortened(id))));
        }

        each.Id("outcome", test.Outcome);
        each.Text("unit", test.Unit, IdLength);
        Range(each, "value", test.Value, "input-test-value", test.Unit ?? string.Empty);
        var probes = knowledge.Rules["input-probe-ohms"]["most"];
        if (test is { Test: Fact.BenchTest.ProbeZero, Value: { } added } && added > probes)
        {
            each.Refuse("value", _ => Statement.Of("fact.probes-too-high", ("value", Figure(added)), ("most", Figure(probes))));
        }

        Range(each, "appliedVolts", test.AppliedVolts, "input-volts", "V", aboveLeast: true);
        if (test.AppliedVolts is not <= 0 && EndsLimits.Against(knowledge, test.Test ?? string.Empty, test.Value, test.AppliedVolts) is { } tooHigh)
        {
            each.Refuse("value", _ => tooHigh);
        }

        return test with
        {
            Drive = [.. test.Drive.Select(tag => leads.Find(tag, each, "drive"))],
            Tie = [.. test.Tie.Select(tied => tied.Select(tag => leads.Find(tag, each, "tie")).ToList())],
            Read = [.. test.Read.Select(tag => leads.Find(tag, each, "read"))],
        };
    }

    private void Running(Fact.Running running, Member each)
    {
        Range(each, "volts", running.Volts, "input-volts", "V");
        Range(each, "amps", running.Amps, "input-amps", "A");
        Range(each, "rpm", running.Rpm, "input-rpm", "rpm");
        Range(each, "celsius", running.Celsius, "input-celsius", "°C");
        each.OneOf("direction", running.Direction, Directions);
        each.OneOf("seenFrom", running.SeenFrom, Ends);
        each.Id("outcome", running.Outcome);
    }

    private static Fact.Joint Joint(Leads leads, Fact.Joint joint, Member each)
    {
        var tags = joint.Leads.Select(tag => leads.Find(tag, each, "leads")).ToList();
        each.OneOf("conductor", joint.Conductor, [.. Conductors.Order(StringComparer.Ordinal)]);
        if (tags.Count == 0)
        {
            each.Refuse("leads", field => Statement.Of("fact.nothing-in-it", ("field", field), ("options", "leads")));
        }

        if (tags.GroupBy(tag => tag, StringComparer.Ordinal).FirstOrDefault(tag => tag.Count() > 1) is { } twice)
        {
            each.Refuse("leads", field => Statement.Of("fact.lead-taken", ("lead", Shortened(twice.Key)), ("field", field)));
        }

        return joint with { Leads = tags };
    }

    private void Range(Member each, string member, double? value, string limit, string unit, bool aboveLeast = false)
    {
        var rule = knowledge.Rules[limit];
        if (value is not { } number || (number >= rule["least"] && number <= rule["most"] && !(aboveLeast && number == rule["least"])))
        {
            return;
        }

        each.Refuse(member, field => Statement.Of(
            "fact.out-of-range", ("field", field), ("value", Figure(number)), ("least", Figure(rule["least"])), ("most", $"{Figure(rule["most"])} {unit}".TrimEnd())));
    }

    private static string Figure(double number) => number.ToString("0.####", CultureInfo.InvariantCulture) is { Length: <= 20 } plain
        ? plain
        : number.ToString("0.###e0", CultureInfo.InvariantCulture);

    public static string Shortened(string text) => text.Length <= TagLength ? text : $"{text[..TagLength]}…";

    /// <summary>One fact in the body, and where its problems go.</summary>
    private sealed class Member(string path, List<Problem> problems)
    {
        public void Refuse(string member, Func<string, Statement> advice, string id = "invalid-fact") =>
            problems.Add(new Problem(id, $"{path}.{member}", advice($"{path}.{member}")));

        public void Text(string member, string? text, int most, bool needed = false)
        {
            if (needed && string.IsNullOrWhiteSpace(text))
            {
                Refuse(member, field => Statement.Of("session.text-empty", ("field", field)));
            }
            else if (text?.Length > most)
            {
                Refuse(member, field => Statement.Of("session.text-too-long", ("field", field), ("most", most.ToString(CultureInfo.InvariantCulture))));
            }
        }

        public void Id(string member, string? id, bool needed = false)
        {
            if (id is null ? needed : id.Length is 0 or > IdLength || !id.All(letter => char.IsAsciiLetterOrDigit(letter) || letter is '-' or '.' or '_' or '+' or '\'' or '/' or ' '))
            {
                Refuse(member, field => Statement.Of("fact.not-an-id", ("field", field), ("value", Shortened(id ?? string.Empty))));
            }
        }

        public void OneOf(string member, string? choice, IReadOnlyList<string> options)
        {
            if (choice is not null && !options.Contains(choice, StringComparer.Ordinal))
            {
                Refuse(member, field => Statement.Of(
                    "fact.unknown-id", ("field", field), ("value", Shortened(choice)), ("options", string.Join(", ", options))));
            }
        }
    }

    /// <summary>The leads of a case and those that the facts before add to them.</summary>
    private sealed class Leads(CaseFile file)
    {
        private readonly List<string> _tags = [.. file.Leads.Select(lead => lead.Tag)];

        public static bool IsBody(string tag) => tag is Fact.Reading.Frame or Fact.Reading.Earth;

        public Fact.Lead Name(Fact.Lead lead, Member each)
        {
            var tag = lead.Tag?.Trim() ?? string.Empty;
            if (!IsTag(tag) || IsBody(tag.ToLowerInvariant()))
            {
                each.Refuse("tag", NotATag);
            }
            else if (!_tags.Contains(tag, StringComparer.Ordinal))
            {
                _tags.Add(tag);
            }

            each.Text("colour", lead.Colour, IdLength);
            each.Text("marking", lead.Marking, IdLength);
            return lead with { Tag = tag };
        }

        /// <summary>The tag as the person wrote it first.</summary>
        public string Find(string? written, Member each, string member)
        {
            var tag = written?.Trim() ?? string.Empty;
            var body = tag.ToLowerInvariant();
            if (IsBody(body))
            {
                return body;
            }

            if (!IsTag(tag))
            {
                each.Refuse(member, NotATag);
                return tag;
            }

            if (_tags.Count == 0 || _tags.Contains(tag, StringComparer.Ordinal))
            {
                return tag;
            }

            var alike = _tags.Where(known => string.Equals(known, tag, StringComparison.OrdinalIgnoreCase)).ToList();
            if (alike.Count != 1)
            {
                each.Refuse(member, _ => Statement.Of("problem.unknown-lead", ("lead", tag), ("leads", string.Join(", ", _tags))), "unknown-lead");
                return tag;
            }

            return alike[0];
        }

        private static Statement NotATag(string field) =>
            Statement.Of("fact.not-a-tag", ("field", field), ("most", TagLength.ToString(CultureInfo.InvariantCulture)));

        private static bool IsTag(string tag) => tag.Length is > 0 and <= TagLength
            && tag.All(letter => char.IsLetterOrDigit(letter) || letter is ' ' or '-' or '+' or '\'' or '′' or '.' or '/');
    }
}
