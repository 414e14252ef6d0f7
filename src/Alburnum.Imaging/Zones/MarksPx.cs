using Alburnum.Imaging.Geometry;
using Alburnum.Penetration;

namespace Alburnum.Imaging.Zones;

/// <summary>Places of a profile that are worth marking in the photograph.</summary>
internal static class MarksPx
{
    /// <summary>Along the outline, the stretches that are left out.</summary>
    public static IReadOnlyList<IReadOnlyList<PointPx>> LeftOut(SectionPlan plan, DepthProfile profile, SectionMap map)
    {
        var lines = new List<IReadOnlyList<PointPx>>();
        foreach (var (face, read) in plan.Faces.Zip(profile.Faces))
        {
            var line = new List<PointPx>();
            for (var i = 0; i <= read.Excluded.Count; i++)
            {
                if (i < read.Excluded.Count && read.Excluded[i])
                {
                    // From the position's start to its end.
                    if (line.Count == 0)
                        line.Add(Px(face, read.PositionsMm[i] - (read.StepMm / 2), 0, map));
                    line.Add(Px(face, read.PositionsMm[i] + (read.StepMm / 2), 0, map));
                }
                else if (line.Count > 0)
                {
                    lines.Add(line);
                    line = [];
                }
            }
        }
        return lines;
    }

    /// <summary>From face to front at the least depth read.</summary>
    public static (PointPx Face, PointPx Front) Least(SectionPlan plan, DepthProfile profile, SectionMap map)
    {
        (PlanFace Face, double S, double T)? least = null;
        var isSeen = profile.Faces.Any(face => face.Excluded.Contains(false));
        foreach (var (face, read) in plan.Faces.Zip(profile.Faces))
        {
            for (var i = 0; i < read.DepthMm.Count; i++)
                if (read.KnownMm(i) is { } mm && read.Excluded[i] != isSeen && (least is not { } best || mm < best.T))
                    least = (face, read.PositionsMm[i], mm);
        }
        var at = least ?? throw new InvalidOperationException("A profile with every position left out was not read.");
        return (Px(at.Face, at.S, 0, map), Px(at.Face, at.S, at.T, map));
    }

    private static PointPx Px(PlanFace face, double s, double t, SectionMap map)
    {
        var place = face.At(s, t);
        return map.ToPx(place);
    }
}
