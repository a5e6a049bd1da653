using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Http.Json;
using Microsoft.Extensions.Options;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>The calculators for pages: the same bodies and the same answers as over HTTP.</summary>
internal sealed class Calculators(TradeKnowledge knowledge, IOptions<JsonOptions> json) : ICalculators
{
    public IReadOnlyCollection<CalculatorForm> Forms { get; } = [.. knowledge.Calculators.Values];

    public CalculatorForm? Form(string name) => knowledge.Calculators.GetValueOrDefault(name);

    public Answer<object> Calculate(string calculator, JsonObject body)
    {
        try
        {
            return calculator switch
            {
                "plate" => PlateEndpoint.Answer(knowledge, Read<PlateBody>(body)),
                "supply" => SupplyEndpoint.Answer(knowledge, Read<SupplyEndpoint.SupplyBody>(body)),
                "capacitor" => CapacitorEndpoint.Answer(knowledge, Read<CapacitorEndpoint.CapacitorBody>(body)),
                "insulation" => InsulationEndpoint.Answer(knowledge, Read<InsulationEndpoint.InsulationBody>(body)),
                "winding-heat" => WindingHeatEndpoint.Answer(knowledge, Read<WindingHeatEndpoint.HeatBody>(body)),
                "unbalance" => UnbalanceEndpoint.Answer(knowledge, Read<UnbalanceEndpoint.UnbalanceBody>(body)),
                _ => throw new ArgumentOutOfRangeException(nameof(calculator), calculator, "There is no such calculator."),
            };
        }
        catch (JsonException wrong)
        {
            return BadBodies.Refusal(wrong);
        }
    }

    private T Read<T>(JsonObject body) => body.Deserialize<T>(json.Value.SerializerOptions)!;
}
