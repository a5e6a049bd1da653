namespace WireCoach.Rules.Circuits;

/// <summary>A two-terminal part of a network. Volts are those of <see cref="From"/> against <see cref="To"/>; amps count from <see cref="From"/> through the part to <see cref="To"/>, for sources too.</summary>
public abstract record Element
{
    private Element(string id, string from, string to) => (Id, From, To) = (id, from, to);

    /// <summary>Its id, once in the network.</summary>
    public string Id { get; }

    /// <summary>The node of its first terminal; of a coil, the dotted end.</summary>
    public string From { get; }

    /// <summary>The node of its second terminal.</summary>
    public string To { get; }

    /// <summary>A resistor.</summary>
    public sealed record Resistor : Element
    {
        /// <param name="id">Its id.</param>
        /// <param name="from">One node.</param>
        /// <param name="to">The other node.</param>
        /// <param name="ohms">Zero or more; <see langword="null"/> is a part that is open.</param>
        public Resistor(string id, string from, string to, double? ohms)
            : base(id, from, to) => Ohms = ohms;

        /// <summary>Its resistance in ohms, zero or more; <see langword="null"/> when open.</summary>
        public double? Ohms { get; }
    }

    /// <summary>A coil: an inductance with its winding resistance.</summary>
    public sealed record Inductor : Element
    {
        /// <param name="id">Its id.</param>
        /// <param name="from">The dotted end.</param>
        /// <param name="to">The other end.</param>
        /// <param name="henries">Above zero.</param>
        /// <param name="ohms">Zero or more.</param>
        public Inductor(string id, string from, string to, double henries, double ohms = 0)
            : base(id, from, to) => (Henries, Ohms) = (henries, ohms);

        /// <summary>Its own inductance in henries, above zero.</summary>
        public double Henries { get; }

        /// <summary>The resistance of its wire in ohms, zero or more.</summary>
        public double Ohms { get; }
    }

    /// <summary>A capacitor.</summary>
    public sealed record Capacitor : Element
    {
        /// <param name="id">Its id.</param>
        /// <param name="from">One node.</param>
        /// <param name="to">The other node.</param>
        /// <param name="microfarads">Above zero.</param>
        public Capacitor(string id, string from, string to, double microfarads)
            : base(id, from, to) => Microfarads = microfarads;

        /// <summary>Its capacitance in microfarads, above zero.</summary>
        public double Microfarads { get; }
    }

    /// <summary>An ideal voltage source.</summary>
    public sealed record Source : Element
    {
        /// <param name="id">Its id.</param>
        /// <param name="from">The terminal that stands at <paramref name="volts"/>.</param>
        /// <param name="to">The terminal it is counted against.</param>
        /// <param name="volts">RMS volts; direct volts at zero hertz.</param>
        /// <param name="angleDegrees">Phase angle in degrees, positive leads.</param>
        public Source(string id, string from, string to, double volts, double angleDegrees = 0)
            : base(id, from, to) => (Volts, AngleDegrees) = (volts, angleDegrees);

        /// <summary>RMS volts; direct volts at zero hertz.</summary>
        public double Volts { get; }

        /// <summary>Phase angle in degrees, positive leads.</summary>
        public double AngleDegrees { get; }
    }

    /// <summary>A switch without resistance.</summary>
    public sealed record Switch : Element
    {
        /// <param name="id">Its id.</param>
        /// <param name="from">One node.</param>
        /// <param name="to">The other node.</param>
        /// <param name="closed">Whether it conducts.</param>
        public Switch(string id, string from, string to, bool closed)
            : base(id, from, to) => Closed = closed;

        /// <summary>Whether it conducts.</summary>
        public bool Closed { get; }
    }
}
