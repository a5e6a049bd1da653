using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Reads a capacitor: what is printed on it, and what a meter said of it.</summary>
internal sealed class CapacitorFigures(Scene scene, List<Quantity> open)
{
    private const int SaidJustBefore = 2;

    /// <summary>Files the capacitor of these microfarads; answers the other quantities that belong to it.</summary>
    public IReadOnlyList<Quantity> Read(Quantity q)
    {
        var volts = Volts(q);
        var measured = Follows(q, "measured");
        var marked = measured is null ? Follows(q, "marked") : null;
        var isMeasured = marked is not null || (measured is null && scene.InSentence("measured", q.First) && !scene.InSentence("marked", q.First));
        var mark = isMeasured ? marked : q;
        scene.Add(q.First, q.Last, new Fact.Capacitor
        {
            Microfarads = mark?.Values[0],
            MicrofaradsTo = mark?.Values.Count > 1 ? mark.Values[1] : null,
            MeasuredMicrofarads = isMeasured ? q.Values[0] : measured?.Values[0],
            Volts = volts?.Values[0],
            Use = UseBeside(q) ?? UseBefore(q),
        });
        return [.. new[] { volts, measured, marked }.OfType<Quantity>()];
    }

    private Quantity? Volts(Quantity q) =>
        open.Find(v => v.UnitId == "volt" && ((v.First > q.Last && v.First - q.Last <= 3) || (v.First > q.Last && scene.Tokens[v.First].Clause == scene.Tokens[q.First].Clause)
            || (v.Last < q.First && q.First - v.Last <= 2)) && v.Values.Count == 1)
        ?? open.Find(v => v.Unit is null && v.First > q.Last && v.First - q.Last <= 2 && v.Values.Count == 1 && v.Values[0] >= 100);

    /// <summary>"7.5 µF, measures 4.1": a number after it in its sentence, with the word that tells right before it.</summary>
    private Quantity? Follows(Quantity q, string concept) => open.Find(other =>
        other.First > q.Last && other.UnitId is "" or "microfarad" && other.Values.Count <= 2 && scene.Tokens[other.First].Sentence == scene.Tokens[q.First].Sentence
        && scene.Hits.Exists(hit => hit.Concept == concept && hit.First > q.Last && hit.Last < other.First && other.First - hit.Last <= SaidJustBefore));

    /// <summary>What it is for by the nearest word in its clause; words before it go first: "start cap 189 µF and run cap 30 µF".</summary>
    private string? UseBeside(Quantity q)
    {
        var clause = scene.Tokens[q.First].Clause;
        var told = scene.Hits.Where(hit => hit.Concept is "start-use" or "run-use" && scene.Tokens[hit.First].Clause == clause).ToList();
        var nearest = told.FindLast(hit => hit.First < q.First) ?? told.Find(hit => hit.First > q.Last);
        return nearest?.Concept switch { "start-use" => "start", "run-use" => "run", _ => null };
    }

    /// <summary>"The run cap, 7.5 µF": what it is for stands right before the comma.</summary>
    private string UseBefore(Quantity q)
    {
        var before = scene.Hits.FindLast(hit => hit.Concept is "start-use" or "run-use" && hit.Places.Length > 1 && hit.Last < q.First && q.First - hit.Last <= SaidJustBefore);
        return before?.Concept switch { "start-use" => "start", "run-use" => "run", _ => "unknown" };
    }
}
