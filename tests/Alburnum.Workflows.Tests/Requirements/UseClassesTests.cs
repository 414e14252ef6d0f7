using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Workflows.Tests.Requirements;

/// <summary>Whatever gives a piece a use class is held against what the answer is for, in every rulebook.</summary>
public sealed class UseClassesTests
{
    private static readonly FactLibrary Facts = new(Repository.At("data"));

    private static readonly string[] Components =
    [
        "dry roof timber",
        "sole plate",
        "window frame",
        "deck board",
        "fence post",
        "marine timber",
    ];

    private static readonly Exposure Indoors = new()
    {
        IsInSaltWater = false,
        TouchesGroundOrFreshWater = false,
        IsExposedToWeather = false,
        MayGetDamp = false,
    };

    private static readonly Exposure[] Places =
    [
        new(),
        Indoors,
        Indoors with
        {
            IsExposedToWeather = true,
            LetsWaterStay = true,
        },
        new() { IsExposedToWeather = true, TouchesGroundOrFreshWater = false },
        new() { IsInSaltWater = false, TouchesGroundOrFreshWater = true },
        new() { IsInSaltWater = true },
    ];

    private static readonly string?[] Stated = [null, "1", "2", "3", "3c", "3u", "3.1", "3.2", "4", "5"];

    private static readonly string?[] Contracts = [null, "NP3", "AB", "H3", "H5", "UC4A", "UC2", "ZZ9"];

    public static TheoryData<string> Rulebooks => [.. Facts.Rulebooks.All.Select(book => book.Name)];

    [Theory]
    [MemberData(nameof(Rulebooks))]
    public void A_class_against_the_one_that_the_answer_is_for_is_told_once_and_no_other_is(string rulebook)
    {
        var book = Facts.Rulebooks.Named(rulebook);
        foreach (var component in Components)
        foreach (var place in Places)
        foreach (var stated in Stated)
            Check(book, Of(component, place, stated, contract: null));
    }

    [Theory]
    [MemberData(nameof(Rulebooks))]
    public void Likewise_where_the_contract_names_a_class(string rulebook)
    {
        var book = Facts.Rulebooks.Named(rulebook);
        foreach (var component in Components)
        foreach (var contract in Contracts)
        foreach (var stated in Stated)
            Check(book, Of(component, new(), stated, contract));
    }

    private static Enquiry Of(string component, Exposure place, string? stated, string? contract)
    {
        var use = stated is null ? null : UseClassWords.Read(stated)!;
        return new()
        {
            Component = Facts.Components.All.Single(each => each.Name == component),
            UseClasses = use?.Classes ?? [],
            UseClassAsWritten = use?.Label,
            IsCoatedByClass = use?.IsCoated,
            Exposure = place with { IsCoated = use?.IsCoated },
            StatedClass = contract,
            StatedClassMeans = contract is null ? null : Facts.Marks.Meant(contract),
        };
    }

    private static void Check(Rulebook book, Enquiry enquiry)
    {
        var found = FindRequirement.Run(enquiry, book, Facts, progress: null, TestContext.Current.CancellationToken);
        var told = found
            .Warnings.Concat(found.Remarks)
            .OfType<FactsAtOdds>()
            .Select(odd => odd.Discrepancy)
            .OfType<UseClassesDiffer>()
            .ToList();
        var about = $"{book.Name}: {enquiry.Component!.Name}, {enquiry.UseClassAsWritten}, {enquiry.StatedClass}";

        var answering = found.Answer.Trace.UseClasses;
        if (answering.Count == 0)
        {
            Assert.True(told.Count == 0, about);
            return;
        }
        Assert.All(told, differ => Assert.Equal(answering, differ.Answering.Classes));
        // Each that cannot be so beside the answer's own, found here from the data alone.
        Told<UseClassByPlace>(enquiry.Exposure.SaysWhere ? enquiry.Exposure.UseClass().Classes : null);
        Told<UseClassByCode>(RowFor(book, Field.Component, enquiry.Component.Name));
        Told<UseClassByContract>(enquiry.StatedClass is { } named ? RowFor(book, Field.StatedClass, named) : null);
        // What the enquiry states is always what the answer is for.
        if (enquiry.UseClasses.Count > 0)
            Assert.True(found.Answer.Trace.UseClassGiven is UseClassStated, about);

        void Told<T>(IReadOnlyList<UseClass>? other)
            where T : UseClassGiven
        {
            var said = told.Count(differ => differ.Against is T);
            Assert.True(said <= 1, about);
            if (other is not null && !other.Intersect(answering).Any())
                Assert.True(said == 1, about);
            if (
                other is not null
                && other.Intersect(answering).Any()
                && answering.All(each => each < UseClass.ThreeOne)
            )
                Assert.True(said == 0, about);
        }
    }

    // The class in which a row puts whatever it is asked by that field alone.
    private static IReadOnlyList<UseClass>? RowFor(Rulebook book, Field field, string word) =>
        (
            book.RowsOf(Subject.UseClass)
                .FirstOrDefault(row =>
                    row.When is [OneOf only]
                    && only.Field == field
                    && only.Allowed.Contains(word, StringComparer.Ordinal)
                )
                ?.Demand as UseClassDemand
        )?.Classes;
}
