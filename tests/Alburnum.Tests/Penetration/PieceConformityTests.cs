using Alburnum.Penetration;
using Alburnum.Requirements;
using Alburnum.Timber;
using CsCheck;

namespace Alburnum.Tests.Penetration;

public class PieceConformityTests
{
    private static readonly Section Post = new RectangularSection(100, 100);
    private static readonly DepthRule Sapwood6 = new LeastDepth(WoodZone.Sapwood, 6);
    private static readonly DepthRule Np6 = new AllOf([
        new ShareOfZone(WoodZone.Sapwood, 1),
        new LeastDepth(WoodZone.ExposedHeartwood, 6, 0.75),
    ]);

    private static Judgement Judge(DepthRule rule, DepthProfile profile, DepthReading reading = DepthReading.Minimum) =>
        PieceConformity.Judge(rule, profile, DecisionRule.Usual, reading);

    /// <summary>A profile with the same sapwood depth everywhere, faces numbered from 1.</summary>
    private static DepthProfile Profile(double u, double? sapwoodMm, params double[][] depthsByFace) =>
        HandReadings.Profile(
            Post,
            [
                .. depthsByFace.SelectMany(
                    (depths, face) => depths.Select((depth, i) => new HandReading(face + 1, i, depth, u, sapwoodMm))
                ),
            ]
        );

    private static DepthProfile Exclude(DepthProfile profile, int face, Func<int, bool> isExcluded) =>
        profile with
        {
            Faces =
            [
                .. profile.Faces.Select(old =>
                    old.Number == face ? old with { Excluded = [.. old.Excluded.Select((_, i) => isExcluded(i))] } : old
                ),
            ],
        };

    [Fact]
    public void No_depth_asked_for_conforms()
    {
        Assert.Equal(Verdict.Conforms, Judge(new NoDepth(), Profile(1, null, [0])).Verdict);
    }

    [Fact]
    public void A_depth_far_above_the_demand_conforms_and_far_below_does_not()
    {
        Assert.Equal(Verdict.Conforms, Judge(Sapwood6, Profile(0.5, 30, [9, 8, 10])).Verdict);
        Assert.Equal(Verdict.DoesNotConform, Judge(Sapwood6, Profile(0.5, 30, [9, 4, 10])).Verdict);
    }

    [Fact]
    public void A_depth_at_the_demand_is_undecided_at_even_odds()
    {
        var judgement = Judge(new LeastDepth(WoodZone.Lateral, 6), Profile(0.5, 30, [6, 8, 10]));

        Assert.Equal(Verdict.Undecided, judgement.Verdict);
        Assert.Equal(0.5, judgement.Probability!.Value.Middle, 1e-12);
        var band = Assert.Single(judgement.Reasons.OfType<GuardBand>());
        // 1.645 standard uncertainties either way at 95 %.
        Assert.Equal((6.0, 0.5), (band.RequiredMm, band.StandardUncertaintyMm));
        Assert.Equal(6 + (0.5 * 1.6449), band.ConformsFromMm, 1e-4);
        Assert.Equal(6 - (0.5 * 1.6449), band.FailsUpToMm, 1e-4);
    }

    [Fact]
    public void The_reason_holds_rule_place_depth_demand_uncertainty_and_probability()
    {
        DepthRule rule = new LeastDepth(WoodZone.Lateral, 6);
        var judgement = Judge(rule, Profile(0.5, 30, [9, 8], [9, 6.5, 8]));

        var decided = Assert.Single(judgement.Reasons.OfType<DecidedAt>());
        Assert.Equal(
            (rule, DepthReading.Minimum, 5, 6.5),
            (decided.Rule, decided.Reading, decided.Positions, decided.LeastDepthMm.Value)
        );
        Assert.Equal((2, 1.0), (decided.Face, decided.PositionMm));
        Assert.Equal((6.5, 6.0, 0.5), (decided.DepthMm, decided.RequiredMm, decided.StandardUncertaintyMm));
        // One standard uncertainty above the demand.
        Assert.Equal(0.8413, decided.Probability.Low, 1e-4);
        Assert.Equal(decided.Probability, judgement.Probability);
        Assert.False(decided.TurnsElsewhere);
    }

