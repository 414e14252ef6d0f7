using Alburnum.Requirements;
using static Alburnum.OutsideChecks.Requirements.Shipped;

namespace Alburnum.OutsideChecks.Requirements;

[Transcription]
public sealed class UseAndDurabilityChecks
{
    private static readonly Exposure Dry = new()
    {
        IsInSaltWater = false,
        TouchesGroundOrFreshWater = false,
        IsExposedToWeather = false,
        MayGetDamp = false,
    };

    [Fact]
    [Published("EN 335, 2013", "definitions of the use classes, at second hand")]
    public void Indoors_and_dry_is_use_class_1() => Assert.Equal([UseClass.One], Dry.UseClass().Classes);

    [Fact]
    [Published("EN 335, 2013", "definitions of the use classes, at second hand")]
    public void Under_cover_and_now_and_then_damp_is_use_class_2() =>
        Assert.Equal([UseClass.Two], (Dry with { MayGetDamp = true }).UseClass().Classes);

    [Fact]
    [Published("EN 335, 2013", "definitions of the use classes, at second hand")]
    public void Outdoors_above_ground_whether_water_stays_divides_3_1_from_3_2()
    {
        var outdoors = Dry with { IsExposedToWeather = true };
        Assert.Equal([UseClass.ThreeOne], (outdoors with { LetsWaterStay = false }).UseClass().Classes);
        Assert.Equal([UseClass.ThreeTwo], (outdoors with { LetsWaterStay = true }).UseClass().Classes);
        Assert.Equal(ExposureQuestion.WaterStays, (outdoors with { LetsWaterStay = true }).UseClass().DecidedBy);
    }

    [Fact]
    [Published("EN 335, 2006 and 2013", "classes 3.1 and 3.2, at second hand")]
    public void A_coating_no_longer_makes_class_3_1_and_the_trap_is_shown()
    {
        var coated = (Dry with { IsExposedToWeather = true, LetsWaterStay = true, IsCoated = true }).UseClass();
        Assert.Equal([UseClass.ThreeTwo], coated.Classes);
        Assert.Contains(
            Library.UseClassTraps,
            trap => trap.Sentence.Contains("since EN 335 of 2013", StringComparison.Ordinal)
        );
    }

    [Fact]
    [Published("EN 335, 2013", "definitions of the use classes, at second hand")]
    public void In_the_ground_is_use_class_4() =>
        Assert.Equal([UseClass.Four], (Dry with { TouchesGroundOrFreshWater = true }).UseClass().Classes);

    [Fact]
    [Published("EN 335, 2013", "definitions of the use classes, at second hand")]
    public void In_the_sea_is_use_class_5() =>
        Assert.Equal([UseClass.Five], (Dry with { IsInSaltWater = true }).UseClass().Classes);

    [Theory]
    [SecondSource]
    [Published("CTE DB SE-M, as transcribed publicly", "least durable class that is enough")]
    [InlineData(UseClass.One, 5)]
    [InlineData(UseClass.Two, 5)]
    [InlineData(UseClass.ThreeOne, 3)]
    [InlineData(UseClass.ThreeTwo, 3)]
    [InlineData(UseClass.Four, 2)]
    [InlineData(UseClass.Five, 1)]
    public void The_least_durable_class_that_is_enough_agrees_with_the_Spanish_reading(UseClass useClass, int expected)
    {
        Assert.All(
            Enumerable.Range(1, 5),
            durability =>
                SecondSource.IsAnother(Library.Durability.Verdict(durability, useClass).Provenance, "CTE DB SE-M")
        );
        Assert.Equal(
            expected,
            Enumerable
                .Range(1, 5)
                .Last(durability =>
                    Library.Durability.Verdict(durability, useClass).Value <= DurabilityVerdict.NormallyEnough
                )
        );
    }

    [Theory]
    [Transcription]
    [Published("Dutch description of durability classes", "years in the ground, at second hand")]
    [InlineData("jarrah", 1, 25, null)]
    [InlineData("sweet chestnut", 2, 15, 25)]
    [InlineData("European walnut", 3, 10, 15)]
    [InlineData("Norway spruce", 4, 5, 10)]
    [InlineData("European beech", 5, null, 5)]
    public void Years_in_the_ground_by_durability_class(string species, int durability, int? from, int? to)
    {
        var trial = Library.Durability.InGround(Library.Species.Get(species))!;
        Assert.Equal((durability, from, to), (trial.DurabilityClass, trial.FromYears, trial.ToYears));
    }
}
