using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>All that is made of each message of the sets that words are widened by, right or wrong: whoever changes words or grammar sees what else it moves.</summary>
public sealed class WrittenHearingsTest
{
    [Fact]
    public void Each_message_is_heard_as_it_is_written_down()
    {
        var listener = new Listener(Trade.Knowledge);
        Sheets.Hold("heard.txt", ToldSets.Files.Where(file => !ToldSets.IsTold(file)).SelectMany(Utterance.Read).Select(said => Line(said.Say, said.Heard(listener))));
    }

    private static string Line(string said, Understood heard) =>
        string.Join(" | ", [said.ReplaceLineEndings(" / "), string.Join("; ", Brief.Of(heard)), .. heard.NotUnderstood.Select(left => $"? {left.Text.ReplaceLineEndings(" / ")}{(left.Reads.Count > 0 ? $" = {string.Join(", ", left.Reads)}" : "")}")]);
}
