namespace WireCoach.Service.Endpoints.Calc;

/// <summary>The calculators: stateless and deterministic, the same body always gives the same answer.</summary>
internal static class CalcEndpoints
{
    public static IEndpointRouteBuilder MapCalculators(this IEndpointRouteBuilder app)
    {
        var calc = app.MapGroup("/api/calc").WithTags("calculators");
        calc.MapConnect();
        calc.MapIdentify();
        calc.MapNetwork();
        calc.MapPlate();
        calc.MapDiagnose();
        calc.MapMachine();
        calc.MapEnds();
        calc.MapInsulation();
        calc.MapCapacitor();
        calc.MapCheck();
        calc.MapWindingHeat();
        calc.MapUnbalance();
        calc.MapSupply();
        calc.MapUnderstand();
        return app;
    }
}
