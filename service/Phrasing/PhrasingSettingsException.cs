namespace WireCoach.Service.Phrasing;

/// <summary>What is configured for the language model cannot be used; the message says what to change.</summary>
internal sealed class PhrasingSettingsException(string message) : Exception(message);
