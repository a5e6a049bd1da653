using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>How something is said changes nothing of what was said: a greeting before it, thanks behind it.</summary>
public sealed class SayingTest
{
    private static readonly string[] Sets = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth"];

    [Fact]
    public void What_stands_around_a_report_changes_nothing_of_it()
    {
        var listener = new Listener(Trade.Knowledge);
        List<string> changed = [];
        foreach (var said in Sets.SelectMany(set => Utterance.Read($"development-{set}.yaml")))
        {
            var (plain, around) = (Facts(listener, said), Facts(listener, said.Saying($"Hello. {said.Say} Thanks.")));
            if (!plain.SequenceEqual(around))
            {
                changed.Add($"{said.Say}: {string.Join("; ", plain.Except(around))} became {string.Join("; ", around.Except(plain))}");
            }
        }

        Assert.True(changed.Count == 0, string.Join('\n', changed));
    }

    private static List<string> Facts(Listener listener, Utterance said) => [.. Brief.Of(said.Heard(listener)).Order(StringComparer.Ordinal)];
}
