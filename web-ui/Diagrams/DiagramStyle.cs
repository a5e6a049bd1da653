namespace WireCoach.WebUi.Diagrams;

/// <summary>The style that every picture carries; the page's security policy admits exactly this text.</summary>
public static class DiagramStyle
{
    public const string Css =
        ".diagram{max-width:100%;height:auto}" +
        ".diagram path{fill:none;stroke:#000;stroke-width:2;stroke-linecap:round;stroke-linejoin:round}" +
        ".diagram .full{fill:#000;stroke:none}.diagram .ring{fill:#fff;stroke:#000;stroke-width:2}" +
        ".diagram .chip{fill:#fff;stroke:#000;stroke-width:1.2}.diagram .dash{stroke-dasharray:5 4;stroke-width:1.4}" +
        ".diagram text{font-family:Arial,Helvetica,sans-serif;fill:#000}.diagram .bold{font-weight:700}";
}
