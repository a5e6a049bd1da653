using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace WireCoach.WebUi.Reports;

/// <summary>The letters of printed paper: they travel with the program, so that no font has to be installed.</summary>
internal sealed class PaperFonts : IFontResolver
{
    private const string Plain = "DejaVuSansCondensed";
    private const string Bold = "DejaVuSansCondensed-Bold";

    private static readonly PaperFonts Own = new();

    public static XFont Of(double size, bool bold = false)
    {
        GlobalFontSettings.FontResolver ??= Own;
        return new XFont(Plain, size, bold ? XFontStyleEx.Bold : XFontStyleEx.Regular);
    }

    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) => new(isBold ? Bold : Plain);

    public byte[] GetFont(string faceName)
    {
        using var letters = typeof(PaperFonts).Assembly.GetManifestResourceStream(faceName) ?? throw new InvalidOperationException($"The font {faceName} is not in the program.");
        var bytes = new byte[letters.Length];
        letters.ReadExactly(bytes);
        return bytes;
    }
}
