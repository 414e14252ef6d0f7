using Alburnum.DrawnSections;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;

namespace Alburnum.Imaging.Tests.Accuracy;

/// <summary>How one reading compares with the truth.</summary>
/// <param name="Name">The photograph.</param>
/// <param name="OutlineErrorMm">Greatest distance of an outline point from where it belongs; null where none was used.</param>
/// <param name="Depths">The depths compared; null where the reader determined none.</param>
/// <param name="Notes">What the reader had to say.</param>
internal sealed record PhotographScore(string Name, double? OutlineErrorMm, DepthScore? Depths, string Notes);

/// <summary>Errors of depth, mm, reading minus truth.</summary>
/// <param name="LocalMm">Mean absolute error over all positions that both deem readable.</param>
/// <param name="ReadShare">Share of the truly readable positions that the reader did read.</param>
/// <param name="MeanMm">Error of the mean depth.</param>
/// <param name="MinimumMm">Error of the minimum depth.</param>
/// <param name="TreatedSharePoints">Absolute error of the treated share, percentage points.</param>
/// <param name="MeanIsCovered">Whether the stated 95 % interval of the mean holds the truth.</param>
/// <param name="MinimumIsCovered">Whether the stated 95 % interval of the minimum holds the truth.</param>
internal sealed record DepthScore(
    double LocalMm,
    double MeanMm,
    double MinimumMm,
    double TreatedSharePoints,
    double ReadShare,
    bool MeanIsCovered,
    bool MinimumIsCovered
);

/// <summary>Reads a test photograph and compares.</summary>
internal static class Scoring
{
    /// <summary>Coverage factor of a 95 % interval of a normal quantity.</summary>
    private const double Coverage = 1.96;

    /// <summary>Reads with the true outline given, to a tenth of a pixel.</summary>
    public static PhotographScore WithOutlineGiven(TestPhotograph photograph, CancellationToken ct) =>
        Scored(
            photograph,
            [.. photograph.Truth.OutlinePx.Select(p => new PointPx(Math.Round(p.X, 1), Math.Round(p.Y, 1)))],
            ct
        );

    /// <summary>Reads with the true outline given and held: neither drawn to an edge nor taken to tell of the lens.</summary>
    public static PhotographScore WithOutlineHeld(TestPhotograph photograph, CancellationToken ct) =>
        Scored(photograph, [.. photograph.Truth.OutlinePx.Select(p => new PointPx(p.X, p.Y))], ct, isExact: true);

    /// <summary>Reads with an outline clicked by a hand that strays by about 3 pixels in each direction.</summary>
    public static PhotographScore WithOutlineClicked(TestPhotograph photograph, CancellationToken ct)
    {
        var hand = new Random(photograph.Scene.Seed + 5);
        double Astray() =>
            3 * (hand.NextDouble() + hand.NextDouble() + hand.NextDouble() + hand.NextDouble() - 2) * 1.732;
        return Scored(
            photograph,
            [.. photograph.Truth.OutlinePx.Select(p => new PointPx(p.X + Astray(), p.Y + Astray()))],
            ct
        );
    }

    /// <summary>Reads with nothing given but the section's size.</summary>
    public static PhotographScore ByItself(TestPhotograph photograph, CancellationToken ct) =>
        Scored(photograph, null, ct);

    private static PhotographScore Scored(
        TestPhotograph photograph,
        IReadOnlyList<PointPx>? outline,
        CancellationToken ct,
        bool isExact = false
    )
    {
        var truth = photograph.Truth;
        var reading = photograph.Read(photograph.Asked() with { OutlinePx = outline, OutlineIsExact = isExact }, ct);
        var findings = string.Join(" ", reading.Outcome.Quality.Findings);
        if (reading.Outcome is not Read read)
            return new(truth.Name, null, null, $"{(reading.Outcome as NotDetermined)?.Fault} {findings}");
        var found = read.Outline.PointsPx;
        var (error, shift) = truth.Shape == "round" ? RimError(photograph, found) : CornerError(photograph, found);
        return new(truth.Name, error, Compared(truth, read.Profile, shift), findings);
    }

    /// <summary>Greatest distance from a found corner to its true place, and which true corner the reader begins at.</summary>
    private static (double ErrorMm, double Shift) CornerError(TestPhotograph photograph, IReadOnlyList<PointPx> found)
    {
        var truth = photograph.Truth;
        var corners = truth.OutlinePx;
        return Enumerable
            .Range(0, 4)
            .Select(shift =>
                (
                    Error: Enumerable.Range(0, 4).Max(k => DistancePx(found[k], corners[(k + shift) % 4]))
                        / truth.PixelsPerMm,
                    Shift: (double)shift
                )
            )
            .MinBy(candidate => candidate.Error);
    }

    /// <summary>Greatest distance from a found rim point to the true rim, and how far along the true rim the reader begins, mm.</summary>
    private static (double ErrorMm, double ShiftMm) RimError(TestPhotograph photograph, IReadOnlyList<PointPx> found)
    {
        var truth = photograph.Truth;
        var face = photograph.Scene.Shape.Faces[0];
        const int Parts = 1440;
        var rim = Enumerable
            .Range(0, Parts)
            .Select(k => photograph.Scene.Lens.Project(face.At(face.LengthMm * k / Parts)))
            .ToList();
        var error = found.Max(p => rim.Min(r => DistancePx(p, r))) / truth.PixelsPerMm;
        var first = Enumerable.Range(0, Parts).MinBy(k => DistancePx(found[0], rim[k]));
        return (error, face.LengthMm * first / Parts);
    }

    private static DepthScore Compared(SectionTruth truth, DepthProfile profile, double shift)
    {
        double sum = 0;
        var compared = 0;
        var readable = 0;
        for (var k = 0; k < profile.Faces.Count; k++)
        {
            var read = profile.Faces[k];
            var isRound = truth.Shape == "round";
            var face = truth.Faces[isRound ? 0 : (k + (int)shift) % truth.Faces.Count];
            var length = face.PositionsMm.Count * face.StepMm;
            for (var i = 0; i < read.PositionsMm.Count; i++)
            {
                var along = isRound ? (read.PositionsMm[i] + shift) % length : read.PositionsMm[i];
                if (face.DepthAtMm(along) is not { } depth)
                    continue;
                readable++;
                if (read.Excluded[i])
                    continue;
                compared++;
                sum += Math.Abs(read.DepthMm[i] - depth);
            }
        }
        var truly = truth.Depth ?? throw new InvalidOperationException($"{truth.Name} has no true depth.");
        var statistics = profile.Statistics;
        return new(
            compared == 0 ? 0 : sum / compared,
            statistics.MeanMm.Value - truly.MeanMm,
            statistics.MinimumMm.Value - truly.MinMm,
            100 * Math.Abs(profile.TreatedShare.Value - truth.TreatedShare),
            readable == 0 ? 1 : (double)compared / readable,
            Holds(statistics.MeanMm, truly.MeanMm),
            Holds(statistics.MinimumMm, truly.MinMm)
        );
    }

    private static bool Holds(Estimate estimate, double truth) =>
        Math.Abs(estimate.Value - truth) <= Coverage * estimate.StandardUncertainty;

    private static double DistancePx(PointPx a, Point b) =>
        Math.Sqrt((a.X - b.X) * (a.X - b.X) + (a.Y - b.Y) * (a.Y - b.Y));
}
