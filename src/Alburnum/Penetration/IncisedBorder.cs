namespace Alburnum.Penetration;

/// <summary>A finger of preservative running in from one incision, deeper than the border beside it.</summary>
/// <param name="PositionMm">Where it is deepest, distance from the start of the face, mm.</param>
/// <param name="WidthMm">Its width along the face, mm.</param>
/// <param name="DepthMm">Its greatest depth, mm.</param>
public sealed record IncisionFinger(double PositionMm, double WidthMm, double DepthMm);

/// <summary>An incised face: the border that is continuous between the incisions, and the fingers that reach farther in.</summary>
/// <param name="EnvelopeMm">Depth of the continuous border at each position, mm; never deeper than what was read there.</param>
/// <param name="Fingers">The fingers, along the face.</param>
public sealed record IncisedFace(IReadOnlyList<double> EnvelopeMm, IReadOnlyList<IncisionFinger> Fingers);

/// <summary>Tells the continuous border of an incised section from the fingers at its incisions.</summary>
/// <remarks>
/// The border is the morphological opening of the depth profile along the face (the greatest profile below it that is made of
/// stretches at least <see cref="WidestFingerMm"/> long): J. Serra, Image Analysis and Mathematical Morphology (1982), chapter 2. What rises
/// above it is narrower than that, and is a finger. The least depth is the same with and without fingers.
/// </remarks>
public static class IncisedBorder
{
    /// <summary>A rise of the front narrower than this is a finger, mm: several times the width of an incising tooth.</summary>
    public const double WidestFingerMm = 8;

    private const double LeastRiseMm = 0.7;

    // Our own choice: drawn sections that are incised show 2.5 to 6 fingers on 100 mm of face, others, with an uneven front, up to 1.5.
    private const double FingersOnIncised = 2.2;

    private const double FingersOnPlain = 0.5;

    // Our own choice: a front far below the cuts has grown together again.
    private const double ShallowMm = 15;

    /// <summary>Reads one face.</summary>
    public static IncisedFace Of(FaceProfile face)
    {
        ArgumentNullException.ThrowIfNull(face);
        var half = Math.Max(1, (int)Math.Round(WidestFingerMm / face.StepMm / 2));
        var envelope = face.DepthMm.ToArray();
        foreach (var (from, to) in Stretches(face))
        {
            var least = Window(envelope, from, to, half, Math.Min);
            var opened = Window(least, 0, least.Length, half, Math.Max);
            for (var i = from; i < to; i++)
                envelope[i] = Math.Min(envelope[i], opened[i - from]);
        }
        return new(envelope, [.. Fingers(face, envelope)]);
    }

    /// <summary>Whether a front looks like that of an incised piece: true where it has many fingers, false where it is shallow and has next to none, null where it may be either.</summary>
    internal static bool? LooksIncised(DepthProfile profile)
    {
        var readMm = profile.Faces.Sum(face => face.StepMm * face.Excluded.Count(excluded => !excluded));
        if (readMm <= 0)
            return null;
        var onHundredMm = 100 * profile.Faces.Sum(face => Of(face).Fingers.Count) / readMm;
        return onHundredMm >= FingersOnIncised ? true
            : onHundredMm <= FingersOnPlain && profile.Statistics.MeanMm.Value < ShallowMm ? false
            : null;
    }

    // Unbroken stretches of positions that count.
    private static IEnumerable<(int From, int To)> Stretches(FaceProfile face)
    {
        var from = 0;
        for (var i = 0; i <= face.DepthMm.Count; i++)
        {
            if (i < face.DepthMm.Count && !face.Excluded[i])
                continue;
            if (i > from)
                yield return (from, i);
            from = i + 1;
        }
    }

    private static double[] Window(double[] values, int from, int to, int half, Func<double, double, double> pick)
    {
        var result = new double[to - from];
        for (var i = from; i < to; i++)
        {
            var best = values[i];
            for (var k = Math.Max(from, i - half); k <= Math.Min(to - 1, i + half); k++)
                best = pick(best, values[k]);
            result[i - from] = best;
        }
        return result;
    }

    private static IEnumerable<IncisionFinger> Fingers(FaceProfile face, double[] envelope)
    {
        var from = -1;
        for (var i = 0; i <= envelope.Length; i++)
        {
            var rises =
                i < envelope.Length
                && !face.Excluded[i]
                && face.DepthMm[i] - envelope[i] > Math.Max(LeastRiseMm, face.StandardUncertaintyMm[i]);
            if (rises && from < 0)
                from = i;
            if (rises || from < 0)
                continue;
            var deepest = Enumerable.Range(from, i - from).MaxBy(k => face.DepthMm[k]);
            yield return new(face.PositionsMm[deepest], (i - from) * face.StepMm, face.DepthMm[deepest]);
            from = -1;
        }
    }
}
