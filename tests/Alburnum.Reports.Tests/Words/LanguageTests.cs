using System.Text.Json;
using System.Text.RegularExpressions;
using Alburnum.Acceptance.History;
using Alburnum.Cases;
using Alburnum.Reports.Words;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;

namespace Alburnum.Reports.Tests.Words;

/// <summary>A language is a file: every sentence is in it, and nothing is in it that is never said.</summary>
public sealed partial class LanguageTests
{
    private static readonly Wording Quoted = Wording.Read(BracketedLanguage.Name, BracketedLanguage.File());

    [Fact]
    public void A_key_given_twice_is_refused() =>
        Assert.Throws<JsonException>(() => Wording.Read("xx", Json("{\"x\":{\"y\":\"a\",\"y\":\"b\"}}")));

    // "a {name}" gives "a agricultural post".
    [Fact]
    public void No_sentence_puts_an_article_before_a_word_from_elsewhere() =>
        Assert.DoesNotMatch(
            @"\b[Aa]n? \{",
            File.ReadAllText(Repository.At("src", "Alburnum.Reports", "Words", "en.json"))
        );

    [Fact]
    public void A_second_language_says_every_reason()
    {
        var words = new ReasonWords(Quoted);

        Assert.All(
            // What comes from a rulebook is in the language of its maker.
            SaidReasons.All.Where(said => said.Reason is not CodeForbids),
            said => Assert.Matches("^⟦.*⟧$", words.Say(said.Reason))
        );
    }

    [Fact]
    public void A_second_language_says_what_a_rulebook_answers_and_what_a_check_of_it_finds()
    {
        var words = new RequirementWords(Quoted);

        Assert.All(
            [
                .. RequirementWordsTests.Silences.Select(silence => words.Answers.Say(silence.Reason)),
                .. RequirementWordsTests.Findings.Select(found => words.Checks.Say(found.Finding)),
                .. RequirementWordsTests.Changes.Select(each =>
                    words.Routes.Say(new Route(each.Change, false, new Enquiry(), null, ReachVerdict.Likely, null))
                ),
                .. Enum.GetValues<Field>().Select(words.Rows.Say),
            ],
            said => Assert.Matches("^⟦.*⟧$", said)
        );
    }

    [Fact]
    public void A_second_language_says_every_remark() =>
        Assert.All(CaseWordsTests.Remarks, each => Assert.Matches("^⟦.*⟧$", new CaseWords(Quoted).Say(each.Remark)));

    [Fact]
    public void A_second_language_says_every_discrepancy() =>
        Assert.All(
            CaseWordsTests.Odd,
            each => Assert.Matches("^⟦.*⟧$", new DiscrepancyWords(Quoted).Say(each.Discrepancy))
        );

    [Fact]
    public void A_second_language_says_every_signal() =>
        Assert.All(
            Enum.GetValues<Signals>().Where(signal => signal != Signals.None),
            signal =>
                Assert.Matches(
                    "^⟦.*⟧$",
                    Assert.Single(
                        new SignalWords(Quoted).Say(
                            signal,
                            new(MeasureKind.Depth, "mean depth", "mm"),
                            default,
                            WatchRules.Usual
                        )
                    )
                )
        );

    [Fact]
    public void A_second_language_says_the_words_that_belong_to_a_figure()
    {
        Assert.Equal("⟦over 99.9 %⟧", Figures.Certainty(1, Quoted));
        Assert.Equal("⟦under 1 %⟧", Figures.WholePercent(0.001, Quoted));
        Assert.Equal("⟦not determined⟧", Figures.Certainty(null, Quoted));
        Assert.Equal("⟦2 pieces⟧", Quoted.Count("count.piece", 2));
    }

    [Fact]
    public void Every_sentence_of_the_language_is_said_somewhere()
    {
        var said = Sources("Alburnum.Reports", "Alburnum.Cli", "Alburnum.Web").SelectMany(Keys).ToHashSet();
        // The rest of such a key comes from data, for instance a cause of uncertainty.
        var begun = Sources("Alburnum.Reports", "Alburnum.Web")
            .SelectMany(source => Beginning().Matches(source).Select(match => match.Groups["key"].Value))
            .ToList();

        Assert.DoesNotContain(
            Wording.English.Keys.Select(key => Ending().Replace(key, "")),
            key =>
                !said.Contains(key) && !begun.Exists(beginning => key.StartsWith(beginning, StringComparison.Ordinal))
        );
    }

