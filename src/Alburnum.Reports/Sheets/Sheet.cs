using Alburnum.Reports.Drawings;
using Alburnum.Reports.Words;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Alburnum.Reports.Sheets;

/// <summary>Sheets of A4 filled from top to bottom: text, two-column facts, tables and drawings, with a foot on every sheet.</summary>
internal sealed class Sheet : IDisposable
{
    public const double WidthMm = 210;
    public const double HeightMm = 297;
    public const double MarginMm = 20;
    private const double FootMm = 18;
    private const double LineFactor = 1.36;

    private readonly PdfDocument _document = new();
    private readonly string _foot;
    private XGraphics? _page;

    public Sheet(string title, string foot)
    {
        _foot = foot;
        // The writer copies it as it is into the XML that goes with the document: signs of XML give way to others that look like them.
        _document.Info.Title = title.Replace('<', '‹').Replace('>', '›').Replace('&', '＆');
        _document.Info.Creator = "Alburnum";
        _document.Language = Wording.Current.Language;
        TurnPage();
    }

    /// <summary>Where the next thing will stand, mm from the top of the page.</summary>
    public double TopMm { get; private set; }

    /// <summary>Width between the margins, mm.</summary>
    public static double TextWidthMm => WidthMm - 2 * MarginMm;

    private XGraphics Page => _page ?? throw new InvalidOperationException("The sheets are closed.");

    /// <summary>Starts a new page unless the rest of this one is high enough.</summary>
    public void KeepTogether(double heightMm)
    {
        if (TopMm + heightMm > HeightMm - FootMm - 4)
            TurnPage();
    }

    /// <summary>Leaves room.</summary>
    public void Space(double mm) => TopMm += mm;

    /// <summary>A heading with a hair line over it, on the same page as what first follows.</summary>
    public void Section(string title, double withMm = 30)
    {
        KeepTogether(withMm);
        Space(7);
        Rule();
        Space(2);
        Text(title, Typeface.Heading(13), Ink.Text);
        Space(1.5);
    }

    /// <summary>A hair line across the page.</summary>
    public void Rule() =>
        Page.DrawLine(
            new XPen(PdfPainter.Colour(Ink.Hair), 0.6),
            Points(MarginMm),
            Points(TopMm),
            Points(WidthMm - MarginMm),
            Points(TopMm)
        );

    /// <summary>Text over the whole width, broken into lines.</summary>
    public void Text(string text, XFont font, Ink ink, double indentMm = 0) =>
        TopMm += Paragraph(text, font, ink, MarginMm + indentMm, TextWidthMm - indentMm, TopMm);

    /// <summary>A name on the left and what is to be said of it on the right.</summary>
    public void Fact(string name, string text, double nameWidthMm = 44)
    {
        var height = HeightOf(text, Typeface.Plain(9.5), TextWidthMm - nameWidthMm);
        KeepTogether(height);
        var named = Paragraph(name, Typeface.Plain(9.5), Ink.Quiet, MarginMm, nameWidthMm - 3, TopMm);
        var left = MarginMm + nameWidthMm;
        var said = Paragraph(text, Typeface.Plain(9.5), Ink.Text, left, TextWidthMm - nameWidthMm, TopMm);
        TopMm += Math.Max(named, said) + 0.8;
    }

    /// <summary>A table. Columns are given in mm; numbers are set to the right where a width is negative.</summary>
    public void Table(
        IReadOnlyList<double> widthsMm,
        IReadOnlyList<string> heads,
        IEnumerable<IReadOnlyList<string>> rows
    )
    {
        var small = Typeface.Plain(8.5);
        KeepTogether(14);
        Row(widthsMm, heads, Typeface.Plain(7.5), Ink.Quiet);
        TopMm += 0.6;
        Rule();
        TopMm += 1.4;
        foreach (var row in rows)
        {
            var before = TopMm;
            KeepTogether(RowHeight(widthsMm, row, small));
            if (TopMm < before)
            {
                Row(widthsMm, heads, Typeface.Plain(7.5), Ink.Quiet);
                TopMm += 2;
            }
            Row(widthsMm, row, small, Ink.Text);
            TopMm += 1.1;
        }
    }

    /// <summary>Text in a column, without moving on. Returns its height in mm.</summary>
    public double Paragraph(string text, XFont font, Ink ink, double leftMm, double widthMm, double topMm)
    {
        var height = LineHeight(font);
        var lines = Break(text, font, widthMm);
        for (var i = 0; i < lines.Count; i++)
        {
            var baseLine = topMm + i * height + font.Size / PdfPainter.PointsPerMm;
            Page.DrawString(lines[i], font, PdfPainter.Brush(ink), Points(leftMm), Points(baseLine));
        }
        return lines.Count * height;
    }

