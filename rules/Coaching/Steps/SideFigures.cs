using System.Globalization;
using WireCoach.Rules.Capacitors;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Heat;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;
using WireCoach.Rules.Supply;

namespace WireCoach.Rules.Coaching.Steps;

/// <summary>Figures that are worked out beside the job, once what they rest on was said: a measured capacitor, a spare one, the supply that the motor wants.</summary>
internal static class SideFigures
{
    private const int Lines = 3;

    /// <summary>What is said as soon as it can be, whatever the job is.</summary>
    public static IEnumerable<Statement> Say(Workup work) =>
    [
        .. Health(work),
        .. work.File.SpareCapacitor is not null && work.Goal is not Goals.ReplaceCapacitor && Marked(work) is not null ? work.Rooms.Faq.Answer("bigger-capacitor", work.File) : [],
        .. work.Goal is null or Goals.CheckNumbers ? Match(work) : [],
        .. work.Plan is not { IsGiven: true } ? Unequal(work) : [],
    ];

    /// <summary>Wire, protection, overload and earth for each voltage of the plate, or for the one that is in use; who decides is said first.</summary>
    public static IEnumerable<Statement> Supply(Workup work)
    {
        List<double> all = [.. work.Plan?.Value is { } plan ? [plan.PlateVolts] : work.File.Plate.Volts.Count > 0 ? PlateConnections.Groups(work.Knowledge, work.File.Plate.Volts).Select(group => group[^1]) : []];
        var planned = all.Select(volts => Supply(work, volts)).OfType<IReadOnlyList<Statement>>().SelectMany(said => said).ToList();
        return planned.Count == 0 ? [] : [Statement.Of("supply.who-decides"), .. planned];
    }

    /// <summary>How it starts and how often, by the plate; nothing for somebody who is not to start it uncoupled.</summary>
    public static IEnumerable<Statement> Starts(Workup work) => work.File.Role != Role.Homeowner && work.Phases is { } phases && work.File.Plate.Volts is [var volts, ..]
        ? ExpectedStart.Of(work.Knowledge, new StartingMotor
        {
            Plate = work.File.Plate,
            Region = work.File.Region,
            Volts = volts,
            Amps = Amps(work, volts),
            Phases = phases,
            Family = work.File.Choices.GetValueOrDefault("family") ?? (phases == 3 ? "three-phase" : null),
        })
        : [];

    private static IEnumerable<Statement> Health(Workup work) => Measured(work).Select(measured => (measured.Own ?? Marked(work)) is { } marked
        && CapacitorCalculator.Calculate(work.Knowledge, new CapacitorInput
        {
            Marked = new CapacitorPart(marked.Microfarads, marked.MicrofaradsTo, marked.Volts, marked.Use is "start" or "run" ? marked.Use : "unknown"),
            Measured = new CapacitorMeasured { Microfarads = measured.Microfarads },
        }).Value is { Verdict: not "unknown" } report ? report.Why : null).OfType<Statement>();

    /// <summary>What was measured last of each capacitor on the motor, and its own marks where they stand beside it; what has none beside it is the latest of all.</summary>
    private static IEnumerable<(double Microfarads, Fact.Capacitor? Own)> Measured(Workup work)
    {
        var read = work.File.Facts.Select(fact => fact switch
        {
            Fact.Capacitor { Present: true, Spare: false } capacitor when CapacitorReadings.Measured(work.Knowledge, capacitor, work.File) is { } microfarads => (microfarads, capacitor.Microfarads is null ? null : capacitor),
            Fact.BenchTest { Test: CapacitorReadings.Test, Value: { } value } => (value, null),
            _ => ((double, Fact.Capacitor?)?)null,
        }).OfType<(double Microfarads, Fact.Capacitor? Own)>().ToList();
        return read is [.., { Own: null } last] ? [last] : read.GroupBy(one => one.Own?.Use).Select(same => same.Last());
    }

    /// <summary>Three volts and three amps that were told beside a job: how unequal they are, and what is left of the rating.</summary>
    private static IEnumerable<Statement> Unequal(Workup work) => new[]
    {
        Last(work, "supply-voltage") is { } volts ? Unbalance.OfVolts(work.Knowledge, volts).Value?.Why : null,
        Last(work, "line-currents") is { } amps ? Unbalance.OfAmps(work.Knowledge, amps).Value?.Why : null,
    }.OfType<Statement>();

    private static List<double>? Last(Workup work, string test)
    {
        List<double> told = [.. work.File.BenchTests.Where(one => one.Test == test && one.Value is not null).Select(one => one.Value!.Value).TakeLast(Lines)];
        return told.Count == Lines ? told : null;
    }

