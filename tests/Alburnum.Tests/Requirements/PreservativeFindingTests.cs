using Alburnum.Requirements;

namespace Alburnum.Tests.Requirements;

public sealed class PreservativeFindingTests
{
    private static readonly Provenance Source = new(Standing.FromMemory, "a book", "", "", "");

    private static readonly Preservative Boron = new(
        "borate",
        "borate",
        ["SBX"],
        [],
        "diffusing",
        ["B"],
        [Agent.Decay, Agent.Beetles],
        IsFixed: false,
        ["diffusion"],
        IsForSurfaces: false,
        [UseClass.One, UseClass.Two],
        [],
        [],
        Source
    );

    private static readonly Preservative Copper = Boron with
    {
        Name = "copper azole",
        ProtectsAgainst = [Agent.Decay, Agent.SoftRot, Agent.Beetles],
        IsFixed = true,
        UseClasses = [UseClass.Two, UseClass.ThreeOne, UseClass.ThreeTwo, UseClass.Four],
    };

    private static readonly Preservative Insecticide = Boron with
    {
        Name = "permethrin",
        ProtectsAgainst = [Agent.Beetles],
        IsFixed = true,
        UseClasses = [UseClass.One],
    };

    [Theory]
    [InlineData(UseClass.ThreeTwo)]
    [InlineData(UseClass.Four)]
    public void Boron_washes_out_in_the_weather_and_in_the_ground(UseClass useClass) =>
        Assert.IsType<WashesOut>(Assert.Single(Of(Boron, useClass)));

    [Theory]
    [InlineData(UseClass.One)]
    [InlineData(UseClass.Two)]
    public void Nothing_speaks_against_boron_under_cover(UseClass useClass) => Assert.Empty(Of(Boron, useClass));

    [Fact]
    public void Boron_meant_for_wet_wood_is_not_ruled_out_there() =>
        Assert.Empty(Of(Boron with { UseClasses = [UseClass.Two, UseClass.ThreeTwo] }, UseClass.ThreeTwo));

    [Fact]
    public void An_insecticide_alone_is_no_fungicide()
    {
        Assert.Empty(Of(Insecticide, UseClass.One));
        Assert.Contains(Of(Insecticide, UseClass.Two), finding => finding is NoFungicide { IsRuledOut: true });
    }

    [Fact]
    public void In_the_sea_a_preservative_must_guard_against_borers() =>
        Assert.Equal(
            [typeof(BeyondItsUse), typeof(NoGuardAgainstBorers)],
            Of(Copper, UseClass.Five).Select(finding => finding.GetType())
        );

    [Fact]
    public void A_use_class_milder_than_it_is_meant_for_speaks_against_nothing() =>
        Assert.Empty(Of(Copper, UseClass.One));

    [Fact]
    public void While_the_use_class_is_open_nothing_is_ruled_out_for_one_that_may_not_hold()
    {
        Assert.Empty(Of(Boron, UseClass.Two, UseClass.Four));
        Assert.Empty(Of(Boron));
        Assert.IsType<WashesOut>(Assert.Single(Of(Boron, UseClass.ThreeOne, UseClass.ThreeTwo)));
    }

    [Fact]
    public void What_stays_on_the_surface_will_not_do_where_depth_is_asked()
    {
        var brushed = Copper with { AppliedBy = ["brush"], IsForSurfaces = true };
        Assert.IsType<StaysOnSurface>(Assert.Single(Of(brushed, UseClass.ThreeTwo)));
        Assert.Empty(Enquired(brushed, new Enquiry { UseClasses = [UseClass.ThreeTwo] }, new NoDepth()));
    }

    [Fact]
    public void What_protects_against_nothing_is_no_preservative() =>
        Assert.IsType<ProtectsAgainstNothing>(Assert.Single(Of(Copper with { ProtectsAgainst = [] }, UseClass.Four)));

    [Fact]
    public void The_law_is_told_and_rules_nothing_out()
    {
        var law = new Restriction("Here: not in playgrounds.", Source);
        var finding = Assert.Single(Of(Copper with { Restrictions = [law] }, UseClass.Four));
        Assert.Equal(new RestrictedByLaw(finding.Preservative, law, HoldsUpOrder: false), finding);
        Assert.False(finding.IsRuledOut);
    }

    [Fact]
    public void What_keeps_up_standing_timber_is_said_to_do_that_only()
    {
        var fluoride = Boron with { Name = "fluoride", IsRemedial = true };
        Assert.IsType<OnlyForUpkeep>(Assert.Single(Of(fluoride, UseClass.Four)));
        Assert.IsType<OnlyForUpkeep>(Assert.Single(Of(fluoride, UseClass.Two)));
        Assert.Empty(Enquired(fluoride, new Enquiry { UseClasses = [UseClass.Two] }, new NoDepth()));
    }

