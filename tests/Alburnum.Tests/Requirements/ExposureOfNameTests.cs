using Alburnum.Requirements;

namespace Alburnum.Tests.Requirements;

/// <summary>What the name of a component settles where the rulebook has no row for it, and where it has one.</summary>
public sealed class ExposureOfNameTests
{
    private static readonly Provenance Source = new(Standing.CommonPractice, "common practice", "", "", "");
    private static readonly Component Plate = new("sole plate");

    private static readonly Exposure OutOfTheSea = new() { IsInSaltWater = false };

    private static readonly ComponentName BirdTable = Name(
        "bird table",
        [],
        OutOfTheSea with
        {
            TouchesGroundOrFreshWater = false,
            IsExposedToWeather = true,
            LetsWaterStay = true,
        }
    ) with
    {
        Life = new(new DesiredServiceLife(15), Source),
    };

    private static readonly ComponentName PlateOnGround = Name(
        "sole plate on the ground",
        [Plate],
        OutOfTheSea with
        {
            TouchesGroundOrFreshWater = true,
        }
    );

    // Puts sole plates into use class 2 and knows nothing else.
    private static readonly Rulebook Book = new([
        new Row(
            "plate",
            Subject.UseClass,
            [new OneOf(Field.Component, ["sole plate"])],
            new UseClassDemand("2", [UseClass.Two], null),
            [],
            Source
        ),
    ])
    {
        Name = "book",
        Title = "A book",
        Document = "A book",
        Edition = "1",
    };

    [Fact]
    public void A_name_that_no_row_speaks_of_brings_its_use_class_and_its_usual_life_with_their_standing()
    {
        var trace = Book.Answer(new Enquiry { CalledAs = BirdTable }).Trace;

        Assert.Equal([UseClass.ThreeTwo], trace.UseClasses);
        Assert.Equal(new DesiredServiceLife(15), trace.Life);
        Assert.Equal(
            [new ExposureOfNameUsed(BirdTable), new LifeOfNameUsed(BirdTable, BirdTable.Life!)],
            trace.FactsUsed
        );
        Assert.Equal(Standing.CommonPractice, trace.WeakestStanding);
    }

    [Fact]
    public void What_the_name_leaves_open_is_asked_next()
    {
        var swing = Name("swing", [], OutOfTheSea);
        Assert.Equal(
            ExposureQuestion.GroundOrFreshWater,
            Book.Answer(new Enquiry { CalledAs = swing }).Trace.NextQuestion
        );
        var said = new Enquiry
        {
            CalledAs = swing,
            Exposure = new() { TouchesGroundOrFreshWater = true },
        };
        Assert.Null(Book.Answer(said).Trace.NextQuestion);
        Assert.Equal([UseClass.Four], Book.Answer(said).Trace.UseClasses);
    }

    [Fact]
    public void What_was_said_goes_before_what_the_name_settles()
    {
        var sheltered = new Exposure { IsExposedToWeather = false, MayGetDamp = true };
        var trace = Book.Answer(
            new Enquiry
            {
                CalledAs = BirdTable,
                Exposure = sheltered,
                Life = new(30),
            }
        ).Trace;
        Assert.Equal([UseClass.Two], trace.UseClasses);
        Assert.Equal(new DesiredServiceLife(30), trace.Life);
    }

    [Fact]
    public void The_codes_row_goes_before_a_name_that_settles_no_wetter_class()
    {
        var indoors = Name(
            "sole plate of a partition",
            [Plate],
            OutOfTheSea with
            {
                TouchesGroundOrFreshWater = false,
                IsExposedToWeather = false,
                MayGetDamp = false,
            }
        );
        Assert.Equal([UseClass.Two], Asked(indoors).UseClasses);
    }

    [Fact]
    public void A_name_that_settles_a_wetter_class_than_the_codes_row_is_not_passed_over()
    {
        var trace = Asked(PlateOnGround);
        Assert.Equal([UseClass.Four], trace.UseClasses);
        var finding = Assert.IsType<UseClassOfExposure>(trace.Step(Subject.UseClass)!.Finding);
        Assert.Equal("2", finding.Code!.Label);
    }

    [Fact]
    public void The_codes_own_component_keeps_the_codes_class() =>
        Assert.Equal([UseClass.Two], Asked(PlateOnGround with { Name = "sole plate" }).UseClasses);

    [Fact]
    public void An_exposure_that_was_said_and_settles_the_class_goes_before_the_codes_row()
    {
        var inTheSea = new Enquiry
        {
            Component = Plate,
            Exposure = new() { IsInSaltWater = true },
        };
        Assert.Equal([UseClass.Five], Book.Answer(inTheSea).Trace.UseClasses);
    }

    [Fact]
    public void Without_a_component_the_exposure_alone_is_asked_about() =>
        Assert.Equal(ExposureQuestion.SaltWater, Book.Answer(new Enquiry()).Trace.NextQuestion);

    private static Trace Asked(ComponentName name) =>
        Book.Answer(new Enquiry { Component = name.Component, CalledAs = name }).Trace;

    private static ComponentName Name(string name, IReadOnlyList<Component> components, Exposure exposure) =>
        new(name, "group", components, exposure, null, "", Source);
}
