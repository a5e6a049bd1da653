using WireCoach.Rules.Cases;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Coaching.Steps;

/// <summary>Everything that must hold before the first start: joints, insulation, capacitor, ohms, earth, shaft, protection.</summary>
internal static class BeforePower
{
    /// <summary>The question after a reading whose temperature would settle more than the reading alone.</summary>
    public const string InsulationTemperature = "insulation-temperature";

    /// <summary>The question whether the supply is protected.</summary>
    public const string Protected = "protected-supply";

    private const string EarthTest = Fact.BenchTest.EarthContinuity;
    private const string SupplyTest = "supply-voltage";
    private static readonly string[] OtherPairs = ["L2 to L3", "L3 to L1"];

    /// <summary>Whoever says that they are not made yet is asked until they are: what follows rests on them.</summary>
    public static Question? Connected(Workup work) => work.File.Confirmed("connected") ? null : work.Ask.Of("connected");

    /// <summary>A reading that cannot be judged is none.</summary>
    public static Question? Insulation(Workup work) =>
        JointChecks.Insulation(work) is not null || work.Skipped("insulation") ? null : InsulationQuestion(work);

    /// <summary>A reading that neither passed nor failed is settled by its temperature, or taken again.</summary>
    public static Question? NotYetPassed(Workup work) =>
        JointChecks.Insulation(work) is { Verdict: "marginal" or "retest" or "no-proof" } ? Temperature(work) ?? InsulationQuestion(work) : null;

    /// <summary>How warm the winding was, where the verdict or the trend hangs on it.</summary>
    public static Question? Temperature(Workup work) =>
        work.File.Insulations.LastOrDefault() is not { Celsius: null } || work.Skipped(InsulationTemperature) || JointChecks.Insulation(work) is not { } check
            || (check is { Verdict: "pass", Also: null }) || !JointChecks.TemperatureTells(work)
            ? null
            : work.Ask.Of(InsulationTemperature);

    public static Question? CapacitorBack(Workup work) =>
        work.HasCapacitor != true || work.File.Confirmed("capacitor-refitted") ? null : work.Ask.Of("capacitor-refitted");

    /// <summary>One reading between line joints for each that the plan expects.</summary>
    public static Question? JointOhms(Workup work)
    {
        if (work.Plan?.Value is not { } plan)
        {
            return null;
        }

        foreach (var expected in plan.ExpectedOhms.Where(expected => expected.Ohms is not null))
        {
            if (Ask(work, plan, expected) is { } question)
            {
                return question;
            }
        }

        return null;
    }

    public static Question? JointsToFrame(Workup work)
    {
        if (work.Plan?.Value is not { } plan)
        {
            return null;
        }

        var asked = FrameQuestion(work, plan);
        return Shown(work, asked.Between![0], Fact.Reading.Frame) is not null || work.Skipped(asked.Id) ? null : asked;
    }

    public static Question? Earth(Workup work) =>
        JointChecks.Earth(work) is not null || work.Skipped(EarthTest) ? null : work.Ask.Of(EarthTest);

    /// <summary>The same where what was read before does not count: it did not pass, or something has happened since.</summary>
    public static Question? EarthAgain(Workup work) => work.Skipped(EarthTest) ? null : work.Ask.Of(EarthTest);

    public static Question? Shaft(Workup work) => work.Settled("shaft-free-guarded") ? null : work.Ask.Confirmation("shaft-free-guarded");

    public static Question? Protection(Workup work) => work.File.Confirmed(Protected) ? null : work.Ask.Of(Protected);

    public static Question? SupplyVolts(Workup work)
    {
        if (work.Runs.Count > 0 || work.Plan?.Value is not { } plan)
        {
            return null;
        }

        var series = SupplySeries.Of(work, plan);
        return series.Begun(plan) ? OtherPair(work, series)
            : series.Volts.Count > 0 || work.Skipped(SupplyTest) ? null
            : SupplyQuestion(work, plan);
    }

    /// <summary>How three pairs are told is said where there are three.</summary>
    private static Question SupplyQuestion(Workup work, Plan plan)
    {
        var asked = work.Ask.Of(SupplyTest);
        return plan.Phases == SupplySeries.Pairs ? asked : asked with { How = [] };
    }

    private static Question SupplyAgain(Workup work, Plan plan)
    {
        var series = SupplySeries.Of(work, plan);
        return (series.Begun(plan) ? OtherPair(work, series) : null) ?? SupplyQuestion(work, plan);
    }

    private static Question? OtherPair(Workup work, SupplySeries series)
    {
        var pair = OtherPairs[series.Volts.Count - 1];
        var id = $"{SupplyTest}.{pair.ToLowerInvariant().Replace(" to ", "-", StringComparison.Ordinal)}";
        return work.Skipped(id) ? null : work.Ask.Of("supply-voltage-pair", ("pair", pair)) with { Id = id };
    }

    /// <summary>The questions about insulation, frame and earth that nobody could answer: nothing is energised on a belief.</summary>
    public static IEnumerable<string> Unproved(Workup work)
    {
        if (JointChecks.Insulation(work) is null && work.Skipped("insulation"))
        {
            yield return "insulation";
        }

        if (work.Plan?.Value is { } plan && FrameQuestion(work, plan) is { } frame && work.Skipped(frame.Id) && Shown(work, frame.Between![0], Fact.Reading.Frame) is null)
        {
            yield return "joints-to-frame";
        }

        if (work.Skipped(EarthTest) && JointChecks.Earth(work) is null)
        {
            yield return EarthTest;
        }
    }

    /// <summary>Whether a check failed or could not be made: then there is no power until it is put right and read.</summary>
    public static bool Stops(Workup work) => Checks(work).Any(check => check.Verdict != "pass") || Unproved(work).Any();

