using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;
using Alburnum.Timber;

namespace Alburnum.Records.Tests.Facts;

/// <summary>Names as a consultant hears them, written down before the data that answers them was looked at.</summary>
public sealed class AsPeopleSayItTests
{
    private const string Timbers = """
        redwood; European redwood; whitewood; red deal; white deal; yellow deal; Baltic pine; Scots fir; Swedish redwood; Nordic spruce;
        Christmas tree; Sitka; British spruce; Irish spruce; Doug fir; Oregon pine; British Columbian pine; Columbian pine; Douglas-fir; larch;
        Siberian larch; Sibirische Lärche; Scottish larch; Kiefer; Fichte; Tanne; Lärche; Eiche; Buche; Robinie;
        Edelkastanie; furu; gran; tall; mänty; kuusi; fura; radiata; Monterey pine; NZ pine;
        pinus radiata; SYP; southern yellow pine; slash pine; loblolly; longleaf pine; ponderosa; sugar pine; Weymouth pine; yellow pine;
        hemlock; hem-fir; hem fir; SPF; spruce-pine-fir; Canadian SPF; lodgepole; jack pine; red pine; pitch pine;
        cedar; western red cedar; WRC; yellow cedar; Alaskan yellow cedar; Port Orford cedar; cedar of Lebanon; Japanese cedar; sugi; hinoki;
        cypress; Leylandii; macrocarpa; yew; redwood sequoia; coast redwood; sequoia; oak; green oak; European oak;
        English oak; French oak; American white oak; red oak; chestnut; sweet chestnut; horse chestnut; ash; beech; birch;
        sycamore; alder; poplar; aspen; willow; elm; lime; black locust; acacia; false acacia;
        teak; iroko; ipe; cumaru; bangkirai; balau; yellow balau; keruing; meranti; sapele;
        mahogany; greenheart; ekki; azobe; opepe; jarrah; karri; spotted gum; blackbutt; merbau
        """;

    private const string Components = """
        post; gate post; fence post; strainer post; straining post; stob; fencing stake; tree stake; arris rail; cant rail;
        featheredge board; feather edge; close board fencing; gravel board; kick board; fence panel; picket; pales; trellis; post and rail;
        sheep fence post; stock fence; deer fence; vineyard stake; hop pole; tomato stake; bean pole; gate; field gate; five bar gate;
        cattle grid; silage clamp wall; feed barrier; horse shelter; stable; field shelter; hen house; bird table; bird box; beehive;
        shed; garden shed; shed bearer; summerhouse; log cabin; greenhouse; raised bed; planter; compost bin; cold frame;
        garden bench; picnic table; pergola; gazebo; arbour; garden edging; log roll; railway sleeper; sleeper wall; steps;
        decking; deck board; joist; deck joist; decking subframe; deck post; newel post; handrail; baluster; spindle;
        boardwalk; footbridge; bridge deck; jetty; pontoon; pier; groyne; sea defence; pile; fender;
        mooring post; dock; lock gate; canal lock gate; revetment; retaining wall; crib wall; log wall; swing; climbing frame;
        playground equipment; sandpit; bollard; signpost; sign; telegraph pole; power pole; lamp post; crossarm; noise barrier;
        crash barrier; sleeper; railroad tie; bridge timber; rafter; purlin; roof truss; ridge board; wall plate; ceiling joist;
        floor joist; floorboard; sole plate; stud; batten; roof batten; tile batten; cladding; weatherboard; shingle;
        shake; fascia; soffit; bargeboard; window; window sill; door frame; front door; garage door; conservatory
        """;

    private static readonly FactLibrary Library = ShippedData.Library;

    private static IEnumerable<ComponentName> ComponentNames
    {
        get
        {
            var all = File.ReadLines(Path.Combine(Repository.At("data"), "component-names.yaml"))
                .Where(line => line.StartsWith("  - { name: ", StringComparison.Ordinal))
                .Select(line => line["  - { name: ".Length..line.IndexOf(", group", StringComparison.Ordinal)])
                .ToList();
            Assert.True(all.Count > 1900);
            return all.Select(name => Library.Components.Called(name.Trim('"'))!);
        }
    }

    [Fact]
    public void Nine_timber_names_in_ten_are_answered_or_asked_about() =>
        AssertNineInTen(Timbers, name => Library.Species.Find(name) is not NotFound<Species>);

    [Theory]
    [InlineData("Ayrshire oak", "European oak")]
    [InlineData("Bergkiefer", "mountain pine")]
    public void A_timber_named_after_where_it_grows_is_known(string name, string species) =>
        Assert.Equal(species, Assert.IsType<Found<Species>>(Library.Species.Find(name)).Value.Name);

