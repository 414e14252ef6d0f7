using Alburnum.Imaging.Geometry;
using Alburnum.Penetration;

namespace Alburnum.Imaging.Front;

/// <summary>The front as lines in the photograph.</summary>
internal static class FrontLines
{
    /// <summary>One line for each unbroken stretch that is not left out, upright pixels.</summary>
    public static IReadOnlyList<IReadOnlyList<PointPx>> Of(SectionPlan plan, DepthProfile profile, SectionMap map)
    {
        var lines = new List<IReadOnlyList<PointPx>>();
        foreach (var (face, read) in plan.Faces.Zip(profile.Faces))
        {
            var line = new List<PointPx>();
            for (var i = 0; i <= read.DepthMm.Count; i++)
            {
                if (i == read.DepthMm.Count || read.Excluded[i])
                {
                    if (line.Count > 1)
                        lines.Add(line);
                    line = [];
                    continue;
                }
                var place = face.At(read.PositionsMm[i], read.DepthMm[i]);
                line.Add(map.ToPx(place));
            }
        }
        return lines;
    }
}
