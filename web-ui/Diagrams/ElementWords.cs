namespace WireCoach.WebUi.Diagrams;

/// <summary>What stands beside a symbol.</summary>
internal static class ElementWords
{
    public static string Role(string role) => role switch
    {
        "series-field" => "series field",
        "shunt-field" => "shunt field",
        "speed-tap" => "speed tap",
        _ => role,
    };

    public static string Winding(string role) => role is "run" or "start" or "phase" ? role + " winding" : Role(role);

    /// <summary>A word that would be cut is shortened instead.</summary>
    public static string Shortened(string words, double width) => string.Join(' ', words.Split(' ').Select(word =>
        Lettering.Width(word, Lettering.Label, false) <= width ? word : word switch { "capacitor" => "cap.", "protector" => "prot.", "armature" => "arm.", _ => word }));

    public static string Part(string kind) => kind switch
    {
        "start-capacitor" => "start capacitor",
        "run-capacitor" => "run capacitor",
        "protector-heater" => "protector heater",
        "switch" => "start switch",
        _ => kind,
    };
}
