using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>What follows from a plate, and where it disagrees with itself.</summary>
internal static class PlateEndpoint
{
    public static void MapPlate(this RouteGroupBuilder calc) => calc.MapPost("/plate", (PlateBody body, TradeKnowledge knowledge, Problems problems) => problems.Result(Answer(knowledge, body)))
        .WithSummary("Checks a motor plate against itself")
        .WithDescription(
            "Every field is a number, a list of numbers in the order of the plate, or a text such as 115/230 or 1 1/2. Efficiency and power factor may be shares or percent. " +
            "Only disagreements are findings; missing fields are answered as ranges under 'estimates'.");

    /// <summary>The report, or what is wrong with the body.</summary>
    public static Answer<object> Answer(TradeKnowledge knowledge, PlateBody body) => PlateReading.Read(knowledge, body.Fields(), body.Region).Then(report => (object)report);
}
