using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;
using Alburnum.Workflows.Handling;

namespace Alburnum.Workflows.Tests.Handling;

public sealed class HandlingTests
{
    private static readonly FactLibrary Facts = new(Repository.At("data"));

    [Theory]
    [InlineData("copper azole", "chrome-azurol-s")]
    [InlineData("CCA", "rubeanic-acid")]
    [InlineData("zinc naphthenate", "dithizone")]
    [InlineData("fluoride", "fluoride-alizarin")]
    [InlineData("tributyltin", "bromopyrogallol-red")]
    [InlineData("borate", "curcumin")]
    [InlineData("creosote", "own-colour-of-oil")]
    public void A_preservative_with_something_to_colour_has_its_reagent(string preservative, string reagent) =>
        Assert.Contains(Choose(preservative).Reagents, each => each.Key == reagent);

    [Theory]
    [InlineData("permethrin")]
    [InlineData("IPBC")]
    public void No_spray_shows_an_organic_preservative_and_a_laboratory_does(string preservative)
    {
        var chosen = Choose(preservative);

        Assert.Empty(chosen.Reagents);
        Assert.Empty(chosen.Always);
        Assert.NotEmpty(chosen.Analyses);
    }

    [Theory]
    [InlineData("imidacloprid", "neonicotinoid insecticide")]
    [InlineData("fipronil", "phenylpyrazole insecticide")]
    [InlineData("chlorpyrifos", "organophosphate insecticide")]
    [InlineData("lindane", "chlorinated insecticide")]
    [InlineData("flufenoxuron", "insect growth regulator")]
    public void An_insecticide_is_of_its_kind_which_is_not_named_after_one_of_them(string name, string kind) =>
        Assert.Equal(kind, Preservative(name).Name);

    [Fact]
    public void What_a_reagent_cannot_show_has_a_source_of_its_own()
    {
        var par = Facts.Reagents.Reagents.Single(each => each.Key == "par");

        Assert.Equal((Standing.Published, Standing.FromMemory), (par.Provenance.Standing, par.Limits.Standing));
        Assert.NotEqual(par.Provenance.Document, par.Limits.Document);
    }

    [Fact]
    public void A_name_of_several_kinds_that_the_same_things_show_is_answered()
    {
        var azoles = ChooseReagent.OfShared("propiconazole", Facts)!;

        Assert.Equal("propiconazole", azoles.SharedName);
        Assert.Empty(azoles.Reagents);
        Assert.NotEmpty(azoles.Analyses);
        Assert.Null(ChooseReagent.OfShared("creosote", Facts));
    }

    [Theory]
    [InlineData("United States", false)]
    [InlineData("California", false)]
    [InlineData("Britain", true)]
    public void What_is_remembered_of_dry_fixings_gives_way_to_the_rule_of_the_place(string place, bool isGiven) =>
        Assert.Equal(
            isGiven,
            Fixings("acq", UseClass.One, place)
                .Any(says => says.StartsWith("Dry under cover", StringComparison.Ordinal))
        );

    [Theory]
    [InlineData("creosote", false)]
    [InlineData("acq", true)]
    public void What_copper_asks_of_fixings_is_said_of_copper_alone(string preservative, bool isGiven) =>
        Assert.Equal(
            isGiven,
            Fixings(preservative, UseClass.Four, "Britain")
                .Any(says => says.Contains("with preservatives of copper outdoors", StringComparison.OrdinalIgnoreCase))
        );

    [Fact]
    public void Practice_of_one_place_does_not_leave_another_without_a_rule() =>
        Assert.False(Ask("acq", UseClass.Four, "United States").LacksRulesOnPreservative);

    private static HandlingAnswer Ask(string preservative, UseClass useClass, string place) =>
        AskHandling.Run(
            new(
                Facts.Handling.Subjects.Single(subject => subject.Key == "fixings"),
                Facts.Preservatives.All.Single(kind => kind.Key == preservative),
                [useClass],
                place
            )
            {
                WiderPlace = Facts.Handling.Around(place),
            },
            Facts
        );

    private static IEnumerable<string> Fixings(string preservative, UseClass useClass, string place) =>
        Ask(preservative, useClass, place).Answers.Select(each => each.Says);

    [Theory]
    [InlineData("Britain", true)]
    [InlineData("Germany", false)]
    [InlineData("European Union", false)]
    public void That_a_place_has_no_known_rule_on_a_preservative_is_told(string place, bool isLacking) =>
        Assert.Equal(
            isLacking,
            Facts.Handling.LacksRulesOnPreservative(
                new(
                    Facts.Handling.Subjects.Single(subject => subject.Key == "waste"),
                    Facts.Preservatives.All.Single(kind => kind.Key == "creosote"),
                    [],
                    place
                )
                {
                    WiderPlace = Facts.Handling.Around(place),
                }
            )
        );

    [Fact]
    public void What_no_reagent_colours_is_said() => Assert.Equal(["Cr", "As"], Choose("CCA").NotShown);

    [Fact]
    public void A_limit_of_detection_is_an_interval_with_its_scope()
    {
        var limit = Choose("copper azole").Reagents.Single(each => each.Key == "pan").Detection!;

        Assert.Equal((5.7, 14.2), (limit.AboveMgPerKg, limit.AtMostMgPerKg));
        Assert.Contains("slash pine sapwood", limit.Scope, StringComparison.Ordinal);
    }