    [Fact]
    public void A_reason_says_where_the_whole_zone_is_asked_for_as_its_probability_rests_on_more_than_depth_and_uncertainty()
    {
        var full = Judge(new ShareOfZone(WoodZone.Sapwood, 1), Profile(0.5, 25, [24]));
        var least = Judge(Sapwood6, Profile(0.5, 25, [24]));

        Assert.True(Assert.Single(full.Reasons.OfType<DecidedAt>()).AsksForWholeZone);
        Assert.False(Assert.Single(least.Reasons.OfType<DecidedAt>()).AsksForWholeZone);
    }

    // Odds of 4 to 1 after reading: a quarter of them where the odds before were 1 to 4, four times them where those were 4 to 1.
    [Fact]
    public void What_is_believed_of_a_filled_zone_beforehand_multiplies_the_odds()
    {
        var decided = Assert.Single(
            Judge(new ShareOfZone(WoodZone.Sapwood, 1), Profile(0.5, 25, [24])).Reasons.OfType<DecidedAt>()
        ) with
        {
            Probability = ProbabilityRange.Exactly(0.8),
        };

        Assert.Equal(0.5, decided.ProbabilityByBelief.Low, 1e-12);
        Assert.Equal(16 / 17.0, decided.ProbabilityByBelief.High, 1e-12);
    }

    [Fact]
    public void A_deeper_position_read_badly_may_decide_instead_of_the_least_one()
    {
        var profile = HandReadings.Profile(Post, [new(1, 0, 7, 0.1, 30), new(1, 10, 8, 2, 30)]);

        var decided = Assert.Single(Judge(Sapwood6, profile).Reasons.OfType<DecidedAt>());
        Assert.True(decided.TurnsElsewhere);
        Assert.Equal((7.0, 8.0, 10.0), (decided.LeastDepthMm.Value, decided.DepthMm, decided.PositionMm));
    }

    [Fact]
    public void The_guard_band_holds_for_the_depth_that_decides_and_names_it()
    {
        var profile = HandReadings.Profile(Post, [new(1, 0, 7, 0.1, 30), new(1, 10, 8, 2, 30)]);
        var reasons = Judge(Sapwood6, profile).Reasons;

        var band = Assert.Single(reasons.OfType<GuardBand>());
        var decided = Assert.Single(reasons.OfType<DecidedAt>());
        Assert.Equal((decided.DepthMm, decided.StandardUncertaintyMm), (band.DepthMm, band.StandardUncertaintyMm));
    }

    [Fact]
    public void The_least_depth_in_a_reason_is_the_profile_s_own_where_the_zone_is_all_that_was_read()
    {
        var profile = HandReadings.Profile(Post, [new(1, 0, 6.84, 0.6, 30), new(1, 10, 8, 0.6, 30)]);
        var corrected = profile with { Statistics = profile.Statistics with { MinimumMm = new(6.86, 0.62) } };

        var decided = Assert.Single(Judge(Sapwood6, corrected).Reasons.OfType<DecidedAt>());
        Assert.Equal(new Estimate(6.86, 0.62), decided.LeastDepthMm);
        Assert.False(decided.TurnsElsewhere);
    }

    [Fact]
    public void A_share_of_a_face_is_reasoned_face_by_face()
    {
        DepthRule rule = new LeastDepth(WoodZone.ExposedHeartwood, 6, 0.75);
        double[] poor = [.. Enumerable.Range(0, 20).Select(i => i < 13 ? 9.0 : 0)];

        var faces = Judge(rule, Profile(0.3, 0, [.. Enumerable.Repeat(9.0, 20)], poor))
            .Reasons.OfType<ReachedOnFace>()
            .ToList();

        Assert.Equal([1, 2], faces.Select(face => face.Face));
        Assert.Equal([1, 0.65], faces.Select(face => face.ReachedShare));
        Assert.All(faces, face => Assert.Equal((rule, 0.75), (face.Rule, face.RequiredShare)));
        Assert.Equal([9, 0], faces.Select(face => face.DepthMm));
    }

    [Fact]
    public void Many_positions_do_not_shrink_the_uncertainty_of_the_minimum()
    {
        var few = Judge(new LeastDepth(WoodZone.Lateral, 6), Profile(0.5, 30, [6.5]));
        var many = Judge(new LeastDepth(WoodZone.Lateral, 6), Profile(0.5, 30, [.. Enumerable.Repeat(6.5, 400)]));

        Assert.Equal(few.Probability, many.Probability);
    }

