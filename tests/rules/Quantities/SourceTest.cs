using WireCoach.Rules.Quantities;

namespace WireCoach.Rules.Tests.Quantities;

/// <summary>A source is named so that it can be looked up, and what was not read in it is called so.</summary>
public sealed class SourceTest
{
    [Theory]
    [InlineData(SourceBasis.Primary, "clause 9", "2021", "a standard, clause 9 (2021)")]
    [InlineData(SourceBasis.Computed, "clause 9", null, "a standard, clause 9")]
    [InlineData(SourceBasis.Secondary, null, "2021", "a standard (2021); planning figure")]
    [InlineData(SourceBasis.Trade, null, null, "a standard; planning figure")]
    [InlineData(SourceBasis.Judgement, null, null, "a standard; own judgement")]
    public void It_is_named_with_what_it_is_worth(SourceBasis basis, string? place, string? edition, string named) =>
        Assert.Equal(named, new Source { Title = "a standard", Place = place, Edition = edition, Basis = basis }.ToString());

    [Fact]
    public void What_was_derived_here_says_so() => Assert.Equal(("own computation, Ohm's law", SourceBasis.Computed), (Source.Computation("Ohm's law").ToString(), Source.Computation("Ohm's law").Basis));

    [Fact]
    public void A_source_of_which_nothing_is_said_was_not_read_itself() => Assert.Equal(SourceBasis.Secondary, new Source { Title = "a page" }.Basis);

    [Fact]
    public void A_name_is_quoted_without_a_number()
    {
        var quoted = Quoted.Named("12", "awg", "wire", Source.Computation("a table"));
        Assert.Equal((null, "awg", "12", "wire", Quoted.CodeDeferral), (quoted.Value, quoted.Unit, quoted.Text, quoted.Rule, quoted.Caution));
    }
}
