using WireCoach.Rules.Cases;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections;

/// <summary>Which rows of a connection table a supply suits by the plate; where none does, why not.</summary>
/// <param name="knowledge">The facts of the trade.</param>
internal sealed class SupplyJudge(TradeKnowledge knowledge)
{
    private readonly ConnectionFigures _figures = knowledge.Connections;
    private readonly WindingNames _names = new(knowledge.Sentences);

    /// <summary>1 or 3; direct current counts as 1; <see langword="null"/> where nothing tells.</summary>
    public static int? PhasesOf(PlanRequest request) => request.Supply switch
    {
        null => null,
        { Phases: { } phases } => phases,
        { System: { } system } => system.StartsWith("three", StringComparison.Ordinal) ? 3 : 1,
        { Hertz: 0 } => 1,
        _ => null,
    };

    /// <summary>Whether nothing can be said before it is known that the supply is direct or alternating.</summary>
    public bool NeedsHertz(Layout layout) => _figures.DirectCurrentOnly.Contains(layout.Id);

    /// <summary>The rows that suit, at least one.</summary>
    public Answer<List<SuitedRow>> Rows(Layout layout, PlanRequest request)
    {
        var kind = new SupplyKind(knowledge).Problems(layout, request, PhasesOf(request)!.Value).ToList();
        if (kind.Count > 0)
        {
            return Answer<List<SuitedRow>>.Refused(kind);
        }

        var asked = layout.Connections.Where(row => request.Connection is null || IsNamed(row, request.Connection)).ToList();
        if (asked.Count == 0)
        {
            var known = string.Join(", ", layout.Connections.Select(row => row.For).Distinct(StringComparer.Ordinal));
            return new Problem("invalid-fact", "connection", Statement.Of("connections.unknown-row", ("given", request.Connection!), ("rows", known)));
        }

        var plate = new PlateVolts(_figures, request.Plate, layout.Connections);
        if (LowestShare(layout, plate, request.Plate) is not { } lowest)
        {
            return new Problem("not-ready", "plate.volts", Statement.Of("connections.one-voltage-of-several", ("volts", Volts(request.Plate.Volts[0]))));
        }

        return Matching(layout, asked, plate, lowest, request);
    }

    private Answer<List<SuitedRow>> Matching(
        Layout layout, List<LayoutConnection> asked, PlateVolts plate, double lowest, PlanRequest request)
    {
        var rated = asked.Select(row => (Row: row, Volts: plate.For(row, lowest))).Where(row => row.Volts.Count > 0).ToList();
        if (rated.Count == 0 || !plate.AllServed(layout.Connections, lowest))
        {
            return new Problem("not-ready", "plate.volts", Statement.Of("connections.plate-does-not-fit-layout", ("volts", All(request.Plate.Volts))));
        }

        var supply = request.Supply!.Volts!.Value;
        var judged = rated.Select(row => (row.Row, Judged: new VoltsJudgement(_figures, supply, row.Volts, HertzDeviation(request)))).ToList();
        var suited = judged.Where(row => row.Judged.Suits)
            .Select(row => new SuitedRow(row.Row, row.Judged.Plate, row.Judged.Deviation, plate.Amps(row.Judged.Plate))).ToList();
        return suited.Count > 0 ? suited : Unsuited([.. asked], judged.MinBy(row => Math.Abs(row.Judged.Deviation)).Judged, supply, request);
    }

    private Problem Unsuited(IReadOnlyList<LayoutConnection> asked, VoltsJudgement nearest, double supply, PlanRequest request)
    {
        var (percent, source) = (100 * nearest.Deviation, _figures.VoltsTolerance.Source);
        var quoted = Quoted.Of(percent, "percent", "connections.volts-tolerance", source, new TrailStep(
            "deviation of the supply", "100 × (supply ÷ plate − 1)", $"{Volts(supply)}, {Volts(nearest.Plate)}", Units.Text(percent, "percent")));
        var (statement, limit) = nearest switch
        {
            { OnlyByName: true } => (Statement.Of("connections.not-on-plate").With("torque", SupplyMatch.Torque(knowledge, nearest.Plate, supply)), _figures.VoltsTolerance),
            { ByName: true } => (Statement.Of("connections.other-nominal"), _figures.OtherFamilyTolerance),
            { BySum: true } => (Statement.Of("connections.sum-too-large"), _figures.CombinedTolerance),
            { Deviation: > 0 } => (Statement.Of("connections.volts-too-high"), _figures.VoltsTolerance),
            _ => (Statement.Of("connections.volts-too-low"), _figures.VoltsTolerance),
        };
        statement = request.Connection is null
            ? statement.With("supply", Volts(supply)).With("plate", All(request.Plate.Volts)).With("percent", quoted).With("limit", Limit(limit))
            : Named(string.Join(" / ", asked.Select(row => _names.Use(row)).Distinct(StringComparer.Ordinal)), nearest.Plate, supply).Resting(quoted);
        return new Problem("not-ready", "supply.volts", statement);
    }

    private static Quoted Limit(Limit limit) => Quoted.Of(100 * limit.Value, "percent", "connections.volts-tolerance", limit.Source);

    private Statement Named(string connection, double plate, double supply)
    {
        var percent = 100 * supply / plate;
        return Statement.Of("connections.row-not-for-supply", ("row", connection), ("plate", Volts(plate)), ("supply", Volts(supply)))
            .With("percent", Quoted.Of(percent, "percent", "connections.share-of-rated", _figures.VoltsTolerance.Source, new TrailStep(
                "volts of each winding against its own", "100 × supply ÷ plate", $"{Volts(supply)}, {Volts(plate)}", Units.Text(percent, "percent"))));
    }

    /// <summary>The share of the row that the plate's lowest voltage belongs to; <see langword="null"/> where one voltage may be any of several rows'.</summary>
    private static double? LowestShare(Layout layout, PlateVolts plate, PlateFields fields)
    {
        var shares = layout.Connections.Select(row => row.VoltsShare).Distinct().ToList();
        if (shares.Count == 1 || plate.Count > 1)
        {
            return shares.Min();
        }

        var named = layout.Connections.Where(row => fields.Text("connection") is { } text && IsNamed(row, text)).Select(row => row.VoltsShare).Distinct().ToList();
        return named.Count == 1 ? named[0] : null;
    }

    private static bool IsNamed(LayoutConnection row, string text) =>
        row.Id == text || row.For == text || row.For.Split('-').Contains(text.Trim(), StringComparer.OrdinalIgnoreCase);

    private static double HertzDeviation(PlanRequest request) => request.Supply?.Hertz is { } supply and > 0 && request.Plate.Numbers("hertz").Count > 0
        ? request.Plate.Numbers("hertz").Min(plate => Math.Abs((supply / plate) - 1))
        : 0;

    internal static string Volts(double volts) => Units.Text(volts, "volt", 4);

    internal static string All(IReadOnlyList<double> volts) => string.Join('/', volts.Select(one => Units.Number(one, 4))) + " V";
}
