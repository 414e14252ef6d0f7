using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;
using Alburnum.Timber;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Workflows.Tests.Requirements;

public sealed class FillRulebookTests
{
    private const string Book = "british-2014";
    private const string Header = "key,value,edition,table,page,initials,date\n";
    private const string Read = "2011+A1:2014,table 4,17,AB,2026-05-12\n";

    private static readonly FactLibrary Facts = new(Repository.At("data"));

    [Fact]
    public void There_are_forty_common_enquiries() => Assert.Equal(40, Facts.CommonestEnquiries.Count);

    [Theory]
    [InlineData("british-2014")]
    [InlineData("british-2024")]
    [InlineData("nordic-classes")]
    public void What_is_unread_comes_by_how_often_it_is_asked_for(string rulebook)
    {
        var cells = ListUnread.Run(rulebook, Facts).Cells;

        Assert.NotEmpty(cells);
        Assert.Equal(cells.OrderByDescending(cell => cell.Enquiries), cells);
        Assert.Equal(cells.Count, cells.Select(cell => cell.Key).Distinct().Count());
        Assert.All(
            cells,
            cell =>
                Assert.True(
                    cell.Row.Demand is UnknownCell
                        || (cell.Zone?.Provenance ?? cell.Row.Provenance).Standing == Standing.FromMemory
                )
        );
    }

    [Theory]
    [InlineData("british-2014")]
    [InlineData("british-2024")]
    public void Every_cell_that_is_filled_in_is_read_no_more(string rulebook)
    {
        var (book, _, cells) = ListUnread.Run(rulebook, Facts);
        var lines = cells.Select(cell => $"{cell.Key},{Value(cell)},{Edition(cell)},table 4,17,AB,2026-05-12\n");

        var filled = Fill(Header + string.Concat(lines), rulebook);

        Assert.Equal(cells.Count, filled.Confirmed + filled.Written);
        var own = RulebookFile.FromText(filled.Text, Facts);
        // What was written names a class, whose zone is confirmed in a document of its own.
        Assert.All(Worksheet.Of(own, Facts.CommonestEnquiries), cell => Assert.Equal("zone-NP3", cell.Key));
        Assert.All(
            Facts.CommonestEnquiries.SelectMany(enquiry => own.Answer(enquiry).Trace.Steps),
            step => Assert.IsNotType<Contradicted>(step.Finding)
        );

        string Edition(WorksheetCell cell) => cell.Zone?.Provenance.Edition ?? book.Edition;
        static string Value(WorksheetCell cell) =>
            cell.Row switch
            {
                { Demand: not UnknownCell } => "",
                { Subject: Subject.Penetration } => "NP3",
                _ => "1.25",
            };
    }

