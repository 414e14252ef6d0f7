using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Rectification;

namespace Alburnum.Imaging.Judging;

/// <summary>Judges a photograph by its scale, focus and exposure within the section.</summary>
internal static class PhotographJudge
{
    // All limits are our own choice.

    /// <summary>Fewer pixels per mm than this cannot show a depth.</summary>
    public const double LeastPxPerMm = 1;

    /// <summary>More of the section see-through than this is no longer the photograph that was taken.</summary>
    public const double MostSeeThroughShare = 0.02;

    /// <summary>More of the section burnt out than this leaves nothing to read.</summary>
    public const double MostBurntShare = 0.8;

    // Pixels per mm and mean light, 0 to 255, below which a photograph is fair or poor; standard deviation of the blur, mm, and share burnt out above which it is.
    private static readonly (double Fair, double Poor) PxPerMm = (4, 2.5);
    private static readonly (double Fair, double Poor) BlurMm = (0.45, 0.8);
    private static readonly (double Fair, double Poor) BurntShare = (0.1, 0.3);
    private static readonly (double Fair, double Poor) Light = (32, 16);

    /// <summary>Grade and findings; <see cref="QualityGrade.Unusable"/> where nothing can be read.</summary>
    public static Quality Of(Photograph photo, RectifiedSection drawn, SectionPlan plan, SectionMap map, double pxPerMm)
    {
        var (light, burnt) = Exposure(drawn, plan);
        var seeThrough = photo.HasSeeThrough ? SeeThroughShare(photo, drawn, plan, map) : 0;
        // With too few pixels there is no blur to speak of.
        IEnumerable<(QualityGrade, QualityFinding)> blurred =
            pxPerMm >= LeastPxPerMm && EdgeBlur.StandardDeviationMm(photo, map, plan, pxPerMm) is { } blurMm
                ? [(Below(-blurMm, (-BlurMm.Fair, -BlurMm.Poor)), new Blurred(2 * blurMm))]
                : [];
        (QualityGrade Grade, QualityFinding Finding)[] judged =
        [
            (pxPerMm < LeastPxPerMm ? QualityGrade.Unusable : Below(pxPerMm, PxPerMm), new FewPixels(pxPerMm)),
            .. blurred,
            (
                burnt > MostBurntShare ? QualityGrade.Unusable : Below(-burnt, (-BurntShare.Fair, -BurntShare.Poor)),
                new OverExposed(burnt)
            ),
            (seeThrough > MostSeeThroughShare ? QualityGrade.Unusable : QualityGrade.Good, new SeeThrough(seeThrough)),
            (Below(light, Light), new UnderExposed(light)),
        ];
        var amiss = judged.Where(each => each.Grade != QualityGrade.Good).ToList();
        return new(
            amiss.Select(each => each.Grade).DefaultIfEmpty(QualityGrade.Good).Max(),
            [.. amiss.Select(each => each.Finding)]
        );
    }

    private static QualityGrade Below(double value, (double Fair, double Poor) limits) =>
        value < limits.Poor ? QualityGrade.Poor
        : value < limits.Fair ? QualityGrade.Fair
        : QualityGrade.Good;

    /// <summary>A channel above this, of 255, has run into its end.</summary>
    private const byte End = 250;

    /// <summary>Nearer to the outline than this the background may show, mm; and every so many-th pixel is enough.</summary>
    private const double EdgeMm = 1;

    private const int Every = 2;

    /// <summary>A pixel that covers less than this, of 255, is see-through.</summary>
    private const byte Whole = 250;

    private static double SeeThroughShare(Photograph photo, RectifiedSection drawn, SectionPlan plan, SectionMap map)
    {
        var (seeThrough, all) = (0, 0);
        for (var y = 0; y < drawn.Height; y += Every)
        {
            for (var x = 0; x < drawn.Width; x += Every)
            {
                var place = drawn.Middle(x, y);
                if (plan.InwardMm(place) < EdgeMm)
                    continue;
                all++;
                if (photo.CoverAt(map.ToPx(place)) < Whole)
                    seeThrough++;
            }
        }
        return all == 0 ? 0 : (double)seeThrough / all;
    }

    // Mean light of the section, 0 to 255, and the share of it where two channels or more have run into their end.
    private static (double Light, double BurntShare) Exposure(RectifiedSection drawn, SectionPlan plan)
    {
        long sum = 0;
        var (burnt, all) = (0, 0);
        for (var y = 0; y < drawn.Height; y += Every)
        {
            for (var x = 0; x < drawn.Width; x += Every)
            {
                if (plan.InwardMm(drawn.Middle(x, y)) < EdgeMm)
                    continue;
                var p = 3 * ((y * drawn.Width) + x);
                var (r, g, b) = (drawn.Rgb[p], drawn.Rgb[p + 1], drawn.Rgb[p + 2]);
                all++;
                sum += r + g + b;
                if ((r >= End ? 1 : 0) + (g >= End ? 1 : 0) + (b >= End ? 1 : 0) >= 2)
                    burnt++;
            }
        }
        return all == 0 ? (255, 0) : (sum / (3.0 * all), (double)burnt / all);
    }
}
