using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Windings;

/// <summary>The patterns of all layouts by their number of leads, made when first asked for.</summary>
internal sealed class PatternBook
{
    private const int MostLeads = 16;
    private const int MostWithTwo = 6;

    private readonly TradeKnowledge _knowledge;
    private readonly PatternCompiler _compiler;
    private readonly Lazy<PatternSet>[] _sets;
    private readonly IReadOnlyList<Accessory> _accessories;

    public PatternBook(TradeKnowledge knowledge)
    {
        _knowledge = knowledge;
        _accessories = Accessories(knowledge);
        Beside = knowledge.Accessories.Values.SelectMany(accessory => accessory.Markings.Concat(accessory.Iec)).ToHashSet(StringComparer.OrdinalIgnoreCase);
        _compiler = new(knowledge.Identification, knowledge.Identification.WindingOhmsMost.Value);
        _sets = [.. Enumerable.Range(0, MostLeads + 1).Select(leads => new Lazy<PatternSet>(() => Make(leads)))];
    }

    /// <summary>Markings of leads in the box that are no winding's.</summary>
    public IReadOnlySet<string> Beside { get; }

    /// <summary>All patterns with so many leads.</summary>
    public PatternSet Of(int leads) => leads <= MostLeads ? _sets[leads].Value : new([], []);

    private PatternSet Make(int leads)
    {
        var sound = new List<Pattern>();
        var faulty = new List<Pattern>();
        foreach (var form in Forms(leads))
        {
            var log = Math.Log(form.Weight);
            foreach (var blocked in form.Parts.Any(IsCapacitor) ? new[] { false, true } : [false])
            {
                var pattern = _compiler.Compile(form, new(ConditionKind.Sound, blocked), log);
                sound.Add(pattern);
                faulty.AddRange(Faulty(form, pattern, log));
            }
        }

        foreach (var pattern in faulty)
        {
            pattern.HidesTrouble = sound.Exists(twin => twin.Layout.Id == pattern.Layout.Id && PatternCompiler.ReadAsOne(twin, pattern));
        }

        // What needs few unknowns is tried first: it is soon fitted and shows how well the readings can be explained at all.
        return new([.. sound.OrderBy(pattern => pattern.Unknowns.Length)], [.. faulty.OrderBy(pattern => pattern.Unknowns.Length)]);
    }

    private IEnumerable<Layout> Forms(int leads)
    {
        var forms = _knowledge.Layouts.Values.OrderBy(layout => layout.Id, StringComparer.Ordinal).SelectMany(layout => layout.Forms()).ToList();
        var beside = forms.Where(form => form.Leads.Count == leads - 2).SelectMany(form => _accessories.Select(accessory => With(form, accessory)));
        var twice = forms.Where(form => form.Leads.Count == leads - 4 && form is { Family: "three-phase", Leads.Count: <= MostWithTwo }).SelectMany(WithTwo);
        var behind = forms.Where(form => form.Leads.Count == leads - 1 && form.Family == "single-phase" && !form.Parts.Any(part => part.Kind.StartsWith("protector", StringComparison.Ordinal)))
            .Select(Behind);
        return forms.Where(form => form.Leads.Count == leads).Concat(beside).Concat(twice).Concat(behind);
    }

    /// <summary>A geared motor with a brake has its sensors beside it often enough.</summary>
    private IEnumerable<Layout> WithTwo(Layout form) =>
        from one in _accessories from other in _accessories where string.CompareOrdinal(one.Role, other.Role) <= 0 select With(With(form, one), other, "-2");

    /// <summary>The same motor with its first lead behind a protector that comes out on both sides.</summary>
    private Layout Behind(Layout form) => form with
    {
        Form = form.Form is null ? "protector-in-line" : $"{form.Form}+protector-in-line",
        Weight = form.Weight * _accessories.First(accessory => accessory.Role == "protector").Weight * _knowledge.Identification.AccessoryUnsaid.Value,
        Parts = [.. form.Parts, new() { Id = "protector", Kind = "protector", From = "P1", To = form.NodeOf(form.Leads[0].Marking) }],
        Leads = [new() { Marking = "P1" }, .. form.Leads],
    };

    private static bool IsCapacitor(LayoutPart part) => part.Kind is "start-capacitor" or "run-capacitor";

