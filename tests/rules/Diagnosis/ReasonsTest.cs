using WireCoach.Rules.Cases;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Diagnosis;

/// <summary>What is said of the written cases follows from the figures: which causes are listed, what speaks for them, how it goes on.</summary>
public sealed class ReasonsTest
{
    private const double Shown = 0.004;
    private const double Weighty = 0.1;
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly IReadOnlyDictionary<string, TaskAccess> Open = TaskAccess.Everywhere(Knowledge, TaskAccess.Open);
    private static readonly IReadOnlyDictionary<string, TaskAccess> Closed = TaskAccess.Everywhere(Knowledge, new TaskAccess(true, []));

    [Fact]
    public void The_likeliest_causes_are_listed_and_never_fewer_than_three()
    {
        Each((_, thought, report) =>
        {
            List<(string Id, double Share)> shares =
            [
                .. Knowledge.Causes.Keys.Select(id => (id, thought.Belief.Probability(one => one.Causes.Any(cause => cause.Id == id))))
                    .Where(one => one.Item2 > 0).OrderByDescending(one => Math.Round(one.Item2, 12)).ThenBy(one => one.id, StringComparer.Ordinal),
            ];
            var listed = shares.Where((one, at) => at < 3 || (at < 8 && one.Share >= Shown)).ToList();
            Assert.Equal(listed.Select(one => one.Id), report.Causes.Select(cause => cause.Id));
            Assert.All(listed.Zip(report.Causes), one => Assert.Equal(one.First.Share, one.Second.Probability, 1e-9));
        });
    }

    /// <summary>Whatever is answered, a motor that only hums, as told or at its first start, is asked for nothing that it shows while it runs.</summary>
    [Theory]
    [InlineData("hums-no-start", true)]
    [InlineData("silent-no-start", true)]
    [InlineData("runs-hot", false)]
    public void A_motor_that_does_not_start_is_not_asked_how_it_runs(string symptom, bool stands)
    {
        string[] running = ["run-current", "run-speed", "run-direction"];
        Fact[] told = [new Fact.Symptom { Id = symptom, Present = true }];
        Assert.Equal(stands, !Asked(told).Intersect(running).Any());
        Assert.DoesNotContain(Asked([new Fact.Running { Outcome = "hummed" }]), running.Contains);

        static List<string> Asked(Fact[] facts)
        {
            var (file, asked) = (CaseFile.From(new CaseOpening(Role.Technician, Region.Iec), facts), new List<string>());
            while (asked.Count < Knowledge.Tests.Count && new Diagnostician(Knowledge).Examine(file, Open).Next is { } next)
            {
                asked.Add(next.Test);
                file = file.With(new Fact.BenchTest { Test = next.Test, Outcome = next.Outcomes[0].Id });
            }

            return asked;
        }
    }

    [Fact]
    public void What_is_likelier_with_a_cause_than_without_speaks_for_it_the_strongest_first()
    {
        var model = new CauseModel(Knowledge);
        var denied = 0;
        Each((_, thought, report) =>
        {
            foreach (var cause in report.Causes)
            {
                var alone = model.Hypotheses.Single(one => one.Causes.Count == 1 && one.Causes[0].Id == cause.Id);
                var reasons = thought.Signs.Where(sign => sign is not Sign.Untold).Select(sign => (Sign: sign, Ratio: model.LogLikelihood(alone, sign)
                    - Math.Log(thought.Prior.Hypotheses.Zip(thought.Prior.Probabilities).Sum(one => one.Second * Math.Exp(model.LogLikelihood(one.First, sign)))))).ToList();
                List<string> speaksFor = [.. reasons.Where(one => one.Ratio > Weighty).OrderByDescending(one => one.Ratio).Take(4).Select(one => Words(one.Sign, "for"))];
                Assert.Equal(speaksFor.Count > 0 ? speaksFor : ["It is a common cause with such motors."], cause.For.Select(one => Knowledge.Sentences.Render(one)));
                Assert.Equal(reasons.Where(one => one.Ratio < -Weighty).OrderBy(one => one.Ratio).Take(4).Select(one => Words(one.Sign, "against")), cause.Against.Select(one => Knowledge.Sentences.Render(one)));
                denied += cause.For.Count(one => one.Id == "diagnosis.for-denied");
                Assert.Equal((Knowledge.Causes[cause.Id].Name, Knowledge.Causes[cause.Id].Repair), (Knowledge.Sentences.Render(cause.Name), Knowledge.Sentences.Render(cause.Repair)));
            }
        });
        Assert.True(denied > 0);
    }

