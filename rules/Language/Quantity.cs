using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Language;

/// <summary>One number or several with their unit, as they stand in the text.</summary>
/// <param name="Values">The numbers in the unit of the contract.</param>
/// <param name="Unit">The unit; <see langword="null"/> for bare numbers.</param>
/// <param name="IsRange">Joined by a hyphen, as in 53-64.</param>
/// <param name="First">The first token.</param>
/// <param name="Last">The last token.</param>
internal sealed record Quantity(IReadOnlyList<double> Values, UnitWords? Unit, bool IsRange, int First, int Last)
{
    public string UnitId => Unit?.Unit ?? string.Empty;

    public string Kind => Unit?.Id ?? string.Empty;
}

/// <summary>Reads all numbers that are not part of something else already.</summary>
internal sealed class QuantityReader(Scene scene, UnitBook units)
{
    private const int MostPhases = 3;
    private static readonly HashSet<double> FractionParts = [2, 3, 4, 5, 6, 8, 10, 12, 15, 16, 20, 25, 32];
    private readonly bool[] _taken = new bool[scene.Tokens.Count + 1];

    public List<Quantity> All()
    {
        var found = new List<Quantity>();
        for (var at = 0; at < scene.Tokens.Count; at++)
        {
            if (!scene.Tokens[at].Used && !_taken[at] && Next(at) is { } quantity)
            {
                for (var taken = quantity.First; taken <= quantity.Last; taken++)
                {
                    _taken[taken] = true;
                }

                at = quantity.Last;
                Merge(found, quantity);
            }
        }

        return found;
    }

    /// <summary>"115V/230V" and "10.4 A or 5.2 A" are one entry of a plate.</summary>
    private void Merge(List<Quantity> found, Quantity next)
    {
        var last = found.Count > 0 ? found[^1] : null;
        if (last is not null && last.Unit is not null && last.UnitId == next.UnitId && last.Kind is "volt" or "amp" && next.First == last.Last + 2 && scene.IsWord(last.Last + 1, "/", "or"))
        {
            found[^1] = last with { Values = [.. last.Values, .. next.Values], Last = next.Last };
            return;
        }

        found.Add(next);
    }

    private Quantity? Next(int at)
    {
        var token = scene.Tokens[at];
        if (token.Kind == TokenKind.Tag || (token.Kind == TokenKind.Word && NumberWord(at) is null))
        {
            return null;
        }

        if (token.Kind == TokenKind.Mark || token.InOhms)
        {
            return token.InOhms ? new Quantity([token.Value], units.At(scene, at + 1, true)?.Unit, false, at, at) : null;
        }

        return token.Kind == TokenKind.Word ? InWords(at) : Powers(at) ?? Plain(at);
    }

    private (double Value, int Last)? NumberWord(int at) =>
        scene.Like(at, "number.") is { } word && double.TryParse(word.Concept["number.".Length..], System.Globalization.CultureInfo.InvariantCulture, out var value) ? (value, word.Last) : null;

    /// <summary>"single phase", "three volts left", "half a horse"; a number word counts only with a unit behind it, a part of one only as power.</summary>
    private Quantity? InWords(int at)
    {
        if (NumberWord(at) is not { } number)
        {
            return null;
        }

        var isPart = number.Value != Math.Floor(number.Value);
        var behind = scene.IsWord(number.Last + 1, "-") || (isPart && scene.IsWord(number.Last + 1, "a", "of")) ? number.Last + 2 : number.Last + 1;
        return units.At(scene, behind, false) is { } unit && (!isPart || unit.Unit.Unit is "horsepower" or "kilowatt")
            ? new Quantity([Convert(number.Value, unit.Unit)], unit.Unit, false, at, unit.Last)
            : null;
    }

    /// <summary>Horsepower is written in fractions: "1 1/2 HP", "3/4hp", "7 ½", "1/6 / 1/2".</summary>
    private Quantity? Powers(int at)
    {
        var values = new List<double>();
        var next = at;
        while (Mixed(next) is { } element)
        {
            values.Add(element.Value);
            next = element.Last + 1;
            if (!(scene.IsWord(next, "/") && Mixed(next + 1) is not null))
            {
                break;
            }

            next++;
        }

        if (values.Count == 0)
        {
            return null;
        }

        var label = Before(at) is { Unit.Unit: "horsepower" } before ? before : ((Reference.UnitWords Unit, int First)?)null;
        var behind = scene.IsWord(next, "-") ? next + 1 : next;
        if (units.At(scene, behind, true) is { } unit && (label is null || scene[behind]!.Glued))
        {
            return unit.Unit.Unit == "horsepower" ? new Quantity([.. values.Select(value => Convert(value, unit.Unit))], unit.Unit, false, at, unit.Last) : null;
        }

        return label is { } hp ? new Quantity([.. values.Select(value => Convert(value, hp.Unit))], hp.Unit, false, hp.First, next - 1) : null;
    }

