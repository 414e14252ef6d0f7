using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Drawn;

namespace Alburnum.Imaging.Tests;

/// <summary>Places that the user touches decide over what the colours say.</summary>
public class TouchTests
{
    // A drip: treated colour below the front on the first face, 40 to 52 mm along, 9 to 16 mm deep.
    private static readonly PlainSection Dripped = new()
    {
        Over = (x, y) => x is > 40 and < 52 && y is > 9 and < 16 ? 0x2B3F8C : null,
    };

    [Fact]
    public void A_drip_touched_as_untreated_no_longer_counts()
    {
        var before = DrawnReading.Profile(DrawnReading.Of(Dripped)).Faces[0];
        var after = DrawnReading.Profile(
            Touched(Dripped, TouchKind.Untreated, (42, 11), (46, 11), (50, 11), (44, 14), (48, 14))
        );

        Assert.True(before.DepthMm[46] > 14, $"{before.DepthMm[46]}");
        Assert.Equal(9, after.Faces[0].DepthMm[46], 1.0);
    }

    [Fact]
    public void A_place_touched_as_treated_counts()
    {
        // A place that the spray missed.
        var missed = new PlainSection { Over = (x, y) => x is > 40 and < 50 && y is > 4 and < 9 ? 0xC9583A : null };
        var before = DrawnReading.Profile(DrawnReading.Of(missed)).Faces[0];
        var after = DrawnReading.Profile(
            Touched(missed, TouchKind.Treated, (42, 6), (45, 6), (48, 6), (42, 8), (45, 8), (48, 8))
        );

        Assert.True(before.Excluded[45] || before.DepthMm[45] < 6);
        Assert.True(after.Faces[0].Excluded[45] || after.Faces[0].DepthMm[45] > 7.5, $"{after.Faces[0].DepthMm[45]}");
        Assert.True(after.Statistics.MinimumMm.Value > 6.5);
    }

    [Fact]
    public void A_place_left_out_is_not_read_and_moves_no_statistic()
    {
        var profile = DrawnReading.Profile(Touched(Dripped, TouchKind.LeaveOut, (42, 12), (46, 12), (50, 12)));
        var face = profile.Faces[0];

        Assert.All(Enumerable.Range(41, 10), i => Assert.True(face.Excluded[i]));
        // A plain drawing's mixed colours leave out a place here and there; beside the touch most are still read.
        Assert.InRange(Enumerable.Range(20, 12).Count(i => face.Excluded[i]), 0, 5);
        Assert.InRange(Enumerable.Range(56, 12).Count(i => face.Excluded[i]), 0, 5);
        Assert.Equal(9, profile.Statistics.MaximumMm.Value, 0.5);
    }

    [Fact]
    public void Everything_left_out_is_not_determined()
    {
        var drawn = new PlainSection
        {
            WidthMm = 30,
            HeightMm = 30,
            DepthMm = _ => 5,
        };
        var everywhere = from x in Enumerable.Range(0, 16) from y in Enumerable.Range(0, 16) select (2.0 * x, 2.0 * y);
        var reading = Touched(drawn, TouchKind.LeaveOut, [.. everywhere]);

        Assert.IsType<NotDetermined>(reading.Outcome);
    }

    private static SectionReading Touched(PlainSection drawn, TouchKind kind, params (double X, double Y)[] places) =>
        DrawnReading.Of(
            drawn,
            DrawnReading.Request(drawn) with
            {
                Touches = [.. places.Select(p => new Touch(drawn.Place(p.X, p.Y), kind))],
            }
        );
}
