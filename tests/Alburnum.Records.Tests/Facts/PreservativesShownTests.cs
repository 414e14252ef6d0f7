using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;

namespace Alburnum.Records.Tests.Facts;

public sealed class PreservativesShownTests
{
    private static readonly FactLibrary Facts = new(Repository.At("data"));

    [Fact]
    public void Every_preservative_has_a_reagent_or_an_analysis() =>
        Assert.Empty(
            Facts
                .Preservatives.All.Where(each =>
                    !Facts.Reagents.Reagents.Any(reagent =>
                        reagent.Shows.Intersect(each.ActiveElements).Any() || reagent.Preservatives.Contains(each.Key)
                    )
                    && !Facts.Reagents.Analyses.Any(method =>
                        method.Elements.Intersect(each.ActiveElements).Any() || method.Preservatives.Contains(each.Key)
                    )
                )
                .Select(each => each.Key)
        );

    [Theory]
    [InlineData("boron rods", true, false)]
    [InlineData("sodium fluoride", true, false)]
    [InlineData("chloropicrin", true, false)]
    [InlineData("borate", false, false)]
    [InlineData("creosote", false, true)]
    [InlineData("stockholm tar", false, true)]
    [InlineData("CCA", false, false)]
    public void What_is_for_upkeep_only_and_what_is_not_for_indoors_is_known(string name, bool isUpkeep, bool isTar)
    {
        var kind = Facts.Preservatives.All.Single(each =>
            new[] { each.Name }.Concat(each.AlsoCalled).Concat(each.Codes).Contains(name, StringComparer.Ordinal)
        );
        Assert.Equal((isUpkeep, isTar), (kind.IsRemedial, kind.NotIndoors is not null));
    }

    [Theory]
    [InlineData("fipronil")]
    [InlineData("chlorpyrifos")]
    [InlineData("imidacloprid")]
    [InlineData("lindane")]
    public void An_insecticide_is_known_by_its_kind_and_each_kind_by_substances_of_its_own(string substance)
    {
        var kind = Assert.Single(Facts.Preservatives.Bearers(substance));
        Assert.NotEqual(substance, kind.Name);
        Assert.EndsWith("insecticide", kind.Name, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_reagent_says_what_it_cannot_show_what_misleads_it_how_to_photograph_it_and_what_to_mind() =>
        Assert.All(
            Facts.Reagents.Reagents,
            each =>
            {
                Assert.NotEmpty(each.CannotShow);
                Assert.NotEmpty(each.Misleads);
                Assert.NotEmpty(each.Photograph);
                Assert.NotEmpty(each.Cautions);
            }
        );

    [Fact]
    public void Every_question_about_handling_has_an_answer_for_every_preservative() =>
        Assert.All(
            Facts.Handling.Subjects,
            subject =>
                Assert.All(
                    Facts.Preservatives.All,
                    preservative =>
                        Assert.Contains(Facts.Handling.Rows, row => row.Answers(new(subject, preservative, [], "")))
                )
        );

    [Fact]
    public void Elements_that_facts_name_are_elements_that_are_known()
    {
        var named = Facts
            .Preservatives.All.SelectMany(each => each.ActiveElements)
            .Concat(Facts.Reagents.Reagents.SelectMany(each => each.Shows))
            .Concat(Facts.Reagents.Analyses.SelectMany(each => each.Elements))
            .Concat(Facts.Handling.Rows.SelectMany(each => each.Elements))
            .Distinct(StringComparer.Ordinal);

        Assert.All(named, symbol => Assert.NotNull(Facts.Substances.Find(symbol)));
    }
}
