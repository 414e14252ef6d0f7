using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Drawn;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;
using Alburnum.Timber;

namespace Alburnum.Imaging.Tests.Zones;

/// <summary>Heartwood drawn as a disc about a pith below the section, its border a ring like any other.</summary>
public class HeartwoodByColourTests
{
    private const double RadiusMm = 75;
    private const double PithX = 45;
    private const double PithY = 110;
    private const double DepthMm = 9;

    private static readonly IReadOnlyList<HeartwoodReagent> Reagents = new FactLibrary(
        Repository.At("data")
    ).HeartwoodReagents;

    [Fact]
    public void A_darker_and_redder_disc_about_the_pith_is_heartwood()
    {
        var reading = DrawnReading.Of(Drawn(0xC9583A, 0xE08A5A));
        var heartwood = Detected(reading);

        Assert.Equal(HeartwoodSign.Colour, heartwood.Sign);
        Assert.Equal(RadiusMm, heartwood.RadiusMm, 4 * heartwood.BorderUncertaintyMm);
        // Straight below the section's first face at x = 45, sapwood is 110 − 75 = 35 mm deep.
        var face = DrawnReading.Profile(reading).Faces[0];
        Assert.Equal(PithY - RadiusMm, face.SapwoodDepthMm[(int)PithX]!.Value, 1.0);
        Assert.Equal(heartwood.BorderUncertaintyMm, face.SapwoodUncertaintyMm);
        Assert.InRange(DrawnReading.Profile(reading).SapwoodTreatedShare!.Value.StandardUncertainty, 0.001, 0.05);
    }

    [Fact]
    public void A_brighter_disc_is_not() => Assert.False(Unknown(DrawnReading.Of(Drawn(0xE08A5A, 0xC9583A))).IsMissed);

    [Fact]
    public void One_colour_is_not_and_nobody_misses_it() =>
        Assert.Equal(
            new UnknownHeartwood(HeartwoodFault.OneColour, IsMissed: false),
            Unknown(DrawnReading.Of(Drawn(0xC9583A, 0xC9583A)))
        );

    [Fact]
    public void Without_rings_a_disc_may_be_anything() =>
        Assert.Equal(
            HeartwoodFault.NoRings,
            Unknown(DrawnReading.Of(Drawn(0xC9583A, 0xE08A5A, ringsShow: false))).Fault
        );

    [Fact]
    public void White_oak_under_its_reagent_is_told_only_where_the_reagent_is_named()
    {
        var oak = Reagents.Single(reagent => reagent.Key == "white-oak");
        var drawn = Drawn(0x2E3A26, 0xC8A36A);
        var named = DrawnReading.Of(drawn, Request(drawn) with { HeartwoodReagent = oak });

        var heartwood = Detected(named);
        Assert.Equal(HeartwoodSign.Reagent, heartwood.Sign);
        Assert.Equal(RadiusMm, heartwood.RadiusMm, 4 * heartwood.BorderUncertaintyMm);
        Assert.False(Unknown(DrawnReading.Of(drawn, Request(drawn))).IsMissed);
    }

    [Fact]
    public void What_the_user_shows_goes_before_what_is_seen()
    {
        var drawn = Drawn(0xC9583A, 0xE08A5A);
        var reading = DrawnReading.Of(
            drawn,
            DrawnReading.Request(drawn) with
            {
                Heartwood = new HeartwoodAboutPith(drawn.Place(PithX, PithY), 85),
            }
        );

        Assert.IsType<ShownHeartwood>(DrawnReading.Read(reading).Heartwood);
        Assert.Equal(PithY - 85, DrawnReading.Profile(reading).Faces[0].SapwoodDepthMm[(int)PithX]!.Value, 0.5);
    }

    [Fact]
    public void An_uncertain_border_widens_what_is_said_of_exposed_heartwood()
    {
        var drawn = new PlainSection { DepthMm = _ => 5 };
        var reading = DrawnReading.Of(
            drawn,
            DrawnReading.Request(drawn) with
            {
                Heartwood = new HeartwoodAboutPith(drawn.Place(50, -20), 30),
                RequiredMm = 6,
            }
        );
        var face = DrawnReading.Read(reading).Reached!.Faces[0];

        // The half chord √(30² − 20²) = 22.4 mm grows by 30 ⁄ 22.4 mm a mm of radius and by 20 ⁄ 22.4 a mm that the pith moves in, on both ends: 2.2 % at 0.7 mm.
        Assert.InRange(face.OpenHeartwoodShareUncertainty!.Value, 0.01, 0.04);
    }

    private static DetectedHeartwood Detected(SectionReading reading) =>
        Assert.IsType<DetectedHeartwood>(DrawnReading.Read(reading).Heartwood);

    private static UnknownHeartwood Unknown(SectionReading reading) =>
        Assert.IsType<UnknownHeartwood>(DrawnReading.Read(reading).Heartwood);

    // The band that is treated keeps its colour: rings and heartwood lie under it.
    private static PlainSection Drawn(int heartwood, int sapwood, bool ringsShow = true)
    {
        int? Wood(double x, double y)
        {
            if (Math.Min(Math.Min(x, 100 - x), Math.Min(y, 75 - y)) < DepthMm)
                return null;
            var r = double.Hypot(x - PithX, y - PithY);
            var ring = ringsShow ? 0.85 + (0.15 * Math.Cos(2 * Math.PI * r / 3)) : 1;
            var colour = r < RadiusMm ? heartwood : sapwood;
            int Channel(int shift) => (int)(ring * ((colour >> shift) & 255));
            return (Channel(16) << 16) | (Channel(8) << 8) | Channel(0);
        }
        return new() { DepthMm = _ => DepthMm, Over = Wood };
    }

    private static ReadingRequest Request(PlainSection drawn) => DrawnReading.Request(drawn) with { Indicator = null };
}
