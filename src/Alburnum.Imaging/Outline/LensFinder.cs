using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Outline;

/// <summary>A lens found, and the section's outline in the picture that it bends.</summary>
/// <param name="Lens">The lens.</param>
/// <param name="Bow">Its bow with standard uncertainty.</param>
/// <param name="Straight">The corners in the straight picture.</param>
/// <param name="UncertaintyPx">What the bow's uncertainty leaves of a side's bow, and the sides' own, px.</param>
internal sealed record FoundLens(RadialLens Lens, Estimate Bow, IReadOnlyList<PointPx> Straight, double UncertaintyPx);

/// <summary>Why no lens is seen.</summary>
internal enum NoLens
{
    /// <summary>Along one side at least no edge is seen.</summary>
    NoEdge,

    /// <summary>The points of one side at least scatter more than those of a sawn edge.</summary>
    RoughEdge,

    /// <summary>No lens bends so much.</summary>
    Unbelievable,

    /// <summary>The bow is no larger than its uncertainty explains.</summary>
    Insignificant,

    /// <summary>The four sides do not bow as one lens would bend them.</summary>
    SidesDisagree,
}

/// <summary>Finds the lens by the bow of the four sides of a sawn section, which are straight in the world.</summary>
/// <remarks>Its figures are our own choice, except for those that name a source.</remarks>
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

    /// <summary>A side whose points scatter more than this about its line is no sawn edge, or not seen as one, mm.</summary>
    private const double MostScatterMm = 0.12;

    /// <summary>Bows that a camera's lens can have: from a pincushion to a fish-eye.</summary>
    private static readonly (double Least, double Most) Believed = (-0.15, 0.4);

    /// <summary>Difference of the bow over which the change of a side is taken.</summary>
    private const double Apart = 1e-3;

    /// <summary>Steps of the least squares (Gauss–Newton).</summary>
    private const int Turns = 6;

    /// <summary>The lens, where the sides show one.</summary>
    /// <param name="photo">The photograph.</param>
    /// <param name="corners">The section's corners, clockwise.</param>
    /// <param name="pxPerMm">Scale of the section.</param>
    public static Outcome<FoundLens, NoLens> Find(Photograph photo, IReadOnlyList<PointPx> corners, double pxPerMm)
    {
        var sides = new List<BowedSide>();
        for (var k = 0; k < corners.Count; k++)
        {
            if (!BowedSide.Near(photo, corners[k], corners[(k + 1) % corners.Count]).Has(out var side, out _))
                return NoLens.NoEdge;
            sides.Add(side);
        }
        var bow = 0.0;
        Straightness[] now = [];
        for (var turn = 0; turn < Turns; turn++)
        {
            now = [.. sides.Select(side => Straightness.Of(side, At(bow), At(bow + Apart), Apart))];
            var (along, length) = (now.Sum(s => s.Along), now.Sum(s => s.Length));
            if (!(length > 0))
                return NoLens.NoEdge;
            bow -= along / length;
            if (!(bow > Believed.Least && bow < Believed.Most))
                return NoLens.Unbelievable;
        }
        if (now.Any(side => side.ScatterPx > MostScatterMm * pxPerMm))
            return NoLens.RoughEdge;
        var own = now.Select(s => s.BowVariance(SawnBowMm * pxPerMm, WanderMm * pxPerMm)).ToArray();
        var all = now.Sum(s => s.Length);
        // Each side errs by itself; they are weighed by how much the lens bends them.
        var u = Math.Sqrt(now.Zip(own, (s, v) => s.Length * s.Length * v).Sum()) / all;
        var apart = now.Zip(own, (s, v) => s.Along * s.Along / (s.Length * s.Length * v)).Sum();
        if (Math.Abs(bow) < Sure * u)
            return NoLens.Insignificant;
        if (apart > MostApart)
            return NoLens.SidesDisagree;
        var lens = At(bow);
        var lines = sides.Select(side => StraightLine.Through(side, lens)).ToArray();
        return new FoundLens(
            lens,
            new(bow, u),
            [.. lines.Select((line, k) => lines[(k + lines.Length - 1) % lines.Length].Meet(line))],
            double.Hypot(u * Math.Sqrt(now.Average(s => s.MeanSquare)), now.Average(s => s.PlaceUncertaintyPx))
        );

        RadialLens At(double b) => RadialLens.Of(photo.WidthPx, photo.HeightPx, b);
    }
}
