using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Nameplate;

/// <summary>What cannot be a plate's figure: refused with the range that can be.</summary>
internal static class PlateLimits
{
    public static IEnumerable<Problem> Problems(TradeKnowledge knowledge, PlateFields plate)
    {
        if (!plate.All.Any())
        {
            yield return new Problem("not-ready", "volts", Statement.Of("nameplate.empty")) { Missing = ["volts", "amps", "horsepower", "rpm"] };
            yield break;
        }

        var rule = knowledge.Rules["plate-range"];
        (string Field, string Unit, double Least, double Most)[] ranges =
        [
            ("volts", "volt", 0, rule["most-volts"]),
            ("amps", "amp", 0, rule["most-amps"]),
            ("horsepower", "horsepower", 0, rule["most-horsepower"]),
            ("kilowatts", "kilowatt", 0, rule["most-kilowatts"]),
            ("rpm", "rpm", 0, rule["most-rpm"]),
            ("hertz", "hertz", rule["least-hertz"], rule["most-hertz"]),
            ("serviceFactor", "ratio", rule["least-service-factor"], rule["most-service-factor"]),
            ("efficiency", "percent", 0, 100),
            ("powerFactor", "percent", 0, 100),
            ("serviceFactorAmps", "amp", 0, rule["most-amps"]),
            ("lockedRotorAmps", "amp", 0, rule["most-amps"] * 10),
            ("temperatureRise", "kelvin", 0, rule["most-rise"]),
            ("ambientCelsius", "celsius", 0, rule["most-ambient"]),
            ("poles", "count", rule["least-poles"], rule["most-poles"]),
            ("capacitorMicrofarads", "microfarad", 0, rule["most-amps"]),
        ];
        foreach (var (field, unit, least, most) in ranges)
        {
            foreach (var value in plate.Numbers(field).Where(value => !double.IsFinite(value) || value <= 0 || value < least || value > most).Take(1))
            {
                yield return new Problem("invalid-fact", field, Statement.Of(least > 0 ? "nameplate.out-of-range" : "nameplate.not-above-zero",
                    ("field", field), ("value", Units.Given(value, unit)), ("least", Units.Text(least, unit)), ("most", Units.Text(most, unit))));
            }

            if (unit == "percent" && plate.Numbers(field).Select(value => ShareOrPercent.Refusal(knowledge, field, value)).OfType<Problem>().FirstOrDefault() is { } neither)
            {
                yield return neither;
            }

            if (plate[field] is { Numbers.Count: 0 } text)
            {
                yield return new Problem("unreadable-quantity", field, Statement.Of("nameplate.not-a-number", ("field", field), ("text", text.Text)));
            }
        }

        if (plate["poles"] is { Number: { } poles } && poles % 2 != 0 && poles > rule["least-poles"] && poles < rule["most-poles"])
        {
            var below = 2 * Math.Floor(poles / 2);
            yield return new Problem("invalid-fact", "poles", Statement.Of("nameplate.poles-odd", ("value", Units.Number(poles, 4)), ("below", Units.Number(below)), ("above", Units.Number(below + 2))));
        }

        if (plate["phases"] is { } phases && phases.Number is not (1 or 3))
        {
            yield return new Problem("invalid-fact", "phases", Statement.Of("nameplate.phases", ("value", phases.Text)));
        }
    }
}
