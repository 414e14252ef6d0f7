using Alburnum.Requirements;

namespace Alburnum.Tests.Requirements;

public sealed class MarkCatalogueTests
{
    private static readonly Provenance Invented = new(Standing.CommonPractice, "common practice", "", "", "");

    private static readonly MarkCatalogue Marks = new(
        [Mark("AB", "north"), Mark("U1", "west"), Mark("U1", "east"), Mark("H4", "south"), Mark("HC4", "past")],
        [
            new(["NTR"], "", ["north"], ["north-1"]),
            new(["W"], "", ["west"], ["west-1"]),
            new(["use class"], "U", ["east"], []),
            new(["S"], "", ["south"], ["south-1"]),
            new(["T"], "", ["south"], ["south-2"]),
            new(["hazard class"], "H", ["south"], ["south-1"]),
            new(["hazard class"], "HC", ["past"], []),
        ]
    );

    [Theory]
    [InlineData("NTR AB", "AB")]
    [InlineData("ntr ab", "AB")]
    [InlineData("AB NTR", "AB")]
    [InlineData("A B", "AB")]
    [InlineData("W U1", "U1")]
    public void A_class_is_written_without_the_words_that_name_its_system(string name, string written) =>
        Assert.Equal(written, Marks.AsRulebooksWrite(name, []));

    [Theory]
    [InlineData("use class 1")]
    [InlineData("S H4")]
    [InlineData("hazard class 4")]
    [InlineData("NTR U1")]
    [InlineData("NP7")]
    public void A_class_that_another_system_s_rulebook_could_answer_stays_as_it_was_written(string name) =>
        Assert.Equal(name, Marks.AsRulebooksWrite(name, []));

    [Fact]
    public void The_rulebook_asked_decides_between_systems()
    {
        var south = new Rulebook([])
        {
            Name = "south-1",
            Title = "south",
            Document = "Invented",
            Edition = "1",
        };

        Assert.Equal("H4", Marks.AsRulebooksWrite("hazard class 4", [south]));
        Assert.Equal("H4", Marks.AsRulebooksWrite("S H4", [south]));
    }

    [Fact]
    public void A_mark_with_its_system_is_found_in_that_system_alone()
    {
        Assert.Equal(["east"], Marks.Find("use class 1").Select(mark => mark.System));
        Assert.Equal(["west", "east"], Marks.Find("U1").Select(mark => mark.System));
        Assert.Equal(["south", "past"], Marks.Find("hazard class 4").Select(mark => mark.System));
        Assert.Equal(["west"], Marks.Find("U1 W").Select(mark => mark.System));
        Assert.Empty(Marks.Find("1 use class"));
    }

    [Fact]
    public void A_class_with_its_system_before_it_is_that_of_its_rulebooks()
    {
        var meant = Marks.Meant("S H4")!;

        Assert.Equal("H4", meant.Bare);
        Assert.Equal(["south-1"], meant.Rulebooks);
        Assert.Null(Marks.Meant("H4")!.Bare);
        Assert.Equal(["S H4", "T H4"], Marks.Meant("H4")!.WrittenOut);
        Assert.Null(Marks.Meant("NP7"));
    }

    [Theory]
    [InlineData("UC4", UseClass.Four, null)]
    [InlineData("use class 4", UseClass.Four, null)]
    [InlineData("3u", UseClass.ThreeOne, false)]
    [InlineData("UC3c", UseClass.ThreeOne, true)]
    public void A_use_class_is_known_by_any_of_its_names(string name, UseClass first, bool? isCoated)
    {
        MarkCatalogue marks = new(
            [
                Mark("UC4", "EN 335") with
                {
                    UseClass = UseClass.Four,
                },
                Mark("3u", "EN 335"),
                Mark("UC3c", "EN 335"),
                Mark("U4", "other"),
            ],
            [new(["use class"], "UC", ["EN 335"], [])],
            "EN 335"
        );
        var meant = marks.Meant(name)!;

        Assert.Equal((first, isCoated), (meant.UseClasses[0], meant.IsCoated));
        Assert.Empty(marks.Meant("U4")!.UseClasses);
    }

    private static TreatmentMark Mark(string name, string system) => new(name, system, "invented", null, Invented);
}
