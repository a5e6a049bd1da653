using System.Globalization;
using System.Text.RegularExpressions;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>The edition of a standard as people write it.</summary>
internal static partial class AdoptedYear
{
    /// <summary>2023, "2023" or "NEC 2023"; <see langword="null"/> where none is given.</summary>
    public static int? Read(PlateValue? edition, List<Problem> wrong)
    {
        if (edition is null)
        {
            return null;
        }

        if (Year().Match(edition.Text) is { Success: true } year)
        {
            return int.Parse(year.Value, CultureInfo.InvariantCulture);
        }

        wrong.Add(new Problem("unreadable-quantity", "edition", Statement.Of("nameplate.not-a-number", ("field", "edition"), ("text", edition.Text))));
        return null;
    }

    [GeneratedRegex(@"\b\d{4}\b", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Year();
}
