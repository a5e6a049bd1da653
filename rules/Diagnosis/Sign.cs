namespace WireCoach.Rules.Diagnosis;

/// <summary>One piece of evidence about what is wrong.</summary>
internal abstract record Sign
{
    private Sign()
    {
    }

    /// <summary>A symptom that was seen or denied.</summary>
    /// <param name="Symptom">Its place among the symptoms.</param>
    /// <param name="Id">Its id.</param>
    /// <param name="Present">Seen or denied.</param>
    public sealed record Noticed(int Symptom, string Id, bool Present) : Sign;

    /// <summary>A symptom that may have been told: words that mean it otherwise, among words that make it doubtful.</summary>
    /// <param name="Symptom">Its place among the symptoms.</param>
    public sealed record Doubted(int Symptom) : Sign;

    /// <summary>Symptoms of which nothing was said although others were told.</summary>
    /// <param name="Symptoms">Their places among the symptoms.</param>
    public sealed record Untold(IReadOnlyList<int> Symptoms) : Sign;

    /// <summary>What a test showed.</summary>
    /// <param name="Test">Its place among the tests.</param>
    /// <param name="Id">Its id.</param>
    /// <param name="Outcome">The outcome's place within the test.</param>
    /// <param name="OutcomeId">The outcome's id.</param>
    /// <param name="Kind">The kind of the capacitor that it was made on; <see langword="null"/> where that is not known or does not matter.</param>
    public sealed record Shown(int Test, string Id, int Outcome, string OutcomeId, string? Kind = null) : Sign;
}