    /// <summary>Words in doubt say less than plain ones and more than none, for and against, and are named as doubtful.</summary>
    [Fact]
    public void What_may_have_been_told_counts_for_less_than_what_was()
    {
        foreach (var symptom in Knowledge.Symptoms.Keys)
        {
            var (none, maybe, told) = (Shares(), Shares(new Fact.Choice { Question = Fact.Choice.Doubted + symptom, Option = "yes" }), Shares(new Fact.Symptom { Id = symptom, Present = true }));
            var (nearest, farthest) = (told.MaxBy(cause => Moved(cause.Key, told)).Key, told.MinBy(cause => Moved(cause.Key, told)).Key);
            Assert.InRange(Moved(nearest, maybe), 1, Moved(nearest, told));
            Assert.InRange(Moved(farthest, maybe), Moved(farthest, told), 1);

            double Moved(string cause, IReadOnlyDictionary<string, double> shares) => shares[cause] / none[cause];
        }

        var first = new Diagnostician(Knowledge).Examine(CaseFile.From(new CaseOpening(Role.Technician, Region.Iec), [new Fact.Choice { Question = Fact.Choice.Doubted + "mechanical-noise", Option = "yes" }]), Open).Causes[0];
        Assert.Contains("diagnosis.for-doubted", first.For.Select(one => one.Id));

        static IReadOnlyDictionary<string, double> Shares(params Fact[] facts)
        {
            var belief = new Diagnostician(Knowledge).Think(CaseFile.From(new CaseOpening(Role.Technician, Region.Iec), facts), Open, sealedCircuit: false).Belief;
            return Knowledge.Causes.Keys.Select(id => (id, Share: belief.Probability(one => one.Causes.Any(cause => cause.Id == id)))).Where(one => one.Share > 0).ToDictionary(one => one.id, one => one.Share, StringComparer.Ordinal);
        }
    }