    private static Fact.Capacitor? Marked(Workup work) => work.File.Capacitors.FindLast(capacitor => capacitor is { Present: true, Spare: false, Microfarads: not null });

    /// <summary>A supply that does not sit well with the plate's nearest volts.</summary>
    private static IEnumerable<Statement> Match(Workup work)
    {
        if (work.File.Supply?.Volts is not { } supply || work.File.Plate.Volts.Count == 0)
        {
            return [];
        }

        var judged = SupplyMatch.Volts(work.Knowledge, work.File.Plate.Volts.MinBy(volts => Math.Abs(Math.Log(volts / supply))), supply);
        return judged.Verdict.StartsWith("ok", StringComparison.Ordinal) ? [] : [judged.Why];
    }

    private static double? Amps(Workup work, double volts) => PlateConnections.At(work.Knowledge, work.File.Plate, volts)?.Amps
        ?? (work.File.Plate.Amps.Count == 1 && work.File.Plate.Volts.Count <= 1 ? work.File.Plate.Amps[0] : null);

    private static IReadOnlyList<Statement>? Supply(Workup work, double plateVolts)
    {
        var plate = work.File.Plate;
        if (work.Phases is not { } phases || (plate.Horsepower ?? plate.Kilowatts) is null)
        {
            return null;
        }

        var volts = work.File.Supply?.Volts is { } said && SupplyMatch.Volts(work.Knowledge, plateVolts, said).Verdict.StartsWith("out", StringComparison.Ordinal) ? plateVolts : work.File.Supply?.Volts ?? plateVolts;
        var answer = SupplyPlanner.Plan(work.Knowledge, new SupplyInput
        {
            Region = work.File.Region,
            Phases = Math.Max(1, phases),
            MotorType = phases == 0 ? "dc" : null,
            Volts = volts,
            PlateVolts = plateVolts,
            Horsepower = work.File.Region == Region.Iec && plate.Kilowatts is not null ? null : plate.Horsepower,
            Kilowatts = plate.Horsepower is null || work.File.Region == Region.Iec ? plate.Kilowatts : null,
            PlateAmps = Amps(work, plateVolts),
            ServiceFactor = plate.ServiceFactor,
            TemperatureRise = plate.Numbers("temperatureRise") is [var rise, ..] ? rise : null,
            Rpm = plate.Rpm,
            CodeLetter = plate.Text("codeLetter"),
            LengthMetres = work.File.Choices.TryGetValue("supply.length-metres", out var length) && double.TryParse(length, NumberStyles.Float, CultureInfo.InvariantCulture, out var metres) ? metres : null,
        });
        return answer.IsGiven ? [.. Told(answer.Value, volts)] : [.. answer.Problems.Select(problem => problem.Advice)];
    }

    /// <summary>The device's id as it is spoken; the letter of a curve is a capital.</summary>
    private static string Device(string id) => string.Join(' ', id.Split('-').Select(word => word.Length == 1 ? word.ToUpperInvariant() : word));

    private static IEnumerable<Statement> Told(SupplyPlan plan, double volts)
    {
        if (plan.Conductor is not { } conductor)
        {
            yield return plan.Notes.First(note => note.Id == "supply.conductor-beyond-table");
            yield break;
        }

        yield return Statement.Of("coach.supply-figures", ("volts", Units.Text(volts, "volt")), ("edition", plan.Edition), ("device", Device(plan.Protection.Device)))
            .With("amps", plan.ConductorAmps).With("wire", conductor.Size).With("column", conductor.CelsiusColumn)
            .With("rating", plan.Protection.StandardAmps).With("earth", plan.EarthConductor.Size);
        if (plan.OverloadAmps is { } overload)
        {
            yield return Statement.Of("coach.supply-overload").With("overload", overload);
        }

        if (plan.VoltageDrop is { } drop)
        {
            yield return drop.StartingPercent is { } starting
                ? Statement.Of("coach.supply-drop-starting").With("percent", drop.Percent).With("starting", starting)
                : Statement.Of("coach.supply-drop").With("percent", drop.Percent);
        }

        foreach (var note in plan.Notes.Where(note => note.Id is "supply.drop-high" or "supply.start-low" or "supply.start-stop" or "supply.small-conductor" or "supply.amps-impossible" or "supply.amps-doubtful" or "supply.loop" or "supply.fuse-short-circuit-only"))
        {
            yield return note;
        }
    }
}
