using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Drawn;

namespace Alburnum.Imaging.Tests.Zones;

/// <summary>Sections on which nothing is treated, drawn with heartwood as a disc about a pith.</summary>
public class SapwoodAloneTests
{
    private const double RadiusMm = 60;
    private const double PithX = 45;
    private const double PithY = 75;
    private const int Heart = 0xC9583A;
    private const int Sap = 0xE08A5A;

    [Fact]
    public void Where_nothing_is_treated_the_sapwood_is_measured_along_each_face()
    {
        var ended = DrawnReading.Ended(DrawnReading.Of(Untreated(Sap)));

        Assert.Equal(false, Assert.IsType<NoFront>(ended.Fault).IsTreated);
        Assert.Equal("copper-blue", Assert.IsType<NoFront>(ended.Fault).Named!.Key);
        var sapwood = ended.Sapwood!;
        Assert.IsType<DetectedHeartwood>(sapwood.Heartwood);
        // The disc reaches 75 − 60 = 15 mm below the first face, and lies at the third along its whole chord.
        Assert.Equal(15, sapwood.Faces[0].LeastMm!.Value, 1.0);
        Assert.Equal(0, sapwood.Faces[0].HeartwoodShare);
        Assert.Equal(0.9, sapwood.Faces[2].HeartwoodShare, 0.15);
        // A half disc and what of it lies on 100 × 75 mm.
        Assert.Equal(DrawnShare(RadiusMm), sapwood.Share.Value, (3 * sapwood.Share.StandardUncertainty) + 0.01);
        Assert.InRange(sapwood.Share.StandardUncertainty, 0.001, 0.05);
    }

    [Fact]
    public void Without_a_second_colour_there_is_no_sapwood_to_measure() =>
        Assert.Null(DrawnReading.Ended(DrawnReading.Of(Untreated(Heart))).Sapwood);

    [Fact]
    public void A_border_that_the_user_shows_goes_before_what_is_seen()
    {
        var drawn = Untreated(Sap);
        var request = DrawnReading.Request(drawn) with
        {
            Heartwood = new HeartwoodAboutPith(drawn.Place(PithX, PithY), 50),
        };

        var sapwood = DrawnReading.Ended(DrawnReading.Of(drawn, request)).Sapwood!;

        Assert.IsType<ShownHeartwood>(sapwood.Heartwood);
        Assert.Equal(25, sapwood.Faces[0].LeastMm!.Value, 0.5);
        Assert.Equal(DrawnShare(50), sapwood.Share.Value, 0.01);
    }

    private static double DrawnShare(double radiusMm)
    {
        var (sapwood, all) = (0, 0);
        for (var y = 0.25; y < 75; y += 0.5)
        for (var x = 0.25; x < 100; x += 0.5)
        {
            all++;
            sapwood += double.Hypot(x - PithX, y - PithY) < radiusMm ? 0 : 1;
        }
        return sapwood / (double)all;
    }

    private static PlainSection Untreated(int sapwood)
    {
        int? Wood(double x, double y)
        {
            var r = double.Hypot(x - PithX, y - PithY);
            var ring = 0.85 + (0.15 * Math.Cos(2 * Math.PI * r / 3));
            var colour = r < RadiusMm ? Heart : sapwood;
            int Channel(int shift) => (int)(ring * ((colour >> shift) & 255));
            return (Channel(16) << 16) | (Channel(8) << 8) | Channel(0);
        }
        return new() { DepthMm = _ => 0, Over = Wood };
    }
}
