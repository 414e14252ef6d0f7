using System.Globalization;
using Alburnum.Imaging.Cards;
using Alburnum.Imaging.Geometry;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Drawings;

/// <summary>Draws the card that is printed and laid beside a cut end, at its true size, with marks to cut it out by.</summary>
public static class CardDrawing
{
    private const double MarginMm = 8;
    private const double CutFromMm = 2;
    private const double Hair = 0.15;
    private const double Pen = 0.25;
    private const double Type = 2.6;
    private const double SmallType = 2;
    private const int RoundCorners = 96;

    // Along the upper edge, clear of the corners; every tenth line is longer and has its figure where no mark is near.
    private const int FirstLineMm = 5;
    private const int TenMm = 10;
    private const double LineMm = 1.8;
    private const double LongLineMm = 3;
    private const int FirstFigureMm = 20;
    private const double FigureBaseMm = 5.4;

    private const double CheckMm = 30;
    private const double CheckEndMm = 2;
    private const double LevelMm = 60;

    // Print is black on the paper's own white, whatever the colours of the sheets.
    private static readonly Ink Black = new("000000");
    private static readonly Ink White = new("FFFFFF");

    private static DrawingWords Words => DrawingWords.Current;

    /// <summary>The card.</summary>
    public static Drawing Draw()
    {
        List<Mark> marks =
        [
            new Area(Box(new(0, 0), new(ScaleCard.WidthMm, ScaleCard.HeightMm)), White),
            .. CutMarks(),
            .. ScaleCard.Marks.SelectMany((at, k) => Ring(at, k == 0 ? ScaleCard.FirstDotMm : ScaleCard.DotMm)),
            .. ScaleCard
                .Greys.Concat(ScaleCard.Colours)
                .Select(patch => new Area(Box(patch.From, patch.To), new(Hex(patch.Rgb)))),
            .. Lines(),
            .. CheckLine(),
            new Label(Middle(LevelMm), Words.CardLevel, Type, Anchor.Middle, Black),
        ];
        return new(ScaleCard.WidthMm + (2 * MarginMm), ScaleCard.HeightMm + (2 * MarginMm), Words.Card, marks);
    }

    private static IEnumerable<Mark> Ring(PointMm at, double dotMm) =>
        [
            new Area(Round(at, ScaleCard.RingMm), Black),
            new Area(Round(at, ScaleCard.HoleMm), White),
            new Area(Round(at, dotMm), Black),
        ];

    private static IEnumerable<Mark> CutMarks()
    {
        foreach (var x in new[] { 0, ScaleCard.WidthMm })
        {
            foreach (var y in new[] { 0, ScaleCard.HeightMm })
            {
                var (outX, outY) = (x > 0 ? 1 : -1, y > 0 ? 1 : -1);
                yield return Stroke(new(x + (outX * CutFromMm), y), new(x + (outX * MarginMm), y), Hair);
                yield return Stroke(new(x, y + (outY * CutFromMm)), new(x, y + (outY * MarginMm)), Hair);
            }
        }
    }

    private static IEnumerable<Mark> Lines()
    {
        for (var mm = FirstLineMm; mm <= ScaleCard.WidthMm - FirstLineMm; mm++)
        {
            var isTen = mm % TenMm == 0;
            yield return Stroke(new(mm, 0), new(mm, isTen ? LongLineMm : LineMm), Hair);
            if (isTen && mm >= FirstFigureMm && mm <= ScaleCard.WidthMm - FirstFigureMm)
                yield return new Label(
                    At(new(mm, FigureBaseMm)),
                    mm.ToString(CultureInfo.InvariantCulture),
                    SmallType,
                    Anchor.Middle,
                    Black
                );
        }
    }

    private static IEnumerable<Mark> CheckLine()
    {
        var (left, right) = ((ScaleCard.WidthMm - ScaleCard.CheckMm) / 2, (ScaleCard.WidthMm + ScaleCard.CheckMm) / 2);
        return
        [
            Stroke(new(left, CheckMm), new(right, CheckMm), Pen),
            Stroke(new(left, CheckMm - CheckEndMm), new(left, CheckMm + CheckEndMm), Hair),
            Stroke(new(right, CheckMm - CheckEndMm), new(right, CheckMm + CheckEndMm), Hair),
            new Label(
                Middle(CheckMm + Type + 1.5),
                Words.CardCheck(Figures.Whole((int)ScaleCard.CheckMm)),
                Type,
                Anchor.Middle,
                Black
            ),
        ];
    }

    private static Line Stroke(PointMm from, PointMm to, double widthMm) => new([At(from), At(to)], Black, widthMm);

    private static Spot[] Box(PointMm from, PointMm to) =>
        [At(from), At(new(to.X, from.Y)), At(to), At(new(from.X, to.Y))];

    private static Spot[] Round(PointMm at, double radiusMm) =>
        [
            .. Enumerable
                .Range(0, RoundCorners)
                .Select(k => Math.SinCos(2 * Math.PI * k / RoundCorners))
                .Select(turn => At(new(at.X + (radiusMm * turn.Cos), at.Y + (radiusMm * turn.Sin)))),
        ];

    private static string Hex(int rgb) => rgb.ToString("X6", CultureInfo.InvariantCulture);

    private static Spot Middle(double downMm) => At(new(ScaleCard.WidthMm / 2, downMm));

    private static Spot At(PointMm mm) => new(MarginMm + mm.X, MarginMm + mm.Y);
}
