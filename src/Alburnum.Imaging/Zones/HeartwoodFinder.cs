using Alburnum.Imaging.Colour;
using Alburnum.Imaging.Front;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Rectification;
using Alburnum.Imaging.Rings;
using Alburnum.Measures;

namespace Alburnum.Imaging.Zones;

/// <summary>Detects heartwood by its colour on untreated wood: an arc about the pith that the growth rings turn about.</summary>
/// <remarks>The limits are ours, set on drawn photographs: see docs/science/accuracy.md.</remarks>
internal static class HeartwoodFinder
{
    /// <summary>Fewer cells of bare wood than this show nothing.</summary>
    private const int LeastCells = 100;

    /// <summary>Squared standard deviations of colour that the step explains, mean over the cells.</summary>
    private const double LeastGain = 0.6;

    /// <summary>Border in sight: so long, or most of the way round.</summary>
    private const double LeastLengthMm = 55;

    private const double LeastTurn = 0.8;
    private const int LeastPoints = 4;

    /// <summary>Share of the border that must show the step, and must show it in light.</summary>
    private const double LeastShare = 0.8;

    /// <summary>A sector shows the step in light from so many standard deviations up.</summary>
    private const double InLight = 0.3;

    /// <summary>How far the border may stray from the circle: this and a share of the radius.</summary>
    private const double MostScatterMm = 0.2;

    private const double MostScatterShare = 0.04;

    /// <summary>How much better a step must do than an even slope, in the middle of all sectors.</summary>
    private const double LeastSharpness = 0.08;

    /// <summary>Nearer to outline or front than this, something else than rings changes the brightness, mm.</summary>
    private const double AwayMm = 1.5;

    /// <summary>Looks for it.</summary>
    /// <param name="drawn">The section drawn flat.</param>
    /// <param name="plan">Its faces.</param>
    /// <param name="fronts">Where treated wood ends.</param>
    /// <param name="light">Fall-off of the light.</param>
    /// <param name="signs">Which way its colour lies.</param>
    public static Outcome<BorderFit, HeartwoodFault> Look(
        RectifiedSection drawn,
        SectionPlan plan,
        IReadOnlyList<FaceFront> fronts,
        Illumination light,
        HeartwoodSigns signs
    )
    {
        var wood = BareWood.Of(drawn, plan, fronts, light);
        if (wood.At.Count < LeastCells)
            return HeartwoodFault.TooLittleUntreated;
        if (!PithFinder.Find(RingLines.Of(drawn, IsPlain), plan).Has(out var pith, out var noPith))
            return noPith;
        var contrast = BareContrast.Of(wood, plan, signs);
        if (!StepCircle.Find(contrast, pith).Has(out var step, out var noStep))
            return noStep;
        if (step.Gain < LeastGain * wood.At.Count)
            return HeartwoodFault.OneColour;
        var points = BorderPoints.Of(contrast, step.Circle);
        if (!IsLongEnough(points, step.Circle))
            return HeartwoodFault.TooShort;
        return BorderFit
            .Of(points, pith, step)
            .Then<BorderFit>(fit => IsBorder(points, fit) ? fit : HeartwoodFault.NoArc);

        // Rings alone change the brightness: within bare or treated wood, away from outline and front.
        bool IsPlain(PointMm p)
        {
            if (plan.InwardMm(p) < AwayMm)
                return false;
            var isNear = false;
            foreach (var front in fronts)
            {
                if (front.Covers(p, -AwayMm))
                    return true;
                isNear |= front.Covers(p, AwayMm);
            }
            return !isNear;
        }
    }

    private static bool IsLongEnough(IReadOnlyList<BorderPoint> points, Circle circle)
    {
        var length = points.Sum(point => point.LengthMm);
        return points.Count >= LeastPoints
            && length >= Math.Min(LeastLengthMm, LeastTurn * 2 * Math.PI * circle.RadiusMm);
    }

    private static bool IsBorder(IReadOnlyList<BorderPoint> points, BorderFit fit)
    {
        var length = points.Sum(point => point.LengthMm);
        var usual = Quantiles.UpperMedian(points.Select(point => point.Step));
        double Share(Func<BorderPoint, bool> shows) => points.Where(shows).Sum(point => point.LengthMm) / length;
        return usual > 0
            && Share(point => point.Step > usual / 2) >= LeastShare
            && Share(point => point.InLight > InLight) >= LeastShare
            && points.Average(point => point.InHue) > 0
            && Quantiles.UpperMedian(points.Select(point => point.Sharpness)) >= LeastSharpness
            && fit.ScatterMm <= MostScatterMm + (MostScatterShare * fit.Circle.RadiusMm);
    }
}
