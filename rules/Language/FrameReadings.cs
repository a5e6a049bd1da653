using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Reads what was measured between several leads and the frame or the earth: "all six together to frame OL", "frame to 1, 2 and 3 open", "no wire shows continuity to the case".</summary>
internal sealed class FrameReadings(Scene scene, LeadReader leads, ReadingGrammar readings)
{
    private const int MostTied = 3;

    /// <summary>The leads that were on the one probe: named ones, or all that there are, each by itself or together.</summary>
    private sealed record Side(IReadOnlyList<string> Named, bool Each, int Last);

    /// <summary>Reads what starts at the token; answers its last token.</summary>
    public int? Read(int at) => FromLeads(at) ?? FromFrame(at) ?? FromValue(at) ?? None(at) ?? Bare(at);

    /// <summary>"each to the case nothing".</summary>
    private int? FromLeads(int at) => All(at) is { } all && ToFrame(all.Last + 1) is var (frame, value) ? File(at, all, frame, value) : null;

    /// <summary>"frame to each lead open" and "frame to 1, 2, 3 and 4 open": none of the leads was measured against another.</summary>
    private int? FromFrame(int at)
    {
        if (leads.Frame(at) is not { } frame || Over(frame.Last + 1) is var next && next == frame.Last + 1 || (All(next) ?? Row(next)) is not { } side || readings.After(side.Last + 1, true) is not { } value)
        {
            return null;
        }

        return File(at, side, frame, value);
    }

    /// <summary>"no continuity from any lead to the frame".</summary>
    private int? FromValue(int at) =>
        readings.ValueAt(at, true) is { Open: true, Kick: false } value && scene.IsWord(value.Last + 1, "from", "between", "on") && (All(value.Last + 2) ?? Row(value.Last + 2)) is { } side
        && Over(side.Last + 1) is var next && next > side.Last + 1 && leads.Frame(next) is { } frame ? File(at, side, frame, value) : null;

    /// <summary>"none of the leads reads to the frame"; what only "goes to the frame" may be a wire of the earth.</summary>
    private int? None(int at)
    {
        if (scene.At(at, "no-lead") is not { } none || scene.At(none.Last + 1, "has-contact") is not { } contact || Over(contact.Last + 1) is var next && next == contact.Last + 1 || leads.Frame(next) is not { } frame)
        {
            return null;
        }

        return File(at, new Side([], true, none.Last), frame, new ReadingGrammar.Value(null, true, false, false, at, contact.Last));
    }

    /// <summary>"nothing to the frame", at the start of a clause: of all leads, or where the way from the frame to the earth was asked for, of that.</summary>
    private int? Bare(int at)
    {
        if (scene[at - 1]?.Clause == scene.Tokens[at].Clause || readings.ValueAt(at, true) is not { Open: true, Kick: false } || ToFrame(at) is not var (frame, value))
        {
            return null;
        }

        if (frame.Tag != Fact.Reading.Earth || scene.Asked is not { CanBeOpen: true })
        {
            return File(at, new Side([], false, at), frame, value);
        }

        var last = Math.Max(value.Last, frame.Last);
        scene.Add(at, last, ReadingGrammar.Reading(Fact.Reading.Frame, frame.Tag, value)); // "no continuity to the earth pin"
        return last;
    }

    private int? File(int at, Side side, (string Tag, int Last) frame, ReadingGrammar.Value value)
    {
        var last = Math.Max(side.Last, Math.Max(value.Last, frame.Last));
        var degrees = readings.Degrees(last + 1);
        last = degrees?.Last ?? last;
        var named = side.Named.Count > 0 ? side.Named : scene.Leads;
        if (value.Ohms >= ReadingGrammar.InsulationFrom)
        {
            scene.Add(at, last, new Fact.Insulation { Megohms = value.Ohms.Value / 1e6, Celsius = degrees?.Celsius });
        }
        else if (named.Count > 0 && (side.Each || (side.Named.Count > 0 && value.Open)))
        {
            foreach (var lead in named)
            {
                scene.Add(at, last, ReadingGrammar.Reading(lead, frame.Tag, value));
            }
        }
        else if (side.Named.Count == 0)
        {
            scene.Add(at, last, ReadingGrammar.Reading(named.Count > 0 ? named[0] : Fact.Reading.All, frame.Tag, value) with { Together = [.. named.Skip(1)] });
        }

        return last; // "frame to 1 and 2 0.3": nobody can say whether that is each of them
    }

    /// <summary>"each", "all leads", "all six together".</summary>
    private Side? All(int at)
    {
        var each = scene.At(at, "each-lead");
        if ((each ?? scene.At(at, "all-leads")) is not { } all)
        {
            return null;
        }

        var last = all.Last;
        for (var tied = 0; tied < MostTied && scene.At(last + 1, "together") is { } together; tied++)
        {
            last = together.Last;
        }

        return new Side([], each is not null, last);
    }

    /// <summary>"1, 2, 3 and 4", "red and blue each".</summary>
    private Side? Row(int at)
    {
        if (leads.Row(at, ",", "and", "&", "or", "/") is not { Count: > 1 } row)
        {
            return null;
        }

        var last = row[^1].Last;
        var each = scene.IsWord(last + 1, "both", "each");
        return new Side([.. row.Select(lead => lead.Tag)], each, each ? last + 1 : last);
    }

    /// <summary>"to frame OL" and "open to the frame".</summary>
    private ((string Tag, int Last) Frame, ReadingGrammar.Value Value)? ToFrame(int at)
    {
        if (leads.Frame(Over(at)) is { } frame)
        {
            return readings.After(frame.Last + 1, true) is { } behind ? (frame, behind) : null;
        }

        return readings.After(at, false) is { } value && leads.Frame(Over(value.Last + 1)) is { } later ? (later, value) : null;
    }

    private int Over(int at) => scene.IsWord(at, "to", "against", "-", "and", "on") ? at + 1 : at;
}
