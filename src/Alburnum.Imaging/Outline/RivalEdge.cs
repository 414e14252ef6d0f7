using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Outline;

/// <summary>A second edge outside an outline and nearly as plain as its own: a front, or a ring, may have been taken for the wood's edge.</summary>
/// <remarks>Its figures are our own choice.</remarks>
internal static class RivalEdge
{
    /// <summary>Places along a side, and around a rim, where edges are looked for.</summary>
    private const int PerSide = 48;

    private const int PerRim = 180;

    /// <summary>A rival lies so far outside at least, and at most, as a share of the shortest side or of the rim's diameter.</summary>
    private const double LeastShare = 0.015;

    private const double MostShare = 0.12;

    /// <summary>It shows along this share of what the outline's own edge does.</summary>
    private const double NearlyAsPlain = 0.8;

    /// <summary>An edge is followed so many steps to either side.</summary>
    private const int Aside = 2;

    /// <summary>The sides outside which a rival runs.</summary>
    public static IReadOnlyList<int> OutsideSides(Photograph photo, IReadOnlyList<PointPx> corners)
    {
        var n = corners.Count;
        var shortest = Enumerable.Range(0, n).Min(k => corners[k].DistanceTo(corners[(k + 1) % n]));
        return
        [
            .. Enumerable
                .Range(0, n)
                .Where(k =>
                    IsOutside(photo, EdgeProfile.AlongSide(corners[k], corners[(k + 1) % n], PerSide), shortest)
                ),
        ];
    }

    /// <summary>Whether one runs outside a rim.</summary>
    public static bool IsOutsideRim(Photograph photo, RimCurve rim) =>
        IsOutside(photo, rim.Stations(PerRim), 2 * rim.MeanRadius);

    private static bool IsOutside(
        Photograph photo,
        IReadOnlyList<(PointPx At, double Nx, double Ny)> stations,
        double sizePx
    )
    {
        var profile = EdgeProfile.Across(photo, stations, MostShare * sizePx, EdgeProfile.FinestStepPx(photo));
        var (own, rival) = (0.0, 0.0);
        for (var k = Aside; k < profile.Steps - Aside; k++)
        {
            var offset = profile.OffsetPx(k);
            if (Math.Abs(offset) <= Aside * profile.StepPx)
                own = Math.Max(own, Shown(profile, k));
            else if (offset > LeastShare * sizePx)
                rival = Math.Max(rival, Shown(profile, k));
        }
        return rival > NearlyAsPlain * own;
    }

    // Share of the stations at which a plain edge lies at a step or just beside it.
    private static double Shown(EdgeProfile profile, int step)
    {
        double sum = 0;
        for (var i = 0; i < profile.Stations; i++)
        {
            float strongest = 0;
            for (var k = step - Aside; k <= step + Aside; k++)
                strongest = Math.Max(strongest, profile[i, k]);
            sum += Math.Min(1, strongest / EdgeProfile.Plain);
        }
        return sum / profile.Stations;
    }
}
