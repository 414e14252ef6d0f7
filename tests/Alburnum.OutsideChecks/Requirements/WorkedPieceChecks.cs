using Alburnum.Penetration;
using Alburnum.Requirements;
using Alburnum.Timber;
using static Alburnum.OutsideChecks.Requirements.Shipped;

namespace Alburnum.OutsideChecks.Requirements;

/// <summary>Pieces held against the demand that a shipped rulebook makes of them.</summary>
[Computed]
public sealed class WorkedPieceChecks
{
    private const string Manual = "MO-312 wood protection manual";

    [Theory]
    [Published(Manual, "penetration of round timber, southern pine poles")]
    [InlineData(2.8, 0.92, Verdict.Conforms)]
    [InlineData(2.8, 0.88, Verdict.DoesNotConform)]
    public void A_southern_pine_pole_passes_by_depth_or_by_share(double depthIn, double share, Verdict expected) =>
        Assert.Equal(expected, Judge(PoleOf("southern pine"), Core(depthIn, share)));

    [Theory]
    [Published(Manual, "penetration of round timber, coastal Douglas-fir poles")]
    [InlineData(0.80, 0.80, Verdict.DoesNotConform)]
    [InlineData(0.80, 0.90, Verdict.Conforms)]
    public void A_coastal_Douglas_fir_pole_must_pass_by_both(double depthIn, double share, Verdict expected) =>
        Assert.Equal(expected, Judge(PoleOf("Douglas fir (N America)"), Core(depthIn, share)));

    [Theory]
    [Published("BS 8417, 2011+A1:2014", "75 % of the exposed heartwood zone, at second hand")]
    [InlineData(70, Verdict.DoesNotConform)]
    [InlineData(80, Verdict.Conforms)]
    public void Exposed_heartwood_of_a_pine_post_must_be_reached_over_three_quarters_of_a_face(
        int percent,
        Verdict expected
    )
    {
        var heartwood = Assert
            .IsType<AllOf>(
                Demand("british-2014", Sawn("Scots pine", UseClass.Four, 30, exposedHeartwood: true)).Penetration
            )
            .Parts.OfType<LeastDepth>()
            .Single();
        var face = HandReadings.Profile(
            new RectangularSection(100, 100),
            [
                .. from side in Enumerable.Range(1, 4)
                from at in Enumerable.Range(0, 100)
                select new HandReading(side, at, at < percent ? 9 : 0, 0.3, 0),
            ]
        );
        Assert.Equal(expected, Judge(heartwood, face));
    }

    [Theory]
    [Published("New Zealand hazard class rules", "unpenetrated heartwood, at second hand")]
    [InlineData(0.18, Verdict.Conforms)]
    [InlineData(0.22, Verdict.DoesNotConform)]
    public void A_New_Zealand_piece_may_keep_under_a_fifth_of_untreated_heartwood(double untreated, Verdict expected)
    {
        var limit = Assert
            .IsType<AllOf>(
                Demand(
                    "new-zealand-hazard-classes",
                    new Enquiry { StatedClass = "H4", Form = TimberForm.Sawn }
                ).Penetration
            )
            .Parts.OfType<UntreatedHeartwoodLimit>()
            .Single();
        // Fronts from opposite faces meet 60 % of the way, so what is left lies 40 % of the way across and of the side.
        var piece = HandReadings.Profile(
            new RectangularSection(100, 100),
            [.. Enumerable.Range(1, 4).Select(side => new HandReading(side, 50, 30, 0.5, 0))]
        ) with
        {
            TreatedShare = new Estimate(1 - untreated, 0.005),
        };
        Assert.Equal(expected, Judge(limit, piece));
    }

    private static Verdict Judge(DepthRule rule, DepthProfile profile) =>
        PieceConformity.Judge(rule, profile, DecisionRule.Usual, DepthReading.Minimum).Verdict;

    private static DepthRule PoleOf(string species) =>
        Demand(
            "american-round",
            new Enquiry
            {
                Component = Library.Components.Get("utility pole"),
                Species = Library.Species.Get(species),
                Section = new RoundSection(300),
            }
        ).Penetration;

    private static DepthProfile Core(double depthIn, double shareOfSapwood) =>
        HandReadings.Profile(new RoundSection(300), [new(1, 0, depthIn * 25.4, 0, depthIn * 25.4 / shareOfSapwood)]);
}
