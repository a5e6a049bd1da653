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
    private const string OverRange = "over-range";

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
        if (EarthOhms(work) is not { } ohms || (double.IsInfinity(ohms) ? EarthJudge.NoPath(work.Knowledge, work.File.Region) : EarthJudge.Judge(work.Knowledge, ohms, work.File.Region).Value) is not { } report)
        {
            return null;
        }

        return new Check(Fact.BenchTest.EarthContinuity, report.LimitOhms.Text, Got(double.IsInfinity(ohms) ? null : ohms), report.Verdict, report.Why) { DoNext = report.Verdict == "pass" ? [] : report.DoNext };
    }

    /// <summary>Whether there is no path to earth: its pin is gone, its wire is off, or the meter shows over-range.</summary>
    public static bool EarthIsBroken(Workup work) => EarthOhms(work) is double.PositiveInfinity;

    /// <summary>Whether the earth that was spoken of last has been read since and holds, or nobody can read it: then there is no power, but the rest goes on.</summary>
    public static bool EarthIsDealtWith(Workup work) => work.Skipped(Fact.BenchTest.EarthContinuity)
        || (Earth(work) is { Verdict: "pass" } && work.File.Facts.FindLastIndex(fact => CaseFile.EarthOhms(fact) is not null) > work.File.Facts.FindLastIndex(fact => fact is Fact.Goal));

    /// <summary>One reading between line joints.</summary>
    public static Check Joints(Workup work, ExpectedOhms expected, Fact.BenchTest shown)
    {
        var rule = work.Knowledge.Rules["joint-ohms"];
        var id = string.Join('-', expected.Between);
        var wanted = expected.Ohms!.Value!.Value;
        var band = Math.Max(rule["share"] * wanted, rule["least-ohms"]);
        var ohms = Figure(work, shown);
        var fits = ohms is { } read && Math.Abs(read - wanted) <= band;
        var got = Got(ohms);
        var says = (fits ? Statement.Of("coach.joint-fits", ("joints", id), ("got", got)) : Statement.Of("coach.joint-differs", ("joints", id), ("got", got)))
            .With("expected", expected.Ohms).Resting(rule.Quote(band, "ohm", $"expected {expected.Ohms.Text}"));
        return new Check(id, expected.Ohms.Text, got, fits ? "pass" : "fail", says);
    }

    public static Check JointsToFrame(Workup work, Fact.BenchTest shown)
    {
        var rule = work.Knowledge.Rules["joints-to-frame"];
        var least = rule.Quote(rule["least-megohms"], "megohm", "all joints together to the frame");
        var open = shown.Outcome == Fact.BenchTest.NoPath || UnitFamilies.Convert(shown.Value ?? 0, "ohm", "megohm") >= rule["least-megohms"];
        var got = Got(shown.Outcome == Fact.BenchTest.NoPath ? null : shown.Value ?? 0);
        return new Check("joints-to-frame", least.Text, got, open ? "pass" : "fail",
            (open ? Statement.Of("coach.frame-open", ("got", got)) : Statement.Of("coach.frame-touched", ("got", got))).Resting(least));
    }

    /// <summary>What was told last of the way to earth.</summary>
    private static double? EarthOhms(Workup work) => work.File.Facts.Select(CaseFile.EarthOhms).LastOrDefault(told => told is not null);

    private static string Got(double? ohms) => ohms is { } figure ? Units.Text(figure, "ohm") : OverRange;

    /// <summary>Ohms less the probes; <see langword="null"/> for over-range.</summary>
    private static double? Figure(Workup work, Fact.BenchTest shown) => shown.Outcome == Fact.BenchTest.NoPath
        ? null
        : Math.Max(0, (shown.Value ?? 0) - (MeterInput.ProbeOhms(work.File.BenchTests) ?? 0));
}
