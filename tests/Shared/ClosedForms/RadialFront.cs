using MathNet.Numerics.RootFinding;

namespace Alburnum.Tests.Shared.ClosedForms;

/// <summary>A sharp liquid front closing in on the pith of a round piece under constant pressure.</summary>
/// <remarks>
/// t = (μφR²/4kΔp)·[u²(2·ln u − 1) + 1], u = r/R the share of the radius not yet reached; the classic shrinking core.
/// Derivation in docs/science/flow.md.
/// </remarks>
internal static class RadialFront
{
    /// <summary>Time until the whole section is filled, min.</summary>
    /// <param name="radiusMm">Radius of the piece, mm. Above 0 to 1000.</param>
    /// <param name="permeabilityM2">Radial permeability, m². Above 0, at most 1e-9.</param>
    /// <param name="pressureKPa">Pressure difference driving the flow, kPa. Above 0 to 5000.</param>
    /// <param name="viscosityMPaS">Dynamic viscosity, mPa·s. Above 0.</param>
    /// <param name="porosity">Fillable share of the volume. Above 0, at most 1.</param>
    public static double MinutesToFill(
        double radiusMm,
        double permeabilityM2,
        double pressureKPa,
        double viscosityMPaS,
        double porosity
    )
    {
        Require.InRange(radiusMm, 1e-3, 1000, "mm");
        Require.InRange(permeabilityM2, double.Epsilon, 1e-9, "m²");
        Require.InRange(pressureKPa, double.Epsilon, 5000, "kPa");
        Require.Positive(viscosityMPaS, "mPa·s");
        Require.InRange(porosity, double.Epsilon, 1, "(share)");
        var radius = radiusMm / 1000;
        return viscosityMPaS / 1000 * porosity * radius * radius / (4 * permeabilityM2 * pressureKPa * 1000) / 60;
    }

    /// <summary>Depth reached, mm, from the surface towards the pith; the radius once the section is full.</summary>
    /// <param name="minutes">Time under pressure, min. 0 or more.</param>
    /// <param name="minutesToFill">Time until the section is full, min, from <see cref="MinutesToFill"/>.</param>
    /// <param name="radiusMm">Radius of the piece, mm.</param>
    public static double DepthMm(double minutes, double minutesToFill, double radiusMm)
    {
        Require.InRange(minutes, 0, 1e9, "min");
        Require.Positive(minutesToFill, "min");
        Require.Positive(radiusMm, "mm");
        return radiusMm * (1 - UnreachedShare(minutes / minutesToFill));
    }

    /// <summary>Share of the section's area that liquid has reached, 0 to 1.</summary>
    /// <param name="depthMm">Depth from the surface, mm. 0 to the radius.</param>
    /// <param name="radiusMm">Radius of the piece, mm.</param>
    public static double TreatedShare(double depthMm, double radiusMm)
    {
        var u = 1 - Require.InRange(depthMm, 0, radiusMm, "mm") / Require.Positive(radiusMm, "mm");
        return 1 - u * u;
    }

    // u for a share of the filling time: the inverse of u²(2·ln u − 1) + 1, which falls from 1 to 0 as u goes from 0 to 1.
    private static double UnreachedShare(double timeShare)
    {
        if (timeShare >= 1)
            return 0;
        if (timeShare <= 0)
            return 1;
        return Brent.FindRoot(u => ShareOfFillingTime(u) - timeShare, 0, 1, 1e-12, 200);
    }

    private static double ShareOfFillingTime(double u) => u <= 0 ? 1 : u * u * (2 * Math.Log(u) - 1) + 1;
}
