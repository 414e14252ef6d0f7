using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Drawn;

namespace Alburnum.Imaging.Tests.Zones;

/// <summary>Heartwood shown by the user on drawings whose areas follow from geometry.</summary>
public class SapwoodTests
{
    private static readonly PlainSection Round = new()
    {
        Kind = DrawnOutline.Round,
        WidthMm = 120,
        DepthMm = _ => 12,
    };

    // A disc of 60 mm radius treated 12 mm deep, heartwood of 40 mm radius: (60² − 48²) ⁄ (60² − 40²).
    private const double RoundShare = (3600.0 - 2304) / (3600 - 1600);

    [Fact]
    public void Heartwood_about_the_pith()
    {
        var reading = Read(Round, new HeartwoodAboutPith(Round.Place(60, 60), 40));

        Expect(reading);
        Assert.InRange(DrawnReading.Profile(reading).SapwoodTreatedShare!.Value.StandardUncertainty, 0.005, 0.05);
    }

    [Fact]
    public void The_ring_at_which_heartwood_ends_gives_pith_and_radius()
    {
        var angles = new[] { 0.2, 1.4, 2.9, 4.4 };
        Expect(
            Read(
                Round,
                new RingOfHeartwood([
                    .. angles.Select(a => Round.Place(60 + (40 * Math.Cos(a)), 60 + (40 * Math.Sin(a)))),
                ])
            )
        );
    }

    [Fact]
    public void Heartwood_outlined_by_hand()
    {
        Expect(
            Read(
                Round,
                new OutlinedHeartwood([
                    .. Enumerable
                        .Range(0, 48)
                        .Select(i => Math.SinCos(i * Math.PI / 24))
                        .Select(a => Round.Place(60 + (40 * a.Cos), 60 + (40 * a.Sin))),
                ])
            )
        );
    }

    [Fact]
    public void A_short_arc_of_the_ring_leaves_more_doubt_than_a_long_one()
    {
        SectionReading Arc(double spread) =>
            Read(
                Round,
                new RingOfHeartwood([
                    .. new[] { -spread, 0, spread }.Select(a =>
                        Round.Place(60 + (40 * Math.Cos(a)), 60 + (40 * Math.Sin(a)))
                    ),
                ])
            );
        double U(SectionReading reading) =>
            DrawnReading.Profile(reading).SapwoodTreatedShare!.Value.StandardUncertainty;

        Assert.True(U(Arc(0.5)) > 2 * U(Arc(2)));
    }

    [Fact]
    public void A_pith_outside_the_section_lays_heartwood_open_on_the_face_towards_it()
    {
        // Pith 20 mm above the first face, heartwood radius 30 mm: it lies open on 2·√(30² − 20²) = 44.7 mm of it.
        var drawn = new PlainSection { DepthMm = _ => 9 };
        var reading = Read(drawn, new HeartwoodAboutPith(drawn.Place(50, -20), 30)) with { };
        var faces = DrawnReading.Profile(reading).Faces;
        var open = faces[0].SapwoodDepthMm.Count(mm => mm == 0) * faces[0].StepMm;

        Assert.Equal(44.7, open, 1.5);
        Assert.DoesNotContain(faces[2].SapwoodDepthMm, mm => mm == 0);
        var reached = DrawnReading.Read(reading).Reached!;
        Assert.Equal(1, reached.Share.Value, 0.02);
        Assert.Equal(0.447, reached.Faces[0].OpenHeartwoodShare!.Value, 0.02);
        Assert.Equal(1, reached.Faces[0].OpenHeartwoodReachedShare!.Value.Value, 0.02);
        Assert.Null(reached.Faces[2].OpenHeartwoodReachedShare);
        Assert.Equal(1, reached.OpenHeartwoodTreatedShare!.Value.Value, 0.02);
    }

    [Fact]
    public void Points_on_a_line_are_no_ring()
    {
        var reading = Read(Round, new RingOfHeartwood([Round.Place(30, 60), Round.Place(60, 60), Round.Place(90, 60)]));

        Assert.Null(DrawnReading.Profile(reading).SapwoodTreatedShare);
        Assert.Equal(
            new UnknownHeartwood(HeartwoodFault.NoBorderShown, IsMissed: true),
            DrawnReading.Read(reading).Heartwood
        );
    }

    private static void Expect(SectionReading reading)
    {
        var profile = DrawnReading.Profile(reading);
        Assert.Equal(RoundShare, profile.SapwoodTreatedShare!.Value.Value, 0.02);
        Assert.All(profile.Faces[0].SapwoodDepthMm, mm => Assert.Equal(20, mm!.Value, 0.6));
    }

    private static SectionReading Read(PlainSection drawn, HeartwoodBorder border) =>
        DrawnReading.Of(drawn, DrawnReading.Request(drawn) with { Heartwood = border, RequiredMm = 6 });
}
