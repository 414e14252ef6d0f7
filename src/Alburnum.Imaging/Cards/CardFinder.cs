using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Cards;

/// <summary>Finds the card in a photograph by its four ring marks, and refuses whatever does not look like it in every respect.</summary>
/// <remarks>Its figures are our own choice.</remarks>
internal static class CardFinder
{
    /// <summary>Least side of a mark's box, pixels of the small picture.</summary>
    private const int LeastBoxPx = 12;

    /// <summary>Share of its box that a ring fills, and the ratio of the box's sides.</summary>
    private static readonly (double Least, double Most) Fill = (0.2, 0.62);

    private static readonly (double Least, double Most) Aspect = (0.45, 2.2);

    /// <summary>A mark's dot lies no farther from its middle than this share of its box.</summary>
    private const double MostOffMiddle = 0.1;

    /// <summary>A dot's pixels as a share of its ring's.</summary>
    private static readonly (double Least, double Most) DotShare = (0.02, 0.9);

    /// <summary>The first mark's dot is at least so many times as large, against its ring, as any other.</summary>
    private const double LargerDot = 1.5;

    /// <summary>More marks than this are not tried.</summary>
    private const int MostMarks = 14;

    /// <summary>Most misfit of the four marks to a rectangle: half the squared standard deviations, with a lens' own bow allowed for.</summary>
    private const double MostMisfit = 30;

    /// <summary>The disc that a mark's box holds has an area within these shares of what the card's place in the picture says.</summary>
    private static readonly (double Least, double Most) DiscArea = (0.6, 1.6);

    /// <summary>A patch of grey is at least so much darker than the one before it, of 255.</summary>
    private const double GreyStep = 8;

    private static readonly (double WidthMm, double HeightMm) MarksApart = (
        ScaleCard.Marks[2].X - ScaleCard.Marks[0].X,
        ScaleCard.Marks[2].Y - ScaleCard.Marks[0].Y
    );

    private const double DiscMm2 = Math.PI * ScaleCard.RingMm * ScaleCard.RingMm;

    /// <summary>The card; null where none is seen.</summary>
    public static FoundCard? Find(Photograph photo)
    {
        var picture = GreenPicture.Of(photo);
        var marks = Marks(DarkParts.Of(picture), picture);
        if (marks.Count < ScaleCard.Marks.Count)
            return null;
        return Fours(marks)
            .Select(four => Ordered(four))
            .OfType<SeenMark[]>()
            .Where(four => IsCard(four, photo))
            .Select(four => MarkMiddles.Refined(photo, [.. four.Select(mark => mark.At)]))
            .FirstOrDefault(card => card is not null && IsGreyInOrder(photo, card));
    }

    private static List<SeenMark> Marks(IReadOnlyList<DarkPart> parts, GreenPicture picture)
    {
        var dots = parts.Where(part => part.Count >= 2).OrderBy(part => part.Top).ToList();
        var marks = new List<SeenMark>();
        foreach (var ring in parts)
        {
            var (w, h) = (ring.Width, ring.Height);
            if (
                Math.Min(w, h) < LeastBoxPx
                || !Within((double)ring.Count / (w * h), Fill)
                || !Within((double)w / h, Aspect)
            )
                continue;
            var (x, y) = ring.Middle;
            var dot = dots.FirstOrDefault(each => IsDotOf(each, ring));
            if (dot.Count == 0)
                continue;
            var at = picture.ToUpright.Map(x, y);
            var uprightPerPx2 = Math.Pow(picture.ToUpright.ScaleAt(x, y), 2);
            marks.Add(new(at, Math.PI / 4 * w * h * uprightPerPx2, (double)dot.Count / ring.Count));
        }
        return [.. marks.OrderByDescending(mark => mark.DiscPx2).Take(MostMarks)];
    }

    private static bool IsDotOf(DarkPart dot, DarkPart ring)
    {
        var (x, y) = ring.Middle;
        var (dx, dy) = dot.Middle;
        return dot.Left > ring.Left
            && dot.Right < ring.Right
            && dot.Top > ring.Top
            && dot.Bottom < ring.Bottom
            && double.Hypot(dx - x, dy - y) <= MostOffMiddle * Math.Max(ring.Width, ring.Height)
            && Within((double)dot.Count / ring.Count, DotShare);
    }

    private static IEnumerable<SeenMark[]> Fours(List<SeenMark> marks)
    {
        for (var a = 0; a < marks.Count; a++)
        {
            for (var b = a + 1; b < marks.Count; b++)
            {
                for (var c = b + 1; c < marks.Count; c++)
                {
                    for (var d = c + 1; d < marks.Count; d++)
                        yield return [marks[a], marks[b], marks[c], marks[d]];
                }
            }
        }
    }

    // Clockwise as displayed from the first, which its larger dot tells; null where none is plainly larger.
    private static SeenMark[]? Ordered(SeenMark[] four)
    {
        var bySize = four.OrderByDescending(mark => mark.DotShare).ToArray();
        if (bySize[0].DotShare < LargerDot * bySize[1].DotShare)
            return null;
        var (x, y) = (four.Average(mark => mark.At.X), four.Average(mark => mark.At.Y));
        var around = four.OrderBy(mark => Math.Atan2(mark.At.Y - y, mark.At.X - x)).ToArray();
        var first = Array.IndexOf(around, bySize[0]);
        return [.. around[first..], .. around[..first]];
    }

    private static bool IsCard(SeenMark[] four, Photograph photo)
    {
        PointPx[] at = [.. four.Select(mark => mark.At)];
        return IsConvex(at)
            && RectangleView.Misfit(at, MarksApart.WidthMm, MarksApart.HeightMm, photo.WidthPx, photo.HeightPx)
                <= MostMisfit
            && four.Zip(ScaleCard.Marks, (mark, mm) => (mark, mm)).All(pair => IsAsLarge(pair.mark, pair.mm, at));
    }

    private static bool IsAsLarge(SeenMark mark, PointMm mm, PointPx[] at)
    {
        var scale = new FoundCard(at, 0).Map(lens: null).ScaleAt(mm.X, mm.Y);
        return Within(mark.DiscPx2 / (DiscMm2 * scale * scale), DiscArea);
    }

    private static bool IsConvex(PointPx[] p) =>
        Enumerable.Range(0, p.Length).All(k => Polygon.Area([p[k], p[(k + 1) % p.Length], p[(k + 2) % p.Length]]) > 0);

    private static bool IsGreyInOrder(Photograph photo, FoundCard card)
    {
        var greys = CardGreys.Of(photo, card).Select(grey => grey.G).ToList();
        return greys.Zip(greys.Skip(1)).All(pair => pair.First - pair.Second >= GreyStep);
    }

    private static bool Within(double value, (double Least, double Most) range) =>
        value >= range.Least && value <= range.Most;

    /// <summary>A mark as the small picture shows it.</summary>
    /// <param name="At">Its middle, upright pixels.</param>
    /// <param name="DiscPx2">Area of the disc that its box holds, upright pixels.</param>
    /// <param name="DotShare">Area of its dot as a share of the ring's.</param>
    private readonly record struct SeenMark(PointPx At, double DiscPx2, double DotShare);
}
