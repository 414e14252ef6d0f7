using Alburnum.Flow.Pieces;
using Alburnum.Flow.Tests;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Heating;
using Alburnum.Timber;

namespace Alburnum.OutsideChecks.Impregnation;

/// <summary>How fast steam warms a sawn section, against the closed form and against trials.</summary>
[Computed]
public sealed class HeatingTimeChecks
{
    private const double InchMm = 25.4;

    [Theory]
    [InlineData(50, 150, 30)]
    [InlineData(100, 100, 90)]
    [InlineData(150, 150, 240)]
    [Published("Wood Handbook (FPL-GTR-190, 2010)", "equation 20-4, after MacLean 1932")]
    public void The_middle_of_a_section_in_steam_is_as_warm_as_the_closed_form_says(
        double widthMm,
        double heightMm,
        double minutes
    )
    {
        var wood = new WoodHeat(450, 20);
        var alpha = wood.ConductivityWPerMK(0) / wood.WallsJPerM3K;
        double left = 0;
        for (var m = 1; m < 60; m += 2)
        for (var n = 1; n < 60; n += 2)
        {
            var decay =
                Math.Pow(Math.PI, 2) * alpha * 60 * minutes * (Square(m / widthMm) + Square(n / heightMm)) * 1e6;
            left +=
                16
                / (Math.PI * Math.PI * m * n)
                * Math.Sin(m * Math.PI / 2)
                * Math.Sin(n * Math.PI / 2)
                * Math.Exp(-decay);
        }

        Assert.Equal(100 - (100 - 20) * left, Middle(widthMm, heightMm, wood, (20, 100), 0, minutes), 2.0);
    }

    // Boards and square timbers of five hardwoods, green, sizes in inches as measured: minutes until the middle reached 56 °C in saturated steam of 71 °C,
    // from 16 °C; the least and the greatest of the five woods.
    [Theory]
    [InlineData(1, 6, 12, 14)]
    [InlineData(1.5, 6, 26, 29)]
    [InlineData(2, 6, 46, 50)]
    [InlineData(3, 3, 51, 61)]
    [InlineData(4, 4, 100, 115)]
    [InlineData(6, 6, 226, 265)]
    [Published("Wood Handbook (FPL-GTR-190, 2010)", "table 20-4, wet-bulb depression of 0")]
    public void Green_timber_takes_as_long_to_warm_through_as_in_trials_within_a_third(
        double widthInches,
        double heightInches,
        double leastMinutes,
        double mostMinutes
    )
    {
        // Specific gravity and moisture of green hardwood in the middle of those tried: the time hardly depends on either.
        var wood = new WoodHeat(480, 30);
        double low = 1,
            high = 1000;
        while (high / low > 1.02)
        {
            var middle = Math.Sqrt(low * high);
            if (Middle(widthInches * InchMm, heightInches * InchMm, wood, (15.6, 71.1), 0.5, middle) < 55.6)
                low = middle;
            else
                high = middle;
        }

        Assert.InRange(high, leastMinutes / 1.33, mostMinutes * 1.33);
    }

    private static double Square(double x) => x * x;

    // Temperature in the middle of the section after so many minutes in steam, °C.
    private static double Middle(
        double widthMm,
        double heightMm,
        WoodHeat wood,
        (double Wood, double Steam) celsius,
        double waterShare,
        double minutes
    )
    {
        var steam = new Stage(
            "steam",
            Contact.Air,
            minutes,
            Schedule.AtmosphereKPa,
            Schedule.AtmosphereKPa,
            celsius.Steam
        );
        var question = Questions.Of(new("steam", [steam]), waterShare) with
        {
            Section = new RectangularSection(widthMm, heightMm),
            Sapwood = Questions.Even(1e-20),
            Warming = new(wood, celsius.Wood, 20),
        };
        return SectionRun.Of(question, 60, cancellation: TestContext.Current.CancellationToken).MiddleCelsius!.Value;
    }
}