    [Fact]
    public void How_it_goes_on_is_said_by_how_sure_it_is()
    {
        var met = new HashSet<string>(StringComparer.Ordinal);
        void Look(CaseFile file, IReadOnlyDictionary<string, TaskAccess> access)
        {
            var diagnostician = new Diagnostician(Knowledge);
            var (decisions, report) = (diagnostician.Think(file, access, sealedCircuit: false).Decisions, diagnostician.Examine(file, access));
            var (first, second) = (decisions[0].Likeliest.Name, decisions.Count > 1 ? decisions[1].Likeliest.Name : decisions[0].Likeliest.Name);
            var (likeliest, two) = (Knowledge.Causes[report.Causes[0].Id].Name, decisions.Count > 1 && decisions[0].Share + decisions[1].Share >= 0.9);
            var handOn = $"Stop here. The next person for this motor: {Knowledge.Sentences[$"term.person.{decisions[0].Likeliest.ReferTo}"].Text}.";
            var next = report.Next is { } one ? Knowledge.Tests[one.Test].Name : null;
            var doubt = decisions.Where(decision => decision.Share > 0).Sum(decision => -decision.Share * Math.Log2(decision.Share));
            var (status, said) = decisions[0].Share >= 0.95 ? ("settled", new List<string?> { $"This is it: {first}.", decisions[0].Likeliest.Repair, decisions.Count > 1 && decisions[1].Share >= 0.05 ? $"Look for a second fault beside it: {second}." : null, access[decisions[0].Likeliest.Task].Refused ? handOn : null })
                : next is null ? ("refer", [two ? $"What may be done here cannot tell which of the two it is: {first}, or {second}." : $"What may be done here cannot tell what it is. Most likely so far: {likeliest}.", handOn])
                : two ? ("two-remain", [$"Two remain: {first}, or {second}.", report.Next!.Bits >= doubt / 2 ? $"This decides: {next}." : $"What tells most next: {next}."])
                : ("testing", [$"Most likely so far: {likeliest}.", $"What tells most next: {next}."]);
            Assert.Equal(status, report.Status);
            Assert.Equal(said.OfType<string>(), report.Say.Where(line => line.Id != "diagnosis.unjudged" && !line.Id.StartsWith("effect.", StringComparison.Ordinal)).Select(line => Knowledge.Sentences.Render(line)));
            Assert.Equal(status == "settled" ? null : report.Next?.Test, report.Next?.Test);
            Assert.Equal((decisions[0].Decision, decisions[0].Share), (report.Decision, report.Certainty));
            List<string> cautions = [.. report.Next is null ? [] : Knowledge.Tests[report.Next.Test].Cautions, .. decisions[0].Likeliest.Cautions];
            Assert.Equal(cautions.Distinct(StringComparer.Ordinal), report.Cautions);
            Assert.Equal(status == "refer" || (status == "settled" && access[decisions[0].Likeliest.Task].Refused) ? decisions[0].Likeliest.ReferTo : null, report.ReferTo);
            met.UnionWith(report.Say.Select(line => line.Id));
            met.Add(status);
        }

        foreach (var file in WrittenCase.All.Select(one => one.ToFile()))
        {
            Look(file, Open);
            Look(file, Closed);
        }

        Assert.Empty(new[] { "settled", "two-remain", "testing", "refer", "diagnosis.this-decides", "diagnosis.also-check", "diagnosis.cannot-tell", "diagnosis.cannot-tell-of-many", "diagnosis.take-it-to" }.Except(met, StringComparer.Ordinal));
    }

    [Fact]
    public void The_next_test_is_told_with_what_it_takes_and_what_it_would_show()
    {
        var needy = TaskAccess.Everywhere(Knowledge, new TaskAccess(false, ["isolated", "capacitor-discharged"]));
        var diagnostician = new Diagnostician(Knowledge);
        foreach (var file in WrittenCase.All.Where((_, at) => at % 6 == 0).Select(one => one.ToFile()))
        {
            if (diagnostician.Examine(file, needy).Next is not { } next)
            {
                continue;
            }

            var guide = Knowledge.Tests[next.Test];
            Assert.Equal((guide.Name, guide.Why, guide.Task, guide.Value?.Unit), (Knowledge.Sentences.Render(next.Name), Knowledge.Sentences.Render(next.Why), next.Task, next.Unit));
            Assert.Equal(["isolated", "capacitor-discharged"], next.Needs);
            var needs = next.Needs.Select(need => Knowledge.Confirmations[need]).ToList();
            Assert.Equal([.. needs.Select(need => $"First: {need.First}."), .. guide.How], next.How.Select(step => Knowledge.Sentences.Render(step)));
            Assert.Equal(90 + (guide.Seconds * Knowledge.GateTasks[guide.Task].CostFactor) + needs.Sum(need => need.Seconds), next.Cost, 1e-9);
            Assert.Equal(guide.Outcomes.Select(outcome => (outcome.Id, outcome.Reading, outcome.Means)), next.Outcomes.Select(outcome => (outcome.Id, Knowledge.Sentences.Render(outcome.Reading), Knowledge.Sentences.Render(outcome.Means))));
            var before = diagnostician.Think(file, needy, sealedCircuit: false).Belief;
            foreach (var (outcome, at) in next.Outcomes.Select((outcome, at) => (outcome, at)))
            {
                var place = Knowledge.Tests.Keys.ToList().IndexOf(next.Test);
                var then = before.Hypotheses.Zip(before.Probabilities).MaxBy(one => one.Second * one.First.Shows[place][at]).First.Causes[0];
                Assert.Equal((then.Id, $"Then most likely: {then.Name}."), (outcome.Cause, Knowledge.Sentences.Render(outcome.Then)));
            }
        }
    }

