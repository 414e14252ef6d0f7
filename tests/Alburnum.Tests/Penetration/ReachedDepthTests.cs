using Alburnum.Penetration;
using Alburnum.Timber;

namespace Alburnum.Tests.Penetration;

public class ReachedDepthTests
{
    // Ten positions, depths 1 to 10 mm; heartwood lies open on the first four; the last is left out.
    private static readonly DepthProfile Profile = Of(
        new FaceProfile(
            1,
            10,
            [.. Enumerable.Range(0, 10).Select(i => (10.0 * i) + 5)],
            [1, 2, 3, 4, 5, 6, 7, 8, 9, 10],
            [.. Enumerable.Repeat(0.6, 10)],
            [false, false, false, false, false, false, false, false, false, true],
            [0, 0, 0, 0, 30, 30, 30, 30, 30, 30]
        )
    );

    [Fact]
    public void The_share_counts_the_positions_that_are_read()
    {
        var reached = ReachedDepth.Of(Profile, 6);

        // 6, 7, 8 and 9 of nine.
        Assert.Equal(4.0 / 9, reached.Share.Value, 1e-12);
        // 0.6 mm deeper lets none in, 0.6 mm shallower drops the one at 6 mm: half of one ninth.
        Assert.Equal(0.5 / 9, reached.Share.StandardUncertainty, 1e-12);
    }

    [Fact]
    public void The_exposed_heartwood_zone_is_filled_as_far_as_the_front_goes()
    {
        var reached = ReachedDepth.Of(Profile, 4);

        // 1, 2, 3 and 4 of 4 mm each.
        Assert.Equal(10.0 / 16, reached.OpenHeartwoodTreatedShare!.Value.Value, 1e-12);
        Assert.Equal(0.4, reached.Faces[0].OpenHeartwoodShare!.Value, 1e-12);
        Assert.Equal(0.25, reached.Faces[0].OpenHeartwoodReachedShare!.Value.Value, 1e-12);
    }

    [Fact]
    public void Where_the_sapwood_is_not_known_nothing_is_said_of_heartwood()
    {
        var face = Profile.Faces[0] with { SapwoodDepthMm = new double?[10] };
        var reached = ReachedDepth.Of(Profile with { Faces = [face] }, 4);

        Assert.Null(reached.OpenHeartwoodTreatedShare);
        Assert.Null(reached.Faces[0].OpenHeartwoodShare);
    }

    private static DepthProfile Of(FaceProfile face)
    {
        var any = new Estimate(5, 0.1);
        return new(new RectangularSection(100, 100), [face], new(any, any, any, any, any), new(0.3, 0.01), null);
    }
}