    /// <summary>Text set to the right, on one line, without moving on.</summary>
    public void RightAligned(string text, XFont font, Ink ink, double rightMm, double topMm) =>
        Page.DrawString(
            text,
            font,
            PdfPainter.Brush(ink),
            Points(rightMm),
            Points(topMm + font.Size / PdfPainter.PointsPerMm),
            XStringFormats.BaseLineRight
        );

    /// <summary>A drawing with its upper left corner at a place, without moving on.</summary>
    public void Draw(Drawing drawing, double leftMm, double topMm, double scale) =>
        PdfPainter.Paint(Page, drawing, leftMm, topMm, scale);

    /// <summary>A picture in a frame, without moving on.</summary>
    public void Picture(ReadOnlyMemory<byte> jpeg, double leftMm, double topMm, double widthMm, double heightMm)
    {
        using var stream = new MemoryStream(jpeg.ToArray());
        using var image = XImage.FromStream(stream);
        Page.DrawImage(image, Points(leftMm), Points(topMm), Points(widthMm), Points(heightMm));
    }

    /// <summary>Numbers the pages and gives the finished file.</summary>
    public byte[] Finish()
    {
        _page?.Dispose();
        _page = null;
        for (var i = 0; i < _document.PageCount; i++)
        {
            using var page = XGraphics.FromPdfPage(_document.Pages[i], XGraphicsPdfPageOptions.Append);
            var top = Points(HeightMm - FootMm + 5);
            var font = Typeface.Plain(7.5);
            page.DrawString(_foot, font, PdfPainter.Brush(Ink.Quiet), Points(MarginMm), top);
            var number = Wording.Said(
                "sheet.page",
                ("page", Figures.Whole(i + 1)),
                ("pages", Figures.Whole(_document.PageCount))
            );
            page.DrawString(
                number,
                font,
                PdfPainter.Brush(Ink.Quiet),
                Points(WidthMm - MarginMm),
                top,
                XStringFormats.BaseLineRight
            );
        }
        using var bytes = new MemoryStream();
        _document.Save(bytes, closeStream: false);
        return bytes.ToArray();
    }

    public void Dispose()
    {
        _page?.Dispose();
        _document.Dispose();
    }

    public double HeightOf(string text, XFont font, double widthMm) =>
        Break(text, font, widthMm).Count * LineHeight(font);

    private void TurnPage()
    {
        _page?.Dispose();
        var page = _document.AddPage();
        page.Width = XUnit.FromMillimeter(WidthMm);
        page.Height = XUnit.FromMillimeter(HeightMm);
        _page = XGraphics.FromPdfPage(page);
        TopMm = MarginMm;
    }

    private void Row(IReadOnlyList<double> widthsMm, IReadOnlyList<string> cells, XFont font, Ink ink)
    {
        var left = MarginMm;
        var height = 0.0;
        for (var i = 0; i < cells.Count; i++)
        {
            var width = Math.Abs(widthsMm[i]);
            if (widthsMm[i] < 0)
            {
                RightAligned(cells[i], font, ink, left + width - 2, TopMm);
                height = Math.Max(height, LineHeight(font));
            }
            else
            {
                height = Math.Max(height, Paragraph(cells[i], font, ink, left, width - 2, TopMm));
            }
            left += width;
        }
        TopMm += height;
    }

    private double RowHeight(IReadOnlyList<double> widthsMm, IReadOnlyList<string> cells, XFont font) =>
        cells.Select((cell, i) => HeightOf(cell, font, Math.Abs(widthsMm[i]) - 2)).Max();

    private List<string> Break(string text, XFont font, double widthMm)
    {
        var width = Points(widthMm);
        var lines = new List<string>();
        foreach (var paragraph in text.Split('\n'))
        {
            var line = "";
            foreach (var word in paragraph.Split(' '))
            {
                var longer = line.Length == 0 ? word : $"{line} {word}";
                if (line.Length > 0 && Page.MeasureString(longer, font).Width > width)
                {
                    lines.Add(line);
                    line = word;
                }
                else
                {
                    line = longer;
                }
            }
            lines.Add(line);
        }
        return lines;
    }

    private static double LineHeight(XFont font) => font.Size * LineFactor / PdfPainter.PointsPerMm;

    private static double Points(double mm) => mm * PdfPainter.PointsPerMm;
}
