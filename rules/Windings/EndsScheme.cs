using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Windings;

/// <summary>The ways in which the coils of a motor can lie: each way gives every coil its direction in degrees.</summary>
internal sealed record EndsScheme
{
    /// <summary>The coils as found.</summary>
    public required IReadOnlyList<EndsCoil> Coils { get; init; }

    /// <summary>The ways, one direction in degrees for each coil.</summary>
    public required IReadOnlyList<int[]> Ways { get; init; }

    /// <summary>Groups of coils whose ends must be told apart, by index, the coil that is fed first.</summary>
    public required IReadOnlyList<IReadOnlyList<int>> Related { get; init; }

    /// <summary>The pairs of leads that may be fed.</summary>
    public required IReadOnlyList<(string, string)> Drives { get; init; }

    /// <summary>The pairs of leads that may be read alone or tied, with the coil or coils between them.</summary>
    public required IReadOnlyList<(string, string)> Reads { get; init; }

    /// <summary>Whether the coils are phases 120° apart and not halves on one axis.</summary>
    public required bool Phases { get; init; }

    /// <summary>The form of the layout that gives the markings; <see langword="null"/> where the windings fit none.</summary>
    public Layout? Form { get; init; }

    /// <summary>Leads whose markings do not depend on the way.</summary>
    public IReadOnlyDictionary<string, string> Fixed { get; init; } = new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>Whether the direction of rotation is chosen with the marks and not proved.</summary>
    public bool DirectionUnproved { get; init; }

    /// <summary>Whether a motor of this kind can be run on one half.</summary>
    public bool CanRunOnHalf { get; init; }

    /// <summary>Whether each coil can be fed and read by itself.</summary>
    public bool CoilsComeOut => Coils.All(coil => coil.To[0] != '\0');

    /// <summary>Whether the start of a coil is the lead that it is listed from.</summary>
    public static bool StartsFrom(int coil, int[] way) => way[coil] % 120 == 0 || way[coil] == 90;

    /// <summary>The tag of every marking for a way; <see langword="null"/> where there is no form.</summary>
    public IReadOnlyDictionary<string, string>? Assign(int[] way)
    {
        if (Form is null)
        {
            return null;
        }

        var free = EndsLayout.Vectors(Form).ToList();
        var found = new Dictionary<string, string>(Fixed, StringComparer.Ordinal);
        for (var coil = 0; coil < Coils.Count; coil++)
        {
            var at = free.FindIndex(vector => vector.Role == Coils[coil].Role && vector.To is null == (Coils[coil].To[0] == '\0') && vector.Fits(way[coil]));
            if (at < 0)
            {
                return null;
            }

            free[at].Mark(Coils[coil], way[coil], found);
            free.RemoveAt(at);
        }

        return found.Count == Form.Leads.Count ? found : null;
    }
}

/// <summary>A coil of a layout by its leads: from a start, or from the corner of a group, to its other end.</summary>
internal sealed record EndsVector(string Role, string From, string? To, int Degrees, bool Turns)
{
    public bool Fits(int degrees) => degrees == Degrees || (Turns && (degrees + 180) % 360 == Degrees);

    public void Mark(EndsCoil coil, int degrees, Dictionary<string, string> found)
    {
        var (start, end) = degrees == Degrees ? (coil.From, coil.To) : (coil.To, coil.From);
        found[From] = start;
        if (To is not null)
        {
            found[To] = end;
        }
    }
}

/// <summary>How a layout's coils look from its leads.</summary>
internal static class EndsLayout
{
    /// <summary>The coils whose ends come out, in the layout's order, with their directions.</summary>
    public static IReadOnlyList<EndsVector> Vectors(Layout form)
    {
        var shared = form.Coils.SelectMany(coil => new[] { (coil.Role, Node: coil.From), (coil.Role, Node: coil.To) }).GroupBy(end => end)
            .Where(end => end.Count() > 1).Select(end => end.Key).ToHashSet();
        var vectors = new List<EndsVector>();
        foreach (var coil in form.Coils)
        {
            var (from, to) = (LeadAt(form, coil.From), LeadAt(form, coil.To));
            var degrees = Degrees(coil);
            if (from is null)
            {
                continue; // both ends inside: nothing of it can be fed or read
            }

            vectors.Add(to is not null && shared.Contains((coil.Role, coil.To)) && !shared.Contains((coil.Role, coil.From))
                ? new(coil.Role, to, from, (degrees + 180) % 360, Turns: false)
                : new(coil.Role, from, to, degrees, Turns: to is not null && !shared.Contains((coil.Role, coil.From))));
        }

        return vectors;
    }

    private static int Degrees(LayoutCoil coil) => coil.Role is "armature" ? 90 : (int)coil.Axis;

    private static string? LeadAt(Layout form, string node)
    {
        var seen = new HashSet<string>([node], StringComparer.Ordinal);
        var open = new Queue<string>(seen);
        while (open.TryDequeue(out var at))
        {
            if (form.Leads.FirstOrDefault(lead => (lead.Node ?? lead.Marking) == at) is { } found)
            {
                return found.Marking;
            }

            foreach (var part in form.Parts.Where(part => part.From == at || part.To == at))
            {
                var other = part.From == at ? part.To : part.From;
                if (seen.Add(other))
                {
                    open.Enqueue(other);
                }
            }
        }

        return null;
    }
}
