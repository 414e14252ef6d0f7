using Alburnum.Facts;

namespace Alburnum.Penetration;

/// <summary>How much of the perimeter, and of heartwood that lies open, reaches a required depth.</summary>
/// <param name="RequiredMm">The depth, mm.</param>
/// <param name="Share">Share of the positions read that reach it, 0 to 1.</param>
/// <param name="OpenHeartwoodTreatedShare">
/// Treated share of the exposed-heartwood zone: the wood down to the required depth where heartwood lies open. Null where none is known to.
/// </param>
/// <param name="Faces">The same for each face.</param>
public sealed record ReachedDepth(
    double RequiredMm,
    Estimate Share,
    Estimate? OpenHeartwoodTreatedShare,
    IReadOnlyList<FaceReached> Faces
)
{
    /// <summary>Counts the positions of a profile; those left out do not count.</summary>
    /// <param name="profile">The profile.</param>
    /// <param name="requiredMm">Depth to reach, mm. 0.1 to 1000.</param>
    /// <remarks>The standard uncertainty of a share is half its change when every depth moves by its own standard uncertainty, down and up.</remarks>
    public static ReachedDepth Of(DepthProfile profile, double requiredMm)
    {
        Require.Within(requiredMm, Ranges.DepthMm);
        var faces = profile.Faces.Select(face => (Face: face, All: Read(face).ToList())).ToList();
        var all = faces.SelectMany(face => face.All).ToList();
        return new(
            requiredMm,
            Reached(all, requiredMm)!.Value,
            Filled([.. all.Where(IsOpen)], requiredMm),
            [
                .. faces.Select(face =>
                {
                    // Where heartwood lies open is known on positions that are left out, too.
                    var known = face.Face.SapwoodDepthMm.Where(mm => mm is not null).ToList();
                    return new FaceReached(
                        face.Face.Number,
                        Reached(face.All, requiredMm),
                        known.Count > 0 ? (double)known.Count(mm => mm <= 0) / known.Count : null,
                        Reached([.. face.All.Where(IsOpen)], requiredMm)
                    );
                }),
            ]
        );
    }

    private static bool IsOpen(Position position) => position.SapwoodMm <= 0;

    private static Estimate? Reached(List<Position> positions, double requiredMm) =>
        Moved(positions, (position, off) => position.DepthMm + off >= requiredMm ? 1 : 0);

    private static Estimate? Filled(List<Position> positions, double requiredMm) =>
        Moved(positions, (position, off) => Math.Clamp(position.DepthMm + off, 0, requiredMm) / requiredMm);

    private static Estimate? Moved(List<Position> positions, Func<Position, double, double> share) =>
        positions.Count == 0
            ? null
            : new Estimate(
                positions.Average(p => share(p, 0)),
                (positions.Average(p => share(p, p.UMm)) - positions.Average(p => share(p, -p.UMm))) / 2
            );

    private static IEnumerable<Position> Read(FaceProfile face) =>
        Enumerable
            .Range(0, face.DepthMm.Count)
            .Where(i => face.KnownMm(i) is not null)
            .Select(i => new Position(face.KnownMm(i)!.Value, face.StandardUncertaintyMm[i], face.SapwoodDepthMm[i]));

    private readonly record struct Position(double DepthMm, double UMm, double? SapwoodMm);
}

/// <summary>How much of one face reaches a required depth.</summary>
/// <param name="Number">Face number.</param>
/// <param name="Share">Share of its positions that reach the depth; null where none was read.</param>
/// <param name="OpenHeartwoodShare">Share of the face on which heartwood lies open; null where the border of the sapwood is not known.</param>
/// <param name="OpenHeartwoodReachedShare">Share of that heartwood's positions that reach the depth; null where none lies open.</param>
public sealed record FaceReached(
    int Number,
    Estimate? Share,
    double? OpenHeartwoodShare,
    Estimate? OpenHeartwoodReachedShare
)
{
    /// <summary>Standard uncertainty of <see cref="OpenHeartwoodShare"/>; null where the border is taken as stated.</summary>
    public double? OpenHeartwoodShareUncertainty { get; init; }
}