    [Theory]
    [InlineData("in-ground,NP5", "in-ground-15-sawn-no-heartwood-permeable")]
    [InlineData("in-ground,NP5", "in-ground-15-sawn-heartwood-resistant")]
    [InlineData("aql,10", "aql-sawn-resistant")]
    public void One_value_for_all_that_an_unread_row_covers_is_refused(string line, string cell)
    {
        var said = Assert
            .Throws<InputRefusedException>(() =>
                Fill($"{Header}{line},2024,table 4,17,AB,2026-05-12\n", "british-2024")
            )
            .Message;

        Assert.Contains("expected a value for each of its cells, not one for all: ", said, StringComparison.Ordinal);
        Assert.Contains(cell, said, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cell_of_an_unread_row_that_is_filled_in_holds_for_its_timber_form_and_life_alone()
    {
        const string Line = "in-ground-15-sawn-no-heartwood-permeable,NP5,2024,table 4,17,AB,2026-05-12\n";

        var own = RulebookFile.FromText(Fill(Header + Line, "british-2024").Text, Facts);

        Assert.Equal("NP5", Assert.IsType<Required>(Post("Scots pine", 15)).Requirement.PenetrationName);
        Assert.IsType<CellNotRead>(Assert.IsType<NotCovered>(Post("Norway spruce", 15)).Reason);
        Assert.IsType<CellNotRead>(Assert.IsType<NotCovered>(Post("Scots pine", 30)).Reason);

        Answer Post(string species, int years) =>
            own.Answer(
                new()
                {
                    Component = Facts.Components.Named("fence post"),
                    Species = Facts.Species.Named(species),
                    Section = new RectangularSection(75, 75),
                    HasExposedHeartwood = false,
                    Life = new(years),
                }
            );
    }

    [Theory]
    [InlineData("not permitted", typeof(NotPermitted), "BS 8417, 2024, table 4, page 17.")]
    [InlineData("Not permitted: not for 15 years", typeof(NotPermitted), "not for 15 years")]
    [InlineData("none needed", typeof(NotNeeded), "BS 8417, 2024, table 4, page 17.")]
    [InlineData("none needed: durable enough", typeof(NotNeeded), "durable enough")]
    [InlineData("not covered: the table is for round posts", typeof(NotCovered), "the table is for round posts")]
    public void A_cell_may_say_that_the_code_asks_for_no_depth_and_why(string value, Type outcome, string reason)
    {
        var line = $"in-ground-15-sawn-no-heartwood-permeable,{value},2024,table 4,17,AB,2026-05-12\n";

        var own = RulebookFile.FromText(Fill(Header + line, "british-2024").Text, Facts);
        var answer = own.Answer(
            new()
            {
                Component = Facts.Components.Named("fence post"),
                Species = Facts.Species.Named("Scots pine"),
                Section = new RectangularSection(75, 75),
                HasExposedHeartwood = false,
                Life = new(15),
                Exposure = new() { Insects = [] },
            }
        );

        Assert.IsType(outcome, answer);
        Assert.Equal(
            reason,
            answer switch
            {
                NotPermitted no => no.Reason,
                NotNeeded none => none.Reason,
                NotCovered { Reason: TimberNotCovered outside } => outside.Covers,
                _ => "",
            }
        );
        var row = Assert.Single(answer.Trace.Step(Subject.Penetration)!.Matched);
        Assert.Equal((Standing.Published, "table 4, page 17"), (row.Provenance.Standing, row.Provenance.Place));
        Assert.Equal(Standing.Published, answer.Trace.PenetrationStanding);
    }

    [Fact]
    public void The_word_alone_confirms_what_the_rulebook_says_for_a_reason_of_its_own()
    {
        const string European = "european-1995";
        var row = Facts.Rulebooks.Named(European).Rows.First(each => each.Demand is Forbidden);
        string Line(string value) => $"{Header}{row.Key},{value},1995,table 1,,AB,2026-05-12\n";

        var same = Fill(Line("not permitted"), European);
        var other = Fill(Line("none needed"), European);

        Assert.Equal((1, 0), (same.Confirmed, same.Written));
        Assert.Equal((0, 1), (other.Confirmed, other.Written));
    }

    [Theory]
    [InlineData("in-ground-15-sawn-resistant", "perhaps", "\"not permitted\", \"none needed\" or \"not covered\"")]
    [InlineData("in-ground-15", "not permitted", "a plain multiple of the critical value")]
    public void What_a_cell_may_say_is_named_where_it_says_something_else(string key, string value, string said) =>
        Assert.Contains(
            said,
            Assert.Throws<InputRefusedException>(() => Fill($"{Header}{key},{value},{Read}")).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void A_standard_of_classes_is_asked_for_its_classes_alone()
    {
        foreach (var rulebook in new[] { "european-1995", "european-2007", "australian-hazard-classes" })
            Assert.All(
                ListUnread.Run(rulebook, Facts).Cells,
                cell =>
                    Assert.True(cell.Zone is not null || cell.Row.Asks(Field.StatedClass), $"{rulebook}: {cell.Key}")
            );
        Assert.Equal(["P9"], ListUnread.Run("european-1995", Facts).Cells.Select(cell => cell.Key));
    }

    [Fact]
    public void A_specification_of_fence_posts_is_asked_for_fence_posts_alone()
    {
        var cells = ListUnread.Run("irish-is-436", Facts).Cells;

        Assert.Equal(["fence-post-sawn", "retention-fence-post", "fence-post-round"], cells.Select(cell => cell.Key));
        Assert.All(cells, cell => Assert.Contains(cell.Row.When, each => each is OneOf { Allowed: ["fence post"] }));
        Assert.Equal([6, 6, 0], cells.Select(cell => cell.Enquiries));
    }

    [Fact]
    public void What_the_table_was_read_to_leave_out_is_asked_for_no_more() =>
        Assert.DoesNotContain(
            ListUnread.Run("american-use-categories", Facts).Cells,
            cell => cell.Key.EndsWith("not-listed", StringComparison.Ordinal)
        );

    [Fact]
    public void A_retention_that_the_code_does_not_divide_by_timber_is_asked_for_once() =>
        Assert.DoesNotContain(
            ListUnread.Run(Book, Facts).Cells,
            cell => cell.Row.Subject == Subject.Retention && cell.Row.Asks(Field.SpeciesGroup)
        );

    [Theory]
    [InlineData("nordic-classes")]
    [InlineData("american-use-categories")]
    [InlineData("spanish-se-m")]
    public void A_code_that_knows_no_lives_is_not_asked_by_life(string rulebook) =>
        Assert.All(
            ListUnread.Run(rulebook, Facts).Cells,
            cell => Assert.DoesNotContain(cell.Row.When, condition => condition.Field == Field.Life)
        );

    [Theory]
    [InlineData("zone-NP3,6 mm,2007", "field value: found 6 mm, expected nothing, which confirms the zone")]
    [InlineData("zone-NP3,,2014", "field edition: found 2014, expected 2007")]
    public void A_zone_is_confirmed_in_the_document_that_defines_it_and_takes_no_value(string line, string said) =>
        Assert.Contains(
            said,
            Assert.Throws<InputRefusedException>(() => Fill($"{Header}{line},table 4,17,AB,2026-05-12\n")).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void What_is_still_remembered_of_a_confirmed_row_is_its_zone_until_that_is_confirmed_too()
    {
        const string Rows = $"{Header}in-ground-15-sawn-resistant,,{Read}in-ground-15,,{Read}";

        var before = Trace(Rows);
        var after = Trace($"{Rows}zone-NP3,,2007,4,,AB,2026-05-12\n");

        Assert.Equal(
            (Standing.FromMemory, Standing.Published, Standing.FromMemory),
            (before.WeakestStanding, before.PenetrationStanding, before.ZoneStanding)
        );
        Assert.Equal(
            Standing.FromMemory,
            Assert.Single(before.FactsUsed.OfType<AnalyticalZoneUsed>()).Provenance.Standing
        );
        Assert.Equal(Standing.Published, after.ZoneStanding);
        Assert.NotEqual(Standing.FromMemory, after.WeakestStanding);

        static Trace Trace(string sheet) =>
            RulebookFile
                .FromText(Fill(sheet).Text, Facts)
                .Answer(
                    new()
                    {
                        Component = Facts.Components.Named("fence post"),
                        Species = Facts.Species.Named("Sitka spruce"),
                        Section = new RectangularSection(75, 75),
                    }
                )
                .Trace;
    }

    [Theory]
    [InlineData("nowhere,NP3,", "line 2, row \"nowhere\", field key: found nowhere")]
    [InlineData(
        "in-ground-15-sawn-permeable,NP99,",
        "line 2, row \"in-ground-15-sawn-permeable\", field value: found NP99"
    )]
    [InlineData(
        "in-ground-30-sawn-resistant-no-heartwood,,",
        "field value: found nothing, expected what the copy says"
    )]
    public void A_line_that_cannot_be_read_is_named(string line, string said) =>
        Assert.Contains(
            said,
            Assert.Throws<InputRefusedException>(() => Fill(Header + line + Read)).Message,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("british-2014")]
    [InlineData("british-2024")]
    [InlineData("nordic-classes")]
    [InlineData("irish-is-436")]
    [InlineData("american-round")]
    [InlineData("new-zealand-hazard-classes")]
    public void A_cell_of_which_nothing_is_known_wants_a_value_and_cannot_be_confirmed(string rulebook)
    {
        var (book, _, cells) = ListUnread.Run(rulebook, Facts);
        var unknown = cells.Where(cell => cell.Row.Demand is UnknownCell).Select(cell => cell.Key).ToList();
        var lines = unknown.Select(key => $"{key},,{book.Edition},table 4,17,AB,2026-05-12\n");

        Assert.NotEmpty(unknown);
        Assert.All(
            Assert.Throws<InputRefusedException>(() => Fill(Header + string.Concat(lines), rulebook)).Problems,
            (problem, at) =>
                Assert.Equal(
                    (unknown[at], "value", "what the copy says, since nothing is known here that could be confirmed"),
                    (problem.Row, problem.Field, problem.Expected)
                )
        );
    }

    [Fact]
    public void A_value_that_says_what_the_rulebook_says_confirms_it()
    {
        var row = Facts.Rulebooks.Named(Book).Rows.First(each => each.Demand is RetentionFactor { Factor: 1.5 });

        var same = Fill($"{Header}{row.Key},1.5,{Read}");
        var other = Fill($"{Header}{row.Key},1.25,{Read}");

        Assert.Equal((1, 0), (same.Confirmed, same.Written));
        Assert.Equal((0, 1), (other.Confirmed, other.Written));
    }

    [Theory]
    [InlineData("british-2014")]
    [InlineData("british-2024")]
    [InlineData("irish-is-436")]
    [InlineData("nordic-classes")]
    [InlineData("new-zealand-hazard-classes")]
    public void A_sheet_that_is_filled_in_otherwise_in_every_cell_contradicts_itself_nowhere(string rulebook)
    {
        string[] classes = ["NP1", "NP2", "NP3", "NP5", "NP6"];
        var (book, _, cells) = ListUnread.Run(rulebook, Facts);
        var lines = cells
            .Where(cell => cell.Row.Demand is UnknownCell)
            .Select(
                (cell, at) =>
                    $"{cell.Key},{(cell.Row.Subject == Subject.Penetration ? classes[at % classes.Length] : $"1.{at:00}")},{book.Edition},table 4,17,AB,2026-05-12\n"
            );

        var own = RulebookFile.FromText(Fill(Header + string.Concat(lines), rulebook).Text, Facts);

        Assert.DoesNotContain(
            RulebookCheck.Run(own, TestContext.Current.CancellationToken),
            finding => finding.Kind is RulebookFindingKind.Contradiction or RulebookFindingKind.TooLarge
        );
    }

    [Fact]
    public void A_retention_with_a_unit_is_an_amount_and_never_a_multiple()
    {
        const string American = "american-use-categories";
        var row = Facts.Rulebooks.Named(American).Rows.First(each => each.Demand is FixedRetention);
        FilledIn With(string value) => Fill($"{Header}{row.Key},{value},2020,table 3,17,AB,2026-05-12\n", American);

        var own = RulebookFile.FromText(With("0.30 pcf").Text, Facts);

        Assert.IsType<FixedRetention>(own.Rows.First(each => each.Key == row.Key).Demand);
        Assert.Throws<InputRefusedException>(() => With("0.3"));
    }

    [Fact]
    public void A_copy_of_another_edition_confirms_nothing() =>
        Assert.Contains(
            "field edition: found 2024, expected 2011+A1:2014",
            Assert
                .Throws<InputRefusedException>(() => Fill($"{Header}in-ground-15,,2024,table 4,17,AB,2026-05-12\n"))
                .Message,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("in-ground-30,1.25,2024,table 4,17,AB,2026-05-12", "field edition: found 2024, expected 2011+A1:2014")]
    [InlineData("in-ground-30,1.25,2014,table 4,17,AB,2031-05-12", "field date: found 2031-05-12, expected the day")]
    [InlineData("in-ground-30,,2014,table 4,17,AB,2026-11-30", "at the latest today, 2026-11-29")]
    [InlineData(
        "in-ground-30,1.5 × CV,2014,table 4,17,AB,2026-05-12",
        "field value: found 1.5 × CV, expected a plain multiple of the critical value"
    )]
    public void A_value_of_another_edition_of_a_day_to_come_or_in_other_words_is_refused(string line, string said) =>
        Assert.Contains(
            said,
            Assert.Throws<InputRefusedException>(() => Fill($"{Header}{line}\n")).Message,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("4", "", "table 4")]
    [InlineData("4a", "17", "table 4a, page 17")]
    [InlineData("5.3", "17", "5.3, page 17")]
    [InlineData("table 4", "17", "table 4, page 17")]
    public void A_bare_number_is_that_of_a_table(string table, string page, string place)
    {
        foreach (var value in new[] { "1.25", "" })
        {
            var filled = Fill($"{Header}in-ground-30,{value},2014,{table},{page},AB,2026-05-12\n");

            var row = RulebookFile.FromText(filled.Text, Facts).Rows.First(each => each.Key == "in-ground-30");
            Assert.Equal(place, row.Provenance.Place);
        }
    }

    [Fact]
    public void A_line_filled_in_by_half_is_refused_and_an_empty_one_passed_over()
    {
        var refused = Assert.Throws<InputRefusedException>(() =>
            Fill(Header + "in-ground-15-sawn-permeable,NP5,,,,,\nin-ground-30,,,,,,\n")
        );

        Assert.All(refused.Problems, problem => Assert.Equal(2, problem.Line));
        Assert.Equal(
            ["date", "edition", "initials", "table"],
            refused.Problems.Select(problem => problem.Field).Order()
        );
    }

    private static FilledIn Fill(string csv, string book = Book)
    {
        using var folder = new TemporaryFolder();
        return FillRulebook.Run(
            book,
            Table.Open(folder.Write("sheet.csv", csv), null),
            Facts,
            new(2026, 11, 29),
            shown: _ => null
        );
    }
}
