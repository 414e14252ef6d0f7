using Alburnum.Imaging.Tests.Drawn;
using Alburnum.Penetration;
using Alburnum.Requirements;

namespace Alburnum.Imaging.Tests.Front;

/// <summary>Wood that is treated right through: no front to read, and a depth that is reached at least.</summary>
public class ThroughTests
{
    // 120 × 30 mm, the left half treated right through, the right half 6 mm deep.
    private static readonly PlainSection HalfThrough = new()
    {
        WidthMm = 120,
        HeightMm = 30,
        DepthMm = along =>
            along switch
            {
                < 60 => 16,
                < 210 => 6,
                _ => 16,
            },
    };

    [Fact]
    public void A_face_treated_right_through_is_known_to_be_reached_at_least_to_the_middle()
    {
        var profile = DrawnReading.Profile(DrawnReading.Of(HalfThrough));

        var left = profile.Faces[3];
        Assert.All(left.Excluded, Assert.True);
        Assert.True(left.AtLeastMm.Count(mm => mm is > 55) > 0.9 * left.PositionsMm.Count);
        // What is read elsewhere stands as it is.
        Assert.Equal(6, profile.Statistics.MinimumMm.Value, 0.3);
        Assert.Equal(6, profile.Statistics.MedianMm.Value, 0.3);
    }

    [Fact]
    public void A_demand_is_met_on_a_face_treated_right_through()
    {
        var profile = DrawnReading.Profile(DrawnReading.Of(HalfThrough));
        Judgement Judged(double mm) =>
            PieceConformity.Judge(new LeastDepth(WoodZone.Lateral, mm, 0.9), profile, DecisionRule.Usual);

        Assert.Equal(Verdict.Conforms, Judged(4).Verdict);
        Assert.Equal(Verdict.DoesNotConform, Judged(8).Verdict);
        Assert.Equal(1, ReachedDepth.Of(profile, 4).Faces[3].Share!.Value.Value, 0.05);
    }

    [Fact]
    public void Wood_beside_a_corner_of_a_skin_is_not_treated_right_through()
    {
        var profile = DrawnReading.Profile(DrawnReading.Of(HalfThrough with { HeightMm = 60, DepthMm = _ => 2.5 }));

        Assert.All(profile.Faces, face => Assert.All(face.AtLeastMm, Assert.Null));
        Assert.Equal(0, ReachedDepth.Of(profile, 6).Share.Value);
    }

    [Fact]
    public void Wood_beside_a_corner_counts_as_reached_by_what_the_other_face_let_in()
    {
        // Faces of 30 mm between bands of 9.5 mm: a front is seen along 11 mm of them.
        var profile = DrawnReading.Profile(
            DrawnReading.Of(HalfThrough with { DepthMm = along => along is < 120 or (> 150 and < 270) ? 9.5 : 7 })
        );

        var judged = PieceConformity.Judge(new LeastDepth(WoodZone.Lateral, 5, 0.9), profile, DecisionRule.Usual);
        Assert.Equal(Verdict.Conforms, judged.Verdict);
        Assert.Equal(
            Verdict.DoesNotConform,
            PieceConformity.Judge(new LeastDepth(WoodZone.Lateral, 9, 0.9), profile, DecisionRule.Usual).Verdict
        );
    }
}
