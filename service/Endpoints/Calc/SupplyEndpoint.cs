using WireCoach.Rules.Cases;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.Rules.Supply;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>Planning figures for the supply of one motor.</summary>
internal static class SupplyEndpoint
{
    public static void MapSupply(this RouteGroupBuilder calc) => calc.MapPost("/supply", (SupplyBody body, TradeKnowledge knowledge, Problems problems) => problems.Result(Answer(knowledge, body)))
        .WithSummary("Plans conductor, overload, short-circuit device, earth conductor and voltage drop for a motor")
        .WithDescription(
            "Planning figures with their edition: the adopted code and the inspector decide. North America takes horsepower (or kilowatts) and AWG, elsewhere kilowatts and mm². " +
            "The overload is answered only with 'plateAmps', the voltage drop only with 'lengthMetres'. 'edition' is the adopted year.");

    /// <summary>The plan, or what is wrong with the body.</summary>
    public static Answer<object> Answer(TradeKnowledge knowledge, SupplyBody body)
    {
        var wrong = new List<Problem>();
        Need(body.Region is not null, "region", wrong);
        Need(body.Phases is not null, "phases", wrong);
        Need(body.Volts is not null, "volts", wrong);
        var (horsepower, kilowatts) = (Size(body.Horsepower, "horsepower", wrong), Size(body.Kilowatts, "kilowatts", wrong));
        var edition = AdoptedYear.Read(body.Edition, wrong);
        var (powerFactor, efficiency) = (Share(knowledge, body.PowerFactor, "powerFactor", wrong), Share(knowledge, body.Efficiency, "efficiency", wrong));
        return wrong.Count > 0 ? Answer<object>.Refused(wrong) : SupplyPlanner.Plan(knowledge, new SupplyInput
        {
            Region = body.Region!.Value,
            Phases = body.Phases!.Value,
            Volts = body.Volts!.Value,
            Hertz = body.Hertz,
            Horsepower = horsepower,
            Kilowatts = kilowatts,
            PlateAmps = body.PlateAmps,
            PlateVolts = body.PlateVolts,
            PlateHertz = body.PlateHertz,
            ServiceFactor = body.ServiceFactor,
            TemperatureRise = body.TemperatureRise,
            Rpm = body.Rpm,
            CodeLetter = body.CodeLetter,
            LengthMetres = body.LengthMetres,
            PowerFactor = powerFactor,
            Efficiency = efficiency,
            InsulationCelsius = body.InsulationCelsius,
            TerminalCelsius = body.TerminalCelsius,
            AmbientCelsius = body.AmbientCelsius,
            Together = body.Conductors,
            Laying = body.Laying,
            Protection = body.Protection,
            MotorType = body.MotorType,
            Starter = body.Starter,
            Rectifier = body.Rectifier,
            CordConnected = body.CordConnected ?? false,
            OtherMotorAmps = body.OtherMotorAmps ?? [],
            Edition = edition,
            Earthing = body.Earthing,
            Material = body.Material,
            UnitedKingdom = body.UnitedKingdom ?? false,
            LoadKilogramSquareMetres = body.LoadKilogramSquareMetres,
            AcceleratingNewtonMetres = body.AcceleratingNewtonMetres,
            FaultAmps = body.FaultAmps,
            FaultSeconds = body.FaultSeconds,
            Tap = body.Tap,
            SinglePhaseVolts = body.SinglePhaseVolts,
        }).Then(plan => (object)plan);
    }

    private static void Need(bool given, string field, List<Problem> wrong)
    {
        if (!given)
        {
            wrong.Add(Problem.NotGiven(field));
        }
    }

    /// <summary>A share, given as one or as percent; what is neither is no figure.</summary>
    private static double? Share(TradeKnowledge knowledge, double? given, string field, List<Problem> wrong)
    {
        if (ShareOrPercent.Refusal(knowledge, field, given) is { } neither)
        {
            wrong.Add(neither);
        }

        return given is > 1 and <= 100 ? given / 100 : given;
    }

    /// <summary>A power as a number, or as the trade writes it: 1/2, 1 1/2.</summary>
    private static double? Size(PlateValue? size, string field, List<Problem> wrong)
    {
        if (size is null)
        {
            return null;
        }

        var number = size.Numbers.Count == 1 && !size.Text.Contains('/', StringComparison.Ordinal) ? size.Number : Fractions.Read(size.Text);
        if (number is null)
        {
            wrong.Add(new Problem("unreadable-quantity", field, Statement.Of("nameplate.not-a-number", ("field", field), ("text", size.Text))));
        }

        return number;
    }

    internal sealed record SupplyBody
    {
        public Region? Region { get; init; }

        public int? Phases { get; init; }

        public double? Volts { get; init; }

        public double? Hertz { get; init; }

        public PlateValue? Horsepower { get; init; }

        public PlateValue? Kilowatts { get; init; }

        public double? PlateAmps { get; init; }

        public double? PlateVolts { get; init; }

        public double? PlateHertz { get; init; }

        public double? ServiceFactor { get; init; }

        public double? TemperatureRise { get; init; }

        public double? Rpm { get; init; }

        public string? CodeLetter { get; init; }

        public double? LengthMetres { get; init; }

        public double? PowerFactor { get; init; }

        public double? Efficiency { get; init; }

        public double? InsulationCelsius { get; init; }

        public double? TerminalCelsius { get; init; }

        public double? AmbientCelsius { get; init; }

        /// <summary>Current-carrying conductors together in North America, circuits side by side elsewhere.</summary>
        public int? Conductors { get; init; }

        public string? Laying { get; init; }

        public string? Protection { get; init; }

        public string? MotorType { get; init; }

        public string? Starter { get; init; }

        public string? Rectifier { get; init; }

        public bool? CordConnected { get; init; }

        public IReadOnlyList<double>? OtherMotorAmps { get; init; }

        public PlateValue? Edition { get; init; }

        public string? Earthing { get; init; }

        public string? Material { get; init; }

        public bool? UnitedKingdom { get; init; }

        public double? LoadKilogramSquareMetres { get; init; }

        public double? AcceleratingNewtonMetres { get; init; }

        public double? FaultAmps { get; init; }

        public double? FaultSeconds { get; init; }

        public double? Tap { get; init; }

        /// <summary>Volts of a single-phase supply on which a three-phase motor is wanted.</summary>
        public double? SinglePhaseVolts { get; init; }
    }
}