    private (double Value, int Last)? Mixed(int at)
    {
        if (scene[at] is not { Kind: TokenKind.Number, Used: false } first)
        {
            return null;
        }

        if (Part(at) is { } part)
        {
            return part;
        }

        var behind = scene.IsWord(at + 1, "-") ? at + 2 : at + 1;
        if (first.IsWhole && scene[behind] is { Kind: TokenKind.Number } second)
        {
            return second.Value < 1 && !second.Text.Contains('.', StringComparison.Ordinal) ? (first.Value + second.Value, behind)
                : Part(behind) is { } fraction ? (first.Value + fraction.Value, fraction.Last)
                : (first.Value, at);
        }

        return (first.Value, at);
    }

    private (double Value, int Last)? Part(int at) =>
        scene[at] is { IsWhole: true } above && scene.IsWord(at + 1, "/") && scene[at + 1]!.Glued && scene[at + 2] is { IsWhole: true, Glued: true } below
        && above.Value < below.Value && FractionParts.Contains(below.Value)
            ? (above.Value / below.Value, at + 2)
            : null;

    private Quantity? Plain(int at)
    {
        var values = new List<double> { scene.Tokens[at].Value };
        var (last, range) = (at, false);
        while (Separator(last + 1) is var width && width > 0)
        {
            range |= scene.IsWord(last + 1, "-") && width == 1;
            last += width + 1;
            values.Add(scene.Tokens[last].Value);
        }

        if (scene.Tokens[at].Negative)
        {
            values[0] = -values[0];
        }

        var before = Before(at);
        var behind = units.At(scene, scene.IsWord(last + 1, "-", "(") ? last + 2 : last + 1, true);
        if (behind is { } unit && (before is not { } named || (scene[last + 1]!.Glued && !IsShare(named.Unit, unit.Unit)) || named.Unit.Id == unit.Unit.Id || (named.Unit.Unit == "ohm" && unit.Unit.Unit == "ohm")))
        {
            return new Quantity([.. values.Select(value => Convert(value, unit.Unit))], unit.Unit, range, at, unit.Last);
        }

        return before is { } label
            ? new Quantity([.. values.Select(value => Convert(value, label.Unit))], label.Unit, range, label.First, last)
            : new Quantity(values, null, range, at, last);
    }

    /// <summary>"Efficiency 85%": the sign for percent says no more than the word before the figure.</summary>
    private static bool IsShare(UnitWords before, UnitWords behind) => behind.Id == "percent" && before.Unit is "ratio" or "percent";

    /// <summary>How many signs join a number to the next: "/" with or without blanks, "-" and "-/" without.</summary>
    private int Separator(int at)
    {
        if (scene[at] is not { Kind: TokenKind.Mark } sign || scene.Tokens[at].Used)
        {
            return 0;
        }

        var width = sign.Is("-") && scene.IsWord(at + 1, "/") ? 2 : 1;
        return scene[at + width] is { Kind: TokenKind.Number, Used: false, InOhms: false } && (sign.Is("/") || (sign.Is("-") && sign.Glued && scene[at + width]!.Glued)) ? width : 0;
    }

    /// <summary>A unit that stands as a label before the number: "RPM 1725", "SF: 1.25".</summary>
    private (UnitWords Unit, int First)? Before(int at)
    {
        var end = scene.IsWord(at - 1, ":", "=", "of", "is", "-") && !(scene.IsWord(at - 1, "-") && scene[at]!.Glued) ? at - 2 : at - 1;
        for (var first = Math.Max(0, end - 2); first <= end; first++)
        {
            if (!_taken[first] && !scene.Tokens[first].Used && units.At(scene, first, false) is { } unit && unit.Last == end && !IsSentenceWord(unit.Unit) && !(unit.Unit.Unit == "celsius" && scene.Tokens[end].Text.Length == 1) && !(unit.Unit.Id == "phases" && scene.Tokens[at].Value > MostPhases)) // "phase to phase 402" counts nothing, and "C 30 µF" is a capacitor
            {
                return (unit.Unit, first);
            }
        }

        return null;
    }

    /// <summary>"volts", "amps", "in" and the like start sentences too; only units that label plates count before a number.</summary>
    private static bool IsSentenceWord(UnitWords unit) => unit.Id is "second" or "minute" or "hour" or "metre" or "foot" or "inch" or "year" or "day";

    private static double Convert(double value, UnitWords unit) => (value - unit.Less) * unit.Factor;
}
