namespace WireCoach.Rules.Windings;

/// <summary>One way to lay leads on the terminals of a pattern, as far as readings touch them.</summary>
/// <param name="Pattern">The pattern.</param>
/// <param name="TerminalOf">By lead the terminal; −1 for a lead that no reading touches: all of those are alike.</param>
/// <param name="LogWeight">ln of its weight: prior, share of all assignments, likelihood of the readings.</param>
/// <param name="LnOhms">ln of the fitted unknowns.</param>
/// <param name="Worst">The greatest distance of a reading from the fit, in standard deviations.</param>
internal sealed record Leaf(Pattern Pattern, int[] TerminalOf, double LogWeight, double[] LnOhms, double Worst)
{
    public Link LinkOf(int first, int second) => Pattern.Links[TerminalOf[first]][TerminalOf[second]];

    /// <summary>The ohms to be expected between two leads between which there are ohms.</summary>
    public double OhmsOf(int first, int second) => Ohms(FormulaOf(first, second));

    /// <summary>The ohms that a formula gives.</summary>
    /// <param name="formula">The formula.</param>
    public double Ohms(int formula)
    {
        var sum = 0.0;
        foreach (var (unknown, factor) in Pattern.Terms[formula])
        {
            sum += factor * Math.Exp(LnOhms[unknown]);
        }

        return sum;
    }

    /// <summary>The unknowns of which readings say something, as bits.</summary>
    /// <param name="readings">The readings.</param>
    public int Known(IReadOnlyList<Measured> readings)
    {
        var known = 0;
        for (var at = 0; at < readings.Count; at++)
        {
            var reading = readings[at];
            known |= reading.Showed == Showed.Ohms && LinkOf(reading.First, reading.Second) == Link.Ohms ? Pattern.UnknownsOf[FormulaOf(reading.First, reading.Second)] : 0;
        }

        return known;
    }

    /// <summary>Whether readings say something of all that lies between two leads between which there are ohms.</summary>
    public bool IsKnown(int first, int second, IReadOnlyList<Measured> readings) => (Pattern.UnknownsOf[FormulaOf(first, second)] & ~Known(readings)) == 0;

    /// <summary>Whether something that lies between two leads between which there are ohms has many times what is usual.</summary>
    public bool IsBeyondUsual(int first, int second, double times) => Array.Exists(Pattern.Terms[FormulaOf(first, second)], term => LnOhms[term.Unknown] > Pattern.Unknowns[term.Unknown].LnMost + Math.Log(times));

    private int FormulaOf(int first, int second) => Pattern.Formula[TerminalOf[first]][TerminalOf[second]];
}

/// <summary>What a fit came to.</summary>
/// <param name="Log">ln of the evidence.</param>
/// <param name="LnOhms">ln of the fitted unknowns.</param>
/// <param name="Worst">The greatest distance of a reading from the fit, in standard deviations.</param>
/// <param name="Unknowns">The unknowns of which the readings say something, as bits.</param>
internal sealed record Fitted(double Log, double[] LnOhms, double Worst, int Unknowns);
