using System.Text.RegularExpressions;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Tests.Safety;

/// <summary>What somebody at home is told to look at takes no tools, no opened box and no work that the gate refuses.</summary>
public sealed partial class AtHomeTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;

    [Fact]
    public void Looking_at_home_opens_nothing_and_mends_nothing()
    {
        string[] parts =
        [
            .. Knowledge.Tests.Values.Where(test => test.Task == "look").SelectMany(test => test.Sentences()).Select(sentence => sentence.Id),
            .. Knowledge.Confirmations["isolated"].Sentences().Select(sentence => sentence.Id),
        ];
        Assert.Contains("test.look-and-smell.how-1", parts);
        Assert.Contains("confirmation.isolated.how-4", parts);
        Assert.Empty(parts.Select(id => (id, Text: AtHome(id))).Where(one => Work().IsMatch(one.Text)).Select(one => $"{one.id}: {one.Text}"));
    }

    [Fact]
    public void A_technician_reads_the_whole_of_it() => Assert.Matches(Work(), Knowledge.Sentences.Render(Statement.Named("confirmation.isolated.how-4"), Role.Technician));

    private static string AtHome(string id) => Knowledge.Sentences.Render(Statement.Named(id), Role.Homeowner);

    [GeneratedRegex("terminal box|into the box|prove (the|insulation)|live source|every conductor|dry it|make the joints|make it good|before the new one|in the lid", RegexOptions.IgnoreCase, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Work();
}
