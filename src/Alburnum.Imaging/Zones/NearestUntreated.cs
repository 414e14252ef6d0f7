using Alburnum.Imaging.Geometry;
using Alburnum.Penetration;

namespace Alburnum.Imaging.Zones;

/// <summary>Distance from the face to the nearest untreated wood in any direction: the distance transform's reading of the same front.</summary>
internal static class NearestUntreated
{
    /// <summary>For each face, the distance at each position, mm; null for a position where no front is near enough to be known.</summary>
    public static IReadOnlyList<IReadOnlyList<double?>> Of(SectionPlan plan, DepthProfile profile)
    {
        var pieces = plan
            .Faces.Zip(profile.Faces)
            .SelectMany(pair => Front(pair.First, pair.Second, plan.ReachMm))
            .ToList();
        return
        [
            .. plan
                .Faces.Zip(profile.Faces)
                .Select(pair => pair.Second.PositionsMm.Select(s => Nearest(pair.First.At(s, 0), pieces)).ToList()),
        ];
    }

    // Pieces of the front between neighbouring positions; a position alone is a piece of no length.
    private static IEnumerable<(PointMm From, PointMm To)> Front(PlanFace face, FaceProfile read, double reachMm)
    {
        PointMm? last = null;
        for (var i = 0; i < read.DepthMm.Count; i++)
        {
            if (read.Excluded[i] || read.DepthMm[i] >= reachMm)
            {
                last = null;
                continue;
            }
            var here = face.At(read.PositionsMm[i], read.DepthMm[i]);
            yield return (last ?? here, here);
            last = here;
        }
    }

    private static double? Nearest(PointMm from, List<(PointMm From, PointMm To)> pieces)
    {
        var least = double.MaxValue;
        foreach (var (a, b) in pieces)
        {
            var (dx, dy) = (b.X - a.X, b.Y - a.Y);
            var length2 = (dx * dx) + (dy * dy);
            var k = length2 > 0 ? Math.Clamp((((from.X - a.X) * dx) + ((from.Y - a.Y) * dy)) / length2, 0, 1) : 0;
            least = Math.Min(least, double.Hypot(a.X + (k * dx) - from.X, a.Y + (k * dy) - from.Y));
        }
        return least < double.MaxValue ? least : null;
    }
}
