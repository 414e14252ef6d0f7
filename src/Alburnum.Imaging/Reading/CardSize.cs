using Alburnum.Imaging.Cards;
using Alburnum.Imaging.Geometry;
using Alburnum.Timber;

namespace Alburnum.Imaging.Reading;

/// <summary>How large the card beside a section makes it.</summary>
/// <param name="Section">The section as large as the card says.</param>
/// <param name="SizeShare">Standard uncertainty of its size, as a share.</param>
internal sealed record CardSize(Section Section, double SizeShare)
{
    /// <summary>Standard uncertainty of how level the card lies with the cut face, mm. Our own choice.</summary>
    internal const double LevelMm = 2;

    /// <summary>Standard uncertainty of the length by which its print is checked with a ruler, mm. Our own choice.</summary>
    internal const double PrintMm = 0.25;

    /// <summary>Standard uncertainty that a lens leaves between two places in its picture, as a share. Our own choice, checked against drawn photographs.</summary>
    internal const double LensShare = 0.006;

    /// <summary>Points along each face at which the section's area is taken.</summary>
    private const int PointsPerFace = 24;

    /// <summary>Area of the rectangle of the card's marks, mm².</summary>
    private static readonly double MarksMm2 =
        (ScaleCard.Marks[2].X - ScaleCard.Marks[0].X) * (ScaleCard.Marks[2].Y - ScaleCard.Marks[0].Y);

    /// <summary>By how much its width or its height, whichever is more, differs from what was known of it, as a share.</summary>
    public required double ApartShare { get; init; }

    /// <summary>The section's size by the card.</summary>
    /// <param name="card">The card.</param>
    /// <param name="known">The section as large as it is known to be.</param>
    /// <param name="plan">The section laid with that size.</param>
    /// <param name="map">From there to the photograph.</param>
    /// <param name="camera">The camera.</param>
    public static CardSize Of(FoundCard card, Section known, SectionPlan plan, SectionMap map, Camera camera)
    {
        var onCard = card.Map(map.Lens);
        var factor = Factor(card, onCard, plan, map);
        var (w, h) = (plan.WidthMm, plan.HeightMm);
        var across = Length(new(0, h / 2), new(w, h / 2)) / w;
        var down = Length(new(w / 2, 0), new(w / 2, h)) / h;
        return new(known.Scaled(factor), Share(card, onCard, camera))
        {
            ApartShare = new[] { factor, across, down }.Max(share => Math.Abs(Math.Log(share))),
        };

        double Length(PointMm from, PointMm to)
        {
            var (a, b) = (onCard.ToMm(map.ToPx(from)), onCard.ToMm(map.ToPx(to)));
            return double.Hypot(b.X - a.X, b.Y - a.Y);
        }
    }

    // The section measured in the card's plane and, where four corners show its tilt, the card in the section's: what a lens does to one it does to the other the other way round.
    private static double Factor(FoundCard card, SectionMap onCard, SectionPlan plan, SectionMap map)
    {
        PointMm[] rim =
        [
            .. plan.Faces.SelectMany(face =>
                Enumerable.Range(0, PointsPerFace).Select(k => face.At(k * face.LengthMm / PointsPerFace, 0))
            ),
        ];
        var section = Math.Sqrt(Area(rim.Select(mm => onCard.ToMm(map.ToPx(mm)))) / Area(rim));
        var back = Math.Sqrt(MarksMm2 / Area(card.MarksPx.Select(map.ToMm)));
        return plan.Faces.Count > 1 ? Math.Sqrt(section * back) : section;
    }

    private static double Area(IEnumerable<PointMm> outline) =>
        Math.Abs(Polygon.Area([.. outline.Select(mm => new PointPx(mm.X, mm.Y))]));

    private static double Share(FoundCard card, SectionMap onCard, Camera camera)
    {
        var pxPerMm = onCard.ScaleAt(ScaleCard.WidthMm / 2, ScaleCard.HeightMm / 2);
        var mark = Math.Sqrt(2) * card.MarkPx / card.MarksPx[0].DistanceTo(card.MarksPx[1]);
        var level = LevelMm / (camera.FocalPx / pxPerMm);
        return double.Hypot(double.Hypot(mark, level), double.Hypot(PrintMm / ScaleCard.CheckMm, LensShare));
    }
}
