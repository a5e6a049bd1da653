using WireCoach.Rules.Cases;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Coaching.Steps;

/// <summary>The motors that the leads of a made connection may belong to, and the readings that tell them apart.</summary>
internal static class FoundLayouts
{
    /// <summary>Open where another motor would read a winding may be a bad touch; twice at different leads it is not.</summary>
    private const int OpenEnough = 2;

    /// <summary>Which lead carries which marking: proved by readings, or printed on every lead of a layout that has just these.</summary>
    public static IReadOnlyList<(Layout Layout, IReadOnlyDictionary<string, string> Tags)> Of(Workup work)
    {
        if (work.Ends is { Assignment: { } proved, Layout: { } id })
        {
            return [(work.Knowledge.Layouts[id], proved)];
        }

        var fits = Printed(work).Where(fit => work.Phases is not { } phases || (phases == 3) == (fit.Layout.Family == "three-phase")).ToList();
        var left = fits.Where(fit => !IsExcluded(work, fit.Layout, fit.Tags)).ToList();
        return left.Count > 0 ? left : fits;
    }

    /// <summary>The layouts that have just the marks that are printed, one on every lead.</summary>
    public static IEnumerable<(Layout Layout, IReadOnlyDictionary<string, string> Tags)> Printed(Workup work)
    {
        var printed = work.File.Leads.Where(lead => lead.Marking is not null).ToList();
        if (printed.Count == 0 || printed.Count != work.File.Leads.Count || printed.DistinctBy(lead => lead.Marking).Count() != printed.Count)
        {
            return [];
        }

        var named = printed.ToDictionary(lead => lead.Marking!, lead => lead.Tag, StringComparer.Ordinal);
        return work.Knowledge.Layouts.Values.Where(layout => layout.Leads.Count == named.Count)
            .Select(layout => (Layout: layout, Tags: LeadTags.ByMarking(layout, named)))
            .Where(fit => fit.Tags.Count == named.Count);
    }

    /// <summary>The next two leads that read a winding in one of the motors and open in another; <see langword="null"/> where no reading tells.</summary>
    public static (string From, string To)? Deciding(Workup work)
    {
        var motors = Of(work);
        if (motors.Count < 2)
        {
            return null;
        }

        var pairs = work.Tags.SelectMany((from, at) => work.Tags.Skip(at + 1).Select(to => (From: from, To: to)))
            .Where(pair => Between(work, pair.From, pair.To) is null && !work.Skipped(CheckFound.ReadingOf(pair.From, pair.To)))
            .Select(pair => (Pair: pair, Closed: motors.Where(motor => IsWay(motor.Layout, motor.Tags, pair.From, pair.To)).ToList()))
            .Where(one => one.Closed.Count > 0 && one.Closed.Count < motors.Count).ToList();
        return pairs.Count == 0 ? null : pairs.MinBy(one => one.Closed.Min(motor => Against(work, motor.Layout, motor.Tags).Count)).Pair;
    }

    private static bool IsExcluded(Workup work, Layout layout, IReadOnlyDictionary<string, string> tags)
    {
        var against = Against(work, layout, tags);
        return against.Exists(reading => !reading.Open) || against.Count >= OpenEnough;
    }

    /// <summary>Readings that this motor cannot give.</summary>
    private static List<Fact.Reading> Against(Workup work, Layout layout, IReadOnlyDictionary<string, string> tags) =>
        work.File.Readings.FindAll(reading => reading.Together.Count == 0 && work.Tags.Contains(reading.From) && work.Tags.Contains(reading.To)
            && IsWay(layout, tags, reading.From, reading.To) == reading.Open).ToList();

    private static Fact.Reading? Between(Workup work, string one, string other) => work.File.Readings.Find(reading => reading.IsOfPair(one, other));

    /// <summary>Whether direct current finds a way between two leads.</summary>
    private static bool IsWay(Layout layout, IReadOnlyDictionary<string, string> tags, string from, string to)
    {
        string Marking(string tag) => tags.First(lead => lead.Value == tag).Key;
        return layout.Way(Marking(from), Marking(to)) is not null;
    }
}
