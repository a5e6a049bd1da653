using System.Text.Json.Nodes;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.WebUi.Desk;

/// <summary>The calculators: the same bodies and the same answers as over HTTP.</summary>
public interface ICalculators
{
    /// <summary>All of them, as people meet them.</summary>
    IReadOnlyCollection<CalculatorForm> Forms { get; }

    /// <summary>One by its name, or <see langword="null"/>.</summary>
    CalculatorForm? Form(string name);

    /// <summary>The answer of a calculator, or what is wrong with the body.</summary>
    Answer<object> Calculate(string calculator, JsonObject body);
}
