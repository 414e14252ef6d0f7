using Alburnum.Requirements;

namespace Alburnum.Tests.Requirements;

public class UsualReachTests
{
    private static readonly UsualReach Reach = new([
        new(1, false, 25, Rows.Published),
        new(3, false, 0, Rows.Published),
    ]);

    [Theory]
    [InlineData(null, ReachVerdict.Unlikely)]
    [InlineData(true, ReachVerdict.Unlikely)]
    [InlineData(false, ReachVerdict.Likely)]
    public void What_is_asked_of_heartwood_counts_only_where_heartwood_may_reach_a_face(
        bool? hasHeartwoodAtFace,
        ReachVerdict verdict
    )
    {
        var demanded = new AllOf([new ShareOfZone(WoodZone.Sapwood, 1), new LeastDepth(WoodZone.ExposedHeartwood, 6)]);

        Assert.Equal(verdict, Reach.Judge(demanded, Rows.Pine, isIncised: false, hasHeartwoodAtFace));
    }
}