    [Fact]
    public void Who_is_kept_off_hears_what_it_looks_like_and_whose_it_is()
    {
        var file = WrittenCase.All[0].ToFile();
        var report = new Diagnostician(Knowledge).Examine(file, Open, keptFor: "licensed-electrician");
        var likeliest = new Diagnostician(Knowledge).Think(file, Open, sealedCircuit: false).Decisions[0];
        Assert.Equal(("refer", "licensed-electrician", null, likeliest.Decision, likeliest.Share), (report.Status, report.ReferTo, report.Next, report.Decision, report.Certainty));
        Assert.Equal([$"Most likely so far: {Knowledge.Causes[report.Causes[0].Id].Name}.", "Stop here. The next person for this motor: a licensed electrician."], report.Say.Select(line => Knowledge.Sentences.Render(line)).Take(2));
        Assert.Equal(likeliest.Likeliest.Cautions, report.Cautions);
    }

    [Fact]
    public void A_reading_that_cannot_be_judged_is_named()
    {
        var report = new Diagnostician(Knowledge).Examine(File(new Fact.BenchTest { Test = "run-speed", Value = 1300 }), Open);
        Assert.Equal(["run-speed"], report.Unjudged);
        Assert.Contains(Knowledge.Tests["run-speed"].Name, Knowledge.Sentences.Render(report.Say[0]), StringComparison.Ordinal);
        Assert.Throws<ArgumentNullException>("file", () => new Diagnostician(Knowledge).Examine(null!, Open));
        Assert.Throws<ArgumentNullException>("access", () => new Diagnostician(Knowledge).Examine(File(), null!));
    }

    /// <summary>A repair that was made and cured nothing speaks against its cause, alone or beside another.</summary>
    [Fact]
    public void What_was_made_good_in_vain_is_believed_less_alone_and_in_pairs()
    {
        double Odds(string cause, params Fact[] facts)
        {
            var prior = new Diagnostician(Knowledge).Think(File([new Fact.Choice { Question = "family", Option = "capacitor-start" }, .. facts]), Open, sealedCircuit: false).Prior;
            return prior.Probability(one => string.Join('+', one.Causes.Select(two => two.Id)) == cause) / prior.Probability(one => string.Join('+', one.Causes.Select(two => two.Id)) == "load-jammed");
        }

        var vain = new Fact.Choice { Question = "after-repair.start-capacitor-open", Option = "same" };
        Assert.All(new[] { "start-capacitor-open", "start-switch-stuck-closed+start-capacitor-open" }, cause => Assert.Equal(0.03, Odds(cause, vain) / Odds(cause), 1e-6));
        Assert.Equal(Odds("start-switch-stuck-closed"), Odds("start-switch-stuck-closed", vain), 1e-9);
    }

    [Fact]
    public void Where_the_one_cause_that_is_left_was_made_good_in_vain_somebody_else_has_to_look()
    {
        Fact[] wrong = [.. new[] { "wrong-direction", "just-rewired", "supply-changed", "motor-replaced" }.Select(id => new Fact.Symptom { Id = id }), new Fact.Choice { Question = "family", Option = "three-phase" }];
        var before = new Diagnostician(Knowledge).Examine(File(wrong), Open);
        Assert.Equal(("settled", "phase-order"), (before.Status, before.Causes[0].Id));
        var after = new Diagnostician(Knowledge).Examine(File([.. wrong, new Fact.Choice { Question = "after-repair.phase-order", Option = "same" }]), Open);
        Assert.Equal("refer", after.Status);
        Assert.StartsWith("That was made good, and nothing changed", Knowledge.Sentences.Render(after.Say[0]), StringComparison.Ordinal);
    }

