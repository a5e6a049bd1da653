using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;
using WireCoach.Rules.Practice;

namespace WireCoach.Rules.Tests.Coaching;

/// <summary>Answers to the coach's questions as somebody gives them who has a simulated motor on the bench.</summary>
internal static class PracticeAnswers
{
    private static readonly Coach Coach = new(Trade.Knowledge);

    /// <summary>What the motor shows, what was asked for confirmed, and everything else as it should be.</summary>
    public static IReadOnlyList<Fact> Of(CaseFile file, Question asked, PracticeMotor motor)
    {
        var given = new QuestionAnswer { QuestionId = asked.Id };
        if (asked is { Kind: QuestionKind.Reading, About: "resistance", Between: [var from, var to] })
        {
            var touched = motor.Touch(from, to, [], file.Choices.GetValueOrDefault("capacitor-bridged") == "bridged", take: 0).Value!;
            return Read(file, asked, given with { Reading = new AnsweredReading { Ohms = touched.Ohms, Open = touched.Open ? true : null, Short = touched.Short ? true : null } });
        }

        if (asked is { Kind: QuestionKind.Reading, About: "joint-resistance" })
        {
            return Read(file, asked, given with { Reading = Expected(file, asked) });
        }

        if (asked.Setup is { } setup && motor.Test(asked.About, setup) is { IsGiven: true } test)
        {
            return [test.Value];
        }

        return asked.Id switch
        {
            "supply" => [new Fact.Supply { Volts = file.Plate.Volts[^1], Phases = file.Plate.Phases ?? 1, Hertz = file.Plate.Hertz ?? (file.Plate.Phases == 0 ? 0 : 60) }],
            _ => asked.Kind switch
            {
                QuestionKind.Confirm => Read(file, asked, given with { Confirmed = true }),
                QuestionKind.Choice => Read(file, asked, given with { Choice = asked.Id switch { "first-start" => "ran", "run-direction" => "right", "shaft-drag" => motor.Dragged(), _ => Turned(asked, motor) ?? asked.Options[0].Id } }),
                QuestionKind.Quantity => Read(file, asked, given with { Quantity = new AnsweredQuantity(asked.Unit switch { "ohm" => 0.2, "megohm" => 300, "volt" => file.Supply?.Volts ?? file.Plate.Volts[^1], "celsius" => 21, "rpm" => file.Plate.Rpm ?? 1430, _ => file.Plate.Amps[^1] }) }),
                _ => [],
            },
        };
    }

    /// <summary>An answer as it is written in a test: <c>?</c>, <c>no</c>, <c>open</c>, an option or a figure.</summary>
    public static IReadOnlyList<Fact> Of(CaseFile file, Question asked, string answer)
    {
        var given = new QuestionAnswer { QuestionId = asked.Id };
        return Read(file, asked, (answer, asked.Kind) switch
        {
            ("?", _) => given with { Unknown = true },
            ("no", QuestionKind.Confirm) => given with { Confirmed = false },
            (_, QuestionKind.Choice) => given with { Choice = answer },
            ("open", _) => given with { Reading = new() { Open = true } },
            (_, QuestionKind.Reading) => given with { Reading = new() { Ohms = double.Parse(answer, CultureInfo.InvariantCulture) } },
            _ => given with { Quantity = new(double.Parse(answer, CultureInfo.InvariantCulture)) },
        });
    }

    /// <summary>The case with facts that have numbers, as the journal gives them.</summary>
    public static CaseFile Add(CaseFile file, IReadOnlyList<Fact> facts)
    {
        var number = file.Facts.Count;
        return CaseFile.From(file.Opening, [.. file.Facts, .. facts.Select(fact => fact with { FactId = $"f{++number}" })]);
    }

    /// <summary>What the meter does while the shaft is turned, or which leads come from slip rings, where that is asked.</summary>
    private static string? Turned(Question asked, PracticeMotor motor) => (asked.About, asked.Between) switch
    {
        ("armature", [var from, var to]) => motor.Turned(from, to),
        ("slip-rings", [var first, _]) => motor.FromRings(first),
        _ => null,
    };

    /// <summary>What the question says a meter shows on right joints, through probes as they were read.</summary>
    private static AnsweredReading Expected(CaseFile file, Question asked)
    {
        var probes = file.BenchTests.LastOrDefault(test => test.Test == "probe-zero")?.Value ?? 0;
        return new[] { asked.Text, asked.Why }.Concat(asked.How).SelectMany(said => said.Gaps).FirstOrDefault(gap => gap.Key == "ohms").Value is { } shown
            && double.TryParse(shown.Split(' ')[0], NumberStyles.Float, CultureInfo.InvariantCulture, out var ohms) ? new AnsweredReading { Ohms = ohms + probes } : new AnsweredReading { Open = true };
    }

    private static IReadOnlyList<Fact> Read(CaseFile file, Question asked, QuestionAnswer given) => Coach.Read(file, asked, given) is { IsGiven: true } read ? read.Value : [];
}
