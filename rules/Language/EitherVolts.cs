namespace WireCoach.Rules.Language;

/// <summary>"The supply is 208, 240 or 480": volts of which only one can be there; none is taken, and which of them it is has to be asked.</summary>
internal sealed class EitherVolts(Scene scene, Belonging belonging)
{
    private static readonly string[] Choosing = ["or", "and", "&"];
    private static readonly string[] Joints = [.. Choosing, ","];

    /// <summary>Leaves them open; answers the quantities that were used.</summary>
    public IReadOnlyList<Quantity> Read(List<Quantity> open)
    {
        var used = new List<Quantity>();
        var row = new List<Quantity>();
        foreach (var q in open.Where(IsOne).OrderBy(q => q.First))
        {
            if (row.Count > 0 && !scene.AreJoined(row[^1], q, Joints))
            {
                used.AddRange(Left(row));
                row.Clear();
            }

            row.Add(q);
        }

        used.AddRange(Left(row));
        return used;
    }

    /// <summary>Volts that stand alone, or two of them with "or" between: "240 V or 480 V".</summary>
    private bool IsOne(Quantity q) => (q.UnitId == "volt" || (q.Unit is null && scene.IsNominalVolts(q))) && !q.IsRange && !belonging.IsPlate(q) && (q.Values.Count == 1 || Chooses(q.First, q.Last));

    private List<Quantity> Left(List<Quantity> row)
    {
        if (row.SelectMany(q => q.Values).Distinct().Count() < 2 || !Chooses(row[0].First, row[^1].Last) || !row.Exists(q => belonging.Of(q, false) == "supply"))
        {
            return [];
        }

        var (first, last) = (row[0].First, row[^1].Last);
        scene.Use(first, last);
        scene.Unsettled.Add(new Leftover(scene.Span(first, last), ["supply/volts"]));
        return [.. row];
    }

    private bool Chooses(int first, int last) => Enumerable.Range(first, last - first).Any(at => scene.IsWord(at, Choosing));
}
