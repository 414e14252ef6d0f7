using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Reading;

namespace Alburnum.Imaging.Outline;

/// <summary>Finds the section in the photograph by itself: roughly by its colours, then by the likeliest of the edges there.</summary>
internal static class OutlineFinder
{
    /// <summary>Longer side of the picture that is searched, px. Our own choice.</summary>
    private const int SearchedPx = 320;

    /// <summary>Outlines nearer than this are one, as a share of their size. Our own choice.</summary>
    private const double SameShare = 0.008;

    /// <summary>An outline surer than this is taken without a second look. A probability; our own choice.</summary>
    private const double Sure = 0.95;

    /// <summary>An outline less sure than this is not measured: the user is asked to point it out. A probability; our own choice.</summary>
    public const double SureEnough = 0.6;

    /// <summary>How far from an ellipse the rim that lies about it is looked for, as a share of the mean half axis. Our own choice.</summary>
    private const double TraceShare = 0.03;

    /// <summary>The confidence of an outline that is shown to be asked about at most. Our own choice.</summary>
    private const double Unsure = 0.5;

    /// <summary>The part of a rim where its edge shows least shows more than this where it is plain. Our own choice.</summary>
    private const double Plain = 0.85;

    /// <summary>A rim that waves less than this, as a share of its mean half axis, may as well be an ellipse badly traced. Our own choice.</summary>
    private const double Waved = 0.0065;

    /// <summary>Rims nearer to each other than this everywhere are one, as a share of the mean half axis. Our own choice.</summary>
    private const double SameRim = 0.01;

    /// <summary>How far colours are taken to be alike at the first look and at the second, as a distance of the palette's features. Our own choice.</summary>
    private static readonly float[] Looks = [0.3f, 0.15f];

    /// <summary>Finds a sawn section of known size.</summary>
    public static Outcome<FoundOutline, OutlineNotFound> Sides(Photograph photo, double widthMm, double heightMm) =>
        Surest(SideLooks(photo, widthMm, heightMm), OutlineWeights.Sides)
            .Then<FoundOutline>(found =>
                OutlineSnap.Sides(photo, found.Points, SameShare * Shortest(found.Points)) with
                {
                    Confidence = found.Confidence,
                }
            );

    /// <summary>Finds a round section: the likeliest ellipse, and a rim that is none only where that one is not found or does not hold.</summary>
    public static Outcome<FoundOutline, OutlineNotFound> Rim(Photograph photo)
    {
        var isFound = Surest(RimLooks(photo), OutlineWeights.Rim).Has(out var ellipse, out var notFound);
        var isSure = isFound && ellipse!.Confidence >= SureEnough && Holds(photo, ellipse);
        if (isSure && ellipse!.LeastSupport > Plain)
            return ellipse;
        var free = Free(photo);
        if (isSure && !(free is { MayIncludeBark: false } && IsPlain(free)))
            return ellipse!;
        return (free, isFound) switch
        {
            ({ } waved, _) => waved,
            (null, true) => ellipse! with { Confidence = Math.Min(ellipse.Confidence, Unsure) },
            _ => notFound!,
        };
    }

    // However likely an ellipse is among ellipses, the edge about the right one hardly waves.
    private static bool Holds(Photograph photo, FoundOutline ellipse) =>
        !RimTrace.Near(photo, ellipse.Rim!, TraceShare * ellipse.Rim!.MeanRadius).Has(out var traced, out _)
        || traced.Rim!.IsNearlyEllipse;

    // A rim whose edge shows nearly all along it.
    private static bool IsPlain(FoundOutline rim) => rim.Confidence > Sure && rim.LeastSupport > Plain;

    // A rim about no ellipse, where its edge bears it out; rather one whose colours do as well, and of two the one whose edge shows farther.
    // Where two looks find two such rims, or to one of them the colours within change along the rim, or it waves little and its edge is not plain, nobody
    // can say which it is.
    private static FoundOutline? Free(Photograph photo)
    {
        List<(RoughPose Rough, Surroundings Surroundings)> looks = [.. Roughly(photo, 1, isRound: true)];
        List<FoundOutline> found = [.. looks.Select(look => Free(photo, look)).OfType<FoundOutline>()];
        if (found.Count == 0)
            return null;
        var best = found.MinBy(rim => (rim.MayIncludeBark, -rim.LeastSupport))!;
        var isClear =
            (best.Rim!.WaveShare > Waved || IsPlain(best))
            && looks.All(look => RimSearch.IsAlikeWithin(look.Surroundings, best.Rim))
            && found.All(other =>
                other.Points.All(p => Math.Abs(best.Rim.DistanceTo(p)) < SameRim * best.Rim.MeanRadius)
            );
        return isClear ? best : best with { Confidence = Math.Min(best.Confidence, Unsure) };
    }

