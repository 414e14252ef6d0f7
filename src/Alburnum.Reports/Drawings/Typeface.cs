using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace Alburnum.Reports.Drawings;

/// <summary>The type of the printed sheets. The font files travel inside the program: a report looks alike on every machine.</summary>
internal static class Typeface
{
    private const string Text = "Lato";
    private const string Display = "Vollkorn";

    static Typeface() => GlobalFontSettings.FontResolver = new EmbeddedFonts();

    /// <summary>Running text and figures.</summary>
    public static XFont Plain(double points) => new(Text, points, XFontStyleEx.Regular);

    /// <summary>Stressed text.</summary>
    public static XFont Bold(double points) => new(Text, points, XFontStyleEx.Bold);

    /// <summary>Asides.</summary>
    public static XFont Slanted(double points) => new(Text, points, XFontStyleEx.Italic);

    /// <summary>Headings and verdicts.</summary>
    public static XFont Heading(double points) => new(Display, points, XFontStyleEx.Bold);

    private sealed class EmbeddedFonts : IFontResolver
    {
        public FontResolverInfo ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
            new(
                familyName switch
                {
                    Display => "Vollkorn-SemiBold",
                    _ when isBold => "Lato-Bold",
                    _ when isItalic => "Lato-Italic",
                    _ => "Lato-Regular",
                }
            );

        public byte[] GetFont(string faceName) => FontFiles.Read($"{faceName}.ttf");
    }
}