    [Fact]
    public void A_question_that_says_nothing_gets_every_statement_and_one_that_says_more_gets_fewer()
    {
        var all = Ask(new(Subject("fixings"), null, [], ""));
        var some = Ask(new(Subject("fixings"), Preservative("borate"), [UseClass.One], "United States"));

        Assert.Equal(Facts.Handling.Rows.Count(row => row.Subject == "fixings"), all.Count);
        Assert.ProperSubset(all, some);
    }

    [Theory]
    [InlineData("waste", "Ireland", true)]
    [InlineData("burning", "Ireland", true)]
    [InlineData("waste", "Australia", true)]
    [InlineData("fixings", "Canada", true)]
    [InlineData("waste", "Norway", true)]
    [InlineData("waste", "New Zealand", true)]
    [InlineData("waste", "Germany", false)]
    [InlineData("moisture", "Ireland", false)]
    [InlineData("waste", "", false)]
    public void A_place_with_no_rule_of_its_own_is_said_to_have_none_known(string subject, string place, bool lacks)
    {
        var asked = new HandlingQuestion(Subject(subject), null, [], place)
        {
            WiderPlace = Facts.Handling.Around(place),
        };

        Assert.True(place.Length == 0 || Facts.Handling.Places.Contains(place));
        Assert.Equal(lacks, AskHandling.Run(asked, Facts).LacksRulesOfPlace);
        Assert.Contains(Ask(asked), row => row.Places.Count == 0);
    }

    [Fact]
    public void Galvanised_steel_is_not_offered_with_CCA_in_the_sea() =>
        Assert.DoesNotContain(
            Ask(new(Subject("fixings"), Preservative("CCA"), [UseClass.Five], "")),
            row => row.Says.Contains("hot-dip galvanised or stainless", StringComparison.Ordinal)
        );

    [Theory]
    [InlineData("creosote")]
    [InlineData("carbolineum")]
    public void Tar_oil_is_asked_no_moisture_before_paint_or_glue(string preservative)
    {
        static bool Speaks(HandlingAdvice row) =>
            row.Says.Contains("paint", StringComparison.Ordinal)
            || row.Says.Contains("coating", StringComparison.Ordinal)
            || row.Says.Contains("glu", StringComparison.OrdinalIgnoreCase);

        Assert.Equal(
            "With tar oils: it can neither be painted nor glued; oil comes through.",
            Assert.Single(Ask(new(Subject("moisture"), Preservative(preservative), [], "")), Speaks).Says
        );
        Assert.True(Ask(new(Subject("moisture"), Preservative("copper azole"), [], "")).Count(Speaks) > 1);
    }

    [Theory]
    [InlineData("copper azole", UseClass.ThreeTwo, "Britain", true)]
    [InlineData("copper azole", UseClass.Four, "Norway", true)]
    [InlineData("copper azole", UseClass.ThreeTwo, "United States", false)]
    [InlineData("copper azole", UseClass.One, "Britain", false)]
    public void Where_the_European_table_and_copper_differ_the_stricter_is_said_to_govern(
        string preservative,
        UseClass useClass,
        string place,
        bool isSaid
    ) =>
        Assert.Equal(
            isSaid,
            Ask(new(Subject("fixings"), Preservative(preservative), [useClass], place))
                .Any(row => row.Says.Contains("the stricter rule governs", StringComparison.Ordinal))
        );

    [Theory]
    [InlineData("Germany", "European Union")]
    [InlineData("California", "United States")]
    public void The_law_of_a_wider_place_answers_for_a_place_within_it(string place, string wider)
    {
        var asked = new HandlingQuestion(Subject("waste"), null, [], place)
        {
            WiderPlace = Facts.Handling.Around(place),
        };

        Assert.Equal(wider, asked.WiderPlace);
        Assert.Equal(new[] { place, wider }.Order(), Ask(asked).SelectMany(row => row.Places).Distinct().Order());
    }

    [Fact]
    public void The_law_of_one_state_answers_for_no_other_place() =>
        Assert.DoesNotContain(
            Ask(new(Subject("burning"), null, [], "United States")),
            row => row.Places.Contains("Washington State")
        );

    [Fact]
    public void Plain_steel_is_offered_for_borate_in_the_dry_and_not_for_copper()
    {
        static bool Plain(HandlingAdvice row) =>
            row.Says.Contains("plain carbon steel is allowed", StringComparison.Ordinal);

        Assert.Contains(Ask(new(Subject("fixings"), Preservative("borate"), [UseClass.One], "")), Plain);
        Assert.DoesNotContain(Ask(new(Subject("fixings"), Preservative("CCA"), [UseClass.One], "")), Plain);
        Assert.DoesNotContain(Ask(new(Subject("fixings"), Preservative("borate"), [UseClass.Four], "")), Plain);
    }

    [Fact]
    public void The_rule_of_another_place_falls_away()
    {
        var germany = Ask(new(Subject("waste"), Preservative("CCA"), [], "Germany"));

        Assert.Contains(germany, row => row.Places.Contains("Germany"));
        Assert.DoesNotContain(germany, row => row.Places is not (["Germany"] or []));
    }

    private static ChosenReagents Choose(string preservative) => ChooseReagent.Run(Preservative(preservative), Facts);

    private static HashSet<HandlingAdvice> Ask(HandlingQuestion question) =>
        [.. AskHandling.Run(question, Facts).Answers];

    private static HandlingSubject Subject(string key) => Facts.Handling.Subjects.Single(each => each.Key == key);

    private static Preservative Preservative(string name) =>
        Assert.IsType<Found<Preservative>>(Facts.Preservatives.Find(name)).Value;
}
