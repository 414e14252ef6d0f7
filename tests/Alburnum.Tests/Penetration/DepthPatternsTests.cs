using Alburnum.Penetration;
using Alburnum.Timber;
using CsCheck;

namespace Alburnum.Tests.Penetration;

public sealed class DepthPatternsTests
{
    private const int SideMm = 100;

    [Fact]
    public void An_even_deep_border_looks_like_nothing_in_particular() =>
        Assert.Empty(DepthPatterns.Of(Sawn((_, _) => 9)));

    [Fact]
    public void A_full_sapwood_around_an_untreated_core_is_recognised()
    {
        var profile = Sawn((_, _) => 20, sapwoodMm: (_, _) => 20) with { SapwoodTreatedShare = new(0.99, 0.01) };

        Assert.Equal([new UntreatedHeartwood(0.99)], DepthPatterns.Of(profile));
    }

    [Fact]
    public void A_bare_face_at_which_the_borders_of_its_neighbours_end_squarely_looks_cut_after_treatment() =>
        Assert.Equal(
            [new CutThroughBorder(2, 9)],
            DepthPatterns.Of(Sawn((face, mm) => face == 2 && mm is > 9 and < SideMm - 9 ? 0 : 9))
        );

    [Fact]
    public void A_bare_face_to_which_the_borders_of_its_neighbours_taper_is_only_bare() =>
        Assert.Equal(
            [new BareFace(2, 9)],
            DepthPatterns.Of(
                Sawn(
                    (face, mm) =>
                        face switch
                        {
                            1 => Math.Min(9, SideMm - mm),
                            2 => 0,
                            3 => Math.Min(9, mm),
                            _ => 9,
                        }
                )
            )
        );

    [Fact]
    public void A_bare_face_of_heartwood_is_not_taken_for_a_cut() =>
        Assert.Equal(
            [new BareHeartwoodFace(2)],
            DepthPatterns.Of(
                Sawn(
                    (face, mm) => face == 2 && mm is > 9 and < SideMm - 9 ? 0 : 9,
                    sapwoodMm: (face, _) => face == 2 ? 0 : 40
                )
            )
        );

    [Fact]
    public void A_face_evenly_shallower_than_the_others_looks_planed() =>
        Assert.Equal(
            [new ShallowFace(3, 4, 10)],
            DepthPatterns.Of(Sawn((face, mm) => face == 3 && mm is > 10 and < SideMm - 10 ? 4 : 10))
        );

    [Theory]
    [InlineData(1, 3)]
    [InlineData(2, 4)]
    public void Two_bare_faces_opposite_each_other_are_told_together(int first, int second) =>
        Assert.Equal(
            [new TwoBareFaces(first, second, AreOpposite: true, 9)],
            DepthPatterns.Of(
                Sawn((face, mm) => (face == first || face == second) && mm is > 9 and < SideMm - 9 ? 0 : 9)
            )
        );

    [Fact]
    public void Two_bare_faces_that_meet_are_told_together() =>
        // The borders of faces 3 and 4 cover the far ends of faces 2 and 1 from the side.
        Assert.Equal(
            [new TwoBareFaces(1, 2, AreOpposite: false, 9)],
            DepthPatterns.Of(
                Sawn(
                    (face, mm) =>
                        face switch
                        {
                            1 => mm < 9 ? 9 : 0,
                            2 => mm > SideMm - 9 ? 9 : 0,
                            _ => 9,
                        }
                )
            )
        );

    [Fact]
    public void Three_bare_faces_leave_one_that_was_treated() =>
        Assert.Equal(
            [new OneTreatedFace(4, 9)],
            DepthPatterns.Of(
                Sawn(
                    (face, mm) =>
                        face == 4 ? 9
                        : face == 1 && mm < 9 || face == 3 && mm > SideMm - 9 ? 9
                        : 0
                )
            )
        );

    [Fact]
    public void Bare_faces_of_heartwood_are_each_said_to_be_that() =>
        Assert.Equal(
            [new BareHeartwoodFace(1), new BareHeartwoodFace(3)],
            DepthPatterns.Of(
                Sawn(
                    (face, mm) => face % 2 == 1 && mm is > 9 and < SideMm - 9 ? 0 : 9,
                    sapwoodMm: (face, _) => face % 2 == 1 ? 0 : 40
                )
            )
        );

