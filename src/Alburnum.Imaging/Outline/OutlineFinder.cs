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

    /// <summary>Finds a round section.</summary>
    public static Outcome<FoundOutline, OutlineNotFound> Rim(Photograph photo) =>
        Surest(RimLooks(photo), OutlineWeights.Rim);

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
        var picture = SmallPicture.Of(photo, SearchedPx);
        var palette = Palette.Of(picture);
        foreach (var reach in Looks)
        {
            var likeness = palette.Likeness(reach);
            if (RoughSearch.In(palette, likeness, heightPerWidth, isRound) is not var (rough, separation))
                continue;
            var surroundings = new Surroundings(palette, likeness, separation, rough, picture.UprightPerPx);
            yield return [.. candidates(rough.Scaled(picture.UprightPerPx), surroundings)];
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
