namespace Alburnum.Impregnation;

/// <summary>Where the pith lies and how wide the sapwood is, seen from a piece's own section. Millimetres; the origin is the section's middle.</summary>
/// <param name="PithXMm">Pith to the right of the section's middle, mm; may lie outside the piece.</param>
/// <param name="PithYMm">Pith above the section's middle, mm; may lie outside the piece.</param>
/// <param name="HeartwoodRadiusMm">Radius of the heartwood around the pith, mm; 0 where the piece is all sapwood.</param>
/// <param name="LogRadiusMm">Radius of the log under bark, mm. Wood beyond it is wane: none.</param>
public sealed record LogGeometry(double PithXMm, double PithYMm, double HeartwoodRadiusMm, double LogRadiusMm)
{
    /// <summary>No difference between sapwood and heartwood: treated as sapwood throughout.</summary>
    public static LogGeometry AllSapwood { get; } = new(0, 0, 0, 1e6);

    /// <summary>Heartwood throughout, the rings taken as flat.</summary>
    public static LogGeometry AllHeartwood { get; } = new(0, -1e6, 2e6, 4e6);

    /// <summary>Distance from the pith, mm.</summary>
    public double FromPithMm(double xMm, double yMm) => Math.Sqrt(Squared(xMm - PithXMm) + Squared(yMm - PithYMm));

    /// <summary>True where the point lies in heartwood.</summary>
    public bool IsHeartwood(double xMm, double yMm) => FromPithMm(xMm, yMm) < HeartwoodRadiusMm;

    /// <summary>Share of radial direction in the x direction at a point, 0 (tangential) to 1 (radial).</summary>
    public double RadialShareAlongX(double xMm, double yMm) => RadialShare(xMm, yMm, (1, 0));

    /// <summary>Share of radial direction in a direction at a point, 0 (tangential) to 1 (radial); a half at the pith.</summary>
    /// <param name="xMm">The point, mm to the right of the middle of the section.</param>
    /// <param name="yMm">The point, mm above it.</param>
    /// <param name="along">The direction, of length 1.</param>
    public double RadialShare(double xMm, double yMm, (double X, double Y) along)
    {
        var (px, py) = (xMm - PithXMm, yMm - PithYMm);
        var r2 = px * px + py * py;
        return r2 > 0 ? Squared(px * along.X + py * along.Y) / r2 : 0.5;
    }

    private static double Squared(double v) => v * v;
}
