using Alburnum.Requirements;
using CsCheck;

namespace Alburnum.Tests.Requirements;

public sealed class ConditionTests
{
    private static readonly Gen<Between> Ranges =
        from ends in Gen.Int[0, 12].Array[2]
        from isOpen in Gen.Bool.Array[2]
        from includes in Gen.Bool.Array[2]
        select new Between(
            Field.Thickness,
            isOpen[0] ? double.NegativeInfinity : ends.Min(),
            includes[0],
            isOpen[1] ? double.PositiveInfinity : ends.Max(),
            includes[1]
        );

    /// <summary>The plain twin: tries the ends and everything between in small steps.</summary>
    [Fact]
    public void A_range_fits_as_trying_every_number_says() =>
        (
            from range in Ranges
            from ends in Gen.Int[0, 12].Array[2]
            select (range, Low: ends.Min(), High: ends.Max())
        ).Sample(
            each =>
            {
                var numbers = Enumerable
                    .Range(0, (each.High - each.Low) * 4 + 1)
                    .Select(step => each.Low + step / 4.0)
                    .ToList();
                var hits = numbers.Count(each.range.Contains);
                var expected =
                    hits == numbers.Count ? Fit.Yes
                    : hits == 0 ? Fit.No
                    : Fit.Unsure;
                return each.range.Of(Known.Number(each.Low, each.High)) == expected;
            },
            iter: 20_000
        );

    [Fact]
    public void Two_possible_words_of_which_one_fits_leave_it_open()
    {
        var condition = new OneOf(Field.UseClass, ["3.1"]);
        Assert.Equal(Fit.Unsure, condition.Of(Known.OneOfThese(["3.1", "3.2"])));
        Assert.Equal(Fit.Yes, condition.Of(Known.Word("3.1")));
        Assert.Equal(Fit.No, condition.Of(Known.Word("4")));
        Assert.Equal(Fit.Unsure, condition.Of(default));
    }

    [Fact]
    public void A_species_in_several_groups_fits_by_any_of_them()
    {
        var condition = new OneOf(Field.SpeciesGroup, ["pine"]);
        Assert.Equal(Fit.Yes, condition.Of(Known.AllOfThese(["softwood", "pine"])));
        Assert.Equal(Fit.No, condition.Of(Known.AllOfThese([])));
    }
}
