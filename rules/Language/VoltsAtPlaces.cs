using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>"230 V at the socket, 198 V at the motor": volts read at the supply and at the motor, each by the words right beside it.</summary>
internal static class VoltsAtPlaces
{
    private const int Beside = 4;
    private const int Both = 2;
    private const int RightBeside = 2;
    private const string Motor = "at-the-motor";
    private const string Supply = "supply-noun";

    /// <summary>Files both; answers the quantities that were used.</summary>
    public static IReadOnlyList<Quantity> Read(Scene scene, List<Quantity> sentence, Func<Quantity, bool> starting)
    {
        List<Quantity> volts = [.. sentence.Where(RunFigures.IsBareOrVolts).OrderBy(q => q.First)];
        if (volts.Count != Both || scene.InSentence("plate-cue", volts[0].First))
        {
            return [];
        }

        var (one, other) = (volts[0], volts[1]);
        var places = scene.Hits.FindAll(hit => hit.Concept is Motor or Supply && scene.Tokens[hit.First].Sentence == scene.Tokens[one.First].Sentence);
        var leads = places.Exists(hit => IsBefore(hit, one, -1)); // "at the motor 198, at the socket 230"
        var first = Only(places.FindAll(hit => leads ? IsBefore(hit, one, -1) : IsBehind(hit, one, other.First)));
        var second = Only(places.FindAll(hit => leads ? IsBefore(hit, other, one.Last) : IsBehind(hit, other, scene.Tokens.Count)));
        if ((first, second) is not ((Motor, Supply) or (Supply, Motor)))
        {
            return [];
        }

        var (atMotor, atSupply) = first == Motor ? (one, other) : (other, one);
        if (!starting(atMotor))
        {
            scene.Add(atMotor.First, atMotor.Last, new Fact.Running { Volts = atMotor.Values[0] });
        }

        scene.Add(atSupply.First, atSupply.Last, new Fact.Supply { Volts = atSupply.Values[0] });
        return volts;
    }

    /// <summary>Whether it was read at the motor by the words right beside it.</summary>
    public static bool IsAtMotor(Scene scene, Quantity q) => RunFigures.IsBareOrVolts(q) && scene.Near(q, RightBeside, Motor);

    /// <summary>"104 at the motor": beside the amps of a run it is that run's, else whether that is while it runs or while it tries to start has to be asked; answers the quantities that were left so.</summary>
    public static IReadOnlyList<Quantity> Left(Scene scene, List<Quantity> sentence)
    {
        var places = scene.Places(Motor);
        List<Quantity> left = scene.Asked is null ? sentence.FindAll(q => !scene.IsNominalVolts(q) && IsAtMotor(scene, q) && !EndsSpan(scene, q)
            && !scene.Hits.Exists(hit => hit.Concept == "plate-cue" && !places.Contains(hit.First) && scene.Tokens[hit.First].Clause == scene.Tokens[q.First].Clause)) : [];
        foreach (var q in left)
        {
            if (scene.Facts.Any(fact => fact.Fact is Fact.Running { Amps: not null, Volts: null }))
            {
                scene.Add(q.First, q.Last, new Fact.Running { Volts = q.Values[0] });
                continue;
            }

            scene.Use(q.First, q.Last);
            scene.Unsettled.Add(new Leftover(scene.Span(q.First, q.Last), ["running/volts", "starting/volts"]));
        }

        return left;
    }

    /// <summary>"398 to 402".</summary>
    private static bool EndsSpan(Scene scene, Quantity q) => scene.IsWord(q.First - 1, "to", "and", "-") && scene[q.First - 2] is { Kind: TokenKind.Number };

    private static bool IsBefore(Hit hit, Quantity q, int after) => hit.First > after && hit.Last < q.First && q.First - hit.Last <= Beside;

    private static bool IsBehind(Hit hit, Quantity q, int before) => hit.First > q.Last && hit.First < before && hit.First - q.Last <= Beside;

    private static string? Only(List<Hit> places) => places.Select(hit => hit.Concept).Distinct(StringComparer.Ordinal).ToList() is [var place] ? place : null;
}