    private List<Pattern> Faulty(Layout form, Pattern sound, double log)
    {
        var blocked = sound.Condition.Blocked;
        var figures = _knowledge.Identification;
        var made = new List<Pattern>();
        if (form.Parts.Any(part => part.Kind == "switch"))
        {
            Add(new(ConditionKind.SwitchOpen, blocked), figures.SwitchOpen.Value);
        }

        if (form.Parts.Any(part => part.Kind == "protector"))
        {
            Add(new(ConditionKind.ProtectorOpen, blocked), figures.ProtectorOpen.Value);
        }

        var coils = form.Coils.Where(coil => coil.Role is not ("protector" or "other")).ToList();
        foreach (var coil in coils)
        {
            Add(new(ConditionKind.OpenCoil, blocked, coil), figures.OpenCoil.Value / coils.Count);
            Shorted(coil, figures.ShortedTurns.Value / coils.Count);
        }

        return made;

        void Add(Condition condition, double probability)
        {
            var pattern = _compiler.Compile(form, condition, log + Math.Log(probability), sound);
            if (made.Find(other => other.Condition.Kind == condition.Kind && other.Condition.Factor == condition.Factor
                && other.Condition.Coil?.Group == condition.Coil?.Group && PatternCompiler.Alike(pattern, other)) is { } same)
            {
                same.LogPrior = Choosing.Weights.LogSum([same.LogPrior, pattern.LogPrior]);
            }
            else
            {
                made.Add(pattern);
            }
        }

        void Shorted(LayoutCoil coil, double probability)
        {
            var pattern = _compiler.Compile(form, new(ConditionKind.ShortedCoil, blocked, coil), log);
            if (Array.Exists(pattern.Unknowns, unknown => unknown.Group.Contains(PatternNetwork.Shorted, StringComparison.Ordinal)))
            {
                Add(pattern.Condition, probability);
                return;
            }

            var steps = figures.ShortedSteps.Values;
            foreach (var left in steps)
            {
                Add(new(ConditionKind.ShortedCoil, blocked, coil, left), probability / steps.Count);
            }
        }
    }

    /// <summary>Accessories with two leads, those of one role taken together: ohms do not tell a heater from a brake.</summary>
    private static IReadOnlyList<Accessory> Accessories(TradeKnowledge knowledge) =>
    [
        .. knowledge.Accessories.Values.Where(accessory => accessory.LeadCount == 2 && accessory.OhmsHigh is > 0)
            .GroupBy(accessory => accessory.Role, StringComparer.Ordinal).OrderBy(role => role.Key, StringComparer.Ordinal)
            .Select(role => role.First() with
            {
                OhmsLow = role.Min(accessory => accessory.OhmsLow),
                OhmsHigh = role.Max(accessory => accessory.OhmsHigh),
                Weight = role.Sum(accessory => accessory.Weight),
            }),
    ];

    private Layout With(Layout form, Accessory accessory, string more = "")
    {
        var protector = _knowledge.Identification.ProtectorOhms;
        var (first, second, id) = ($"~1{more}", $"~2{more}", $"{accessory.Role}{more}");
        return form with
        {
            Form = form.Form is null ? accessory.Role : $"{form.Form}+{accessory.Role}",
            Weight = form.Weight * accessory.Weight * _knowledge.Identification.AccessoryUnsaid.Value,
            Coils = [.. form.Coils, new() { Id = id, Role = accessory.Role, From = first, To = second, Group = id }],
            Leads = [.. form.Leads, new() { Marking = first }, new() { Marking = second }],
            Ohms =
            [
                .. form.Ohms,
                new()
                {
                    Of = id,
                    Low = Math.Max(accessory.OhmsLow, protector.Low),
                    High = accessory.Role == "protector" ? protector.High : Math.Min(accessory.OhmsHigh!.Value, _knowledge.Identification.WindingOhmsMost.Value),
                    Source = accessory.Source,
                },
            ],
        };
    }
}

/// <summary>The patterns with one number of leads: sound motors, and motors with one thing the matter.</summary>
internal sealed record PatternSet(IReadOnlyList<Pattern> Sound, IReadOnlyList<Pattern> Faulty);
