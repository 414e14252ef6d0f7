using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;

namespace Alburnum.Imaging.Zones;

/// <summary>Lays the heartwood over a depth profile: depth of the sapwood at each position, and the sapwood's treated share.</summary>
internal static class SapwoodReader
{
    /// <summary>Steps inward in which heartwood is looked for, mm. Our own choice.</summary>
    private const double StepMm = 0.2;

    /// <summary>Treated share is counted on so many cells along the longer side, and not known worse than the most. Our own choice.</summary>
    private const int Across = 180;

    private const double MostShareUncertainty = 0.5;

    /// <summary>The profile with its sapwood filled in.</summary>
    public static DepthProfile With(DepthProfile profile, SectionPlan plan, HeartwoodArea heartwood) =>
        Bordered(profile, plan, heartwood.Contains, heartwood.BorderMm) with
        {
            SapwoodTreatedShare = TreatedShare(profile, plan, heartwood),
        };

    /// <summary>The profile with the depth of its sapwood.</summary>
    public static DepthProfile Bordered(
        DepthProfile profile,
        SectionPlan plan,
        Func<PointMm, bool> isHeartwood,
        double borderMm
    ) =>
        profile with
        {
            Faces =
            [
                .. profile
                    .Faces.Zip(plan.Faces)
                    .Select(pair =>
                        pair.First with
                        {
                            SapwoodDepthMm =
                            [
                                .. pair.First.PositionsMm.Select(s =>
                                    (double?)(DepthMm(pair.Second, s, plan.ReachMm, isHeartwood) ?? plan.ReachMm)
                                ),
                            ],
                            SapwoodUncertaintyMm = borderMm,
                        }
                    ),
            ],
        };

    /// <summary>The sapwood of a section on which no treated wood is seen.</summary>
    /// <param name="plan">The section.</param>
    /// <param name="heartwood">Where its heartwood is.</param>
    /// <param name="stepMm">Distance between positions, mm.</param>
    public static SapwoodAlone Alone(SectionPlan plan, KnownHeartwood heartwood, double stepMm)
    {
        var area = heartwood.Area;
        var faces = plan.Faces.Select(face =>
        {
            var count = Math.Max(1, (int)Math.Round(face.LengthMm / stepMm));
            var step = face.LengthMm / count;
            return new FaceSapwood(
                face.Number,
                step,
                [
                    .. Enumerable
                        .Range(0, count)
                        .Select(i => DepthMm(face, (i + 0.5) * step, plan.ReachMm, area.Contains)),
                ]
            );
        });
        List<PointMm> places = [.. Places(plan)];
        double Share(Func<PointMm, bool> isHeartwood) =>
            places.Count(place => !isHeartwood(place)) / (double)places.Count;
        var share = Share(area.Contains);
        var border = area.Alternatives.Sum(other => Math.Pow(Share(other) - share, 2));
        return new([.. faces], new(share, Math.Sqrt(border)), heartwood.Reading);
    }

    // Null where no heartwood lies behind this place before the middle of the piece.
    private static double? DepthMm(PlanFace face, double s, double reachMm, Func<PointMm, bool> isHeartwood)
    {
        for (var t = StepMm / 2; t < reachMm; t += StepMm)
            if (isHeartwood(face.At(s, t)))
                return t < StepMm ? 0 : t;
        return null;
    }

    private static IEnumerable<PointMm> Places(SectionPlan plan)
    {
        var cell = Math.Max(plan.WidthMm, plan.HeightMm) / Across;
        for (var y = cell / 2; y < plan.HeightMm; y += cell)
        for (var x = cell / 2; x < plan.WidthMm; x += cell)
            if (new PointMm(x, y) is var place && plan.InwardMm(place) > 0)
                yield return place;
    }

    /// <summary>Treated share of the sapwood; null where there is none.</summary>
    private static Estimate? TreatedShare(DepthProfile profile, SectionPlan plan, HeartwoodArea heartwood)
    {
        List<(PointMm At, bool IsTreated)> places =
        [
            .. Places(plan).Select(place => (place, IsTreated(profile, plan, place))),
        ];
        if (Share(places, heartwood.Contains) is not { } share)
            return null;
        var sapwood = places.Count(p => !heartwood.Contains(p.At)) / (double)places.Count;
        var front = profile.TreatedShare.StandardUncertainty / sapwood;
        var border = heartwood.Alternatives.Sum(other =>
            Share(places, other) is { } moved ? (moved - share) * (moved - share) : 0
        );
        return new(share, Math.Min(MostShareUncertainty, Math.Sqrt((front * front) + border)));
    }

    /// <summary>Treated share of the places that are not heartwood; null where there are none.</summary>
    private static double? Share(List<(PointMm At, bool IsTreated)> places, Func<PointMm, bool> isHeartwood)
    {
        var (treated, all) = (0, 0);
        foreach (var (at, isTreated) in places)
        {
            if (isHeartwood(at))
                continue;
            all++;
            treated += isTreated ? 1 : 0;
        }
        return all > 0 ? (double)treated / all : null;
    }

    private static bool IsTreated(DepthProfile profile, SectionPlan plan, PointMm place)
    {
        foreach (var (face, read) in plan.Faces.Zip(profile.Faces))
        {
            var (s, t) = face.Locate(place);
            if (t < 0 || s < 0 || s > face.LengthMm)
                continue;
            if (t < read.DepthMm[Math.Min(read.DepthMm.Count - 1, (int)(s / read.StepMm))])
                return true;
        }
        return false;
    }
}