    [Fact]
    public void Half_a_bare_face_is_a_bare_place_on_it() =>
        Assert.Equal(
            [new BarePatch(3, 40.5, 89.5, MayBeHeartwood: true)],
            DepthPatterns.Of(Sawn((face, mm) => face == 3 && mm is > 40 and < SideMm - 10 ? 0 : 9))
        );

    [Fact]
    public void A_bare_place_may_run_round_a_corner() =>
        Assert.Equal(
            [new BarePatch(1, 70.5, 99.5, MayBeHeartwood: true), new BarePatch(2, 0.5, 19.5, MayBeHeartwood: true)],
            DepthPatterns.Of(
                Sawn(
                    (face, mm) =>
                        face switch
                        {
                            1 => mm > 70 ? 0 : 9,
                            2 => mm < 20 ? 0 : 9,
                            _ => 9,
                        }
                )
            )
        );

    [Fact]
    public void A_piece_bare_all_round_is_recognised()
    {
        Assert.Equal([new BareAllRound()], DepthPatterns.Of(Sawn((_, _) => 0)));
        Assert.Equal([new BareAllRound()], DepthPatterns.Of(ByHand((_, _) => 0)));
        Assert.Equal(
            [new BareHeartwoodFace(1), new BareHeartwoodFace(2), new BareHeartwoodFace(3), new BareHeartwoodFace(4)],
            DepthPatterns.Of(Sawn((_, _) => 0, sapwoodMm: (_, _) => 0))
        );
    }

    // The letter on battens says that spruce takes 1 to 3 mm.
    [Theory]
    [InlineData(1.5)]
    [InlineData(2.5)]
    [InlineData(3)]
    public void A_thin_even_border_is_a_skin(double depthMm) =>
        Assert.Equal([new ThinSkin(depthMm)], DepthPatterns.Of(Sawn((_, _) => depthMm)));

    [Fact]
    public void A_border_of_1_to_3_mm_is_a_skin() =>
        Assert.IsType<ThinSkin>(Assert.Single(DepthPatterns.Of(Sawn((_, mm) => 1 + mm % 2))));

    [Fact]
    public void A_bare_stretch_between_deep_ones_looks_like_a_missed_spray()
    {
        var pattern = Assert.IsType<BarePatch>(
            Assert.Single(DepthPatterns.Of(Sawn((face, mm) => face == 1 && mm is > 40 and < 55 ? 0 : 9)))
        );

        Assert.Equal(1, pattern.Face);
        Assert.Equal(40, pattern.FromMm, 1.0);
        Assert.Equal(55, pattern.ToMm, 1.0);
    }

    [Theory]
    [InlineData(null, true)]
    [InlineData(30.0, false)]
    public void A_bare_stretch_may_be_heartwood_only_where_its_border_was_not_seen(double? sapwoodMm, bool mayBe) =>
        Assert.Equal(
            mayBe,
            Assert
                .IsType<BarePatch>(
                    Assert.Single(
                        DepthPatterns.Of(
                            Sawn((face, mm) => face == 1 && mm is > 40 and < 55 ? 0 : 9, sapwoodMm: (_, _) => sapwoodMm)
                        )
                    )
                )
                .MayBeHeartwood
        );

    [Fact]
    public void A_bare_stretch_of_heartwood_is_no_missed_spray() =>
        Assert.Empty(
            DepthPatterns.Of(
                Sawn(
                    (face, mm) => face == 1 && mm is > 40 and < 55 ? 0 : 9,
                    sapwoodMm: (face, mm) => face == 1 && mm is > 40 and < 55 ? 0 : 30
                )
            )
        );

    [Fact]
    public void A_section_treated_all_through_may_have_been_cut_near_an_end() =>
        Assert.Equal(
            [new TreatedThroughout()],
            DepthPatterns.Of(Sawn((_, _) => 50) with { TreatedShare = new(0.97, 0.01) })
        );

    [Fact]
    public void Heartwood_treated_as_deep_as_sapwood_looks_like_preservative_from_an_end() =>
        Assert.Equal(
            [new EndGrainOnly(30)],
            DepthPatterns.Of(Sawn((_, _) => 50, sapwoodMm: (_, _) => 20) with { TreatedShare = new(0.97, 0.01) })
        );

    [Theory]
    [InlineData(50.0)]
    [InlineData(48.0)]
    public void A_section_without_heartwood_to_speak_of_says_nothing_of_the_end_grain(double sapwoodMm) =>
        Assert.Equal(
            [new TreatedThroughout()],
            DepthPatterns.Of(Sawn((_, _) => 50, sapwoodMm: (_, _) => sapwoodMm) with { TreatedShare = new(0.97, 0.01) })
        );

