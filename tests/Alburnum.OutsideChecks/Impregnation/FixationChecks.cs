using Alburnum.Impregnation.Fixing;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;

namespace Alburnum.OutsideChecks.Impregnation;

/// <summary>Times of fixation by the law that ships, against what others published.</summary>
[Computed]
public sealed class FixationChecks
{
    private static readonly FixationLaw Cca = new FactLibrary(Repository.At("data")).Fixation.Single(law =>
        law.Preservative == "cca"
    );

    [Theory]
    [Transcription]
    [Published(
        "Kazi and Cooper 2000, part II, abstract",
        "pre-exponential factors and activation energies at 1 and 3 %"
    )]
    [InlineData(1, 50, 0.18664)]
    [InlineData(1, 20, 6.636e-3)]
    [InlineData(1, 4, 8.332e-4)]
    [InlineData(3, 20, 4.404e-3)]
    public void The_rate_is_Arrhenius_with_the_published_figures(double strength, double celsius, double perHour) =>
        Assert.Equal(perHour, Cca.RatePerHour(strength, celsius), 5e-3 * perHour);

    [Theory]
    [Published("Kazi and Cooper 2000, part I, abstract", "about 1.7 h at room temperature, 25 min at 50 °C")]
    [InlineData(21, 1.7, 0.06)]
    [InlineData(50, 25 / 60.0, 0.06)]
    public void The_first_zone_takes_as_long_as_was_read_at_other_temperatures(
        double celsius,
        double hours,
        double share
    ) => Assert.Equal(hours, Cca.FirstZoneHours(celsius), share * hours);

    [Fact]
    [Published(
        "IRG/WP 3522, abstract",
        "red pine at 50 to 60 °C: chromium VI still found after 6 h, barely after 12 h"
    )]
    public void At_50_degrees_a_tenth_is_left_after_6_hours_and_a_few_per_cent_after_12()
    {
        // 50 °C is the cooler end of what was tried, and what takes longest there.
        Assert.InRange(1 - Cca.ShareAfter(1, 50, 6)!.Value, 0.05, 0.25);
        Assert.InRange(1 - Cca.ShareAfter(1, 50, 12)!.Value, 0.005, 0.08);
    }

    [Fact]
    [Published("recommendations for CCA facilities in Canada", "more than four or five months at 5 °C")]
    public void At_5_degrees_it_takes_months()
    {
        Assert.True(Cca.HoursTo(1, 5, 0.99) / 24 > 4 * 30, $"{Cca.HoursTo(1, 5, 0.99) / 24}");
        Assert.True(Cca.HoursTo(3, 5, 0.95) / 24 > 4 * 30, $"{Cca.HoursTo(3, 5, 0.95) / 24}");
    }

    [Fact]
    [Published("Wood Handbook, FPL-GTR-190, chapter 15", "weeks or months below 16 °C")]
    public void Below_16_degrees_it_takes_weeks() => Assert.InRange(Cca.HoursTo(1, 16, 0.99) / 24 / 7, 2, 26);

    [Fact]
    [Published(
        "Effects of CCA-C preservative retention and wood species, Wood and Fiber Science, abstract",
        "fixation of chromium takes the longer the more is in the wood"
    )]
    public void A_stronger_solution_fixes_more_slowly()
    {
        double[] hours = [.. new[] { 1.0, 1.5, 2, 2.5, 3 }.Select(strength => Cca.HoursTo(strength, 20, 0.95))];

        Assert.Equal(hours.Order(), hours);
        Assert.True(hours[^1] > 1.2 * hours[0], string.Join(", ", hours));
    }

    [Theory]
    [WorkedOut("hours to a share and the share after them are inverse to each other")]
    [InlineData(1, 4)]
    [InlineData(1.7, 20)]
    [InlineData(3, 50)]
    public void Hours_and_share_are_inverse(double strength, double celsius) =>
        Assert.Equal(0.95, Cca.ShareAfter(strength, celsius, Cca.HoursTo(strength, celsius, 0.95))!.Value, 1e-9);

    [Fact]
    [WorkedOut("the course of the first zone is not known")]
    public void Within_the_first_zone_nothing_is_said() => Assert.Null(Cca.ShareAfter(1, 4, 4));
}
