using System.Globalization;
using Alburnum.Penetration;
using Alburnum.Reports.Words;
using CsCheck;

namespace Alburnum.Reports.Tests.Words;

public sealed class FiguresTests
{
    [Theory]
    [InlineData(9.3456, 0.0873, "9.35 ± 0.09 mm")]
    [InlineData(9.3456, 0.31, "9.3 ± 0.3 mm")]
    [InlineData(9.3456, 0.14, "9.35 ± 0.14 mm")]
    [InlineData(12.3456, 2.4, "12 ± 2 mm")]
    [InlineData(12.3456, 1.2, "12.3 ± 1.2 mm")]
    public void A_measured_value_is_rounded_by_its_uncertainty(double value, double u, string expected) =>
        Assert.Equal(expected, Figures.Measured(value, u, "mm"));

    [Fact]
    public void A_measured_value_may_stand_where_its_unit_is_said_elsewhere() =>
        Assert.Equal("9.3 ± 0.3", Figures.Measured(9.3456, 0.31, ""));

    [Theory]
    [InlineData(null, "not determined")]
    [InlineData(1.0, "over 99.9 %")]
    [InlineData(0.9996, "over 99.9 %")]
    [InlineData(0.993, "99.3 %")]
    [InlineData(0.5, "50 %")]
    [InlineData(0.007, "0.7 %")]
    [InlineData(0.0, "under 0.1 %")]
    public void A_probability_never_claims_certainty(double? probability, string expected) =>
        Assert.Equal(expected, Figures.Certainty(probability));

    [Theory]
    [InlineData(0.9496, "94.9 %")]
    [InlineData(0.9499999, "94.9 %")]
    [InlineData(0.95, "95 %")]
    [InlineData(0.9503, "95.1 %")]
    [InlineData(0.0504, "5.1 %")]
    [InlineData(0.05, "5 %")]
    [InlineData(0.0496, "4.9 %")]
    public void A_probability_is_not_rounded_past_the_limit_of_decision(double probability, string expected)
    {
        Assert.Equal(expected, Figures.Certainty(probability));
        var shown = double.Parse(expected[..^2], CultureInfo.InvariantCulture) / 100;
        Assert.Equal(DecisionRule.Usual.Decide(probability), DecisionRule.Usual.Decide(shown));
    }

    [Fact]
    public void No_probability_that_is_written_calls_for_another_verdict_than_the_one_that_was_found() =>
        Gen.Double[0.001, 0.999]
            .Sample(probability =>
                DecisionRule.Usual.Decide(
                    double.Parse(Figures.Certainty(probability)[..^2], CultureInfo.InvariantCulture) / 100
                ) == DecisionRule.Usual.Decide(probability)
            );

    [Theory]
    [InlineData(0.7496, "74.9 %")]
    [InlineData(0.7504, "75.1 %")]
    [InlineData(0.75, "75 %")]
    [InlineData(0.7396, "74 %")]
    public void A_share_is_not_rounded_to_what_it_is_held_against(double share, string expected) =>
        Assert.Equal(expected, Figures.Percent(share, limit: 0.75));

    [Theory]
    [InlineData(0.0, "0 %", "0 %")]
    [InlineData(0.0004, "under 0.1 %", "under 1 %")]
    [InlineData(0.126, "12.6 %", "13 %")]
    [InlineData(0.9996, "over 99.9 %", "over 99 %")]
    [InlineData(1.0, "100 %", "100 %")]
    public void A_share_is_all_or_nothing_only_where_it_is(double share, string toTenths, string whole)
    {
        Assert.Equal(toTenths, Figures.Percent(share));
        Assert.Equal(whole, Figures.WholePercent(share));
    }

    [Fact]
    public void Digits_are_as_many_as_the_number_has_and_no_more_than_asked()
    {
        Assert.Equal(["12", "6.8", "6.82", "6.824"], [Figures.Digits(12), .. Enumerable.Range(1, 3).Select(Rounded)]);
        Assert.Equal("6.82 mm", Figures.Mm(6.8235));
        Assert.Equal("14.2 kg/m³", Figures.KgPerM3(14.2));

        static string Rounded(int most) => Figures.Digits(6.8235, most);
    }

    [Theory]
    [InlineData(0.00215, "0.00215")]
    [InlineData(0.0021501, "0.00216")]
    [InlineData(5, "5")]
    [InlineData(5e-4, "0.0005")]
    [InlineData(1234.5, "1235")]
    public void A_limit_is_rounded_up_alone(double limit, string written) =>
        Assert.Equal(written, Figures.Limit(limit));
}
