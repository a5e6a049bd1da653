using CsCheck;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Tests.Reference;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Tests.Windings;

/// <summary>The sums behind identification, each held against another way to the same figure.</summary>
public sealed class PatternsTest
{
    private const int MostLeads = 6;
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;

    /// <summary>A start branch that is tied inside across one half shows only where the meter gets through it.</summary>
    [Theory]
    [InlineData(4, "dual-voltage-4", "no-capacitor", "SwitchOpen", null, true)]
    [InlineData(4, "dual-voltage-4", "no-capacitor", "OpenCoil", "start", true)]
    [InlineData(4, "dual-voltage-4", "no-capacitor", "OpenCoil", "run-1", false)]
    [InlineData(4, "dual-voltage-4", "no-capacitor", "ShortedCoil", "start", false)]
    [InlineData(4, "split-phase-4", null, "SwitchOpen", null, false)]
    [InlineData(4, "split-phase-4", null, "OpenCoil", "start", false)]
    [InlineData(2, "psc-2", null, "OpenCoil", "start", true)]
    [InlineData(2, "psc-2", null, "OpenCoil", "run", false)]
    public void Trouble_is_hidden_where_a_sound_motor_of_the_kind_reads_the_same(int leads, string id, string? form, string kind, string? coil, bool hidden)
    {
        var troubled = new PatternBook(Knowledge).Of(leads).Faulty.Where(pattern => pattern.Layout.Id == id && pattern.Layout.Form == form
            && $"{pattern.Condition.Kind}" == kind && pattern.Condition.Coil?.Id == coil).ToList();
        Assert.NotEmpty(troubled);
        Assert.All(troubled, pattern => Assert.Equal(hidden, pattern.HidesTrouble));
    }

    [Fact]
    public void Equations_are_solved_and_their_determinant_known() => Gen.Select(Gen.Int[1, 6], Gen.Double[-2, 2].Array[48]).Sample((size, figures) =>
    {
        // A·Aᵀ + 1 is symmetric and positive, whatever A is
        double At(int row, int column) => Enumerable.Range(0, size).Sum(k => figures[(row * size) + k] * figures[(column * size) + k]) + (row == column ? 1 : 0);
        var matrix = new double[size * size];
        var solution = figures[..size];
        for (var row = 0; row < size; row++)
        {
            for (var column = 0; column < size; column++)
            {
                matrix[(row * size) + column] = At(row, column);
            }
        }

        double[] right = [.. Enumerable.Range(0, size).Select(row => Enumerable.Range(0, size).Sum(column => At(row, column) * solution[column]))];
        var root = FitPrior.Factor(matrix, size);
        FitPrior.SolveInPlace(matrix, right, size);
        Assert.All(solution.Zip(right), pair => Assert.Equal(pair.First, pair.Second, 1e-6));
        Assert.Equal(1 / Math.Sqrt(Determinant(At, size)), root, 1e-6 * root);
    }, iter: 100);

    [Fact]
    public void Before_anything_is_read_each_resistance_lies_where_its_bells_balance()
    {
        foreach (var pattern in Patterns())
        {
            var (before, size) = (pattern.Before, pattern.Unknowns.Length);
            (int Of, int To, double Middle, double Weight) Bell(int of, int to, double low, double high, double tail) => (of, to, (low + high) / 2, 1 / (((high - low) * (high - low) / 12) + (tail * tail)));
            var bells = pattern.Unknowns.Select((usual, at) => Bell(at, -1, usual.LnLow, usual.LnHigh, usual.Tail)).Concat(pattern.Ratios.Select(ratio => Bell(ratio.Of, ratio.To, ratio.LnLow, ratio.LnHigh, ratio.Tail))).ToList();
            double Pull(int at) => bells.Sum(bell => bell.Weight * (before.Mean[bell.Of] - (bell.To < 0 ? 0 : before.Mean[bell.To]) - bell.Middle) * ((bell.Of == at ? 1 : 0) - (bell.To == at ? 1 : 0)));
            Assert.All(Enumerable.Range(0, size), at => Assert.Equal(0, Pull(at), 1e-4));
            double Weight(int row, int column) => bells.Sum(bell => bell.Weight * ((bell.Of == row ? 1 : 0) - (bell.To == row ? 1 : 0)) * ((bell.Of == column ? 1 : 0) - (bell.To == column ? 1 : 0)));
            Assert.All(Enumerable.Range(0, size * size), at => Assert.Equal(Weight(at / size, at % size), before.Matrix[at], 1e-6 * Math.Abs(before.Matrix[at]) + 1e-9));
            Assert.Equal(Math.Log(Determinant(Weight, size)), before.LogDeterminant, 1e-4);
            Assert.All(pattern.Formulas.Zip(before.Shares).Where(one => one.First.Any(factor => factor > 0)), one => Assert.Equal(1, one.First.Zip(one.Second).Sum(term => term.First > 0 ? term.First * Math.Exp(term.Second) : 0), 1e-9));
            Assert.All(pattern.Formulas.Zip(before.Shares), one => Assert.All(one.First.Zip(one.Second), term => Assert.Equal(term.First > 0, double.IsFinite(term.Second))));
        }
    }

