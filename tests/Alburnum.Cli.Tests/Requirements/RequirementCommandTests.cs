using System.Text.Json;
using System.Text.RegularExpressions;
using Alburnum.Reports.Json;
using Alburnum.Reports.Requirements;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests.Requirements;

public sealed class RequirementCommandTests
{
    private static readonly string[] Post =
    [
        "requirement",
        "--component",
        "fence post",
        "--use-class",
        "4",
        "--service-life",
        "15",
        "--species",
        "Picea sitchensis",
        "--section",
        "75x75",
    ];

    [Theory]
    [InlineData("NP5", "asks for more than the code's NP3: it decides.")]
    [InlineData("NP2", "asks for less than the code's NP3: the code decides.")]
    [InlineData("P9", "asks for more than the code's NP3")]
    [InlineData("NP3", "ask for the same depth")]
    [InlineData("AB", "gives no demand for this piece: The code does not cover such timber here.")]
    [InlineData("AB", "Spruce has a class of its own, GRAN")]
    [InlineData("UC3.2", "what is said of the contract's class speaks of use class 3.2.")]
    [InlineData("NP4", "gives no demand for this piece")]
    [InlineData("NP7", "is in no rulebook here by that name")]
    [InlineData("EN 351 NP5", "asks for more than the code's NP3")]
    [InlineData("use class 4", "is use class 4 of EN 335, and")]
    [InlineData("Hazard class 3", "is use class 3.1 or 3.2 of EN 335, and")]
    [InlineData("Klasse 4", "GK4 is a mark of another system")]
    [InlineData("DIN 68800-3", "no class of use follows from its number alone")]
    [InlineData("EN 335-3", "no class of use follows from its number alone")]
    [InlineData("H4", "More than one system whose demands")]
    public async Task A_class_that_the_contract_names_is_held_against_the_code_s_own(string stated, string said)
    {
        var run = await AlburnumRun.Of(
            "requirement",
            "--component",
            "fence post",
            "--use-class",
            "4",
            "--service-life",
            "15",
            "--species",
            "Sitka spruce",
            "--section",
            "100x100",
            "--rulebook",
            "british-2014",
            "--stated-class",
            stated
        );

        Assert.Equal(0, run.Status);
        var output = string.Join(' ', run.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains(said, output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("nordic-classes", "NTR AB", "stated as AB")]
    [InlineData("nordic-classes", "Klasse AB", "stated as AB")]
    [InlineData("american-use-categories", "AWPA UC4A", "stated as UC4A")]
    [InlineData("american-use-categories", "use category 4A", "stated as UC4A")]
    [InlineData("australian-hazard-classes", "hazard class 3", "stated as H3")]
    public async Task A_class_with_its_system_before_it_is_the_class_of_the_rulebook(
        string rulebook,
        string stated,
        string said
    )
    {
        var run = await AlburnumRun.Of([
            "requirement",
            "--species",
            "Scots pine",
            "--rulebook",
            rulebook,
            "--stated-class",
            stated,
        ]);

        Assert.Equal(0, run.Status);
        Assert.Contains(said, run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("does not know", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("in no rulebook here", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_class_that_nobody_knows_is_named_in_the_clause_as_not_judged()
    {
        var run = await AlburnumRun.Of([.. Post, "--stated-class", "NP7"]);

        Assert.Contains("The contract also names NP7", run.Output, StringComparison.Ordinal);
        Assert.Equal(2, run.Output.Split("is in no rulebook here").Length);
    }

    [Fact]
    public async Task The_depth_of_a_class_has_the_standing_of_the_document_that_was_read()
    {
        string[] pine = [.. Post.Select(word => word == "Picea sitchensis" ? "Scots pine" : word)];
        var run = await AlburnumRun.Of([.. pine, "--stated-class", "AB"]);
        var said = string.Join(' ', run.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

        Assert.Contains("AB (full penetration in the sapwood;", said, StringComparison.Ordinal);
        Assert.Matches(@"AB \(full penetration in the sapwood; [^)]*\([^)]*\), published\)", said);
    }

    [Theory]
    [InlineData("no", "Untreated Scots pine, if it stands in salt water")]
    [InlineData("yes", "Untreated Scots pine in salt water")]
    public async Task Where_salt_water_is_possible_it_is_warned_of_and_where_it_is_settled_it_is_said(
        string isSettled,
        string said
    )
    {
        string[] salt = isSettled == "yes" ? ["--salt-water", "yes"] : [];
        var run = await AlburnumRun.Of(["requirement", "--component", "pontoon", "--species", "Scots pine", .. salt]);
        var output = string.Join(' ', run.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

        Assert.Contains(said, output, StringComparison.Ordinal);
        Assert.Contains("In sea water marine borers", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Salt_water_is_warned_of_whatever_use_class_is_stated()
    {
        var run = await AlburnumRun.Of([
            "requirement",
            "--component",
            "pontoon",
            "--species",
            "Scots pine",
            "--use-class",
            "3.2",
            "--salt-water",
            "yes",
        ]);

        Assert.Contains(
            "In sea water marine borers",
            string.Join(' ', run.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task The_answer_comes_with_its_reasons_its_standing_and_a_clause()
    {
        var run = await AlburnumRun.Of(Post);

        Assert.Equal((CommandLine.Done, ""), (run.Status, run.Errors));
        Assert.All(
            [
                "REQUIRED  NP3: at least 6 mm in the sapwood",
                "weakest standing: from memory",
                "= in-ground-15-sawn-resistant",
                "≠ in-ground-30-sawn-resistant: desired service life (years) 30, found 15",
                "What would make it possible",
                "Specification clause",
                "Orientation only",
            ],
            words => Assert.Contains(words, run.Output, StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task The_JSON_form_says_the_same_and_reads_back()
    {
        var run = await AlburnumRun.Of([.. Post, "--json"]);
        var answer = DocumentJson.Read<AnswerDocument>(run.Output);

        Assert.Equal(
            ("alburnum requirement", 1, AnswerOutcome.Required),
            (answer.Format, answer.Version, answer.Outcome)
        );
        Assert.Equal("NP3", answer.Requirement!.Penetration);
        Assert.Equal("Sitka spruce", answer.Enquiry.Species);
        using var json = JsonDocument.Parse(run.Output);
        Assert.Equal("from memory", json.RootElement.GetProperty("weakest_standing").GetString());
    }

    [Fact]
    public async Task Spruce_in_the_ground_for_30_years_without_incising_gets_routes_ranked()
    {
        string[] line = [.. Post, "--service-life", "30"];
        line = [.. line.Where((_, index) => index is not (5 or 6))];
        var run = await AlburnumRun.Of([.. line, "--exposed-heartwood", "yes", "--incised", "no", "--json"]);
        var answer = DocumentJson.Read<AnswerDocument>(run.Output);

        Assert.Equal("12 mm sapwood + 6 mm exposed heartwood", answer.Requirement!.Penetration);
        // What is usual and what is predicted point different ways: about half of the pieces.
        Assert.Equal(ReachVerdict.NotKnown, answer.Routes[0].Reach);
        Assert.InRange(answer.Routes[0].ExpectedPieceShare!.Value, 0.25, 0.75);
        Assert.Equal(
            [RouteKind.UseRound, RouteKind.OtherSpecies, RouteKind.DurableHeartwood, RouteKind.ShorterLife],
            answer.Routes.Select(route => route.Kind).Distinct().Order()
        );
        Assert.Contains(answer.WouldNotDo, route => route.Kind == RouteKind.Incise);
        Assert.Contains(
            answer.Routes,
            route => route is { Kind: RouteKind.ShorterLife, Requirement.Penetration: "NP3" }
        );
        Assert.All(
            answer.Routes,
            route =>
                Assert.True(
                    route.Untreated is not null
                        || (route.Requirement is not null) != (route.Reason is not null) && route.Trace.Count > 0
                )
        );
        Assert.All(
            answer.Routes.Where(route => route.Requirement is not null),
            route => Assert.NotEmpty(route.Trace.Single(step => step.Subject == Subject.Penetration).Matched)
        );
    }

    [Fact]
    public async Task Where_it_is_not_known_whether_heartwood_is_exposed_it_is_asked_and_no_route_is_offered()
    {
        var run = await AlburnumRun.Of(
            "requirement",
            "--component",
            "fence post",
            "--use-class",
            "4",
            "--service-life",
            "30",
            "--species",
            "Picea abies",
            "--section",
            "75x75",
            "--incised",
            "no"
        );
        Assert.Contains("if exposed heartwood is yes (not known) → 12 mm", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("What would make it possible", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Wood_that_is_only_too_wet_is_to_be_dried_and_nothing_else()
    {
        var run = await AlburnumRun.Of(
            "requirement",
            "--component",
            "fence post",
            "--species",
            "Scots pine",
            "--section",
            "75x75",
            "--moisture",
            "45",
            "--json"
        );
        Assert.Equal([RouteKind.Dry], DocumentJson.Read<AnswerDocument>(run.Output).Routes.Select(route => route.Kind));
    }

    [Fact]
    public async Task Only_the_nearest_rows_are_shown_unless_all_are_asked_for()
    {
        var few = await AlburnumRun.Of(Post);
        var all = await AlburnumRun.Of([.. Post, "--all-rows"]);
        Assert.Contains("more rows failed on one field; --all-rows shows them.", few.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("use-window-frame", few.Output, StringComparison.Ordinal);
        Assert.Contains("≠ use-window-frame", all.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("--all-rows", all.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_other_systems_say_of_the_timber_is_shown_as_theirs()
    {
        var run = await AlburnumRun.Of(Post);
        Assert.Contains(
            "Canadian permeability scale: sapwood 2, heartwood 3",
            string.Join(' ', run.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task What_is_missing_is_asked_for()
    {
        var run = await AlburnumRun.Of(
            "requirement",
            "--use-class",
            "4",
            "--service-life",
            "30",
            "--species",
            "Scots pine",
            "--section",
            "100x100"
        );
        Assert.Contains(
            "depends on something not known about the piece: exposed heartwood",
            run.Output,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task All_mistakes_are_named_at_once_and_nothing_is_answered()
    {
        var run = await AlburnumRun.Of(
            "requirement",
            "--component",
            "feence post",
            "--species",
            "spruce",
            "--use-class",
            "9",
            "--section",
            "4",
            "--service-life",
            "x",
            "--incised",
            "maybe",
            "--critical-value",
            "8"
        );

        Assert.Equal((CommandLine.Refused, ""), (run.Status, run.Output));
        Assert.All(
            [
                "\"fence post\"",
                "\"Sitka spruce\"",
                "--use-class",
                "--section",
                "--service-life",
                "--incised",
                "kg/m3, pcf or g/m2",
            ],
            words => Assert.Contains(words, run.Errors, StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData("4u")]
    [InlineData("3cc")]
    [InlineData("")]
    [InlineData("UC9")]
    public async Task Only_class_3_has_a_coated_and_an_uncoated_part(string useClass)
    {
        var run = await AlburnumRun.Of("requirement", "--use-class", useClass);
        Assert.Equal((CommandLine.Refused, ""), (run.Status, run.Output));
        Assert.Contains("expected 1, 2, 3, 3c, 3u", run.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("8 kg/m3", "8 kg/m³")]
    [InlineData("8kg/m³", "8 kg/m³")]
    [InlineData("0.5 pcf", "8.01 kg/m³")]
    [InlineData("120 g/m2", "120 g/m²")]
    public async Task A_critical_value_is_read_with_its_unit(string typed, string read)
    {
        var run = await AlburnumRun.Of([.. Post, "--critical-value", typed, "--json"]);
        Assert.Equal(read, DocumentJson.Read<AnswerDocument>(run.Output).Enquiry.CriticalValue);
    }

    [Fact]
    public async Task The_way_to_the_answer_is_drawn()
    {
        using var folder = new TemporaryFolder();
        var file = Path.Combine(folder.Path, "way.svg");
        await AlburnumRun.Of([.. Post, "--svg", file]);
        var svg = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
        Assert.StartsWith("<svg", svg, StringComparison.Ordinal);
        Assert.Contains("NP3", svg, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_drawing_that_cannot_be_written_is_refused_in_words()
    {
        var run = await AlburnumRun.Of([.. Post, "--svg", "/nowhere/at/all/way.svg"]);
        Assert.Equal(CommandLine.Refused, run.Status);
        Assert.Contains("expected a file that can be written", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_rafter_indoors_needs_none_and_its_clause_orders_none()
    {
        var run = await AlburnumRun.Of("requirement", "--component", "rafter", "--species", "Norway spruce");
        Assert.StartsWith("NOT NEEDED", run.Output.Split('\n')[3], StringComparison.Ordinal);
        Assert.Contains("house longhorn beetle: ", run.Output, StringComparison.Ordinal);
        var text = InOneLine(run.Output);
        Assert.Contains("requires no preservative treatment", text, StringComparison.Ordinal);
        Assert.DoesNotContain("certificate", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Preservative treatment to", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_the_house_longhorn_beetle_lives_a_softwood_rafter_is_not_said_to_need_none()
    {
        string[] rafter =
        [
            "requirement",
            "--component",
            "rafter",
            "--insects",
            "house longhorn",
            "--json",
            "--species",
        ];
        var spruce = DocumentJson.Read<AnswerDocument>((await AlburnumRun.Of([.. rafter, "Norway spruce"])).Output);
        var oak = DocumentJson.Read<AnswerDocument>((await AlburnumRun.Of([.. rafter, "European oak"])).Output);
        Assert.Equal((AnswerOutcome.NotCovered, AnswerOutcome.NotNeeded), (spruce.Outcome, oak.Outcome));
        Assert.Equal(["house longhorn beetle"], spruce.Enquiry.Insects);
        Assert.Null(spruce.Clause);
    }

    [Fact]
    public async Task The_ground_is_spoken_of_only_where_the_piece_stands_in_it()
    {
        var batten = await AlburnumRun.Of("requirement", "--component", "tiling batten", "--species", "Norway spruce");
        var post = await AlburnumRun.Of(Post);
        Assert.DoesNotContain("out of the ground", InOneLine(batten.Output), StringComparison.Ordinal);
        Assert.Contains("Keep cut ends out of the ground.", InOneLine(post.Output), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("deck joist", "british-trade-2020")]
    [InlineData("footbridge joist", "british-2014")]
    public async Task A_part_in_use_class_4_that_touches_no_ground_keeps_nothing_out_of_it(string part, string rulebook)
    {
        var run = await AlburnumRun.Of(
            "requirement",
            "--rulebook",
            rulebook,
            "--component",
            part,
            "--use-class",
            "4",
            "--service-life",
            "30",
            "--species",
            "Scots pine",
            "--section",
            "47x150",
            "--exposed-heartwood",
            "no"
        );

        Assert.Contains("Specification clause", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("out of the ground", InOneLine(run.Output), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("fence post", true)]
    [InlineData("retaining wall", false)]
    public async Task Only_a_post_is_an_incised_post(string part, bool isPost)
    {
        var run = await AlburnumRun.Of(
            "requirement",
            "--component",
            part,
            "--service-life",
            "30",
            "--species",
            "Norway spruce",
            "--section",
            "100x100",
            "--exposed-heartwood",
            "yes"
        );

        Assert.Equal(
            isPost,
            InOneLine(run.Output).Contains("Sawn posts of resistant timber", StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task Timber_that_is_too_wet_is_said_to_be_so_once()
    {
        var run = await AlburnumRun.Of([.. Post, "--moisture", "35"]);

        Assert.Contains("Too wet to treat: 35 % moisture", InOneLine(run.Output), StringComparison.Ordinal);
        Assert.DoesNotContain("before treatment is stated", InOneLine(run.Output), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_clause_names_the_code_and_the_sheet_the_file()
    {
        using var folder = new TemporaryFolder();
        var file = folder.Write(
            "my.yaml",
            """
            basedOn: british-2014
            confirmed:
              - { key: in-ground-15-sawn-resistant, edition: "2014", table: "4", initials: AB, date: 2026-05-12 }

            """
        );

        var run = await AlburnumRun.Of([.. Post, "--rulebook", file, "--json"]);

        var answer = DocumentJson.Read<AnswerDocument>(run.Output);
        Assert.Equal(file, answer.RulebookCopy?.File);
        Assert.DoesNotContain("SHA-256", answer.Clause, StringComparison.Ordinal);
        Assert.Contains(
            "from memory (penetration published, analytical zone from memory, retention from memory)",
            answer.Clause,
            StringComparison.Ordinal
        );
        Assert.Contains(answer.RulebookCopy!.Sha256, AnswerParts.Code(answer), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_brand_name_is_answered_by_the_kinds_to_name() =>
        Assert.Contains(
            "brand names are not kept: name the kind, such as acetylated, heat-treated or furfurylated wood",
            InOneLine((await AlburnumRun.Of("name", "Everlastwood")).Errors),
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("cladding", "European larch", "western red cedar", false)]
    [InlineData("cladding", "western red cedar (UK)", "western red cedar without sapwood", true)]
    [InlineData("window frame", "Scots pine", "meranti", false)]
    [InlineData("window frame", "dark red meranti", "meranti, seraya or lauan", true)]
    public async Task Advice_on_a_timber_is_given_of_that_timber(
        string component,
        string species,
        string words,
        bool isGiven
    )
    {
        var run = await AlburnumRun.Of("requirement", "--component", component, "--species", species, "--json");
        var trace = DocumentJson.Read<AnswerDocument>(run.Output).Trace;
        Assert.Equal(
            isGiven,
            trace.Single(step => step.Subject == Subject.Advice).Matched.Any(row => row.Demand.Contains(words))
        );
    }

    [Fact]
    public async Task What_is_predicted_stands_beside_what_is_usual_in_both_commands()
    {
        var requirement = InOneLine((await AlburnumRun.Of([.. Post, "--incised", "yes"])).Output);
        var predict = InOneLine(
            (
                await AlburnumRun.Of(
                    "predict",
                    "Sitka spruce",
                    "75x75",
                    "--incising",
                    "usual",
                    "--depth",
                    "6",
                    "--cells",
                    "0"
                )
            ).Output
        );
        Assert.All(
            [
                Regex
                    .Match(
                        predict,
                        "Pieces that meet the requirement everywhere: [0-9.]+ %",
                        RegexOptions.None,
                        TimeSpan.FromSeconds(1)
                    )
                    .Value,
                "By treatability and incising alone: usually reached",
                "Only a trial charge decides.",
            ],
            words =>
            {
                Assert.Contains(words, requirement, StringComparison.Ordinal);
                Assert.Contains(words, predict, StringComparison.Ordinal);
            }
        );
    }

    private static string InOneLine(string text) =>
        string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
