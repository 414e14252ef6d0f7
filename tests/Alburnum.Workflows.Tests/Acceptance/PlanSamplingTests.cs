using Alburnum.Acceptance;
using Alburnum.Acceptance.Indexed;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;
using Alburnum.Workflows.Acceptance;
using CsCheck;

namespace Alburnum.Workflows.Tests.Acceptance;

public sealed class PlanSamplingTests
{
    private static readonly AttributeTables Tables = new FactLibrary(Repository.At("data")).Sampling.Tables;
    private static readonly RiskPoints Risks = new(0.05, 0.05, 0.25, 0.1);

    private static PlannedSample Planned(SamplingRequest request) => PlanSampling.Plan(request, Tables);

    [Fact]
    public void Every_plan_cuts_pieces_of_the_lot_each_once() =>
        Gen.Select(Gen.Enum<RiskPlan>(), Gen.Int[100, 5000], Gen.ULong)
            .Sample(
                (kind, lot, seed) =>
                {
                    var sample = Planned(new SampleForRisks(kind, Risks, lot, seed));

                    return sample.Positions.Count == sample.Plan.MostPiecesCut
                        && sample.Positions.Distinct().Count() == sample.Positions.Count
                        && sample.Positions.All(piece => piece >= 1 && piece <= lot);
                },
                iter: 100
            );

    [Fact]
    public void A_seed_draws_the_same_pieces_again()
    {
        var request = new SampleByShare(new(0.75), 8, InspectionLevel.II, 120, 7);

        Assert.Equal(Planned(request).Positions, Planned(request).Positions);
        Assert.NotEqual(Planned(request).Positions, Planned(request with { Seed = 8 }).Positions);
    }

    [Fact]
    public void Without_a_lot_no_pieces_are_named() =>
        Assert.Empty(Planned(new SampleForRisks(RiskPlan.Smallest, Risks, null, 7)).Positions);

    [Fact]
    public void A_plan_of_the_tables_is_read_in_three_ways()
    {
        var sample = Planned(new SampleByTables(500, InspectionLevel.II, 10, Severity.Normal, 7));

        Assert.Equal(50, sample.Positions.Count);
        Assert.Equal(
            [PlanReading.IndexedOnThisLot, PlanReading.IndexedOnStandardSupply, PlanReading.ShareOnThisLot],
            sample.Behaviours.Select(behaviour => behaviour.Reading)
        );
    }

    [Fact]
    public void A_share_stands_beside_the_plan_of_its_figure_where_the_tables_have_one()
    {
        Assert.Equal(25, Planned(new SampleByShare(new(0.75), 8, InspectionLevel.II, 120, 7)).Indexed!.AqlPercent);
        Assert.Null(Planned(new SampleByShare(new(0.77), 8, InspectionLevel.II, 120, 7)).Indexed);
        Assert.Null(Planned(new SampleByShare(new(0.75), 8, InspectionLevel.II, null, 7)).Indexed);
    }

    [Fact]
    public void A_lot_smaller_than_a_plan_by_variables_measures_is_told_so()
    {
        var needed = Planned(new SampleForRisks(RiskPlan.Variables, Risks, null, 7)).Plan.MostPiecesCut;

        Assert.Equal(
            new InputProblem(
                "--lot",
                0,
                "",
                "",
                $"{needed - 1}",
                $"at least the {needed} pieces that this plan measures"
            ),
            Refused(new SampleForRisks(RiskPlan.Variables, Risks, needed - 1, 7))
        );
        Assert.Equal(needed, Planned(new SampleForRisks(RiskPlan.Variables, Risks, needed, 7)).Positions.Count);
    }

    [Fact]
    public void A_lot_with_more_failures_than_may_fail_shows_nothing() =>
        Assert.Equal(
            new InputProblem(
                "--failures",
                0,
                "",
                "",
                "20",
                "fewer: even the whole lot cannot show that 90 % conform with so many failures"
            ),
            Refused(new SampleToShow(0.9, 0.95, 20, 100, 7))
        );

    [Fact]
    public void A_lot_or_an_aql_that_the_tables_do_not_have_is_refused()
    {
        Assert.Equal("--lot", Refused(new SampleByTables(1, InspectionLevel.II, 10, Severity.Normal, 7)).File);
        Assert.Equal("--aql", Refused(new SampleByTables(500, InspectionLevel.II, 3, Severity.Normal, 7)).File);
    }

    [Fact]
    public void Showing_with_the_failures_borne_is_what_the_plan_accepts()
    {
        var plan = Assert.IsType<SingleSamplingPlan>(Planned(new SampleToShow(0.75, 0.95, 1, 500, 7)).Plan);

        Assert.Equal(1, plan.AcceptanceNumber);
        Assert.True(LotShare.LowerBound(plan.SampleSize - 1, plan.SampleSize, 500, 0.95) >= 0.75);
        Assert.True(LotShare.LowerBound(plan.SampleSize - 2, plan.SampleSize - 1, 500, 0.95) < 0.75);
    }

    [Theory]
    [InlineData(RiskPlan.Smallest)]
    [InlineData(RiskPlan.Double)]
    [InlineData(RiskPlan.Sequential)]
    [InlineData(RiskPlan.Variables)]
    public void Shares_too_close_to_be_told_apart_are_refused_at_once(RiskPlan plan) =>
        Assert.Equal("--reject", Refused(new SampleForRisks(plan, new(0.05, 0.05, 0.05001, 0.1), null, 7)).File);

    [Fact]
    public void Measured_values_cannot_show_that_more_than_half_fails() =>
        Assert.Equal(
            "at most 50 % for a plan by measured values",
            Refused(new SampleForRisks(RiskPlan.Variables, new(0.0001, 0.05, 0.99, 0.1), null, 7)).Expected
        );

    private static InputProblem Refused(SamplingRequest request) =>
        Assert.Single(Assert.Throws<InputRefusedException>(() => PlanSampling.Plan(request, Tables)).Problems);
}
