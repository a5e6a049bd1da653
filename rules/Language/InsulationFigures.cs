using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Reads an insulation test: megohms with the volts it was made at, the winding's temperature and the minute.</summary>
internal sealed class InsulationFigures(Scene scene, List<Quantity> open, Belonging belonging)
{
    private const int NearMegohms = 4;
    private const int SaidNear = 2;
    private const double LongestTest = 20;

    /// <summary>"Megs came up 1.2 at 500 V": the unit is the subject, some words before the figure.</summary>
    public bool IsBare(Quantity q) => q.Unit is null && q.Values.Count == 1 && !IsBareTestVolts(q)
        && scene.Hits.Exists(hit => hit.Concept == "megohm-word" && hit.Last < q.First && q.First - hit.Last <= NearMegohms && scene.Tokens[hit.First].Clause == scene.Tokens[q.First].Clause);

    /// <summary>"200 meg at 500": volts of the tester without their unit.</summary>
    private bool IsBareTestVolts(Quantity q) => q.Unit is null && IsTestVolts(q) && scene.IsWord(q.First - 1, "at", "@", "on");

    private bool IsTestVolts(Quantity q) => q.Values.Count == 1 && scene.At(q.First, "test-volts") is not null;

    /// <summary>Files it; answers the volts, degrees and minutes that belong to it.</summary>
    public IReadOnlyList<Quantity> Read(Quantity q)
    {
        var sentence = scene.Tokens[q.First].Sentence;
        var celsius = open.Find(t => t.UnitId == "celsius" && scene.Tokens[t.First].Sentence == sentence) ?? open.Find(t => t.UnitId == "celsius" && scene.Tokens[t.First].Sentence == sentence + 1);
        var volts = open.Find(v => v.UnitId == "volt" && scene.Tokens[v.First].Sentence == sentence && v.Values is [>= 100] && !belonging.IsPlate(v))
            ?? open.Find(v => IsBareTestVolts(v) && scene.Tokens[v.First].Sentence == sentence)
            ?? open.Find(v => v.UnitId == "volt" && IsTestVolts(v) && Math.Abs(scene.Tokens[v.First].Sentence - sentence) <= SaidNear && scene.InSentence("measured", v.First) && !belonging.IsPlate(v));
        var minute = open.Find(t => t.UnitId == "minute" && scene.Tokens[t.First].Sentence == sentence);
        scene.Add(q.First, q.Last, new Fact.Insulation
        {
            Megohms = q.UnitId == "ohm" ? q.Values[0] / 1e6 : q.Values[0],
            Celsius = celsius?.Values[0],
            TestVolts = volts?.Values[0],
            AtMinute = minute?.Values[0] is { } at and <= LongestTest ? at : null, // "after two hours with a lamp inside" is no minute of a test
        });
        List<Quantity> used = [.. new[] { celsius, volts, minute }.OfType<Quantity>()];
        used.ForEach(one => scene.Use(one.First, one.Last));
        return used;
    }
}
