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

    /// <summary>A skin is deeper than this on the whole and no deeper than that, mm, and even to within this on nine tenths of the perimeter, mm.</summary>
    private const double LeastSkinMm = 0.3;

    private const double SkinMm = 3;

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
        if (IsBareAllRound(profile))
            return profile.Faces.All(face => IsHeartwood(Read(face)))
                ? [.. profile.Faces.Select(face => new BareHeartwoodFace(face.Number))]
                : [new BareAllRound()];
        if (IsSkin(profile))
            return [new ThinSkin(profile.Statistics.MeanMm.Value)];
        return [.. OfSawnFaces(profile) ?? profile.Faces.SelectMany(Patches), .. OfHeartwood(profile)];
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

    private static bool IsBareAllRound(DepthProfile profile)
    {
        var all = profile.Faces.SelectMany(Read).ToList();
        return all.Count >= LeastPositions && all.Average(at => at.DepthMm) <= LeastSkinMm && IsBare(all);
    }

    private static bool IsSkin(DepthProfile profile)
    {
        var depths = profile.Faces.SelectMany(Read).Select(at => at.DepthMm).ToList();
        var mean = profile.Statistics.MeanMm.Value;
        return depths.Count >= LeastPositions
            && mean is > LeastSkinMm and <= SkinMm
            && depths.Count(depth => Math.Abs(depth - mean) <= EvenMm) >= MostOfFace * depths.Count;
    }

    private static bool IsBare(List<At> at) => at.Count(each => each.DepthMm <= BareMm) >= MostOfFace * at.Count;

    private static bool IsHeartwood(List<At> at) => at.Count(each => each.SapwoodMm <= BareMm) > at.Count / 2;

    // Only four sawn faces have neighbours to be compared with; null for others.
    private static IEnumerable<DepthPattern>? OfSawnFaces(DepthProfile profile)
    {
        if (profile.Section is not RectangularSection || profile.Faces.Count != 4)
            return null;
        var faces = profile.Faces;
        double[] medians = [.. faces.Select(MedianMm)];
        List<At>[] inner = [.. faces.Select((face, k) => Inner(face, medians[(k + 3) % 4], medians[(k + 1) % 4]))];
        int[] judged = [.. Enumerable.Range(0, 4).Where(k => inner[k].Count >= LeastPositions)];
        int[] bare = [.. judged.Where(k => IsBare(inner[k]))];
        double[] Others(int k) => [.. Enumerable.Range(0, 4).Except(bare).Where(j => j != k).Select(j => medians[j])];
        bool StandsOut(int k) => Others(k) is { Length: > 0 } others && others.Min() >= DeepMm;

        int[] heartwood = [.. bare.Where(k => IsHeartwood(inner[k]))];
        int[] unexplained = [.. bare.Except(heartwood).Where(StandsOut)];
        return
        [
            .. heartwood.Where(StandsOut).Select(k => new BareHeartwoodFace(faces[k].Number)),
            .. unexplained switch
            {
                [] => [],
                [var k] => [Bare(profile, k, bare, Median(Others(k)))],
                [var k, var j] => [new TwoBareFaces(faces[k].Number, faces[j].Number, j - k == 2, Median(Others(k)))],
                _ => Enumerable
                    .Range(0, 4)
                    .Except(bare)
                    .Select(k => new OneTreatedFace(faces[k].Number, medians[k]) as DepthPattern),
            },
            .. judged
                .Except(bare)
                .Where(StandsOut)
                .Where(k => IsShallow(inner[k], Others(k).Min()))
                .Select(k => new ShallowFace(
                    faces[k].Number,
                    Median(inner[k].Select(at => at.DepthMm)),
                    Median(Others(k))
                )),
            .. Enumerable.Range(0, 4).Except(bare).SelectMany(k => Patches(faces[k])),
        ];
    }

    private static bool IsShallow(List<At> inner, double leastOfOthersMm)
    {
        var median = Median(inner.Select(at => at.DepthMm));
        return median <= leastOfOthersMm - Math.Max(ShortMm, ShortShare * leastOfOthersMm)
            && inner.Count(at => Math.Abs(at.DepthMm - median) <= EvenMm) >= MostOfFace * inner.Count;
    }

    private static DepthPattern Bare(DepthProfile profile, int k, int[] bare, double othersMm)
    {
        int before = (k + 3) % 4,
            after = (k + 1) % 4;
        bool?[] ends =
        [
            bare.Contains(before) ? null : EndsSquarely(profile.Faces[before], atItsStart: false),
            bare.Contains(after) ? null : EndsSquarely(profile.Faces[after], atItsStart: true),
        ];
        var number = profile.Faces[k].Number;
        return ends.Contains(true) && !ends.Contains(false)
            ? new CutThroughBorder(number, othersMm)
            : new BareFace(number, othersMm);
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
        // What is bare says nothing of how deep the border is elsewhere: half a face may be.
        var borderMm = Median(all.Select(at => at.DepthMm).Where(mm => mm > BareMm));
        var deepMm = Math.Max(DeepMm, MostOfDepth * borderMm);
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
                && (IsSteep(face, all, from, -1, deepMm), IsSteep(face, all, to, 1, deepMm)) switch
                {
                    (true, true) => true,
                    // It may run round the corner.
                    (true, false) => to == all.Count - 1,
                    (false, true) => from == 0,
                    _ => false,
                }
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
