using Alburnum.Measures;
using Alburnum.Timber;

namespace Alburnum.Penetration;

/// <summary>Recognises what a depth profile looks like. Every bound in it is our own choice, tried on drawn sections.</summary>
public static class DepthPatterns
{
    /// <summary>A depth of no more than this is next to nothing, mm.</summary>
    private const double BareMm = 1;

    /// <summary>Other faces at least so deep make a bare one conspicuous, mm.</summary>
    private const double DeepMm = 3;

    /// <summary>So much of a face must show it.</summary>
    private const double MostOfFace = 0.9;

    /// <summary>An edge is steep where depth falls from most of a border's depth to next to nothing within this length, mm.</summary>
    private const double SteepMm = 4;

    private const double MostOfDepth = 0.6;

    /// <summary>A border ends squarely where it keeps this share of its depth to within this length of the corner, mm.</summary>
    private const double NearEndMm = 12;

    private const double SquareShare = 0.8;

    /// <summary>A bare patch is so long at least, mm.</summary>
    private const double PatchMm = 5;

    /// <summary>A skin is no deeper on the whole, mm, and even to within this on nine tenths of the perimeter, mm.</summary>
    private const double SkinMm = 2;

    private const double EvenMm = 1;

    /// <summary>A face is shallow where it falls short of the least of the others by this share and this length, mm.</summary>
    private const double ShortShare = 0.35;

    private const double ShortMm = 2;

    /// <summary>Sapwood is treated, and a section all through, from these shares on.</summary>
    private const double FullShare = 0.95;

    /// <summary>Fewer positions than this, on a face or on the whole section, tell nothing.</summary>
    private const int LeastPositions = 5;

    /// <summary>What a profile looks like, the most telling first; empty where it looks like nothing in particular.</summary>
    public static IReadOnlyList<DepthPattern> Of(DepthProfile profile)
    {
        ArgumentNullException.ThrowIfNull(profile);
        if (profile.Faces.Sum(face => face.PositionsMm.Count) < LeastPositions)
            return [];
        if (profile.TreatedShare.Value >= FullShare)
            return [PastHeartwoodMm(profile) is { } mm ? new EndGrainOnly(mm) : new TreatedThroughout()];
        if (IsSkin(profile))
            return [new ThinSkin(profile.Statistics.MeanMm.Value)];
        return [.. OfFaces(profile), .. profile.Faces.SelectMany(Patches), .. OfHeartwood(profile)];
    }

    // How far past the border of the heartwood, where that was seen at enough positions and nearly all of them are treated well past it; otherwise null.
    private static double? PastHeartwoodMm(DepthProfile profile)
    {
        List<double> past =
        [
            .. profile
                .Faces.SelectMany(Read)
                .Where(at => at.SapwoodMm is not null)
                .Select(at => at.DepthMm - at.SapwoodMm!.Value),
        ];
        return past.Count >= LeastPositions && past.Count(mm => mm >= DeepMm) >= MostOfFace * past.Count
            ? Median(past)
            : null;
    }

    private static IEnumerable<DepthPattern> OfHeartwood(DepthProfile profile)
    {
        if (profile.SapwoodTreatedShare is { Value: >= FullShare and var sapwood })
            yield return new UntreatedHeartwood(sapwood);
    }

    private static bool IsSkin(DepthProfile profile)
    {
        var depths = profile.Faces.SelectMany(Read).Select(at => at.DepthMm).ToList();
        var mean = profile.Statistics.MeanMm.Value;
        return depths.Count >= LeastPositions
            && mean is > 0.3 and <= SkinMm
            && depths.Count(depth => Math.Abs(depth - mean) <= EvenMm) >= MostOfFace * depths.Count;
    }

    // Only four sawn faces have neighbours to be compared with.
    private static IEnumerable<DepthPattern> OfFaces(DepthProfile profile)
    {
        if (profile.Section is not RectangularSection || profile.Faces.Count != 4)
            yield break;
        double[] medians = [.. profile.Faces.Select(MedianMm)];
        for (var k = 0; k < 4; k++)
        {
            var others = medians.Where((_, j) => j != k).ToArray();
            var face = profile.Faces[k];
            var inner = Inner(face, medians[(k + 3) % 4], medians[(k + 1) % 4]);
            if (inner.Count < LeastPositions || others.Min() < DeepMm)
                continue;
            var innerMedian = Median(inner.Select(at => at.DepthMm));
            if (inner.Count(at => at.DepthMm <= BareMm) >= MostOfFace * inner.Count)
                yield return Bare(profile, k, inner, Median(others));
            else if (
                innerMedian <= others.Min() - Math.Max(ShortMm, ShortShare * others.Min())
                && inner.Count(at => Math.Abs(at.DepthMm - innerMedian) <= EvenMm) >= MostOfFace * inner.Count
            )
                yield return new ShallowFace(face.Number, innerMedian, Median(others));
        }
    }

