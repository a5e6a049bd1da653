namespace WireCoach.Rules.Windings;

/// <summary>In which order leads are laid on terminals, and what is to be checked after each.</summary>
internal sealed class SearchPlan
{
    public static readonly SearchPlan Nothing = new(0, [], everyLead: false);

    public SearchPlan(int leads, IReadOnlyList<Measured> readings, bool everyLead)
    {
        Readings = [.. readings];
        AsRead = InOrder(leads, readings, everyLead);
        Order = everyLead ? Tightest(AsRead, readings) : AsRead;
        IsAsRead = Order.SequenceEqual(AsRead);
        Checks = new Measured[Order.Length][];
        Laid = new Measured[Order.Length][];
        Tells = new bool[Order.Length];
        Peaks = Readings.Where(IsFigure).Sum(reading => SearchTerms.LogOfPeak(reading.LnError));
        var placed = new bool[leads];
        for (var depth = 0; depth < Order.Length; depth++)
        {
            Laid[depth] = depth == 0 ? [] : [.. Laid[depth - 1], .. Checks[depth - 1].Where(IsFigure)];
            Tells[depth] = depth > 0 && Laid[depth].Length > 1 && Laid[depth].Length > Laid[depth - 1].Length;
            var lead = Order[depth];
            Checks[depth] = [.. readings.Where(reading => reading.Touches(lead) && placed[reading.First == lead ? reading.Second : reading.First])];
            placed[lead] = true;
        }

        static bool IsFigure(Measured reading) => reading.Showed == Showed.Ohms;
    }

    public Measured[] Readings { get; }

    /// <summary>What goes together comes side by side, so that a wrong start is dropped soon.</summary>
    public int[] Order { get; }

    /// <summary>The leads as the readings name them, those that conduct first.</summary>
    public int[] AsRead { get; }

    /// <summary>Whether leads are laid as the readings name them.</summary>
    public bool IsAsRead { get; }

    /// <summary>By place in the order: the readings of that lead against earlier ones.</summary>
    public Measured[][] Checks { get; }

    /// <summary>By place in the order: the figures between leads before it.</summary>
    public Measured[][] Laid { get; }

    /// <summary>By place in the order: whether the lead before it brought a figure that can stand against others.</summary>
    public bool[] Tells { get; }

    /// <summary>ln of the density of figures that are all just right.</summary>
    public double Peaks { get; }

    /// <summary>The leads as read, but each time that first which has figures against most of those before it: what cannot be shows soon.</summary>
    /// <remarks>A figure that is doubted counts too, so that the order is one whichever reading is doubted and fits are found again.</remarks>
    private static int[] Tightest(int[] asRead, IReadOnlyList<Measured> readings)
    {
        var figures = readings.Where(reading => reading.Showed == Showed.Ohms || reading.Mistaken).DistinctBy(reading => (reading.First, reading.Second)).ToList();
        var left = asRead.ToList();
        var order = new List<int>(left.Count);
        while (left.Count > 0)
        {
            var next = left.MaxBy(lead => (Against(lead, order), Against(lead, left), -left.IndexOf(lead)));
            order.Add(next);
            left.Remove(next);
        }

        return [.. order];

        int Against(int lead, List<int> others) => figures.Count(reading => (reading.First == lead && others.Contains(reading.Second)) || (reading.Second == lead && others.Contains(reading.First)));
    }

    private static int[] InOrder(int leads, IReadOnlyList<Measured> readings, bool everyLead)
    {
        var order = new List<int>(leads);
        foreach (var reading in readings.Where(reading => reading.Showed is Showed.Ohms or Showed.Beep or Showed.Kick or Showed.NotOpen).Concat(readings))
        {
            Add(reading.First);
            Add(reading.Second);
        }

        for (var lead = 0; everyLead && lead < leads; lead++)
        {
            Add(lead);
        }

        return [.. order];

        void Add(int lead)
        {
            if (!order.Contains(lead))
            {
                order.Add(lead);
            }
        }
    }
}
