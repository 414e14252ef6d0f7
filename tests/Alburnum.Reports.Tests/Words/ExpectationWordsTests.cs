using Alburnum.Cases;
using Alburnum.Records.Facts;
using Alburnum.Reports.Words;
using Alburnum.Tests.Shared;
using Alburnum.Timber;

namespace Alburnum.Reports.Tests.Words;

public sealed class ExpectationWordsTests
{
    private static readonly Species Pine = new FactLibrary(Repository.At("data")).Species.Get("Scots pine");

    /// <summary>At least one remark of each kind, with how its sentence starts.</summary>
    internal static IReadOnlyList<(CaseRemark Remark, string Start)> Remarks { get; } =
    [
        (new NoDepthToReach(), "Nothing is predicted: the code demands no depth"),
        (new PermeabilityNotKnown(Pine, IsHeartwood: false), "Nothing is predicted: the permeability of the sapwood"),
        (new PermeabilityNotKnown(Pine, IsHeartwood: true), "Nothing is predicted: the permeability of the heartwood"),
        (new DensityNotKnown(Pine), "Nothing is predicted: the density of Scots pine"),
        (new SapwoodNotKnown(Pine), "Nothing is predicted: the usual width of the sapwood of Scots pine"),
        (
            new MeasuredOutsidePrediction(new(9, 0.4), new(12.5, 18, 24)),
            "The mean depth measured, 9.0 ± 0.4 mm, is less than the 12.5 to 24.0 mm"
        ),
        (
            new MeasuredOutsidePrediction(new(30, 0.4), new(12.5, 18, 24)),
            "The mean depth measured, 30.0 ± 0.4 mm, is more than the 12.5 to 24.0 mm"
        ),
    ];

    [Fact]
    public void Every_remark_has_its_sentence() =>
        Assert.All(
            Remarks,
            each => Assert.StartsWith(each.Start, ExpectationWords.Current.Say(each.Remark), StringComparison.Ordinal)
        );

    [Fact]
    public void No_kind_of_remark_is_left_out() =>
        Assert.Equal(
            typeof(CaseRemark).Assembly.GetTypes().Where(type => type.BaseType == typeof(CaseRemark)).ToHashSet(),
            Remarks.Select(each => each.Remark.GetType()).ToHashSet()
        );

    [Fact]
    public void A_mean_that_could_not_be_measured_is_not_determined() =>
        Assert.Equal("not determined", ExpectationWords.Current.MeasuredDepth(null, 0).Value);
}
