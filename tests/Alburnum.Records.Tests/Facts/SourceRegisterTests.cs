using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;

namespace Alburnum.Records.Tests.Facts;

public sealed class SourceRegisterTests
{
    private const string Register = "sources.yaml";

    private static readonly IReadOnlyList<Source> All = ShippedData.Library.Sources.All;

    [Fact]
    public void Every_row_that_ships_names_a_source_of_the_register_and_every_source_is_named_by_a_row()
    {
        var named = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var path in Directory.EnumerateFiles(Repository.At("data"), "*.yaml", SearchOption.AllDirectories))
        {
            if (string.Equals(Path.GetFileName(path), Register, StringComparison.Ordinal))
                continue;
            var root = FactSource.Read(File.ReadAllText(path), path, [])!;
            Assert.True(root["sources"] is null, $"{path} has sources of its own.");
            foreach (var source in Named("source", root))
                named.Add(Assert.IsType<FactText>(source).Text);
        }

        Assert.Equal(All.Select(each => each.Id).Order(StringComparer.Ordinal), named);
    }

    [Fact]
    public void Every_source_has_a_title_and_says_how_it_was_read() =>
        Assert.All(
            All,
            each =>
            {
                Assert.NotEqual("", each.Document);
                Assert.NotEqual("", each.HowRead);
                Assert.True(each.IsRemembered || each.DateRead.Length > 0, each.Id);
            }
        );

    [Fact]
    public void A_source_that_was_read_has_an_address_or_says_why_it_has_none()
    {
        var root = FactSource.Read(File.ReadAllText(Repository.At("data/" + Register)), Register, [])!;
        var reasons = Assert
            .IsType<FactList>(root["sources"])
            .Items.Cast<FactFields>()
            .Where(each => each["noAddress"] is FactText { Text.Length: > 0 })
            .Select(each => Assert.IsType<FactText>(each["id"]).Text)
            .ToHashSet(StringComparer.Ordinal);

        Assert.All(
            All.Where(each => !each.IsRemembered),
            each => Assert.True(each.Address.Length > 0 != reasons.Contains(each.Id), each.Id)
        );
    }

    [Fact]
    public void An_address_of_a_site_alone_says_that_the_page_was_not_kept() =>
        Assert.DoesNotContain(
            All,
            each =>
                each.Address.Length > 0
                && !each.Address.Contains('/', StringComparison.Ordinal)
                && !each.Address.Contains("not kept", StringComparison.Ordinal)
        );

    [Theory]
    [InlineData("durability-class-years")]
    [InlineData("timber-encyclopaedia")]
    [InlineData("en350-2-1994-encyclopaedia")]
    public void What_an_encyclopaedia_repeats_was_read_at_second_hand(string id) =>
        Assert.Equal("read at second hand", All.Single(each => each.Id == id).HowRead);

    [Fact]
    public void A_row_of_a_file_may_name_the_register_or_a_source_of_the_file()
    {
        var (rows, problems) = Read(
            """
            sources:
              - { id: own, document: Own table, year: 2025, place: table 4 }
            rows:
              - { key: one, source: own, standing: published }
              - { key: two, source: en335-2013, standing: published }
            """
        );

        Assert.Empty(problems);
        Assert.Equal("Own table, 2025, table 4", rows[0].Citation);
        Assert.Equal("EN 335, 2013, definitions of the use classes, read at second hand", rows[1].Citation);
    }

    [Fact]
    public void A_row_cannot_be_published_or_worked_out_from_what_was_only_remembered()
    {
        var (_, problems) = Read(
            """
            rows:
              - { key: one, source: en460-1994, standing: published }
              - { key: two, source: en460-1994, standing: worked out, how: a mean }
              - { key: three, source: en460-1994, standing: from memory }
            """
        );

        Assert.Equal([2, 3], problems.Select(problem => problem.Line));
        Assert.All(problems, problem => Assert.Equal("standing", problem.Field));
    }

    [Fact]
    public void The_words_common_practice_are_a_standing_and_no_source()
    {
        var (_, problems) = Read(
            """
            rows:
              - { key: one, source: trade-practice, standing: common practice }
              - { key: two, source: common practice, standing: common practice }
            """
        );

        var problem = Assert.Single(problems);
        Assert.Equal((3, "source"), (problem.Line, problem.Field));
    }

    [Fact]
    public void A_number_that_was_worked_out_says_how()
    {
        var (rows, problems) = Read(
            """
            rows:
              - { key: one, source: comstock-1970, standing: worked out, how: geometric middle }
              - { key: two, source: comstock-1970, standing: worked out }
            """
        );

        Assert.EndsWith("geometric middle", rows[0].Citation, StringComparison.Ordinal);
        Assert.Equal("how", Assert.Single(problems).Field);
    }

    [Fact]
    public void The_classes_of_pines_are_not_credited_to_a_code_that_prints_none() =>
        Assert.All(
            new[] { "Corsican pine", "maritime pine", "radiata pine", "Scots pine" }
                .Select(name => ShippedData.Library.Species.Get(name))
                .SelectMany(pine => new[] { pine.Durability, pine.HeartwoodTreatability, pine.SapwoodTreatability }),
            cell => Assert.DoesNotContain("CTE", cell!.Provenance.Document, StringComparison.Ordinal)
        );

    [Fact]
    public void A_way_of_reading_that_the_register_does_not_know_is_refused()
    {
        var (_, problems) = Read(
            """
            sources:
              - { id: own, document: Own table, howRead: in a dream }
            rows: []
            """
        );

        Assert.Contains("second hand", Assert.Single(problems).Expected, StringComparison.Ordinal);
    }

    private static (List<Provenance> Rows, List<InputProblem> Problems) Read(string text)
    {
        var problems = new List<InputProblem>();
        var rows = new List<Provenance>();
        FactFile.ReadText(
            text,
            "own.yaml",
            problems,
            root =>
            {
                foreach (var row in root.Rows("rows"))
                {
                    _ = row.Text("key");
                    rows.Add(row.Provenance());
                }
            },
            ShippedData.Library.Words.Sources
        );
        return (rows, problems);
    }

    private static IEnumerable<FactNode> Named(string field, FactNode node) =>
        node switch
        {
            FactFields fields => fields.Fields.SelectMany(each =>
                string.Equals(each.Name, field, StringComparison.Ordinal) ? [each.Value] : Named(field, each.Value)
            ),
            FactList list => list.Items.SelectMany(item => Named(field, item)),
            _ => [],
        };
}
