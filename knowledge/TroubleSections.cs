using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Knowledge;

/// <summary>The sections about safety and trouble: the gate, the cautions, symptoms, tests and causes.</summary>
internal sealed class TroubleSections(Sections sections)
{
    private static readonly string[] Roles = ["technician", "homeowner", "apprentice", "manager"];
    private static readonly string[] Levels = ["take-care", "stop-and-fix", "stop-get-qualified-person"];

    public IReadOnlyDictionary<string, GateTask> Tasks { get; } = sections.Lists<GateTask>("gate/tasks", task => task.Id);

    public IReadOnlyDictionary<string, GateCondition> Conditions { get; } = sections.Lists<GateCondition>("gate/conditions", condition => condition.Id);

    public IReadOnlyDictionary<string, GateConfirmation> Confirmations { get; } = sections.Lists<GateConfirmation>("gate/confirmations", confirmation => confirmation.Id);

    public IReadOnlyDictionary<string, CautionNote> Cautions { get; } = sections.Lists<CautionNote>("cautions", caution => caution.Id);

    public IReadOnlyDictionary<string, MotorFamily> Families { get; } = sections.Lists<MotorFamily>("families", family => family.Id);

    public IReadOnlyDictionary<string, SymptomNote> Symptoms { get; } = sections.Lists<SymptomNote>("symptoms", symptom => symptom.Id);

    public IReadOnlyDictionary<string, TestGuide> Tests { get; } = sections.Lists<TestGuide>("tests", test => test.Id);

    public IReadOnlyDictionary<string, Cause> Causes { get; } = sections.Lists<Cause>("causes", cause => cause.Id);

    public IReadOnlyDictionary<string, CausePair> Pairs { get; } = sections.Lists<CausePair>("cause-pairs", pair => $"{pair.First} {pair.Second}");

    public IEnumerable<Sentence> Sentences() =>
    [
        .. Causes.Values.SelectMany(cause => cause.Sentences()),
        .. Tasks.Values.SelectMany(task => task.Sentences()),
        .. Conditions.Values.SelectMany(condition => condition.Sentences()),
        .. Confirmations.Values.SelectMany(confirmation => confirmation.Sentences()),
        .. Cautions.Values.Select(caution => caution.Sentence()),
        .. Symptoms.Values.Select(symptom => symptom.Sentence()),
        .. Tests.Values.SelectMany(test => test.Sentences()),
    ];

    /// <summary>Every name that one record uses for another stands for something.</summary>
    public void Check(TradeKnowledge knowledge)
    {
        Each("gate/tasks", Tasks, OfTask);
        Each("gate/conditions", Conditions, OfCondition);
        Each("gate/confirmations", Confirmations, confirmation =>
            Missing(confirmation.Cautions, Cautions, "there is no such caution").Concat(AtHome(confirmation.How, confirmation.HomeownerHow)));
        Each("cautions", Cautions, caution => Levels.Contains(caution.Level) ? [] : [(caution.Level, "this is no level of a caution")]);
        Each("families", Families, family => Missing(family.Layouts, knowledge.Layouts, "there is no such layout"));
        Each("symptoms", Symptoms, symptom => new[] { ("noticed", symptom.Noticed), ("told", symptom.Told), ("usual", symptom.Usual) }
            .Where(figure => figure.Item2 is not (> 0 and < 1)).Select(figure => (figure.Item1, "a probability lies between 0 and 1")));
        Each("tests", Tests, OfTest);
        Each("causes", Causes, OfCause);
        foreach (var pair in Pairs.Values)
        {
            foreach (var name in new[] { pair.First, pair.Second }.Where(name => !Causes.ContainsKey(name)))
            {
                throw sections.Wrong("cause-pairs", pair.First, name, "there is no such cause");
            }
        }
    }

    private void Each<T>(string section, IReadOnlyDictionary<string, T> records, Func<T, IEnumerable<(string Name, string What)>> wrongs)
    {
        foreach (var (id, record) in records)
        {
            foreach (var (name, what) in wrongs(record))
            {
                throw sections.Wrong(section, id, name, what);
            }
        }
    }

    private IEnumerable<(string, string)> OfTask(GateTask task) =>
    [
        .. Roles.Except(task.Roles.Keys, StringComparer.Ordinal).Select(role => (role, $"the task '{task.Id}' says nothing of this role")),
        .. task.Roles.Keys.Except(Roles, StringComparer.Ordinal).Select(role => (role, "this is no role")),
        .. task.Roles.Values.SelectMany(row => Missing(row.Needs, Confirmations, "there is no such confirmation")),
        .. task.Roles.Where(role => role.Value.Refuse && role.Value.Reason is null).Select(role => (role.Key, $"the refusal of '{task.Id}' needs a reason")),
    ];

