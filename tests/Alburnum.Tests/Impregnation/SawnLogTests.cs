using Alburnum.Impregnation;
using Alburnum.Impregnation.Sawing;
using Alburnum.Timber;
using CsCheck;

namespace Alburnum.Tests.Impregnation;

public class SawnLogTests
{
    private static readonly RectangularSection Post = new(75, 75);

    [Fact]
    public void Four_posts_about_the_pith_are_alike_and_show_heartwood_on_their_inner_faces()
    {
        var pieces = SawnLog.Cut(CuttingPattern.Quartered, Post, 240, 60, 4);

        Assert.Equal(4, pieces.Count);
        Assert.All(pieces, piece => Assert.True(piece.IsLike(pieces[0])));
        Assert.Equal([3, 2], pieces[0].FacesWithHeartwood.OrderDescending());
        // The inner faces lie 2 mm from the pith; the heartwood's circle of 60 mm covers √(60² − 2²) − 2 mm of them.
        Assert.Equal((Math.Sqrt(3600 - 4) - 2) / 75, pieces[0].HeartwoodOnFace[2], 1e-9);
    }

    [Fact]
    public void A_boxed_heart_with_wide_sapwood_shows_none()
    {
        var piece = Assert.Single(SawnLog.Cut(CuttingPattern.Boxed, Post, 120, 40, 3));

        Assert.Empty(piece.FacesWithHeartwood);
        Assert.Equal(Math.PI * 400 / (75 * 75), piece.HeartwoodShare, 0.002);
    }

    [Fact]
    public void No_piece_leaves_the_log_and_no_two_overlap() =>
        Gen.Select(Gen.Double[100, 600], Gen.Double[0, 80], Gen.Double[0, 6], Gen.Bool)
            .Sample(
                (log, sapwood, kerf, boards) =>
                {
                    var pattern = boards ? CuttingPattern.Boards : CuttingPattern.Grid;
                    var pieces = SawnLog.Cut(pattern, new RectangularSection(50, 25), log, sapwood, kerf);
                    for (var i = 0; i < pieces.Count; i++)
                    {
                        var (w, h) = (pieces[i].Section.WidthMm / 2, pieces[i].Section.HeightMm / 2);
                        foreach (var (x, y) in new[] { (w, h), (-w, h), (w, -h), (-w, -h) })
                            Assert.True(pieces[i].Log.FromPithMm(x, y) <= log / 2 + 1e-6);
                        for (var j = 0; j < i; j++)
                        {
                            var (a, b) = (pieces[i], pieces[j]);
                            var apartX = Math.Abs(a.Log.PithXMm - b.Log.PithXMm) + 1e-6;
                            var apartY = Math.Abs(a.Log.PithYMm - b.Log.PithYMm) + 1e-6;
                            Assert.True(
                                apartX >= (a.Section.WidthMm + b.Section.WidthMm) / 2 + kerf
                                    || apartY >= (a.Section.HeightMm + b.Section.HeightMm) / 2 + kerf
                            );
                        }
                    }
                },
                iter: 100
            );

    [Fact]
    public void A_log_too_small_is_refused_with_the_least_that_will_do()
    {
        var refused = Assert.Throws<LogFaultException>(() => SawnLog.Cut(CuttingPattern.Quartered, Post, 150, 30, 0));

        Assert.Equal(213, Math.Ceiling(Assert.IsType<LogTooSmall>(refused.Fault).LeastMm));
    }
}