    [Theory]
    [InlineData("Stützpfosten")]
    [InlineData("mud sill anchor")]
    [InlineData("cover strip")]
    public void A_part_that_is_several_things_or_none_of_timber_is_a_question(string name) =>
        Assert.IsType<Several<ComponentName>>(Library.Components.Find(name));

    [Fact]
    public void Nine_component_names_in_ten_are_answered_or_asked_about() =>
        AssertNineInTen(Components, name => Library.Components.Find(name) is not NotFound<ComponentName>);

    [Theory]
    [InlineData("C16")]
    [InlineData("C24")]
    [InlineData("D30")]
    [InlineData("MGP10")]
    [InlineData("blue gum")]
    [InlineData("red pine")]
    [InlineData("poplar")]
    public void A_strength_class_or_a_word_of_two_timbers_is_a_question(string name)
    {
        var question = Assert.IsType<Several<Species>>(Library.Species.Find(name));
        Assert.True(question.Names.Count > 1);
        Assert.NotEmpty(question.Decides);
    }

    [Theory]
    [InlineData("GL24")]
    [InlineData("GL28c")]
    public void A_strength_class_of_glulam_is_no_species(string name) =>
        Assert.Equal(TimberKind.Glued, Assert.IsType<NoSpecies>(Library.Species.Find(name)).Timber.Kind);

    [Fact]
    public void Every_question_offers_two_names_that_answer_it()
    {
        Assert.All(
            ComponentNames.Where(name => name.IsQuestion),
            question =>
            {
                Assert.True(question.Meanings.Count > 1, question.Name);
                Assert.NotEmpty(question.Decides);
                Assert.All(
                    question.Narrower,
                    each => Assert.IsType<Found<ComponentName>>(Library.Components.Find(each))
                );
            }
        );
    }

    [Fact]
    public void Every_name_says_where_it_stands_or_what_it_may_be() =>
        Assert.All(ComponentNames, name => Assert.True(name.Exposure.SaysWhere || name.Meanings.Count > 0, name.Name));

    [Theory]
    [InlineData("door cill")]
    [InlineData("newel post outdoors")]
    [InlineData("garden shed floor bearer")]
    [InlineData("playground swing post")]
    [InlineData("cattle crush rail")]
    [InlineData("cubicle division")]
    [InlineData("retaining wall pole")]
    public void A_plain_word_for_a_part_is_known(string name) =>
        Assert.IsType<Found<ComponentName>>(Library.Components.Find(name));

    [Theory]
    [InlineData("post and rail fence")]
    [InlineData("stringer")]
    [InlineData("fender")]
    [InlineData("log wall")]
    public void A_word_for_two_parts_is_a_question(string name) =>
        Assert.IsType<Several<ComponentName>>(Library.Components.Find(name));

    // Source: WoodSolutions, page "Ash, Victorian" (data/sources.yaml, victorian-ash): E. delegatensis and E. regnans.
    [Theory]
    [InlineData("Vic ash")]
    [InlineData("Victorian ash")]
    public void Victorian_ash_is_two_eucalypts(string name) =>
        Assert.Equal(
            ["alpine ash", "Australian mountain ash"],
            Library.Species.Meanings(name).Select(species => species.Name).Order(StringComparer.OrdinalIgnoreCase)
        );

    [Fact]
    public void A_tropical_hardwood_is_none_of_the_timbers_of_Europe() =>
        Assert.Empty(
            Library
                .Species.Meanings("tropical hardwood")
                .SelectMany(species => species.Genera)
                .Intersect(["Quercus", "Castanea", "Fagus"], StringComparer.Ordinal)
        );

    [Theory]
    [InlineData("IPPC", "mark on packing wood, ISPM 15")]
    [InlineData("IPPC HT", "mark on packing wood, ISPM 15")]
    [InlineData("CTB-B+", "French quality mark of treated timber")]
    [InlineData("AWPA C2", "American commodity standard of the C series, before the use categories")]
    [InlineData("NTR GRAN", "Nordic wood preservation class")]
    [InlineData("Gran NTR", "Nordic wood preservation class")]
    [InlineData("BS 5268-5", "British standard, older")]
    [InlineData("DIN 68800-1", "German standard")]
    [InlineData("DIN 68800-2", "German standard")]
    [InlineData("DIN 68800-3", "German standard")]
    [InlineData("DIN 68800-4", "German standard")]
    [InlineData("EN 335-3", "European standard")]
    [InlineData("DIN EN 335-3", "European standard")]
    [InlineData("DIN 68800 GK3", "German use class, DIN 68800")]
    [InlineData("DIN 68800 Gebrauchsklasse 3", "German use class, DIN 68800")]
    [InlineData("EN 335 UC3", "European use class, EN 335")]
    [InlineData("EN 335 use class 3", "European use class, EN 335")]
    public void A_mark_is_known_by_its_system(string mark, string system) =>
        Assert.Equal(system, Assert.Single(Library.Marks.Find(mark)).System);

