namespace Alburnum.Imaging.Geometry;

/// <summary>A lens that draws points nearer to the photograph's middle, or farther from it, the more the farther out they lie.</summary>
/// <param name="Centre">The photograph's middle, upright pixels.</param>
/// <param name="HalfDiagonalPx">From there to a corner.</param>
/// <param name="Bow">
/// Share of its distance by which a point drawn in the corner belongs farther out, nearly: above 0 for a barrel, below for a pincushion. Over −0.2 and under 0.5.
/// </param>
/// <remarks>
/// The division model: with ρ the drawn distance from the middle in half diagonals, the straight picture has it at ρ ⁄ (1 − b·ρ²).
/// A. W. Fitzgibbon, Simultaneous linear estimation of multiple view geometry and lens distortion (CVPR 2001). From memory.
/// </remarks>
internal sealed record RadialLens(PointPx Centre, double HalfDiagonalPx, double Bow)
{
    /// <summary>A lens about the middle of a photograph.</summary>
    public static RadialLens Of(double widthPx, double heightPx, double bow) =>
        new(new(widthPx / 2, heightPx / 2), double.Hypot(widthPx, heightPx) / 2, bow);

    /// <summary>Where a drawn point lies in the straight picture.</summary>
    public PointPx Straight(PointPx drawn)
    {
        var (x, y) = (drawn.X - Centre.X, drawn.Y - Centre.Y);
        var share = ((x * x) + (y * y)) / (HalfDiagonalPx * HalfDiagonalPx);
        var factor = 1 / (1 - (Bow * share));
        return new(Centre.X + (factor * x), Centre.Y + (factor * y));
    }

    /// <summary>Where a point of the straight picture is drawn.</summary>
    public PointPx Drawn(PointPx straight)
    {
        var (x, y) = (straight.X - Centre.X, straight.Y - Centre.Y);
        var share = ((x * x) + (y * y)) / (HalfDiagonalPx * HalfDiagonalPx);
        var factor = 2 / (1 + Math.Sqrt(Math.Max(0, 1 + (4 * Bow * share))));
        return new(Centre.X + (factor * x), Centre.Y + (factor * y));
    }
}