    [Fact]
    public void What_it_looks_like_does_not_depend_on_which_face_comes_first() =>
        Gen.Int[1, 4]
            .Sample(bare =>
                Assert.Equal(
                    [new CutThroughBorder(bare, 9)],
                    DepthPatterns.Of(Sawn((face, mm) => face == bare && mm is > 9 and < SideMm - 9 ? 0 : 9))
                )
            );

    [Fact]
    public void Deep_borders_with_any_unevenness_are_never_called_bare() =>
        Gen.Double[3.5, 12]
            .Array[4 * SideMm]
            .Sample(depths =>
                Assert.DoesNotContain(
                    DepthPatterns.Of(Sawn((face, mm) => depths[(face - 1) * SideMm + (int)mm])),
                    pattern => pattern is CutThroughBorder or BareFace or BarePatch or ThinSkin
                )
            );

    [Fact]
    public void Readings_by_hand_show_what_a_photograph_shows()
    {
        Assert.Equal([new CutThroughBorder(1, 10)], DepthPatterns.Of(ByHand((face, _) => face == 1 ? 0 : 10)));
        Assert.Equal([new ThinSkin(1)], DepthPatterns.Of(ByHand((_, _) => 1)));
        Assert.Equal(
            [new BarePatch(2, 25, 50, MayBeHeartwood: true)],
            DepthPatterns.Of(ByHand((face, mm) => face == 2 && mm is > 20 and < 55 ? 0 : 9))
        );
        Assert.Equal([new TreatedThroughout()], DepthPatterns.Of(ByHand((_, _) => 37)));
        Assert.Empty(DepthPatterns.Of(ByHand((_, _) => 9)));
    }

    [Fact]
    public void A_bare_face_read_by_hand_to_which_its_neighbours_taper_is_only_bare() =>
        Assert.Equal(
            [new BareFace(1, 38 / 7.0)],
            DepthPatterns.Of(
                ByHand(
                    (face, mm) =>
                        face switch
                        {
                            1 => 0,
                            2 => Math.Min(10, mm / 7),
                            4 => Math.Min(10, (75 - mm) / 7),
                            _ => 10,
                        }
                )
            )
        );

    [Fact]
    public void One_reading_tells_nothing_of_a_section() =>
        Assert.Empty(
            DepthPatterns.Of(HandReadings.Profile(new RectangularSection(75, 75), [new(1, 37, 37, 0.5, null)]))
        );

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void A_face_read_by_hand_is_as_long_as_its_readings_need(int longFace)
    {
        var section = new RectangularSection(50, 100);
        HandReading[] readings =
        [
            .. Enumerable
                .Range(1, 4)
                .SelectMany(face =>
                    Enumerable
                        .Range(1, 9)
                        .Select(i => new HandReading(face, (face % 2 == longFace % 2 ? 10 : 5) * i, 9, 0.5, null))
                ),
        ];

        Assert.Equal(
            longFace == 1 ? [100, 50, 100, 50] : [50, 100, 50, 100],
            HandReadings.Profile(section, readings).Faces.Select(face => face.LengthMm)
        );
    }

    private static DepthProfile ByHand(Func<int, double, double> depthMm)
    {
        double[] placesMm = [7, 15, 25, 37, 50, 60, 68];
        return HandReadings.Profile(
            new RectangularSection(75, 75),
            [
                .. Enumerable
                    .Range(1, 4)
                    .SelectMany(face => placesMm.Select(mm => new HandReading(face, mm, depthMm(face, mm), 0.5, null))),
            ]
        );
    }

    private static DepthProfile Sawn(Func<int, double, double> depthMm, Func<int, double, double?>? sapwoodMm = null)
    {
        FaceProfile[] faces =
        [
            .. Enumerable
                .Range(1, 4)
                .Select(face =>
                {
                    double[] at = [.. Enumerable.Range(0, SideMm).Select(i => i + 0.5)];
                    return new FaceProfile(
                        face,
                        1,
                        at,
                        [.. at.Select(mm => depthMm(face, mm))],
                        [.. at.Select(_ => 0.2)],
                        new bool[SideMm],
                        [.. at.Select(mm => sapwoodMm?.Invoke(face, mm))]
                    );
                }),
        ];
        return new(new RectangularSection(SideMm, SideMm), faces, SectionDepth.Of(faces, 0.1)!, new(0.4, 0.01), null);
    }
}
