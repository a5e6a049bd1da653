using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Diagnosis;

/// <summary>Causes as numbers: shares that add up, and two causes at once.</summary>
public sealed class CauseModelTest
{
    private const double Least = 0.003;
    private const double Most = 0.995;
    private const double Stray = 0.004;
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;

    [Fact]
    public void Of_each_kind_of_motor_the_single_causes_are_all_there_is()
    {
        var model = new CauseModel(Knowledge);
        var singles = model.Hypotheses.Where(one => one.Causes.Count == 1).ToList();
        Assert.Equal(Knowledge.Causes.Keys, singles.Select(one => one.Causes[0].Id));
        for (var family = 0; family < model.Families.Count; family++)
        {
            Assert.Equal(1, singles.Sum(one => one.Prior[family]), 1e-9);
        }

        var (stuck, rewound) = (Knowledge.Causes["start-switch-stuck-open"], Find(model, "start-switch-stuck-open"));
        var split = model.Families.ToList().FindIndex(family => family.Id == "split-phase");
        Assert.Equal(stuck.Families["split-phase"] / Knowledge.Causes.Values.Sum(cause => cause.Families.GetValueOrDefault("split-phase")), rewound.Prior[split], 1e-12);
    }

    [Fact]
    public void Two_causes_at_once_are_as_rare_as_knowledge_says_and_only_where_both_can_be()
    {
        var model = new CauseModel(Knowledge);
        foreach (var pair in Knowledge.CausePairs.Values)
        {
            var (first, second, both) = (Find(model, pair.First), Find(model, pair.Second), Find(model, pair.First, pair.Second));
            for (var family = 0; family < model.Families.Count; family++)
            {
                Assert.Equal(second.Prior[family] > 0 ? first.Prior[family] * pair.Share : 0, both.Prior[family], 1e-12);
            }
        }

        var apart = Knowledge.CausePairs.Values.First() with { First = "worn-brushes", Second = "start-switch-stuck-open" };
        var none = new CauseModel(Knowledge with { CausePairs = new Dictionary<string, CausePair> { ["apart"] = apart } });
        Assert.DoesNotContain(none.Hypotheses, one => one.Causes.Count == 2); // no kind of motor has both
    }

    [Fact]
    public void Two_causes_ask_for_both_instructions_or_for_the_one_that_they_share()
    {
        var model = new CauseModel(Knowledge);
        Assert.Equal("replace-start-capacitor+replace-start-switch", Find(model, "start-switch-stuck-closed", "start-capacitor-open").Decision);
        Assert.Equal("open-and-check-rotor+replace-bearings", Find(model, "worn-bearing", "rotor-rubs").Decision); // in order, whichever comes first
        Assert.Equal("rejoin+swap-start-leads", Find(model, "miswired-leads", "start-leads-swapped").Decision);
        var alike = Knowledge.CausePairs.Values.First() with { First = "seized-bearing", Second = "worn-bearing" };
        var same = Find(new CauseModel(Knowledge with { CausePairs = new Dictionary<string, CausePair> { ["alike"] = alike } }), "seized-bearing", "worn-bearing");
        Assert.Equal("replace-bearings", same.Decision);
        Assert.True(same.Leads("replace-bearings"));
        Assert.False(same.Leads("rewind"));
    }

    [Fact]
    public void Either_of_two_causes_may_bring_a_symptom()
    {
        var model = new CauseModel(Knowledge);
        foreach (var both in model.Hypotheses.Where(one => one.Causes.Count == 2))
        {
            var (first, second) = (Find(model, both.Causes[0].Id), Find(model, both.Causes[1].Id));
            for (var at = 0; at < model.Symptoms.Count; at++)
            {
                var brought = both.Causes.Count(cause => cause.Symptoms.ContainsKey(model.Symptoms[at].Id));
                var expected = brought == 2
                    ? Math.Min(Most, first.Present[at] + second.Present[at] - (first.Present[at] * second.Present[at]))
                    : Math.Max(first.Present[at], second.Present[at]);
                Assert.Equal(expected, both.Present[at], 1e-12);
            }
        }
    }

