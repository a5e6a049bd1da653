using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Reads joints as someone found or made them: "red, 3 and 7 are together, on L1".</summary>
internal sealed class JointGrammar(Scene scene, LeadReader leads)
{
    private static readonly string[] Units = ["a", "amp", "amps", "v", "volt", "volts", "ohm", "ohms"];

    public void Read()
    {
        for (var at = 0; at < scene.Tokens.Count; at++)
        {
            if (!scene.Tokens[at].Used && Joint(at) is { } last)
            {
                at = last;
            }
        }
    }

    private int? Joint(int at)
    {
        if (Ahead(at) is { } ahead)
        {
            return ahead;
        }

        var (tags, next) = List(at);
        if (tags.Count == 0)
        {
            return null;
        }

        if (Capped(at, tags, next) is { } capped)
        {
            return capped;
        }

        var joined = Over("joined", ref next);
        scene.SkipSigns(ref next, ",");
        var line = Line(ref next);
        if (!joined && line is null)
        {
            return null;
        }

        if (line is not null && !joined)
        {
            joined = Over("joined", ref next);
        }

        if (tags.Count < 2 && line is null)
        {
            return null;
        }

        scene.Add(at, next - 1, new Fact.Joint { Leads = tags, Conductor = line });
        return next - 1;
    }

    /// <summary>"T8 capped", "T8 and T9 each capped"; of several that are only "capped" nobody can say whether under one cap.</summary>
    private int? Capped(int at, List<string> tags, int next)
    {
        bool Apart(ref int place)
        {
            var from = place;
            place += scene.IsWord(place, "are", "is") ? 1 : 0;
            place += scene.IsWord(place, "each", "both", "separately", "individually") ? 1 : 0;
            return place > from && scene.IsWord(place - 1, "each", "both", "separately", "individually");
        }

        var each = Apart(ref next) || tags.Count == 1;
        if (!Over("capped", ref next))
        {
            return null;
        }

        each |= Apart(ref next);
        foreach (var tag in each ? tags : [])
        {
            scene.Add(at, next - 1, new Fact.Joint { Leads = [tag] });
        }

        return next - 1;
    }

    /// <summary>"L1: T1, T7": the line first, then what hangs on it.</summary>
    private int? Ahead(int at)
    {
        if (scene.Like(at, "conductor.") is not { } conductor || !scene.IsWord(at, "l1", "l2", "l3", "line", "neutral", "n"))
        {
            return null;
        }

        var next = conductor.Last + 1;
        while (scene.IsWord(next, ":", "=", "-", "has", "gets", "takes", "to", "with", "feeds", "is"))
        {
            next++;
        }

        var (tags, end) = List(next);
        if (tags.Count == 0 || scene.At(end, "leads-to") is not null || scene.IsWord(end, Units) || !tags.TrueForAll(IsLead))
        {
            return null;
        }

        scene.Add(at, end - 1, new Fact.Joint { Leads = tags, Conductor = Name(conductor) });
        return end - 1;
    }

    /// <summary>"L1 4 A" tells amps; a bare number is a lead here only where leads are called so.</summary>
    private bool IsLead(string tag) => scene.Leads.Contains(tag) || !tag.All(char.IsDigit);

    private (List<string> Tags, int Next) List(int at)
    {
        var tags = new List<string>();
        var next = at;
        while (leads.At(next, tags.Count > 0) is { } lead && lead.Tag is not (Fact.Reading.Frame or Fact.Reading.Earth) && !tags.Contains(lead.Tag))
        {
            tags.Add(lead.Tag);
            next = lead.Last + 1;
            var after = next;
            while (scene.IsWord(after, ",", "and", "&", "+", "with"))
            {
                after++;
            }

            if (leads.At(after, after > next) is null)
            {
                break;
            }

            next = after;
        }

        return (tags, next);
    }

    private bool Over(string concept, ref int next)
    {
        var found = false;
        while (scene.At(next, concept) is { } hit)
        {
            found = true;
            next = hit.Last + 1;
        }

        return found;
    }

    /// <summary>"on L1", "to neutral", "goes to line 2".</summary>
    private string? Line(ref int next)
    {
        var at = next;
        while (scene.At(at, "leads-to") is { } to)
        {
            at = to.Last + 1;
        }

        at = scene.IsWord(at, "the") ? at + 1 : at;
        if (at == next || scene.Like(at, "conductor.") is not { } conductor)
        {
            return null;
        }

        next = conductor.Last + 1;
        return Name(conductor);
    }

    private static string Name(Hit conductor) => conductor.Concept["conductor.".Length..].ToUpperInvariant();
}
