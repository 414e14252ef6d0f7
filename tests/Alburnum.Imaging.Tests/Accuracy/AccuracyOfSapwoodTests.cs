using Alburnum.DrawnSections;

namespace Alburnum.Imaging.Tests.Accuracy;

/// <summary>Sections on which nothing is treated, drawn with known truth.</summary>
/// <remarks>Where what was sprayed is named, the limits were set on other seeds; where it is not, and of how many are measured, on these: docs/science/accuracy.md gives seeds that none was set on.</remarks>
public sealed class AccuracyOfSapwoodTests(SapwoodRun run) : IClassFixture<SapwoodRun>
{
    public static TheoryData<SapwoodKind, bool> All { get; } =
        new(Enum.GetValues<SapwoodKind>().SelectMany(kind => ((bool[])[true, false]).Select(named => (kind, named))));

    public static TheoryData<SapwoodKind, bool> WithHeartwood { get; } =
        new(
            ((SapwoodKind[])[SapwoodKind.Bare, SapwoodKind.IndicatorOnly, SapwoodKind.HeartwoodReagent]).SelectMany(
                kind => ((bool[])[true, false]).Select(named => (kind, named))
            )
        );

    [Theory]
    [MemberData(nameof(All))]
    public void Neither_heartwood_nor_sapwood_passes_for_treated_wood(SapwoodKind kind, bool isNamed) =>
        // What was sprayed must be known for that: without it, one of these 24 still passes.
        Assert.InRange(run[kind, isNamed].Count(score => score.IsTakenForTreated), 0, isNamed ? 0 : 1);

    [Theory]
    [MemberData(nameof(WithHeartwood))]
    public void Sapwood_is_measured_where_the_heartwood_is_in_sight(SapwoodKind kind, bool isNamed) =>
        Assert.InRange(run[kind, isNamed].Average(score => score.Sapwood is null ? 0.0 : 1), isNamed ? 0.8 : 0.6, 1);

    [Theory]
    [MemberData(nameof(WithHeartwood))]
    public void Its_share_lies_within_its_uncertainty(SapwoodKind kind, bool isNamed)
    {
        var measured = run[kind, isNamed].Select(score => score.Sapwood).OfType<SapwoodMeasured>().ToList();

        Assert.InRange(measured.Average(each => each.IsShareHeld ? 1.0 : 0), 0.9, 1);
        Assert.InRange(measured.Average(each => each.Share.StandardUncertainty), 0.002, 0.03);
    }

    [Theory]
    [InlineData(SapwoodKind.AllSapwood)]
    [InlineData(SapwoodKind.AllSapwoodIndicator)]
    public void Where_there_is_no_heartwood_none_is_invented(SapwoodKind kind) =>
        Assert.DoesNotContain(run[kind, true].Concat(run[kind, false]), score => score.Sapwood is not null);
}
