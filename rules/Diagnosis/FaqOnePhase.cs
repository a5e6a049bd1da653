using WireCoach.Rules.Cases;
using WireCoach.Rules.Heat;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Diagnosis;

/// <summary>Whether a three-phase motor can run where there is only one phase.</summary>
/// <param name="knowledge">The facts of the trade.</param>
/// <param name="motor">What is known of the motor at hand.</param>
internal sealed class FaqOnePhase(TradeKnowledge knowledge, FaqMotor motor)
{
    public List<Statement> Answer(CaseFile file)
    {
        var three = file.Plate.Phases == 3 || motor.IsThreePhase(file);
        if (!three && (file.Plate.Phases is not null || motor.Family(file) is not null))
        {
            return [Statement.Of("faq.one-phase-own")];
        }

        List<Statement> said = three ? [] : [Statement.Of("faq.one-phase-if-three")];
        var supply = file.Supply is { Phases: not 3 } one ? one.Volts : null;
        double? least = file.Plate.Volts.Count > 0 ? file.Plate.Volts.Min() : null;
        if (supply is not { } volts || least is not { } plate)
        {
            said.AddRange(Advice(file, null), Statement.Of("faq.one-phase-drive"));
        }
        else if (SupplyMatch.Volts(knowledge, plate, volts).Verdict.StartsWith("out", StringComparison.Ordinal))
        {
            said.Add((volts < plate ? Statement.Of("faq.one-phase-too-few").With("torque", SupplyMatch.Torque(knowledge, plate, volts)) : Statement.Of("faq.one-phase-too-many"))
                .With("plate", Named(plate, "the plate's lowest volts")).With("supply", Named(volts, "the supply")));
        }
        else
        {
            said.AddRange(Advice(file, volts), Statement.Of("faq.one-phase-drive-fits").With("plate", Named(plate, "the plate's lowest volts")).With("supply", Named(volts, "the supply")));
        }

        return said;
    }

    private Statement Advice(CaseFile file, double? volts) =>
        OnOnePhase.Advice(knowledge, PlatePower.Watts(knowledge, file.Plate.Horsepower, file.Plate.Kilowatts), volts, file.Supply?.Hertz);

    private Quoted Named(double volts, string of) => knowledge.Rules["faq-plate-volts"].Quote(volts, "volt", of);
}