    [Fact]
    public void The_minimum_carries_the_uncertainty_that_the_profile_states_for_it()
    {
        var profile = Profile(0.1, 30, [6.5, 9, 9]);
        var wider = profile with { Statistics = profile.Statistics with { MinimumMm = new Estimate(6.5, 2) } };

        Assert.Equal(Verdict.Conforms, Judge(Sapwood6, profile).Verdict);
        Assert.Equal(Verdict.Undecided, Judge(Sapwood6, wider).Verdict);
    }

    [Fact]
    public void Positions_left_out_are_not_used()
    {
        var profile = Exclude(Profile(0.2, 30, [9, 0, 9, 9]), 1, i => i == 1);

        Assert.Equal(Verdict.Conforms, Judge(Sapwood6, profile).Verdict);
    }

    [Fact]
    public void A_face_that_was_mostly_left_out_leaves_the_piece_undecided()
    {
        var profile = Exclude(Profile(0.2, 30, [9, 9, 9, 9], [9, 9, 9, 9]), 2, i => i < 3);
        var judgement = Judge(Sapwood6, profile);

        Assert.Equal(Verdict.Undecided, judgement.Verdict);
        Assert.Null(judgement.Probability);
        Assert.Equal([2], Assert.Single(judgement.Reasons.OfType<FacesNotRead>()).Faces);
    }

    [Fact]
    public void An_unread_face_does_not_save_a_piece_that_fails_elsewhere()
    {
        var profile = Exclude(Profile(0.2, 30, [2, 9, 9, 9], [9, 9, 9, 9]), 2, _ => true);

        Assert.Equal(Verdict.DoesNotConform, Judge(Sapwood6, profile).Verdict);
    }

    [Fact]
    public void Twelve_millimetres_everywhere_satisfies_six_in_sapwood_whatever_the_boundary()
    {
        Assert.Equal(Verdict.Conforms, Judge(Sapwood6, Profile(0.5, null, [12, 13, 12])).Verdict);
    }

    [Fact]
    public void A_shallow_reading_with_an_unknown_boundary_is_undecided_and_says_so()
    {
        var judgement = Judge(Sapwood6, Profile(0.5, null, [3, 13, 12]));

        Assert.Equal(Verdict.Undecided, judgement.Verdict);
        Assert.Null(judgement.Probability);
        Assert.IsType<SapwoodBorderMissing>(judgement.Reasons[^1]);
        // It may all be heartwood, of which nothing is asked.
        Assert.Equal(1, Assert.Single(judgement.Reasons.OfType<DecidedAt>()).Probability.High);
    }

    [Fact]
    public void A_shallow_position_of_known_sapwood_fails_although_the_boundary_is_unknown_elsewhere()
    {
        var profile = HandReadings.Profile(Post, [new(1, 0, 2, 0.3, 25), new(1, 10, 12, 0.3, null)]);

        Assert.Equal(Verdict.DoesNotConform, Judge(Sapwood6, profile).Verdict);
    }

    [Fact]
    public void A_sapwood_rule_on_a_piece_without_sapwood_is_not_demonstrable()
    {
        var judgement = Judge(Sapwood6, Profile(0.5, 0, [12, 12]));

        Assert.Equal(Verdict.Undecided, judgement.Verdict);
        Assert.Null(judgement.Probability);
        Assert.Equal([new ZoneAbsent(Sapwood6, WoodZone.Sapwood), new NotDemonstrable()], judgement.Reasons);
    }

    [Fact]
    public void Heartwood_that_does_not_lie_open_asks_for_nothing_beside_a_sapwood_demand()
    {
        var filled = Profile(0.4, 30, [30, 30.2, 29.9]);

        Assert.Equal(Verdict.Conforms, Judge(Np6, filled).Verdict);
    }

    [Fact]
    public void A_front_that_stops_at_the_sapwood_border_has_filled_the_sapwood()
    {
        var full = new ShareOfZone(WoodZone.Sapwood, 1);

        Assert.Equal(Verdict.Conforms, Judge(full, Profile(0.5, 30, [30, 30.1, 29.9])).Verdict);
        Assert.Equal(Verdict.DoesNotConform, Judge(full, Profile(0.5, 30, [30, 25, 30])).Verdict);
        Assert.Equal(Verdict.Undecided, Judge(full, Profile(0.5, 30, [30, 28.8, 30])).Verdict);
    }