    [Theory]
    [InlineData("EN 335-1")]
    [InlineData("EN 335-2")]
    [InlineData("EN 335-3")]
    [InlineData("EN 335-4")]
    [InlineData("DIN 68800-3")]
    [InlineData("DIN 68800-5")]
    public void The_part_of_a_standard_is_no_use_class(string mark)
    {
        Assert.DoesNotContain(Library.Marks.Find(mark), known => known.UseClass is not null);
        Assert.Empty(Library.Marks.Meant(mark)?.UseClasses ?? []);
    }

    [Fact]
    public void Gran_is_both_a_timber_and_a_class()
    {
        Assert.Equal("Norway spruce", Assert.Single(Library.Species.Meanings("GRAN")).Name);
        Assert.Equal("Nordic wood preservation class", Assert.Single(Library.Marks.Find("GRAN")).System);
    }

    [Theory]
    [InlineData("Scots pine sapwood", "Scots pine")]
    [InlineData("unsorted Russian redwood", "Scots pine")]
    public void A_word_of_sorting_does_not_hide_a_timber(string name, string species) =>
        Assert.Equal(species, Assert.IsType<Found<Species>>(Library.Species.Find(name)).Value.Name);

    [Theory]
    [InlineData("C24 carcassing")]
    [InlineData("treated pine")]
    public void A_grade_with_a_word_of_sorting_is_still_a_question(string name) =>
        Assert.IsType<Several<Species>>(Library.Species.Find(name));

    [Theory]
    [InlineData("acetylated wood")]
    [InlineData("heat-treated wood")]
    [InlineData("furfurylated wood")]
    [InlineData("acetylated")]
    [InlineData("heat-treated")]
    [InlineData("furfurylated")]
    public void A_kind_offered_in_place_of_a_brand_is_known(string name)
    {
        Assert.Equal(TimberKind.Modified, Assert.IsType<NoSpecies>(Library.Species.Find(name)).Timber.Kind);
        Assert.Contains("brand names are not kept", EnquiryFields.Species.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bottom_plate_is_a_question() =>
        Assert.IsType<Several<ComponentName>>(Library.Components.Find("bottom plate"));

    [Fact]
    public void Whether_a_compost_bin_stands_on_the_soil_is_asked()
    {
        var bin = Assert.IsType<Found<ComponentName>>(Library.Components.Find("compost bin")).Value;

        Assert.Null(bin.Exposure.TouchesGroundOrFreshWater);
    }

    [Theory]
    [InlineData("joist end")]
    [InlineData("sash")]
    [InlineData("conservatory")]
    [InlineData("newel")]
    [InlineData("greenhouse")]
    [InlineData("silage clamp")]
    [InlineData("cattle crush")]
    [InlineData("fruit stake")]
    [InlineData("slurry store boards")]
    [InlineData("closeboard fence")]
    public void A_short_name_of_a_component_is_known(string name) =>
        Assert.IsType<Found<ComponentName>>(Library.Components.Find(name));

    [Theory]
    [InlineData("leyland", "Leyland cypress")]
    [InlineData("lawson", "Lawson cypress")]
    public void A_cypress_goes_by_the_first_word_of_its_name(string name, string species) =>
        Assert.Equal(species, Assert.IsType<Found<Species>>(Library.Species.Find(name)).Value.Name);

    [Fact]
    public void A_borax_gel_is_a_remedial_boron_and_an_azole_alone_is_a_question()
    {
        Assert.Equal(
            "boron rods",
            Assert.IsType<Found<Preservative>>(Library.Preservatives.Find("borax gel")).Value.Name
        );
        Assert.IsType<Several<Preservative>>(Library.Preservatives.Find("propiconazole"));
    }

    private static void AssertNineInTen(string names, Predicate<string> isKnown)
    {
        var all = names.Split([';', '\n'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        Assert.True(all.Length >= 120);
        var unknown = all.Where(name => !isKnown(name)).ToList();
        Assert.True(unknown.Count <= all.Length / 10, $"{unknown.Count} of {all.Length}: {string.Join(", ", unknown)}");
    }
}