    private static FoundOutline? Free(Photograph photo, (RoughPose Rough, Surroundings Surroundings) look) =>
        !RimSearch.About(photo, look.Rough.Ellipse, look.Surroundings).Has(out var found, out _)
        || !RimTrace.IsBorneOut(found)
            ? null
        : RimSearch.IsAlike(look.Surroundings, found.Rim!) ? found
        : found with { MayIncludeBark = true, Confidence = Unsure };

    /// <summary>The outlines that are weighed for a sawn section, look by look.</summary>
    public static IEnumerable<IReadOnlyList<OutlineCandidate>> SideLooks(
        Photograph photo,
        double widthMm,
        double heightMm
    ) =>
        LooksAt(
            photo,
            heightMm / widthMm,
            isRound: false,
            (rough, surroundings) => OutlineCandidates.Sides(photo, rough, surroundings, widthMm, heightMm)
        );

    /// <summary>The outlines that are weighed for a round section, look by look.</summary>
    public static IEnumerable<IReadOnlyList<OutlineCandidate>> RimLooks(Photograph photo) =>
        LooksAt(photo, 1, isRound: true, (rough, surroundings) => OutlineCandidates.Rims(photo, rough, surroundings));

    private static IEnumerable<IReadOnlyList<OutlineCandidate>> LooksAt(
        Photograph photo,
        double heightPerWidth,
        bool isRound,
        Func<RoughPose, Surroundings, IEnumerable<OutlineCandidate>> candidates
    )
    {
        foreach (var (rough, surroundings) in Roughly(photo, heightPerWidth, isRound))
            yield return [.. candidates(rough, surroundings)];
    }

    /// <summary>Where the section lies roughly, look by look.</summary>
    public static IEnumerable<(RoughPose Rough, Surroundings Surroundings)> Roughly(
        Photograph photo,
        double heightPerWidth,
        bool isRound
    )
    {
        var picture = SmallPicture.Of(photo, SearchedPx);
        var palette = Palette.Of(picture);
        foreach (var reach in Looks)
        {
            var likeness = palette.Likeness(reach);
            if (RoughSearch.In(palette, likeness, heightPerWidth, isRound) is not var (rough, separation))
                continue;
            var surroundings = new Surroundings(palette, likeness, separation, rough, picture.UprightPerPx);
            yield return (rough.Scaled(picture.UprightPerPx), surroundings);
        }
    }

    /// <summary>The likeliest of all candidates, at the first look that is sure, or at the surer of both.</summary>
    /// <param name="looks">What is weighed, look by look.</param>
    /// <param name="weights">How it is weighed.</param>
    public static Outcome<FoundOutline, OutlineNotFound> Surest(
        IEnumerable<IReadOnlyList<OutlineCandidate>> looks,
        OutlineWeights weights
    )
    {
        FoundOutline? surest = null;
        foreach (var candidates in looks)
        {
            if (candidates.Count == 0)
                continue;
            var found = Likeliest(candidates, weights);
            if (!(found.Confidence <= surest?.Confidence))
                surest = found;
            if (found.Confidence > Sure)
                break;
        }
        return surest is not null ? surest : new OutlineNotFound();
    }

    // How likely it is among all, those that hardly differ from it taken together.
    private static FoundOutline Likeliest(IReadOnlyList<OutlineCandidate> candidates, OutlineWeights weights)
    {
        var scores = candidates.Select(c => weights.Score(c.Look)).ToList();
        var most = scores.Max();
        var best = candidates[scores.IndexOf(most)].Outline;
        var samePx = SameShare * best.Points.Max(p => best.Points.Max(q => p.DistanceTo(q)));
        double same = 0;
        var other = Math.Exp(weights.None - most);
        for (var i = 0; i < scores.Count; i++)
        {
            var share = Math.Exp(scores[i] - most);
            if (candidates[i].Outline.Points.Zip(best.Points, (p, q) => p.DistanceTo(q)).Max() < samePx)
                same += share;
            else
                other += share;
        }
        return best with { Confidence = same / (same + other) };
    }

    private static double Shortest(IReadOnlyList<PointPx> p) =>
        Enumerable.Range(0, p.Count).Min(k => p[k].DistanceTo(p[(k + 1) % p.Count]));
}
