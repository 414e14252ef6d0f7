using Alburnum.Facts;

namespace Alburnum.Impregnation.Incising;

/// <summary>Slits cut along the grain by toothed rollers: one tooth's cut, and how the cuts are spaced on the face.</summary>
/// <remarks>A cut is a slit along the grain, full length at the face and narrowing to nothing at its full depth, as a wedge tooth leaves it.</remarks>
public sealed record IncisingPattern
{
    /// <summary>Checks every measure.</summary>
    /// <param name="depthMm">Depth of a cut, mm. 1 to 100.</param>
    /// <param name="lengthMm">Length along the grain at the face, mm. 1 to 100.</param>
    /// <param name="widthMm">Width across the grain at the face, mm. 0.1 to 10.</param>
    /// <param name="alongMm">From cut to cut along the grain in one row, mm; at least the length, at most 500.</param>
    /// <param name="acrossMm">From row to row across the grain, mm; at least the width, at most 200.</param>
    /// <param name="stagger">Shift of every second row along the grain as a share of the spacing, 0 to 0.5.</param>
    public IncisingPattern(
        double depthMm,
        double lengthMm,
        double widthMm,
        double alongMm,
        double acrossMm,
        double stagger = 0.5
    )
    {
        DepthMm = Require.Within(depthMm, Ranges.IncisionDepthMm);
        LengthMm = Require.Within(lengthMm, Ranges.IncisionLengthMm);
        WidthMm = Require.Within(widthMm, Ranges.IncisionWidthMm);
        AlongMm = Require.Within(alongMm, Ranges.IncisionsAlongMm with { Low = lengthMm });
        AcrossMm = Require.Within(acrossMm, Ranges.IncisionsAcrossMm with { Low = widthMm });
        Stagger = Require.Within(stagger, Ranges.IncisionStagger);
    }

    /// <summary>Depth of a cut, mm.</summary>
    public double DepthMm { get; }

    /// <summary>Length along the grain at the face, mm.</summary>
    public double LengthMm { get; }

    /// <summary>Width across the grain at the face, mm.</summary>
    public double WidthMm { get; }

    /// <summary>From cut to cut along the grain in one row, mm.</summary>
    public double AlongMm { get; }

    /// <summary>From row to row across the grain, mm.</summary>
    public double AcrossMm { get; }

    /// <summary>Shift of every second row as a share of the spacing along the grain.</summary>
    public double Stagger { get; }

    /// <summary>Cuts per square metre of face.</summary>
    public double DensityPerM2 => 1e6 / (AlongMm * AcrossMm);

    /// <summary>Wood that the cuts take out of a square metre of face, cm³: ∫√(1 − s²)(1 − s) ds = π/4 − 1/3 of length × width × depth each.</summary>
    public double CutOutCm3PerM2 => DensityPerM2 * LengthMm * WidthMm * DepthMm * (Math.PI / 4 - 1.0 / 3) / 1000;

    /// <summary>Half the length of a cut at a depth, mm; 0 below it.</summary>
    /// <param name="belowMm">Below the face, mm. 0 or more.</param>
    public double HalfLengthMm(double belowMm) =>
        LengthMm / 2 * Math.Sqrt(Math.Max(0, 1 - belowMm * belowMm / (DepthMm * DepthMm)));

    /// <summary>Half the width of a cut at a depth, mm; 0 below it.</summary>
    /// <param name="belowMm">Below the face, mm. 0 or more.</param>
    public double HalfWidthMm(double belowMm) => WidthMm / 2 * Math.Max(0, 1 - belowMm / DepthMm);
}