    /// <summary>Nobody is sent for a tool that they said they have not, and one that is not at hand makes a test dearer.</summary>
    [Theory]
    [InlineData("multimeter lcr-meter clamp-meter", "", 0.0)]
    [InlineData("multimeter", "lcr-meter clamp-meter", 0.0)]
    [InlineData("", "lcr-meter clamp-meter", 300.0)]
    [InlineData("battery", "", 300.0)]
    [InlineData("", "", 0.0)]
    [InlineData("", "multimeter lcr-meter clamp-meter", null)]
    public void A_test_costs_a_walk_where_none_of_its_tools_is_at_hand(string present, string absent, double? walk)
    {
        Fact[] facts =
        [
            new Fact.Choice { Question = "family", Option = "psc" }, new Fact.Symptom { Id = "hums-no-start" }, new Fact.Symptom { Id = "starts-if-spun" },
            .. present.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(id => new Fact.Instrument { Id = id }),
            .. absent.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(id => new Fact.Instrument { Id = id, Present = false }),
            .. Knowledge.Tests.Keys.Where(test => test != "capacitance").Select(test => new Fact.Unknown { Question = test }),
        ];
        var guide = Knowledge.Tests["capacitance"];
        var next = new Diagnostician(Knowledge).Examine(File(facts), Open).Next;
        Assert.Equal(walk is null ? null : "capacitance", next?.Test);
        Assert.Equal(90 + (guide.Seconds * Knowledge.GateTasks[guide.Task].CostFactor) + walk, next?.Cost);
    }

    [Theory]
    [InlineData(true, true, true)]
    [InlineData(true, false, true)]
    [InlineData(false, false, false)]
    public void A_capacitor_is_tested_unless_none_is_there(bool first, bool second, bool tested)
    {
        Fact[] facts =
        [
            new Fact.Choice { Question = "family", Option = "sealed" }, new Fact.Symptom { Id = "hums-no-start" }, new Fact.Capacitor { Present = first }, new Fact.Capacitor { Present = second },
            .. Knowledge.Tests.Keys.Where(test => test != "capacitance").Select(test => new Fact.Unknown { Question = $"test.{test}" }),
        ];
        Assert.Equal(tested ? "capacitance" : null, new Diagnostician(Knowledge).Examine(File(facts), Open).Next?.Test);
    }

    private static CaseFile File(params Fact[] facts) => CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), facts);

    private static string Words(Sign sign, string way) => sign switch
    {
        Sign.Noticed noticed => (way, noticed.Present) switch
        {
            ("for", true) => $"It fits: {Knowledge.Symptoms[noticed.Id].Name}.",
            ("for", false) => $"It fits that this is not so: {Knowledge.Symptoms[noticed.Id].Name}.",
            (_, true) => $"It does not explain: {Knowledge.Symptoms[noticed.Id].Name}.",
            _ => $"With it this would be expected, and is not so: {Knowledge.Symptoms[noticed.Id].Name}.",
        },
        Sign.Shown shown => $"{(way == "for" ? "It fits what the test showed" : "It does not fit what the test showed")} ({Knowledge.Tests[shown.Id].Name}): {Knowledge.Tests[shown.Id].Outcomes[shown.Outcome].Reading}.",
        _ => string.Empty,
    };

    private static void Each(Action<CaseFile, Thought, FaultReport> look)
    {
        var diagnostician = new Diagnostician(Knowledge);
        foreach (var file in WrittenCase.All.Select(one => one.ToFile()))
        {
            look(file, diagnostician.Think(file, Open, sealedCircuit: false), diagnostician.Examine(file, Open));
        }
    }
}