    [Fact]
    public void A_symptom_that_nobody_mentions_was_not_there_not_noticed_or_not_told()
    {
        var model = new CauseModel(Knowledge);
        Assert.All(model.Hypotheses, one => Assert.All(one.Present.Zip(one.Silence, model.Symptoms), symptom =>
        {
            Assert.InRange(symptom.First, Least, Most);
            Assert.Equal(1 - (symptom.First * symptom.Third.Noticed * symptom.Third.Told), Math.Exp(symptom.Second), 1e-12);
        }));
        var hum = model.Symptoms.ToList().FindIndex(symptom => symptom.Id == "hums-no-start");
        var open = Find(model, "start-capacitor-open");
        Assert.Equal(Knowledge.Causes["start-capacitor-open"].Symptoms["hums-no-start"], open.Present[hum], 1e-12);
        Assert.Equal(Math.Log(open.Present[hum]), model.LogLikelihood(open, new Sign.Noticed(hum, "hums-no-start", true)), 1e-12);
        Assert.Equal(Math.Log(1 - (open.Present[hum] * model.Symptoms[hum].Noticed)), model.LogLikelihood(open, new Sign.Noticed(hum, "hums-no-start", false)), 1e-12);
        Assert.Equal(open.Silence[0] + open.Silence[hum], model.LogLikelihood(open, new Sign.Untold([0, hum])), 1e-12);
        Assert.Equal(Math.Log(open.Shows[0][1]), model.LogLikelihood(open, new Sign.Shown(0, model.Tests[0].Id, 1, model.Tests[0].Outcomes[1].Id)), 1e-12);
    }

    [Fact]
    public void What_a_test_shows_adds_up_and_what_nobody_wrote_shows_as_good()
    {
        var model = new CauseModel(Knowledge);
        for (var test = 0; test < model.Tests.Count; test++)
        {
            var guide = model.Tests[test];
            foreach (var one in model.Hypotheses.Where(one => one.Causes.Count == 1))
            {
                var shows = one.Shows[test];
                Assert.Equal(1, shows.Sum(), 1e-9);
                Assert.All(shows, share => Assert.True(share >= Stray / (1 + (Stray * shows.Length)), $"{one.Causes[0].Id} {guide.Id}"));
                var named = one.Causes[0].Tests.GetValueOrDefault(guide.Id);
                var written = guide.Outcomes.Select(outcome => named is null ? outcome.Usual : named.GetValueOrDefault(outcome.Id)).ToList();
                written[0] += Math.Max(0, 1 - written.Sum());
                Assert.All(written.Zip(shows), share => Assert.Equal(share.First, share.Second, 0.05)); // but for what strays
                Assert.Equal(written.Select(share => share > Stray).ToList(), shows.Select(share => share > Stray).ToList());
            }
        }
    }

    [Fact]
    public void Of_two_causes_a_test_shows_the_one_that_it_shows_more_of()
    {
        var model = new CauseModel(Knowledge);
        foreach (var both in model.Hypotheses.Where(one => one.Causes.Count == 2))
        {
            var (first, second) = (Find(model, both.Causes[0].Id), Find(model, both.Causes[1].Id));
            for (var test = 0; test < model.Tests.Count; test++)
            {
                Assert.Equal(Math.Min(first.Shows[test][0], second.Shows[test][0]), both.Shows[test][0], 1e-12);
                Assert.Contains(both.Shows[test], new[] { first.Shows[test], second.Shows[test] });
            }
        }
    }

    private static Hypothesis Find(CauseModel model, params string[] causes) => model.Hypotheses.Single(one => one.Causes.Select(cause => cause.Id).SequenceEqual(causes));
}