    /// <summary>A check that did not pass is made again once it has been put right; until then nothing else goes on.</summary>
    public static Question? Again(Workup work) => Checks(work).FirstOrDefault(check => check.Verdict != "pass") is not { } failed ? null : failed.Id switch
    {
        "insulation" => Temperature(work) ?? InsulationQuestion(work),
        EarthTest => work.Ask.Of(EarthTest),
        SupplyTest => SupplyAgain(work, work.Plan!.Value!),
        "joints-to-frame" => FrameQuestion(work, work.Plan!.Value!),
        var joints => work.Plan!.Value!.ExpectedOhms.Where(expected => string.Join('-', expected.Between) == joints).Select(expected => OhmsQuestion(work, work.Plan.Value, expected)).First(),
    };

    /// <summary>Whether every reading that the plan expects of its joints was taken, and the one to the frame, and all are right.</summary>
    public static bool JointsFit(Workup work) => work.Plan?.Value is { } plan && plan.ExpectedOhms.Count(expected => expected.Ohms is not null) is > 0 and var wanted
        && JointsOf(work, plan).ToList() is var made && made.Count > wanted && made.TrueForAll(check => check.Verdict == "pass");

    /// <summary>What stands between here and power; it is said before all that went well.</summary>
    public static IEnumerable<Statement> SayFailed(Workup work) => Say(Checks(work).Where(check => check.Verdict != "pass"));

    /// <summary>What was found good.</summary>
    public static IEnumerable<Statement> SayPassed(Workup work) => Say(Checks(work).Where(check => check.Verdict == "pass"));

    private static IEnumerable<Statement> Say(IEnumerable<Check> checks) =>
        checks.SelectMany(check => (Statement[])[check.Says, .. check.Also is { } also ? [also] : Array.Empty<Statement>(), .. check.DoNext]);

    /// <summary>What keeps the motor from power although nobody found a fault; it is said before all else, or it would be lost below the plan.</summary>
    public static IEnumerable<Statement> SayUnproved(Workup work) =>
        Unproved(work).Select(question => Statement.Of("coach.unproved").With("what", Statement.Word(question, [$"term.asked.{question}"])));

    /// <summary>What was expected and what was read, check by check.</summary>
    public static IEnumerable<Check> Checks(Workup work) =>
        new[] { JointChecks.Insulation(work), JointChecks.Earth(work) }.OfType<Check>().Concat(work.Plan?.Value is { } plan ? JointsOf(work, plan) : []);

    private static IEnumerable<Check> JointsOf(Workup work, Plan plan)
    {
        foreach (var expected in plan.ExpectedOhms.Where(expected => expected.Ohms is not null))
        {
            var (first, second) = Ends(plan, expected);
            if (Shown(work, first, second) is { } shown)
            {
                yield return JointChecks.Joints(work, expected, shown);
            }
        }

        if (Shown(work, plan.Joints[0].Leads[0], Fact.Reading.Frame) is { } toFrame)
        {
            yield return JointChecks.JointsToFrame(work, toFrame);
        }

        if (work.Runs.Count == 0 && SupplySeries.Of(work, plan).Judge(work, plan) is { } supply)
        {
            yield return supply;
        }
    }

    private static Question? Ask(Workup work, Plan plan, ExpectedOhms expected)
    {
        var (first, second) = Ends(plan, expected);
        return Shown(work, first, second) is not null || work.Skipped($"joint-ohms.{first}.{second}") ? null : OhmsQuestion(work, plan, expected);
    }

    private static Question InsulationQuestion(Workup work) => work.Ask.Of("insulation", ("volts", "500 V DC"));

    private static Question FrameQuestion(Workup work, Plan plan)
    {
        var lead = plan.Joints[0].Leads[0];
        return work.Ask.Reading("joints-to-frame", lead, Fact.Reading.Frame) with { Setup = new TestSetup([], Ties(plan), [lead, Fact.Reading.Frame], null) };
    }

    private static Question OhmsQuestion(Workup work, Plan plan, ExpectedOhms expected)
    {
        var (first, second) = Ends(plan, expected);
        var asked = work.Ask.Reading("joint-ohms", first, second, ("first", expected.Between[0]), ("second", expected.Between[1]), ("ohms", expected.Ohms!.Text));
        return asked with
        {
            Why = asked.Why.Resting(expected.Ohms!),
            How = [.. asked.How, expected.Note],
            Expect = [new Expectation(Statement.Of("coach.about").With("ohms", expected.Ohms!), Statement.Of("coach.joints-as-planned")), new Expectation(Statement.Of("coach.anything-else"), Statement.Of("coach.joints-not-as-planned"))],
            Setup = new TestSetup([], Ties(plan), [first, second], null),
        };
    }

    private static (string First, string Second) Ends(Plan plan, ExpectedOhms expected) =>
        (LeadOf(plan, expected.Between[0]), LeadOf(plan, expected.Between[1]));

    private static string LeadOf(Plan plan, string joint) => plan.Joints.FirstOrDefault(made => made.Name == joint)?.Leads[0] ?? joint;

    private static IReadOnlyList<IReadOnlyList<string>> Ties(Plan plan) => [.. plan.Joints.Where(joint => joint.Leads.Count > 1).Select(joint => joint.Leads)];

    /// <summary>The last such reading since the joints were made as they are now.</summary>
    private static Fact.BenchTest? Shown(Workup work, string first, string second) => work.File.BenchTests
        .LastOrDefault(test => test.Test == Fact.BenchTest.JointResistance && test.Read.Count == 2 && test.Read[0] == first && test.Read[1] == second);
}