    [Fact]
    public void Sapwood_thinner_than_the_depth_asked_for_need_only_be_filled()
    {
        Assert.Equal(Verdict.Conforms, Judge(Sapwood6, Profile(0.1, 4, [4, 4, 4.1])).Verdict);
    }

    [Theory]
    [InlineData(70, Verdict.DoesNotConform)]
    [InlineData(80, Verdict.Conforms)]
    public void Three_quarters_of_an_exposed_heartwood_face_must_be_coloured(int percent, Verdict expected)
    {
        double[] face = [.. Enumerable.Range(0, 100).Select(i => i < percent ? 9.0 : 0)];

        Assert.Equal(
            expected,
            Judge(new LeastDepth(WoodZone.ExposedHeartwood, 6, 0.75), Profile(0.3, 0, face, face, face, face)).Verdict
        );
    }

    [Fact]
    public void A_share_asked_for_on_every_face_is_not_met_by_a_piece_read_on_one()
    {
        var read = Judge(new LeastDepth(WoodZone.ExposedHeartwood, 6, 0.75), Profile(0.3, 0, [9, 9, 9]));

        Assert.Equal(Verdict.Undecided, read.Verdict);
        Assert.Equal([2, 3, 4], Assert.Single(read.Reasons.OfType<FacesNotRead>()).Faces);
    }

    [Fact]
    public void A_depth_asked_for_throughout_is_held_against_the_faces_read_and_says_so()
    {
        var read = Judge(Sapwood6, Profile(0.3, 20, [9, 9, 9], [9, 9, 9]));

        Assert.Equal(Verdict.Conforms, read.Verdict);
        Assert.Equal([3, 4], Assert.Single(read.Reasons.OfType<FacesWithoutReading>()).Faces);
        double[] face = [9, 9, 9];
        Assert.Empty(Judge(Sapwood6, Profile(0.3, 20, face, face, face, face)).Reasons.OfType<FacesWithoutReading>());
    }

    [Fact]
    public void A_good_face_does_not_make_up_for_a_poor_one()
    {
        double[] good = [.. Enumerable.Repeat(9.0, 20)];
        double[] poor = [.. Enumerable.Range(0, 20).Select(i => i < 13 ? 9.0 : 0)];

        Assert.Equal(
            Verdict.DoesNotConform,
            Judge(new LeastDepth(WoodZone.ExposedHeartwood, 6, 0.75), Profile(0.3, 0, good, poor)).Verdict
        );
    }

    [Fact]
    public void The_percentile_reading_forgives_a_speck_and_is_named()
    {
        double[] face = [.. Enumerable.Range(0, 100).Select(i => i == 40 ? 1.0 : 9)];
        var rule = new LeastDepth(WoodZone.Lateral, 6);

        Assert.Equal(Verdict.DoesNotConform, Judge(rule, Profile(0.3, 30, face)).Verdict);
        var judgement = Judge(rule, Profile(0.3, 30, face), DepthReading.FifthPercentile);
        Assert.Equal(Verdict.Conforms, judgement.Verdict);
        Assert.Equal(DepthReading.FifthPercentile, Assert.Single(judgement.Reasons.OfType<DecidedAt>()).Reading);
    }

    [Theory]
    [InlineData(2.8, 0.92, Verdict.Conforms)]
    [InlineData(2.8, 0.88, Verdict.DoesNotConform)]
    public void A_pole_core_may_pass_by_depth_or_by_share_of_sapwood(double depthIn, double share, Verdict expected)
    {
        var rule = new AnyOf([new LeastDepth(WoodZone.Lateral, 3.00 * 25.4), new ShareOfZone(WoodZone.Sapwood, 0.90)]);

        Assert.Equal(expected, Judge(rule, Core(depthIn, share)).Verdict);
    }

    [Fact]
    public void A_pole_core_that_must_pass_by_depth_and_by_share_fails_on_either()
    {
        var rule = new AllOf([new LeastDepth(WoodZone.Lateral, 0.75 * 25.4), new ShareOfZone(WoodZone.Sapwood, 0.85)]);

        Assert.Equal(Verdict.DoesNotConform, Judge(rule, Core(0.80, 0.80)).Verdict);
        Assert.Equal(Verdict.Conforms, Judge(rule, Core(0.80, 0.90)).Verdict);
    }

