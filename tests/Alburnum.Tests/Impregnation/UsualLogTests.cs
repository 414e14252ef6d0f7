using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;
using Alburnum.Timber;

namespace Alburnum.Tests.Impregnation;

public class UsualLogTests
{
    private static readonly RectangularSection Post = new(100, 100);

    [Fact]
    public void A_boxed_post_comes_from_the_log_around_its_corners()
    {
        var log = UsualLog.Place(Post, SawingPosition.Boxed, 45, null);

        Assert.Equal(Math.Sqrt(5000), log.LogRadiusMm, 1e-9);
        Assert.Equal(Math.Sqrt(5000) - 45, log.HeartwoodRadiusMm, 1e-9);
    }

    [Theory]
    [InlineData(SawingPosition.Halved, 0, -50)]
    [InlineData(SawingPosition.Quartered, -50, -50)]
    public void The_pith_of_a_split_log_lies_on_the_piece_s_border(SawingPosition position, double x, double y)
    {
        var log = UsualLog.Place(Post, position, 30, null);

        Assert.Equal((x, y), (log.PithXMm, log.PithYMm));
    }

    [Fact]
    public void A_side_board_has_its_outer_corners_on_the_log()
    {
        var board = new RectangularSection(100, 25);
        var log = UsualLog.Place(board, SawingPosition.Side, 40, 300);

        Assert.Equal(150, log.FromPithMm(50, 12.5), 1e-9);
        Assert.False(log.IsHeartwood(0, -12.4));
    }

    [Fact]
    public void A_log_too_small_for_the_piece_is_refused_with_the_least_that_will_do()
    {
        var refused = Assert.Throws<LogFaultException>(() => UsualLog.Place(Post, SawingPosition.Boxed, 30, 120));

        Assert.Equal(142, Math.Ceiling(Assert.IsType<LogTooSmall>(refused.Fault).LeastMm));
    }

    [Fact]
    public void A_side_piece_needs_its_log_named() =>
        Assert.Equal(
            new SideWithoutDiameter(),
            Assert.Throws<LogFaultException>(() => UsualLog.Place(Post, SawingPosition.Side, 30, null)).Fault
        );

    [Fact]
    public void The_ways_in_from_both_faces_fill_a_half_round_piece()
    {
        var half = new HalfRoundSection(120);
        var log = UsualLog.Place(half, SawingPosition.Boxed, 200, null);
        // The strips under the two faces, each to the end of its ways, fill the section.
        var places = SectionPositions.Around(half, log, 200);
        var strips = places.Sum(place =>
            place.Face == 1 ? Math.PI / 400 * place.WayMm * (60 - place.WayMm / 2) : 120.0 / 400 * place.WayMm
        );
        Assert.Equal(half.AreaMm2, strips, 0.002 * half.AreaMm2);
    }
}
