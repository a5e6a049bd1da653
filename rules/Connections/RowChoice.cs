using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Connections;

/// <summary>A row that suits the supply, and the plate's volts that it is made for.</summary>
/// <param name="Row">The row.</param>
/// <param name="PlateVolts">The plate's volts nearest to the supply.</param>
/// <param name="Deviation">How far the supply lies from them, as a share with its sign.</param>
/// <param name="PlateAmps">Plate amps at these volts; <see langword="null"/> where the plate does not say.</param>
internal sealed record SuitedRow(LayoutConnection Row, double PlateVolts, double Deviation, double? PlateAmps);

/// <summary>Which of the rows that suit is taken.</summary>
internal static class RowChoice
{
    /// <summary>The first connection in the order of the table that is not for starting only, in the direction asked.</summary>
    public static SuitedRow Of(IReadOnlyList<SuitedRow> rows, PlanRequest request)
    {
        var first = rows.FirstOrDefault(row => !row.Row.Starting) ?? rows[0];
        return InDirection([.. rows.Where(row => SameUse(row.Row, first.Row))], request);
    }

    /// <summary>One row for each other use of the same supply.</summary>
    public static IEnumerable<SuitedRow> Others(IReadOnlyList<SuitedRow> rows, SuitedRow chosen, PlanRequest request) => rows
        .Where(row => !SameUse(row.Row, chosen.Row))
        .GroupBy(row => (row.Row.For, row.Row.Starting))
        .Select(use => InDirection([.. use], request));

    /// <summary>The rotation that was asked, seen from where the row's is; <see langword="null"/> where none was asked.</summary>
    public static string? Asked(LayoutConnection row, PlanRequest request) => Turned(request.Rotation, request.SeenFrom, row.SeenFrom);

    /// <summary>A sense of rotation seen from the other end, where the ends differ.</summary>
    public static string? Turned(string? rotation, string? seenFrom, string? wantedFrom) =>
        seenFrom is null || wantedFrom is null || seenFrom == wantedFrom
            ? rotation
            : rotation switch { "clockwise" => "counterclockwise", "counterclockwise" => "clockwise", _ => null };

    private static bool SameUse(LayoutConnection one, LayoutConnection other) => one.For == other.For && one.Starting == other.Starting;

    private static SuitedRow InDirection(IReadOnlyList<SuitedRow> rows, PlanRequest request) =>
        rows.FirstOrDefault(row => Asked(row.Row, request) is { } asked && asked == row.Row.Rotation)
        ?? rows.FirstOrDefault(row => request.Rotation is null && row.Row.Rotation == "counterclockwise")
        ?? rows[0];
}