    private static DepthPattern Bare(DepthProfile profile, int k, List<At> inner, double othersMm)
    {
        var face = profile.Faces[k];
        if (inner.Count(at => at.SapwoodMm <= BareMm) > inner.Count / 2)
            return new BareHeartwoodFace(face.Number);
        bool?[] ends =
        [
            EndsSquarely(profile.Faces[(k + 3) % 4], atItsStart: false),
            EndsSquarely(profile.Faces[(k + 1) % 4], atItsStart: true),
        ];
        return ends.Contains(true) && !ends.Contains(false)
            ? new CutThroughBorder(face.Number, othersMm)
            : new BareFace(face.Number, othersMm);
    }

    // Whether the border of a face keeps its depth up to its end; null where nothing was read there.
    private static bool? EndsSquarely(FaceProfile face, bool atItsStart)
    {
        var near = Read(face)
            .Where(at => (atItsStart ? at.PositionMm : face.LengthMm - at.PositionMm) <= NearEndMm)
            .ToList();
        return near.Count == 0 ? null : near.TrueForAll(at => at.DepthMm >= SquareShare * MedianMm(face));
    }

    private static IEnumerable<DepthPattern> Patches(FaceProfile face)
    {
        var all = Read(face);
        var deepMm = Math.Max(DeepMm, MostOfDepth * MedianMm(face));
        for (var from = 0; from < all.Count; from++)
        {
            if (all[from].DepthMm > BareMm)
                continue;
            var to = from;
            while (to + 1 < all.Count && all[to + 1].DepthMm <= BareMm)
                to++;
            var patch = all[from..(to + 1)];
            if (
                !patch.Exists(at => at.SapwoodMm <= BareMm)
                && all[to].PositionMm - all[from].PositionMm >= PatchMm
                && IsSteep(face, all, from, -1, deepMm)
                && IsSteep(face, all, to, 1, deepMm)
                && MedianMm(face) >= DeepMm
            )
                yield return new BarePatch(
                    face.Number,
                    all[from].PositionMm,
                    all[to].PositionMm,
                    MayBeHeartwood: patch.Exists(at => at.SapwoodMm is null)
                );
            from = to;
        }
    }

    // Whether depth is great again within a short way from the last bare position; where readings by hand lie further apart than that, the next one tells.
    private static bool IsSteep(FaceProfile face, List<At> all, int bare, int way, double deepMm)
    {
        var next = bare + way;
        for (var i = next; i >= 0 && i < all.Count; i += way)
        {
            if (Math.Abs(all[i].PositionMm - all[bare].PositionMm) > SteepMm && (i != next || face.StepMm <= SteepMm))
                return false;
            if (all[i].DepthMm >= deepMm)
                return true;
        }
        return false;
    }

    // Without what the borders of the neighbours cover from the side.
    private static List<At> Inner(FaceProfile face, double beforeMm, double afterMm)
    {
        return
        [
            .. Read(face)
                .Where(at =>
                    at.PositionMm > beforeMm + SteepMm / 2 && at.PositionMm < face.LengthMm - afterMm - SteepMm / 2
                ),
        ];
    }

    private static List<At> Read(FaceProfile face) =>
        [
            .. Enumerable
                .Range(0, face.DepthMm.Count)
                .Where(i => !face.Excluded[i])
                .Select(i => new At(face.PositionsMm[i], face.DepthMm[i], face.SapwoodDepthMm[i])),
        ];

    private static double MedianMm(FaceProfile face) => Median(Read(face).Select(at => at.DepthMm));

    private static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted.Length == 0 ? 0 : Quantiles.Of(sorted, 0.5);
    }

    private readonly record struct At(double PositionMm, double DepthMm, double? SapwoodMm);
}