    private IEnumerable<(string, string)> OfCondition(GateCondition condition)
    {
        var tasks = Tasks.Keys.Concat(Tasks.Values.Select(task => task.Group)).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. Missing(condition.Cautions, Cautions, "there is no such caution"),
            .. condition.Rows.SelectMany(row => row.Roles).Except(Roles, StringComparer.Ordinal).Select(role => (role, "this is no role")),
            .. condition.KeepsOff.Except(Roles, StringComparer.Ordinal).Select(role => (role, "this is no role")),
            .. condition.KeepsOff.Count > 0 && condition.Rows.All(row => row.ReferTo is null) ? [("keeps-off", "nobody is named who takes it over")] : Array.Empty<(string, string)>(),
            .. condition.Rows.SelectMany(row => row.Tasks).Where(task => !tasks.Contains(task)).Select(task => (task, "this is no task and no group of tasks")),
            .. condition.Rows.SelectMany(row => Missing(row.Needs, Confirmations, "there is no such confirmation")),
            .. Missing(condition.When.Select(trigger => trigger.Symptom).OfType<string>(), Symptoms, "there is no such symptom"),
            .. Missing(condition.When.Select(trigger => trigger.Denied).OfType<string>(), Confirmations, "there is no such confirmation"),
        ];
    }

    /// <summary>Steps for home stand in the place of the others one by one, or not at all.</summary>
    private static IEnumerable<(string, string)> AtHome(IReadOnlyList<string> how, IReadOnlyList<string> home) =>
        home.Count == 0 || home.Count == how.Count ? [] : [("homeowner-how", "it has another number of steps than 'how'")];

    private IEnumerable<(string, string)> OfTest(TestGuide test)
    {
        var outcomes = test.Outcomes.Select(outcome => outcome.Id).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. Missing([test.Task], Tasks, "there is no such task"),
            .. Missing(test.Families, Families, "there is no such family"),
            .. Missing(test.Cautions, Cautions, "there is no such caution"),
            .. Missing(test.ToldBy, Symptoms, "there is no such symptom"),
            .. AtHome(test.How, test.HomeownerHow),
            .. Math.Abs(test.Outcomes.Sum(outcome => outcome.Usual) - 1) > 1e-6 ? [("usual", $"the outcomes of '{test.Id}' do not add up to 1")] : Array.Empty<(string, string)>(),
            .. test.Value?.Bands.Concat(test.Value.IecBands ?? []).Where(band => !outcomes.Contains(band.Outcome)).Select(band => (band.Outcome, "there is no such outcome")) ?? [],
        ];
    }

    private IEnumerable<(string, string)> OfCause(Cause cause) =>
    [
        .. Missing([cause.Task], Tasks, "there is no such task"),
        .. Missing(cause.Families.Keys, Families, "there is no such family"),
        .. Missing(cause.Symptoms.Keys, Symptoms, "there is no such symptom"),
        .. Missing(cause.Tests.Keys, Tests, "there is no such test"),
        .. Missing(cause.Cautions, Cautions, "there is no such caution"),
        .. cause.Needs is { } part && !Cause.Parts.Contains(part, StringComparer.Ordinal) ? [(part, "this is no part that a cause may need")] : Array.Empty<(string, string)>(),
        .. cause.Symptoms.Where(symptom => symptom.Value is not (> 0 and < 1)).Select(symptom => (symptom.Key, "a probability lies between 0 and 1")),
        .. cause.Tests.Where(test => Tests.ContainsKey(test.Key)).SelectMany(test => test.Value.Keys
            .Except(Tests[test.Key].Outcomes.Select(outcome => outcome.Id), StringComparer.Ordinal)
            .Select(outcome => (outcome, $"the test '{test.Key}' has no such outcome"))),
        .. cause.Tests.Where(test => test.Value.Values.Sum() > 1 + 1e-9).Select(test => (test.Key, $"the outcomes of '{cause.Id}' add up to more than 1")),
    ];

    private static IEnumerable<(string, string)> Missing<T>(IEnumerable<string> names, IReadOnlyDictionary<string, T> known, string what) =>
        names.Where(name => !known.ContainsKey(name)).Select(name => (name, what));
}
