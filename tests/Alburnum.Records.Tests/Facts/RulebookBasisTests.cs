using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;

namespace Alburnum.Records.Tests.Facts;

public sealed class RulebookBasisTests
{
    private const string Confirming = """
        basedOn: british-2014
        confirmed:
          - { key: in-ground-15-sawn-permeable, edition: "2011+A1:2014", table: table 4, page: "17", initials: AB, date: 2026-05-12 }
        """;

    private static readonly Enquiry Post = new()
    {
        Species = ShippedData.Library.Species.Get("Scots pine"),
        UseClasses = [UseClass.Four],
        Life = new DesiredServiceLife(15),
        Form = TimberForm.Sawn,
    };

    [Fact]
    public void A_row_confirmed_against_a_copy_is_published_and_says_who_read_it()
    {
        var before = Row(ShippedData.Library.Rulebooks.Named("british-2014"));
        var after = Row(Book(Confirming));

        Assert.Equal(Standing.FromMemory, before.Provenance.Standing);
        Assert.Equal(Standing.Published, after.Provenance.Standing);
        Assert.Equal(
            "BS 8417, 2011+A1:2014, table 4, page 17, confirmed against a copy, AB, 2026-05-12",
            after.Provenance.Citation
        );
        Assert.Equal(before.Demand, after.Demand);
    }

    [Fact]
    public void A_row_of_the_same_key_takes_the_place_of_the_basis_row_and_all_others_stay()
    {
        var basis = ShippedData.Library.Rulebooks.Named("british-2014");
        var own = Book(
            """
            basedOn: british-2014
            penetration:
              - key: in-ground-15-sawn-permeable
                when: { useClass: 4, lifeYears: 15, form: sawn, speciesGroup: permeable }
                require: 12 mm sapwood
                source: { document: Own copy, edition: "1", place: table 4 }
                standing: published
            """
        );

        Assert.Equal(basis.Rows.Select(row => row.Key), own.Rows.Select(row => row.Key));
        Assert.Equal(
            new LeastDepth(WoodZone.Sapwood, 12),
            Assert.IsType<Required>(own.Answer(Post)).Requirement.Penetration
        );
        Assert.Equal(basis.Citation, own.Citation);
    }

    [Fact]
    public void An_answer_names_the_file_and_its_hash()
    {
        using var folder = new TemporaryFolder();
        var file = folder.Write("my.yaml", Confirming);

        var trace = RulebookFile.Named(file, ShippedData.Library).Answer(Post).Trace;

        Assert.Equal((file, 64), (trace.Copy?.File, trace.Copy?.Sha256.Length));
        Assert.DoesNotContain("my.yaml", trace.RulebookTitle, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("basedOn: british-2014", "basedOn: british-1066", "field basedOn: found british-1066")]
    [InlineData("key: in-ground-15-sawn-permeable", "key: nowhere", "expected the key of a row")]
    [InlineData(
        "key: in-ground-15-sawn-permeable",
        "key: in-ground-30-sawn-resistant-no-heartwood",
        "of which nothing is known"
    )]
    [InlineData("date: 2026-05-12", "date: in May", "expected a date such as 2026-05-12")]
    [InlineData("initials: AB", "initials: Somebody", "expected at most 7 letters")]
    [InlineData("table: table 4, ", "", "field table: found nothing")]
    public void A_confirmation_that_cannot_be_read_is_refused_in_words(string right, string wrong, string said)
    {
        var text = Confirming.Replace(right, wrong, StringComparison.Ordinal);
        Assert.Contains(said, Assert.Throws<InputRefusedException>(() => Book(text)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_copy_cannot_have_been_read_on_a_day_to_come()
    {
        var refused = Assert.Throws<InputRefusedException>(() => RulebookFile.FromText(Confirming, On(11)));

        var problem = Assert.Single(refused.Problems);
        Assert.Equal((3, "date", "2026-05-12"), (problem.Line, problem.Field, problem.Found));
        Assert.Equal("the day on which the copy was read, at the latest today, 2026-05-11", problem.Expected);
    }

    [Theory]
    [InlineData(12)]
    [InlineData(13)]
    public void A_copy_read_today_or_before_is_taken(int today) =>
        Assert.Equal(Standing.Published, Row(RulebookFile.FromText(Confirming, On(today))).Provenance.Standing);

    private static FactLibrary On(int dayOfMay) => new(Repository.At("data"), new ClockAt(dayOfMay));

    private sealed class ClockAt(int dayOfMay) : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => new(2026, 5, dayOfMay, 12, 0, 0, TimeSpan.Zero);
    }

    private static Rulebook Book(string text) => RulebookFile.FromText(text, ShippedData.Library);

    private static Row Row(Rulebook book) => book.Rows.Single(row => row.Key == "in-ground-15-sawn-permeable");
}