    /// <summary>No unknown can be moved either way without the readings, or what is usual, going worse with it.</summary>
    [Fact]
    public void A_fit_rests_where_nothing_moved_makes_it_better()
    {
        const double Error = 0.02;
        var chance = new Random(5);
        foreach (var pattern in Patterns().Where(pattern => pattern.Formulas.Length is > 0 and < 12))
        {
            var (size, fit) = (pattern.Unknowns.Length, new Fit(pattern));
            double[] truth = [.. pattern.Unknowns.Select((_, at) => pattern.Before.Mean[at] + ((chance.NextDouble() - 0.5) * 0.6))];
            int[] formulas = [.. Enumerable.Range(0, pattern.Formulas.Length).Where(formula => pattern.Terms[formula].Length > 0)];
            if (formulas.Length == 0)
            {
                continue;
            }

            double[] ln = [.. formulas.Select(formula => fit.LnPredicted(formula, truth) + ((chance.NextDouble() - 0.5) * Error))];
            double[] errors = [.. formulas.Select(_ => Error)];
            Assert.All(formulas, formula => Assert.Equal(Math.Log(pattern.Formulas[formula].Select((factor, at) => factor * Math.Exp(truth[at])).Sum()), fit.LnPredicted(formula, truth), 1e-9));
            Assert.True(double.IsFinite(fit.LogEvidence(formulas.Length, formulas, ln, errors, null)));
            double Off(double[] values)
            {
                var prior = Enumerable.Range(0, size).Sum(row => Enumerable.Range(0, size).Sum(column => pattern.Before.Matrix[(row * size) + column] * (values[row] - pattern.Before.Mean[row]) * (values[column] - pattern.Before.Mean[column])));
                return prior + formulas.Select((formula, at) => (ln[at] - fit.LnPredicted(formula, values)) / Error).Sum(off => off * off);
            }

            var rest = Off(fit.Values);
            Assert.All(Enumerable.Range(0, 2 * size), at => Assert.True(rest <= Off([.. fit.Values.Select((value, unknown) => unknown == at / 2 ? value + (at % 2 == 0 ? 0.1 : -0.1) : value)]), $"{pattern.Layout.Id} {pattern.Layout.Form}"));
            Assert.Equal(formulas.Select((formula, at) => Math.Abs(ln[at] - fit.LnPredicted(formula, fit.Values)) / Error).Max(), fit.Worst, 1e-6);
        }
    }

    [Fact]
    public void Ohms_between_two_leads_are_those_of_the_network_of_coils()
    {
        var compared = 0;
        foreach (var form in Knowledge.Forms.Where(form => form.Parts.Count == 0))
        {
            var network = new PatternNetwork(form, new(ConditionKind.Sound));
            for (var one = 0; one < form.Leads.Count; one++)
            {
                for (var other = 0; other < one; other++)
                {
                    var (from, to) = (network.Terminals[one], network.Terminals[other]);
                    if (network.LinkOf(one, other) == Link.Ohms && from != to)
                    {
                        var ohms = ResistorNetwork.Ohms(form, new Dictionary<string, string>(), form.Leads[one].Node ?? form.Leads[one].Marking, form.Leads[other].Node ?? form.Leads[other].Marking);
                        Assert.Equal(ohms, network.Between(from, to, _ => 1), 1e-3);
                        Assert.Equal(2.5 * ohms, network.Between(to, from, _ => 2.5), 1e-2);
                        compared++;
                    }
                }
            }
        }

        Assert.True(compared > 50, $"{compared}");
    }

    [Fact]
    public void A_capacitor_that_is_not_bridged_answers_with_a_kick_and_nothing_else_does()
    {
        var form = Knowledge.Layouts["capacitor-start-4"];
        Link[] Links(bool blocked) => [.. new PatternNetwork(form, new(ConditionKind.Sound, blocked)) is var network ? from one in Enumerable.Range(0, 4) from other in Enumerable.Range(0, one) select network.LinkOf(one, other) : []];
        Assert.Equal((2, 0, 4), (Links(false).Count(link => link == Link.Ohms), Links(false).Count(link => link == Link.Kick), Links(false).Count(link => link == Link.Open)));
        Assert.Equal((1, 1, 4), (Links(true).Count(link => link == Link.Ohms), Links(true).Count(link => link == Link.Kick), Links(true).Count(link => link == Link.Open)));
    }

    /// <summary>A coil that is open is not there, and one with shorted turns reads apart from its like.</summary>
    [Fact]
    public void A_fault_changes_its_own_coil_alone()
    {
        var form = Knowledge.Layouts["three-phase-6"];
        var coil = form.Coils[0];
        Assert.Equal(form.Coils.Count - 1, new PatternNetwork(form, new(ConditionKind.OpenCoil, Coil: coil)).Edges.Count);
        var shorted = new PatternNetwork(form, new(ConditionKind.ShortedCoil, Coil: coil)).Edges;
        Assert.Equal(form.Coils.Count, shorted.Count);
        Assert.Equal(coil.Group + PatternNetwork.Shorted, Assert.Single(shorted, edge => edge.Unknown.Contains('~', StringComparison.Ordinal)).Unknown);
        Assert.DoesNotContain(new PatternNetwork(form, new(ConditionKind.Sound)).Edges, edge => edge.Unknown.Contains('~', StringComparison.Ordinal));
    }

    private static IEnumerable<Pattern> Patterns()
    {
        var book = new PatternBook(Knowledge);
        return Enumerable.Range(2, MostLeads - 1).SelectMany(leads => book.Of(leads).Sound);
    }

    private static double Determinant(Func<int, int, double> at, int size)
    {
        var rows = Enumerable.Range(0, size).Select(row => Enumerable.Range(0, size).Select(column => at(row, column)).ToArray()).ToArray();
        var product = 1.0;
        for (var pivot = 0; pivot < size; pivot++)
        {
            product *= rows[pivot][pivot];
            foreach (var row in rows.Skip(pivot + 1))
            {
                var factor = row[pivot] / rows[pivot][pivot];
                for (var column = pivot; column < size; column++)
                {
                    row[column] -= factor * rows[pivot][column];
                }
            }
        }

        return product;
    }
}