    [Fact]
    public void Every_sentence_that_is_said_is_in_the_language() =>
        Assert.Empty(
            Sources("Alburnum.Reports")
                .SelectMany(Keys)
                .Concat(
                    Sources("Alburnum.Cli", "Alburnum.Web")
                        .SelectMany(source => Call().Matches(source).Select(call => call.Groups["key"].Value))
                )
                .Except(Wording.English.Keys.Select(key => Ending().Replace(key, "")), StringComparer.Ordinal)
        );

    [Fact]
    public void A_value_may_hold_braces_and_a_place_without_a_value_is_refused()
    {
        Assert.Equal("a {b}", Wording.Read("xx", Json("{\"x\":{\"y\":\"a {z}\"}}")).Say("x.y", ("z", "{b}")));
        Assert.Throws<FormatException>(() => Wording.Read("xx", Json("{\"x\":{\"y\":\"a {z}\"}}")).Say("x.y"));
        Assert.Throws<FormatException>(() => Wording.Read("xx", Json("{\"x\":{\"y\":\"a\"}}")).Say("x.y", ("z", "b")));
    }

    [Fact]
    public void Every_language_says_what_English_says_with_the_same_values() =>
        Assert.All(
            Directory.GetFiles(Repository.At("src", "Alburnum.Reports", "Words"), "*.json"),
            file =>
                Assert.Equal(
                    Path.GetFileNameWithoutExtension(file),
                    Wording.Of(Path.GetFileNameWithoutExtension(file)).Language
                )
        );

    [Theory]
    [InlineData("{\"count\":{}}", "\"count.piece.one\" is missing")]
    [InlineData("{\"count\":{\"piece.one\":\"{number}\"}}", "\"count.piece.one\" must have the same words in braces")]
    [InlineData("{\"count\":{\"piece.one\":\"{count}\",\"piece.none\":\"\"}}", "\"count.piece.none\" is not known")]
    public void A_language_that_does_not_say_what_English_says_is_refused_with_its_key(string json, string expected) =>
        Assert.Contains(
            expected,
            Assert
                .Throws<JsonException>(() =>
                    Wording
                        .Read("xx", Json(json))
                        .SameAs(Wording.Read("en", Json("{\"count\":{\"piece.one\":\"{count}\"}}")))
                )
                .Message,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("en-GB")]
    [InlineData("de-AT")]
    [InlineData("C")]
    [InlineData("")]
    public void English_is_said_where_there_is_no_file_for_a_language(string language) =>
        Assert.Equal("en", Wording.Of(language).Language);

    [Fact]
    public void A_region_takes_the_file_of_its_language()
    {
        Wording.Add(Wording.Read("yy", BracketedLanguage.File()));

        Assert.Equal("yy", Wording.Of("yy-Latn-AT").Language);
    }

    private static MemoryStream Json(string text) => new(System.Text.Encoding.UTF8.GetBytes(text));

    private static IEnumerable<string> Sources(params string[] projects) =>
        projects
            .SelectMany(project =>
                Directory.EnumerateFiles(Repository.At("src", project), "*", SearchOption.AllDirectories)
            )
            .Where(file => Path.GetExtension(file) is ".cs" or ".razor")
            .Select(File.ReadAllText);

    private static IEnumerable<string> Keys(string source) =>
        Key()
            .Matches(source)
            .Select(match => match.Groups["key"].Value)
            .Where(key => Sections.Contains(key.Split('.')[0], StringComparer.Ordinal));

    private static string[] Sections { get; } =
    [.. Wording.English.Keys.Select(key => key.Split('.')[0]).Distinct(StringComparer.Ordinal)];

    [GeneratedRegex("\"(?<key>[a-z]+(\\.[a-zA-Z0-9-]+)+)\"", RegexOptions.ExplicitCapture)]
    private static partial Regex Key();

    [GeneratedRegex("Sai?[dy]\\(\\s*\"(?<key>[^\"]+)\"", RegexOptions.ExplicitCapture)]
    private static partial Regex Call();

    [GeneratedRegex("\\$\"(?<key>[a-z]+(\\.[a-z-]+)*\\.)\\{", RegexOptions.ExplicitCapture)]
    private static partial Regex Beginning();

    [GeneratedRegex(@"\.(one|other)$", RegexOptions.ExplicitCapture)]
    private static partial Regex Ending();
}
