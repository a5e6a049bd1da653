namespace WireCoach.WebUi.Desk;

/// <summary>How often a language model was asked to reword a sentence, and what came of it.</summary>
/// <param name="On">Whether a model is configured.</param>
/// <param name="Asked">Sentences that were sent.</param>
/// <param name="Reworded">Those whose rewording said the same.</param>
/// <param name="ShareReworded">The same as a share of all that were sent, 0 to 1.</param>
/// <param name="ShareRefused">The share whose rewording was refused, 0 to 1.</param>
/// <param name="Refused">Those whose rewording was refused, by reason.</param>
/// <param name="Failed">Those without an answer, by reason.</param>
public sealed record PhrasingFigures(
    bool On, int Asked, int Reworded, double ShareReworded, double ShareRefused, IReadOnlyDictionary<string, int> Refused, IReadOnlyDictionary<string, int> Failed);
