using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Insulation;

/// <summary>What a session leaves for the insulation trend of its motor.</summary>
public static class InsulationHistory
{
    /// <summary>The last insulation reading of a case in MΩ at 40 °C; <see langword="null"/> where none can be carried there, because its temperature is not known or it was no insulation test.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="file">The case.</param>
    public static double? Left(TradeKnowledge knowledge, CaseFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var least = knowledge.Rules["insulation-reading"]["least-test-volts"];
        return file.Insulations.FindLast(reading => reading is { Celsius: not null, Megohms: > 0 } && !(reading.TestVolts < least)) is { Celsius: { } celsius } last
            ? InsulationCorrection.Corrected(knowledge, last.Megohms, celsius, "unknown")?.Value
            : null;
    }
}
