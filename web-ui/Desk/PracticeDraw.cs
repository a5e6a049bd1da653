using System.Security.Cryptography;
using WireCoach.Rules.Practice;
using WireCoach.Rules.Reference;

namespace WireCoach.WebUi.Desk;

/// <summary>What somebody wants to practise on; what is left open is drawn.</summary>
public sealed record PracticeWish
{
    /// <summary>Instead of a fault: one of those that the motor can have.</summary>
    public const string AnyFault = "any";

    /// <summary>A family of motors, for example <c>single-phase</c>.</summary>
    public string? Family { get; init; }

    /// <summary>A layout id.</summary>
    public string? Layout { get; init; }

    /// <summary>A cause id, <see cref="AnyFault"/>, or none for a sound motor.</summary>
    public string? Fault { get; init; }

    /// <summary><c>few</c>, <c>some</c> or <c>many</c> leads.</summary>
    public string? Leads { get; init; }

    /// <summary>How good the ohmmeter is.</summary>
    public string? Meter { get; init; }

    /// <summary>The same number gives the same motor.</summary>
    public int? Seed { get; init; }
}

/// <summary>Draws a practice motor for a wish.</summary>
public static class PracticeDraw
{
    /// <summary>How many leads there are to choose from: the name and its bounds.</summary>
    public static IReadOnlyDictionary<string, (int Least, int Most)> LeadCounts { get; } = new Dictionary<string, (int, int)>(StringComparer.Ordinal)
    {
        ["few"] = (2, 4), ["some"] = (5, 7), ["many"] = (8, int.MaxValue),
    };

    /// <summary>The motor, with its number; <see langword="null"/> where no motor fits the wish.</summary>
    public static PracticeChoice? Draw(TradeKnowledge knowledge, PracticeWish wish)
    {
        ArgumentNullException.ThrowIfNull(knowledge);
        ArgumentNullException.ThrowIfNull(wish);
        var seed = wish.Seed ?? RandomNumberGenerator.GetInt32(1, 100_000);
        var fits = Layouts(knowledge, wish).SelectMany(layout => Faults(knowledge, layout.Id, wish.Fault).Select(fault => (Layout: layout.Id, Fault: fault))).ToList();
        if (fits.Count == 0)
        {
            return null;
        }

        // one layout first, so that a layout with many possible faults is not drawn more often than others
        var layouts = fits.Select(fit => fit.Layout).Distinct(StringComparer.Ordinal).ToList();
        var layout = layouts[seed % layouts.Count];
        var faults = fits.Where(fit => fit.Layout == layout).Select(fit => fit.Fault).ToList();
        return new(layout, faults[seed / layouts.Count % faults.Count], seed, wish.Meter);
    }

    /// <summary>The layouts that machines of the practice bench have and that fit.</summary>
    private static IEnumerable<Layout> Layouts(TradeKnowledge knowledge, PracticeWish wish) => knowledge.PracticeMachines.Values
        .SelectMany(machine => machine.Layouts).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
        .Select(id => knowledge.Layouts[id])
        .Where(layout => wish.Layout is null || layout.Id == wish.Layout)
        .Where(layout => wish.Family is null || layout.Family == wish.Family)
        .Where(layout => wish.Leads is not { } leads || (LeadCounts.TryGetValue(leads, out var count) && layout.Leads.Count >= count.Least && layout.Leads.Count <= count.Most));

    private static IReadOnlyList<string?> Faults(TradeKnowledge knowledge, string layout, string? wished)
    {
        if (wished is null)
        {
            return [null];
        }

        var possible = PracticeMotor.FaultsOf(knowledge, layout);
        return wished == PracticeWish.AnyFault ? possible : [.. possible.Where(fault => fault == wished)];
    }
}
