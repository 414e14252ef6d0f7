using Alburnum.Reports.Sheets;

namespace Alburnum.Reports.Tests.Sheets;

public sealed class SayTests
{
    [Theory]
    [InlineData(9.3456, 0.0873, "9.35 ± 0.09 mm")]
    [InlineData(9.3456, 0.31, "9.3 ± 0.3 mm")]
    [InlineData(9.3456, 0.14, "9.35 ± 0.14 mm")]
    [InlineData(12.3456, 2.4, "12 ± 2 mm")]
    [InlineData(12.3456, 1.2, "12.3 ± 1.2 mm")]
    public void A_measured_value_is_rounded_by_its_uncertainty(double value, double u, string expected) =>
        Assert.Equal(expected, Say.Measured(value, u, "mm"));

    [Theory]
    [InlineData(null, "not determined")]
    [InlineData(1.0, "over 99 %")]
    [InlineData(0.0, "under 1 %")]
    [InlineData(0.5, "50 %")]
    public void A_probability_never_claims_certainty(double? probability, string expected) =>
        Assert.Equal(expected, Say.Probability(probability));
}
