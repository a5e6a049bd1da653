using WireCoach.Rules.Cases;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Insulation;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Coaching.Steps;

/// <summary>How the readings before power compare with what this connection should read.</summary>
internal static class JointChecks
{
    public static Check? Insulation(Workup work) =>
        InsulationJudge.Last(work.Knowledge, work.File) is { } report ? Insulation(work, work.File.Insulations[^1], report) : null;

    /// <summary>
    /// Whether a temperature could make a pass of the last reading, or compare it: below the line that stops at any temperature, and from a multimeter, it cannot.
    /// Nor does it help a reading from before something happened to the motor.
    /// </summary>
    public static bool TemperatureTells(Workup work) => work.File.Insulations.LastOrDefault() is { } last
        && work.File.Facts.IndexOf(last) > work.File.Facts.FindLastIndex(fact => fact is Fact.Symptom { Present: true })
        && last.Megohms >= work.Knowledge.Rules["insulation-gate"]["stop-megohms"] && !(last.TestVolts < work.Knowledge.Rules["insulation-reading"]["least-test-volts"]);

    private static Check Insulation(Workup work, Fact.Insulation fact, InsulationReport report)
    {
        var read = Units.Text(fact.Megohms, "megohm");
        var expect = fact.Celsius is null ? Units.Text(work.Knowledge.Rules["insulation-gate"]["no-temperature-pass-megohms"], "megohm") : report.MinimumMegohms.Text;
        return new Check("insulation", expect, fact.Celsius is { } celsius ? $"{read} ({Units.Text(celsius, "celsius")})" : read, report.Verdict, report.Why)
        {
            DoNext = report.Verdict == "pass" ? [] : report.DoNext,
            Also = report.Trend,
        };
    }

    public static Check? Earth(Workup work)
    {
        if (work.File.Facts.Select(CaseFile.EarthOhms).LastOrDefault(told => told is not null) is not { } ohms || double.IsInfinity(ohms))
        {
            return null;
        }

        return EarthJudge.Judge(work.Knowledge, ohms, work.File.Region).Value is { } report
            ? new Check("earth-continuity", report.LimitOhms.Text, Units.Text(ohms, "ohm"), report.Verdict, report.Why) { DoNext = report.Verdict == "pass" ? [] : report.DoNext }
            : null;
    }

    /// <summary>One reading between line joints.</summary>
    public static Check Joints(Workup work, ExpectedOhms expected, Fact.BenchTest shown)
    {
        var rule = work.Knowledge.Rules["joint-ohms"];
        var id = string.Join('-', expected.Between);
        var wanted = expected.Ohms!.Value!.Value;
        var band = Math.Max(rule["share"] * wanted, rule["least-ohms"]);
        var ohms = Figure(work, shown);
        var fits = ohms is { } read && Math.Abs(read - wanted) <= band;
        var got = ohms is { } figure ? Units.Text(figure, "ohm") : "over-range";
        var says = (fits ? Statement.Of("coach.joint-fits", ("joints", id), ("got", got)) : Statement.Of("coach.joint-differs", ("joints", id), ("got", got)))
            .With("expected", expected.Ohms).Resting(rule.Quote(band, "ohm", $"expected {expected.Ohms.Text}"));
        return new Check(id, expected.Ohms.Text, got, fits ? "pass" : "fail", says);
    }

    public static Check JointsToFrame(Workup work, Fact.BenchTest shown)
    {
        var rule = work.Knowledge.Rules["joints-to-frame"];
        var least = rule.Quote(rule["least-megohms"], "megohm", "all joints together to the frame");
        var open = shown.Outcome == "open" || UnitFamilies.Convert(shown.Value ?? 0, "ohm", "megohm") >= rule["least-megohms"];
        var got = shown.Outcome == "open" ? "over-range" : Units.Text(shown.Value ?? 0, "ohm");
        return new Check("joints-to-frame", least.Text, got, open ? "pass" : "fail",
            (open ? Statement.Of("coach.frame-open", ("got", got)) : Statement.Of("coach.frame-touched", ("got", got))).Resting(least));
    }

    /// <summary>Ohms less the probes; <see langword="null"/> for over-range.</summary>
    private static double? Figure(Workup work, Fact.BenchTest shown) => shown.Outcome == "open"
        ? null
        : Math.Max(0, (shown.Value ?? 0) - (MeterInput.ProbeOhms(work.File.BenchTests) ?? 0));
}
