using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Outline;

/// <summary>A lens found, and the section's outline in the picture that it bends.</summary>
/// <param name="Lens">The lens.</param>
/// <param name="Bow">Its bow with standard uncertainty.</param>
/// <param name="Straight">The corners in the straight picture.</param>
/// <param name="UncertaintyPx">What the bow's uncertainty leaves of a side's bow, and the sides' own, px.</param>
internal sealed record FoundLens(RadialLens Lens, Estimate Bow, IReadOnlyList<PointPx> Straight, double UncertaintyPx);

/// <summary>Tells the lens from the bow of the four sides of a sawn section, which are straight in the world.</summary>
internal static class LensFinder
{
    /// <summary>Standard deviation of a sawn side's own bow, mm: wood is not straighter than this.</summary>
    private const double SawnBowMm = 0.1;

    /// <summary>Length over which a sawn side wanders one way, mm.</summary>
    private const double WanderMm = 20;

    /// <summary>A bow smaller than so many standard uncertainties is taken for none.</summary>
    private const double Sure = 3;

    /// <summary>Sum of squares by which four sides may differ from one lens: 1 % point of χ² with 3 degrees of freedom.</summary>
    private const double MostApart = 11.34;

    /// <summary>Weight of a side's points below which its edge is not seen.</summary>
    private const double LeastSeen = 0.65;

    /// <summary>A side whose points scatter more than this about its line is no sawn edge, or not seen as one, mm.</summary>
    private const double MostScatterMm = 0.12;

    private static readonly (double Least, double Most) Believed = (-0.15, 0.4);

    /// <summary>The lens; null where the sides do not tell of one.</summary>
    /// <param name="photo">The photograph.</param>
    /// <param name="corners">The section's corners, clockwise.</param>
    /// <param name="pxPerMm">Scale of the section.</param>
    public static FoundLens? Find(Photograph photo, IReadOnlyList<PointPx> corners, double pxPerMm)
    {
        var sides = Enumerable
            .Range(0, 4)
            .Select(k => BowedSide.Near(photo, corners[k], corners[(k + 1) % 4]))
            .ToArray();
        if (sides.Any(side => side.Weights.Average() < LeastSeen))
            return null;
        var bow = 0.0;
        Straightness[] now = [];
        const double Apart = 1e-3;
        for (var turn = 0; turn < 6; turn++)
        {
            now = [.. sides.Select(side => Straightness.Of(side, At(bow), At(bow + Apart), Apart))];
            var (along, length) = (now.Sum(s => s.Along), now.Sum(s => s.Length));
            if (!(length > 0))
                return null;
            bow -= along / length;
            if (!(bow > Believed.Least && bow < Believed.Most))
                return null;
        }
        if (now.Any(side => side.ScatterPx > MostScatterMm * pxPerMm))
            return null;
        var own = now.Select(s => s.BowVariance(SawnBowMm * pxPerMm, WanderMm * pxPerMm)).ToArray();
        var all = now.Sum(s => s.Length);
        // Each side errs by itself; they are weighed by how much the lens bends them.
        var u = Math.Sqrt(now.Zip(own, (s, v) => s.Length * s.Length * v).Sum()) / all;
        var apart = now.Zip(own, (s, v) => s.Along * s.Along / (s.Length * s.Length * v)).Sum();
        if (Math.Abs(bow) < Sure * u || apart > MostApart)
            return null;
        var lens = At(bow);
        var lines = sides.Select(side => StraightLine.Through(side, lens)).ToArray();
        return new(
            lens,
            new(bow, u),
            [.. Enumerable.Range(0, 4).Select(k => lines[(k + 3) % 4].Meet(lines[k]))],
            double.Hypot(u * Math.Sqrt(now.Average(s => s.MeanSquare)), now.Average(s => s.PlaceUncertaintyPx))
        );

        RadialLens At(double b) => RadialLens.Of(photo.WidthPx, photo.HeightPx, b);
    }
}
