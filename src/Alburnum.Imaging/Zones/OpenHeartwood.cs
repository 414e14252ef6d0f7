using Alburnum.Imaging.Geometry;
using Alburnum.Penetration;

namespace Alburnum.Imaging.Zones;

/// <summary>How much reaches a depth, the uncertainty of where heartwood lies open carried into what depends on it.</summary>
internal static class OpenHeartwood
{
    /// <summary>As <see cref="ReachedDepth.Of"/>; each alternative border adds its change in quadrature.</summary>
    public static ReachedDepth Reached(DepthProfile profile, SectionPlan plan, HeartwoodArea heartwood, double mm)
    {
        var reached = ReachedDepth.Of(profile, mm);
        var moved = heartwood
            .Alternatives.Select(other => ReachedDepth.Of(SapwoodReader.Bordered(profile, plan, other, 0), mm))
            .ToList();
        return reached with
        {
            OpenHeartwoodTreatedShare = Widened(
                reached.OpenHeartwoodTreatedShare,
                moved.Select(other => other.OpenHeartwoodTreatedShare)
            ),
            Faces =
            [
                .. reached.Faces.Select(
                    (face, k) =>
                        face with
                        {
                            OpenHeartwoodShareUncertainty = face.OpenHeartwoodShare is { } share
                                ? Math.Sqrt(
                                    moved.Sum(other => Square((other.Faces[k].OpenHeartwoodShare ?? share) - share))
                                )
                                : null,
                            OpenHeartwoodReachedShare = Widened(
                                face.OpenHeartwoodReachedShare,
                                moved.Select(other => other.Faces[k].OpenHeartwoodReachedShare)
                            ),
                        }
                ),
            ],
        };
    }

    private static Estimate? Widened(Estimate? estimate, IEnumerable<Estimate?> moved) =>
        estimate is not { } known
            ? null
            : new(
                known.Value,
                Math.Sqrt(
                    Square(known.StandardUncertainty)
                        + moved.Sum(other => other is { } m ? Square(m.Value - known.Value) : 0)
                )
            );

    private static double Square(double x) => x * x;
}
