using Alburnum.DrawnSections;

namespace Alburnum.Imaging.Tests.Accuracy;

/// <summary>
/// Fronts with bays and fingers, haloes and unkind pictures: neither a lean nor a long tail to one side. Its limits were set on seeds 1 to 12 of each
/// stratum and are held on others.
/// </summary>
public sealed class AccuracyOfRaggedTests(RaggedRun run) : IClassFixture<RaggedRun>
{
    [Theory]
    [InlineData(Stratum.Easy, 0.1)]
    [InlineData(Stratum.Ordinary, 0.1)]
    [InlineData(Stratum.Hard, 0.15)]
    public void The_middle_error_leans_to_neither_side(Stratum stratum, double limitMm) =>
        Assert.InRange(run[stratum][run[stratum].Count / 2], -limitMm, limitMm);

    [Theory]
    [InlineData(Stratum.Easy, 0.1)]
    [InlineData(Stratum.Ordinary, 0.15)]
    [InlineData(Stratum.Hard, 0.35)]
    public void The_mean_error_leans_by_no_more_than_it_has(Stratum stratum, double limitMm) =>
        Assert.InRange(run[stratum].Average(), -limitMm, limitMm);

    [Theory]
    [InlineData(Stratum.Easy, 0.02)]
    [InlineData(Stratum.Ordinary, 0.025)]
    [InlineData(Stratum.Hard, 0.06)]
    public void Few_places_are_read_two_millimetres_wrong(Stratum stratum, double limitShare)
    {
        Assert.InRange(run[stratum].Average(error => error > 2 ? 1.0 : 0), 0, limitShare);
        Assert.InRange(run[stratum].Average(error => error < -2 ? 1.0 : 0), 0, limitShare);
    }
}
