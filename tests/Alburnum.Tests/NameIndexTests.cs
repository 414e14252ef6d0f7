using CsCheck;

namespace Alburnum.Tests;

public sealed class NameIndexTests
{
    private static readonly NameIndex<string[]> Woods = new(
        [
            ["Sitka spruce", "Picea sitchensis"],
            ["Norway spruce", "Picea abies"],
            ["ekki", "Lophira alata"],
            ["Scots pine", "redwood"],
            ["feather-edge board"],
            ["birch"],
            ["gran", "rødgran", "Grüne Fichte"],
            ["Douglas fir (Europe)", "Douglas fir"],
            ["Douglas fir (N America)", "Douglas fir"],
        ],
        names => names
    );

    [Theory]
    [InlineData("sitka SPRUCE")]
    [InlineData("Sitka-spruce")]
    [InlineData("  sitka   spruces ")]
    [InlineData("picea sitchensis")]
    public void Case_hyphens_plurals_and_spaces_do_not_matter(string asked) =>
        Assert.Equal("Sitka spruce", Found(asked));

    [Theory]
    [InlineData("featheredge board", "feather-edge board")]
    [InlineData("Birches", "birch")]
    [InlineData("rodgran", "gran")]
    [InlineData("grune fichte", "gran")]
    [InlineData("solid birch timber", "birch")]
    [InlineData("treated redwood", "Scots pine")]
    [InlineData("unsorted redwood sapwood", "Scots pine")]
    public void Spaces_plurals_foreign_letters_and_words_for_any_wood_do_not_matter(string asked, string name) =>
        Assert.Equal(name, Found(asked));

    [Fact]
    public void A_name_of_two_things_is_a_question() =>
        Assert.Equal(
            ["Douglas fir (Europe)", "Douglas fir (N America)"],
            Assert.IsType<Several<string[]>>(Woods.Find("Douglas-fir")).Names
        );

    [Fact]
    public void A_question_says_what_it_may_mean_and_what_decides()
    {
        var question = new Several<string>(["western red cedar", "cedar of Lebanon"], "Where it grew.");
        Assert.Equal(
            "the one that is meant: \"western red cedar\" or \"cedar of Lebanon\"; what decides: Where it grew",
            question.Expected("a species")
        );
    }

    [Theory]
    [InlineData("Stika spruce", "Sitka spruce")]
    [InlineData("norway spruse", "Norway spruce")]
    [InlineData("eki", "ekki")]
    [InlineData("spruce", "Sitka spruce")]
    [InlineData("spruce", "Norway spruce")]
    public void A_small_slip_or_part_of_a_name_brings_a_suggestion(string asked, string suggestion) =>
        Assert.Contains(suggestion, Assert.IsType<NotFound<string[]>>(Woods.Find(asked)).Suggestions);

    [Theory]
    [InlineData("granite")]
    [InlineData("")]
    [InlineData("---")]
    public void Something_quite_different_brings_none(string asked) =>
        Assert.Empty(Assert.IsType<NotFound<string[]>>(Woods.Find(asked)).Suggestions);

    [Fact]
    public void Any_text_at_all_is_answered() => Gen.String.Sample(text => Woods.Find(text) is not null);

    private static string Found(string asked) => Assert.IsType<Found<string[]>>(Woods.Find(asked)).Value[0];
}
