using Alburnum.Impregnation.Diffusing;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;
using CsCheck;

namespace Alburnum.Workflows.Tests.Impregnation;

public sealed class SpreadBoronTests
{
    private static readonly BoronLaw Law = new FactLibrary(Repository.At("data")).Boron;
    private static readonly BoronRequest Board = new()
    {
        Section = new RectangularSection(100, 50),
        BorderMm = 2,
        LoadingKgPerM3 = 8,
        WantedKgPerM3 = 0.5,
        MoisturePercent = 40,
        Celsius = 15,
        Weeks = 6,
        WetDays = 0,
    };

    private static BoronSpread Of(BoronRequest request) => SpreadBoron.Run(request, Law);

    [Fact]
    public void A_quartered_piece_is_full_where_its_border_comes_to_its_deepest_place()
    {
        var quarter = new QuarteredSection(120);
        var full = Of(
            Board with
            {
                Section = quarter,
                BorderMm = SectionBorder.DeepestMm(quarter),
                WantedKgPerM3 = 7.5,
            }
        );

        Assert.Equal(1, SectionBorder.Share(quarter, SectionBorder.DeepestMm(quarter)), 1e-9);
        Assert.Equal(8, full.EvenKgPerM3, 1e-9);
        Assert.Equal(SectionBorder.DeepestMm(quarter), full.Middle.DepthMm, 0.01);
    }

    [Fact]
    public void Faster_wood_and_longer_store_bring_more_to_the_middle() =>
        Gen.Select(Gen.Double[1, 40], Gen.Double[1, 40])
            .Sample(
                (weeks, more) =>
                {
                    var (early, late) = (Of(Board with { Weeks = weeks }), Of(Board with { Weeks = weeks + more }));

                    return early.Slow.MiddleKgPerM3 <= early.Middle.MiddleKgPerM3
                        && early.Middle.MiddleKgPerM3 <= early.Fast.MiddleKgPerM3
                        && late.Middle.MiddleKgPerM3 >= early.Middle.MiddleKgPerM3;
                },
                iter: 30
            );

    [Fact]
    public void In_time_the_middle_comes_to_the_even_loading()
    {
        var late = Of(Board with { Weeks = 520, MoisturePercent = Law.MostMoisturePercent, Celsius = 60 });

        Assert.Equal(late.EvenKgPerM3, late.AsReckonedKgPerM3);
        Assert.Equal(late.EvenKgPerM3, late.Fast.MiddleKgPerM3, 0.01 * late.EvenKgPerM3);
    }

    [Fact]
    public void Over_the_whole_piece_the_borders_of_all_faces_count()
    {
        var round = Of(Board with { Section = new RoundSection(50), WantedKgPerM3 = 1 });

        Assert.Equal(8 * (1 - 96.0 * 46 / (100 * 50)), Of(Board).EvenKgPerM3, 1e-9);
        Assert.Equal(8 * (1 - 46.0 * 46 / (50 * 50)), round.EvenKgPerM3, 1e-9);
        // Thin as it is, the border is about as large as its depth times the way round it.
        var quarter = new QuarteredSection(100);
        Assert.Equal(
            8 * 0.1 * quarter.PerimeterMm / quarter.AreaMm2,
            Of(Board with { Section = quarter, BorderMm = 0.1 }).EvenKgPerM3,
            0.001
        );
        Assert.Equal((false, false), (round.IsTooThin, round.IsTooThinAsReckoned));
        // A half-round is taken for a sheet, in which the other faces do not count.
        var half = new HalfRoundSection(100);
        Assert.Equal(2.0 * 8 / 25, Of(Board with { Section = half }).AsReckonedKgPerM3, 1e-9);
        Assert.True(Of(Board with { WantedKgPerM3 = 1 }).IsTooThin);
    }

    [Fact]
    public void A_round_takes_from_its_whole_rim_and_a_post_from_all_its_faces()
    {
        BoronPlace Stored(Section section) => Of(Board with { Section = section, WantedKgPerM3 = 1 }).Middle;
        var (round, post, wide) = (
            Stored(new RoundSection(50)),
            Stored(new RectangularSection(50, 50)),
            Stored(new RectangularSection(300, 50))
        );

        Assert.True(round.MiddleKgPerM3 > wide.MiddleKgPerM3);
        Assert.True(post.MiddleKgPerM3 > wide.MiddleKgPerM3);
        Assert.True(post.DepthMm >= wide.DepthMm);
    }

    [Fact]
    public void A_border_is_too_thin_exactly_where_it_holds_less_than_wanted() =>
        Gen.Double[0.01, 2]
            .Sample(
                wanted =>
                    Of(Board with { WantedKgPerM3 = wanted }) is var spread
                    && spread.IsTooThin == wanted > spread.EvenKgPerM3
                    && !spread.IsTooThinAsReckoned,
                iter: 30
            );

    [Fact]
    public void Running_water_takes_more_the_longer_it_runs_and_nothing_where_there_is_none() =>
        Gen.Select(Gen.Double[0.1, 50], Gen.Double[0.1, 50])
            .Sample(
                (days, more) =>
                {
                    var some = Of(Board with { WetDays = days }).Middle.Washed!;
                    var longer = Of(Board with { WetDays = days + more }).Middle.Washed!;

                    Assert.InRange(some.Share, 0, longer.Share);
                    Assert.InRange(longer.Share, some.Share, 1);
                    Assert.Null(Of(Board).Middle.Washed);
                },
                iter: 30
            );
}