    [Fact]
    public void In_the_ground_a_preservative_must_guard_against_soft_rot()
    {
        var weak = Copper with { ProtectsAgainst = [Agent.Decay] };
        Assert.IsType<NoGuardAgainstSoftRot>(Assert.Single(Of(weak, UseClass.Four)));
        Assert.Empty(Of(weak, UseClass.ThreeTwo));
        Assert.Empty(Of(weak, UseClass.ThreeTwo, UseClass.Four));
        Assert.Empty(Of(Copper, UseClass.Four));
    }

    [Fact]
    public void What_is_not_for_indoors_will_not_do_under_a_roof()
    {
        var tar = Copper with { NotIndoors = new Restriction("not for use inside buildings", Source) };
        Assert.IsType<NotForIndoors>(Assert.Single(Of(tar, UseClass.One)));
        Assert.IsType<NotForIndoors>(Assert.Single(Of(tar, UseClass.One, UseClass.Two)));
        Assert.Empty(Of(tar, UseClass.Two, UseClass.ThreeOne));
        Assert.Empty(Of(tar, UseClass.Four));
    }

    [Fact]
    public void What_is_kept_from_a_part_will_not_do_for_it_by_either_of_its_names()
    {
        var tar = Copper with
        {
            NotForParts =
            [
                new Restriction("not on playgrounds", Source) { Parts = ["playground timber", "tree house"] },
            ],
        };
        ComponentName House(string name) => new(name, "play", [], new(), null, "", Source);

        var post = Enquired(tar, new Enquiry { Component = new("playground timber"), UseClasses = [UseClass.Four] });
        Assert.True(Assert.IsType<NotForPart>(Assert.Single(post)).IsRuledOut);
        Assert.IsType<NotForPart>(Assert.Single(Enquired(tar, new Enquiry { CalledAs = House("tree house") })));
        Assert.Empty(Enquired(tar, new Enquiry { CalledAs = House("bird house") }));
        Assert.Empty(Enquired(tar, new Enquiry()));
    }

    [Fact]
    public void A_law_that_forbids_treating_holds_up_the_order_where_it_is_in_force()
    {
        var law = new Restriction("There: no longer permitted.", Source) { Where = ["book"], ForbidsTreating = true };
        var enquiry = new Enquiry { Component = new("deck board"), UseClasses = [UseClass.Four] };
        bool HoldsUp(Restriction restriction) =>
            Enquired(Copper with { Restrictions = [restriction] }, enquiry)
                .OfType<RestrictedByLaw>()
                .Single()
                .HoldsUpOrder;

        Assert.True(HoldsUp(law));
        Assert.False(HoldsUp(law with { ForbidsTreating = false }));
        Assert.False(HoldsUp(law with { Where = ["other"] }));
        Assert.True(HoldsUp(law with { Parts = ["deck board"] }));
        Assert.False(HoldsUp(law with { Parts = ["playground timber"] }));
    }

    [Fact]
    public void Where_only_the_law_of_other_places_is_known_that_is_said()
    {
        var elsewhere = new Restriction("There: no longer permitted.", Source) { Where = ["other"] };
        Assert.Single(Of(Copper with { Restrictions = [elsewhere] }, UseClass.Four).OfType<LawNotKnown>());
        Assert.Empty(
            Of(Copper with { Restrictions = [elsewhere, elsewhere with { Where = ["book"] }] }, UseClass.Four)
                .OfType<LawNotKnown>()
        );
        Assert.Empty(
            Of(Copper with { Restrictions = [new("No place named.", Source)] }, UseClass.Four).OfType<LawNotKnown>()
        );
    }

    private static IReadOnlyList<PreservativeFinding> Of(Preservative preservative, params UseClass[] classes) =>
        Enquired(preservative, new Enquiry { UseClasses = classes });

    private static IReadOnlyList<PreservativeFinding> Enquired(
        Preservative preservative,
        Enquiry enquiry,
        DepthRule? depth = null
    )
    {
        var row = new Row(
            "depth",
            Subject.Penetration,
            [],
            new PenetrationDemand("depth", depth ?? new LeastDepth(WoodZone.Sapwood, 6), null, null),
            [],
            Source
        );
        var book = new Rulebook([row])
        {
            Name = "book-1",
            Title = "A book",
            Document = "A book",
            Edition = "1",
        };
        return PreservativeFinding.Of(preservative, book.Answer(enquiry), book);
    }
}
