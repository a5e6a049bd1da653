using WireCoach.Rules.Heat;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>Unbalance of volts, amps or winding resistances, and the test that moves the leads round.</summary>
internal static class UnbalanceEndpoint
{
    private const string Choices = "volts, amps, roll, ohms";

    public static void MapUnbalance(this RouteGroupBuilder calc) => calc.MapPost("/unbalance", (UnbalanceBody body, TradeKnowledge knowledge, Problems problems) => problems.Result(Answer(knowledge, body)))
        .WithSummary("Judges how unequal three line volts, line amps or winding ohms are")
        .WithDescription(
            "One of {volts: [a,b,c]}, {amps: [a,b,c]}, {roll: [[…],[…],[…]]} (amps in L1, L2, L3 with L1 on T1, then on T2, then on T3), {ohms: [a,b,c]} (between the leads 1-2, 2-3, 3-1).");

    /// <summary>The judgement, or what is wrong with the body.</summary>
    public static Answer<object> Answer(TradeKnowledge knowledge, UnbalanceBody body)
    {
        var asked = new (string Field, object? Given)[] { ("volts", body.Volts), ("amps", body.Amps), ("roll", body.Roll), ("ohms", body.Ohms) }
            .Where(one => one.Given is not null).Select(one => one.Field).ToList();
        return asked switch
        {
            [] => new Problem("invalid-fact", "volts", Statement.Of("heat.none-given", ("fields", Choices))),
            ["volts"] => Unbalance.OfVolts(knowledge, body.Volts!).Then(Whole),
            ["amps"] => Unbalance.OfAmps(knowledge, body.Amps!).Then(Whole),
            ["roll"] => RollTest.Judge(knowledge, [.. body.Roll!.Select(row => row ?? [])]).Then(Whole),
            ["ohms"] => WindingReadings.Judge(knowledge, body.Ohms!, body.ResolutionOhms).Then(Whole),
            _ => new Problem("invalid-fact", asked[1], Statement.Of("heat.not-both", ("fields", Choices))),
        };

        static object Whole(object report) => report;
    }

    internal sealed record UnbalanceBody
    {
        public IReadOnlyList<double>? Volts { get; init; }

        public IReadOnlyList<double>? Amps { get; init; }

        public IReadOnlyList<IReadOnlyList<double>?>? Roll { get; init; }

        public IReadOnlyList<double>? Ohms { get; init; }

        public double? ResolutionOhms { get; init; }
    }
}