    private static DepthProfile Core(double depthIn, double shareOfSapwood) =>
        HandReadings.Profile(new RoundSection(300), [new(1, 0, depthIn * 25.4, 0, depthIn * 25.4 / shareOfSapwood)]);

    [Theory]
    [InlineData(0.18, 0.60, Verdict.Conforms)]
    [InlineData(0.22, 0.60, Verdict.DoesNotConform)]
    [InlineData(0.18, 0.40, Verdict.DoesNotConform)]
    public void Untreated_heartwood_may_stay_within_its_limits(double untreated, double reached, Verdict expected)
    {
        // Fronts from opposite faces of a piece without sapwood: what they leave reaches 1 − reached of the way across.
        var depthMm = reached * 100 / 2;
        var profile = HandReadings.Profile(
            Post,
            [.. Enumerable.Range(1, 4).Select(face => new HandReading(face, 50, depthMm, 0.5, 0))]
        ) with
        {
            TreatedShare = new Estimate(1 - untreated, 0.005),
        };

        Assert.Equal(expected, Judge(new UntreatedHeartwoodLimit(0.2, 0.5, 0.5), profile).Verdict);
    }

    [Fact]
    public void Untreated_sapwood_is_no_untreated_heartwood()
    {
        var profile = HandReadings.Profile(
            Post,
            [.. Enumerable.Range(1, 4).Select(face => new HandReading(face, 50, 40, 0.5, 45))]
        );

        Assert.Equal(Verdict.DoesNotConform, Judge(new UntreatedHeartwoodLimit(0.2, 0.5, 0.5), profile).Verdict);
    }

    [Fact]
    public void A_limit_on_untreated_heartwood_needs_opposite_faces()
    {
        var profile = HandReadings.Profile(Post, [new(1, 50, 40, 0.5, 0)]);
        var limit = new UntreatedHeartwoodLimit(0.2, 0.5, 0.5);
        var judgement = Judge(limit, profile);

        Assert.Null(judgement.Probability);
        Assert.Contains(new OppositeFacesNeeded(limit), judgement.Reasons);
    }

    [Fact]
    public void The_verdict_never_improves_when_a_depth_is_lowered()
    {
        var zone = Gen.Enum<WoodZone>();
        var leaf = Gen.OneOf(
            Gen.Select(
                zone,
                Gen.Double[1, 20],
                Gen.OneOf(Gen.Const(0.5), Gen.Const(0.75), Gen.Const(1.0)),
                (z, mm, share) => (DepthRule)new LeastDepth(z, mm, share)
            ),
            Gen.Select(zone, Gen.Double[0.3, 1], (z, share) => (DepthRule)new ShareOfZone(z, share))
        );
        var rule = Gen.OneOf(
            leaf,
            Gen.Select(leaf, leaf, (a, b) => (DepthRule)new AllOf([a, b])),
            Gen.Select(leaf, leaf, (a, b) => (DepthRule)new AnyOf([a, b]))
        );
        var sapwood = Gen.OneOf(
            Gen.Const((double?)null),
            Gen.Const((double?)0),
            Gen.Double[1, 40].Select(mm => (double?)mm)
        );
        var reading = Gen.Select(Gen.Int[1, 4], Gen.Double[0, 25], Gen.Double[0, 2], sapwood);
        Gen.Select(rule, reading.Array[1, 25], Gen.Int[0, 24], Gen.Double[0, 25])
            .Sample(
                (demand, readings, which, loss) =>
                {
                    HandReading[] before =
                    [
                        .. readings.Select((r, i) => new HandReading(r.Item1, i, r.Item2, r.Item3, r.Item4)),
                    ];
                    var index = which % before.Length;
                    HandReading[] after = [.. before];
                    after[index] = after[index] with { DepthMm = Math.Max(0, after[index].DepthMm - loss) };
                    // The statistics' own uncertainty is held: only the depth is lowered.
                    var whole = HandReadings.Profile(Post, before);
                    var lowered = HandReadings.Profile(Post, after) with { Statistics = whole.Statistics };

                    Assert.True(Rank(Judge(demand, lowered)) <= Rank(Judge(demand, whole)));
                },
                iter: 3000
            );
    }

    private static int Rank(Judgement judgement) =>
        judgement.Verdict switch
        {
            Verdict.DoesNotConform => 0,
            Verdict.Undecided => 1,
            _ => 2,
        };
}
