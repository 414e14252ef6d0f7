using Alburnum.Imaging.Front;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;

namespace Alburnum.Imaging.Zones;

/// <summary>Stretches that the user wants left out.</summary>
internal static class LeftOut
{
    /// <summary>The fronts, nothing being read where a touched place lies between face and front or close to either.</summary>
    public static IReadOnlyList<FaceFront> Mark(
        IReadOnlyList<FaceFront> fronts,
        IReadOnlyList<(PointMm At, TouchKind Kind)> touches
    )
    {
        var places = touches.Where(touch => touch.Kind == TouchKind.LeaveOut).Select(touch => touch.At).ToList();
        return places.Count == 0 ? fronts : [.. fronts.Select(front => front with { Hidden = Hidden(front, places) })];
    }

    private static bool[] Hidden(FaceFront front, List<PointMm> places)
    {
        var hidden = (bool[])front.Hidden.Clone();
        foreach (var place in places)
        {
            var (s, t) = front.Strip.Face.Locate(place);
            for (var i = 0; i < hidden.Length; i++)
                if (
                    Math.Abs(front.Strip.S(i) - s) <= Touch.AboutMm
                    && t > -Touch.AboutMm
                    && t < front.DepthMm[i] + Touch.AboutMm
                )
                    hidden[i] = true;
        }
        return hidden;
    }
}
