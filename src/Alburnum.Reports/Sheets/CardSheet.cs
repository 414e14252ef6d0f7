using Alburnum.Reports.Drawings;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Sheets;

/// <summary>The card on a sheet of A4, with what to do with it.</summary>
public static class CardSheet
{
    private const double Type = 10;

    /// <summary>The sheet as a PDF file.</summary>
    public static byte[] Pdf()
    {
        var words = DrawingWords.Current;
        using var sheet = new Sheet(words.Card, words.Card);
        sheet.Text(words.Card, Typeface.Heading(16), Ink.Text);
        sheet.Space(3);
        foreach (var step in words.CardSteps)
        {
            sheet.Text(step, Typeface.Plain(Type), Ink.Text);
            sheet.Space(1);
        }
        sheet.Space(6);
        sheet.Draw(CardDrawing.Draw(), Sheet.MarginMm, sheet.TopMm, 1);
        return sheet.Finish();
    }
}
