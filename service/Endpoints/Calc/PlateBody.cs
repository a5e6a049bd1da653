using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>A plate as a client writes it.</summary>
internal sealed record PlateBody
{
    public Region? Region { get; init; }

    public PlateValue? Phases { get; init; }

    public PlateValue? Volts { get; init; }

    public PlateValue? Amps { get; init; }

    public PlateValue? Horsepower { get; init; }

    public PlateValue? Kilowatts { get; init; }

    public PlateValue? Rpm { get; init; }

    public PlateValue? Hertz { get; init; }

    public PlateValue? Poles { get; init; }

    public PlateValue? ServiceFactor { get; init; }

    public PlateValue? ServiceFactorAmps { get; init; }

    public PlateValue? CodeLetter { get; init; }

    public PlateValue? DesignLetter { get; init; }

    public PlateValue? Efficiency { get; init; }

    public PlateValue? PowerFactor { get; init; }

    public PlateValue? InsulationClass { get; init; }

    public PlateValue? TemperatureRise { get; init; }

    public PlateValue? AmbientCelsius { get; init; }

    public PlateValue? Duty { get; init; }

    public PlateValue? TimeRating { get; init; }

    public PlateValue? Type { get; init; }

    public PlateValue? Frame { get; init; }

    public PlateValue? Enclosure { get; init; }

    public PlateValue? LockedRotorAmps { get; init; }

    public PlateValue? Microfarads { get; init; }

    public PlateValue? CapacitorMicrofarads { get; init; }

    public PlateValue? CapacitorVolts { get; init; }

    /// <summary>The plate as the rules know it; a power written as a fraction becomes a number.</summary>
    public PlateFields Fields()
    {
        (string Name, PlateValue? Value)[] all =
        [
            ("phases", Phases), ("volts", Volts), ("amps", Amps), ("horsepower", Size(Horsepower)), ("kilowatts", Size(Kilowatts)), ("rpm", Rpm), ("hertz", Hertz), ("poles", Poles),
            ("serviceFactor", ServiceFactor), ("serviceFactorAmps", ServiceFactorAmps), ("codeLetter", CodeLetter), ("designLetter", DesignLetter),
            ("efficiency", Efficiency), ("powerFactor", PowerFactor), ("insulationClass", InsulationClass), ("temperatureRise", TemperatureRise),
            ("ambientCelsius", AmbientCelsius), ("duty", Duty), ("timeRating", TimeRating), ("type", Type), ("frame", Frame), ("enclosure", Enclosure),
            ("lockedRotorAmps", LockedRotorAmps), ("microfarads", Microfarads), ("capacitorMicrofarads", CapacitorMicrofarads), ("capacitorVolts", CapacitorVolts),
        ];
        return all.Where(field => field.Value is { } value && (value.Numbers.Count > 0 || value.Text.Length > 0))
            .Aggregate(PlateFields.Empty, (plate, field) => plate.With(field.Name, field.Value!));
    }

    private static PlateValue? Size(PlateValue? size) => size is { } written && Fractions.Read(written.Text) is { } number ? PlateValue.Of(number) : size;
}
