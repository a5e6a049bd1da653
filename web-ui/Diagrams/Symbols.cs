using WireCoach.Rules.Connections;

namespace WireCoach.WebUi.Diagrams;

/// <summary>The symbols of IEC 60617 and IEEE 315, drawn from above to below on a vertical wire.</summary>
internal static class Symbols
{
    /// <summary>How much of the wire an element takes.</summary>
    public static double Height(PlanElement element) => element.Kind switch
    {
        "coil" => 52,
        "lead" => 6,
        "switch" => 40,
        "protector" or "protector-heater" => 36,
        _ => 34,
    };

    /// <summary>How far it reaches to the left of its wire.</summary>
    public static double Bulge(PlanElement element) => element switch
    {
        { Kind: "coil", ChangesWithShaft: true } => 16,
        { Kind: "coil" } => 8,
        { Kind: "lead" } => 0,
        { Kind: "protector" or "protector-heater" } => 10,
        { Kind: "switch" } => 2,
        _ => 12,
    };

    public static void Draw(Canvas canvas, StrandLink link, double x, double y)
    {
        var height = Height(link.Element);
        switch (link.Element)
        {
            case { Kind: "coil", ChangesWithShaft: true }:
                Armature(canvas, x, y, height);
                break;
            case { Kind: "coil" }:
                Coil(canvas, x, y, height, link.Upward);
                break;
            case { Kind: "lead" }:
                canvas.Wire(x, y, x, y + height);
                break;
            case { Kind: "switch" }:
                Switch(canvas, x, y, height);
                break;
            case { Kind: "protector" }:
                Protector(canvas, x, y, height);
                break;
            case { Kind: "protector-heater" }:
                Heater(canvas, x, y, height);
                break;
            default:
                Capacitor(canvas, x, y, height);
                break;
        }
    }

    /// <summary>Four half turns; the dot marks its start.</summary>
    private static void Coil(Canvas canvas, double x, double y, double height, bool upward)
    {
        var turns = string.Concat(Enumerable.Repeat("a5.5 5.5 0 0 1 0 11", 4));
        canvas.Wire(x, y, x, y + 4);
        canvas.Symbol($"M{Canvas.N(x)} {Canvas.N(y + 4)}{turns}", new Box(x - 2, y + 4, 9, 44));
        canvas.Wire(x, y + 48, x, y + height);
        var dot = upward ? y + 44 : y + 8;
        canvas.Symbol($"M{Canvas.N(x - 8)} {Canvas.N(dot)}a2.2 2.2 0 1 0 4.4 0a2.2 2.2 0 1 0 -4.4 0z", new Box(x - 8, dot - 2.2, 4.4, 4.4), filled: true);
    }

    /// <summary>A ring with its two brushes.</summary>
    private static void Armature(Canvas canvas, double x, double y, double height)
    {
        canvas.Wire(x, y, x, y + 6);
        canvas.Wire(x, y + height - 6, x, y + height);
        canvas.Ring(x, y + (height / 2), 15);
        canvas.Symbol($"M{Canvas.N(x - 5)} {Canvas.N(y + 5)}h10v6h-10z", new Box(x - 5, y + 5, 10, 6), filled: true);
        canvas.Symbol($"M{Canvas.N(x - 5)} {Canvas.N(y + height - 11)}h10v6h-10z", new Box(x - 5, y + height - 11, 10, 6), filled: true);
    }

    private static void Capacitor(Canvas canvas, double x, double y, double height)
    {
        var middle = y + (height / 2);
        canvas.Wire(x, y, x, middle - 4);
        canvas.Wire(x, middle + 4, x, y + height);
        canvas.Symbol($"M{Canvas.N(x - 11)} {Canvas.N(middle - 4)}h22M{Canvas.N(x - 11)} {Canvas.N(middle + 4)}h22", new Box(x - 11, middle - 5, 22, 10));
    }

    /// <summary>A contact that is closed at rest: the blade lies against the fixed contact's tick.</summary>
    private static void Switch(Canvas canvas, double x, double y, double height)
    {
        canvas.Wire(x, y, x, y + 10);
        canvas.Wire(x, y + 30, x, y + height);
        canvas.Symbol($"M{Canvas.N(x)} {Canvas.N(y + 10)}h9M{Canvas.N(x)} {Canvas.N(y + 30)}L{Canvas.N(x + 8)} {Canvas.N(y + 7)}", new Box(x - 1, y + 7, 11, 23));
    }

    /// <summary>A box in the line with a bent bimetal in it.</summary>
    private static void Protector(Canvas canvas, double x, double y, double height)
    {
        canvas.Wire(x, y, x, y + 5);
        canvas.Wire(x, y + 31, x, y + height);
        canvas.Symbol(
            $"M{Canvas.N(x - 9)} {Canvas.N(y + 5)}h18v26h-18zM{Canvas.N(x)} {Canvas.N(y + 5)}v5h5v6h-5v10M{Canvas.N(x)} {Canvas.N(y + 26)}v5", new Box(x - 9, y + 5, 18, 26));
    }

    /// <summary>A plain box: the heater of a protector.</summary>
    private static void Heater(Canvas canvas, double x, double y, double height)
    {
        canvas.Wire(x, y, x, y + 5);
        canvas.Wire(x, y + 31, x, y + height);
        canvas.Symbol($"M{Canvas.N(x - 6)} {Canvas.N(y + 5)}h12v26h-12z", new Box(x - 6, y + 5, 12, 26));
    }

    /// <summary>Protective earth: the end of the conductor over three lines.</summary>
    public static void Earth(Canvas canvas, double x, double y)
    {
        canvas.Wire(x, y, x, y + 10);
        canvas.Symbol(
            $"M{Canvas.N(x - 11)} {Canvas.N(y + 10)}h22M{Canvas.N(x - 7)} {Canvas.N(y + 15)}h14M{Canvas.N(x - 3)} {Canvas.N(y + 20)}h6", new Box(x - 11, y + 10, 22, 11));
    }

    /// <summary>A capped end: a cup over the end of the wire.</summary>
    public static void Cap(Canvas canvas, double x, double y, bool below) => canvas.Symbol(
        $"M{Canvas.N(x - 6)} {Canvas.N(y)}a6 6 0 0 {(below ? 0 : 1)} 12 0z", new Box(x - 6, below ? y : y - 6, 12, 6));
}
