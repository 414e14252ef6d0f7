using Alburnum.Records.Marks;
using Alburnum.Timber;
using CsCheck;

namespace Alburnum.Records.Tests.Marks;

/// <summary>The one reader of marks: whole marks are read, and each clause of its rules refuses what breaks it.</summary>
public sealed class MarksReaderTests
{
    private static readonly Section Sawn = new RectangularSection(100, 100);
    private static readonly Section Round = new RoundSection(120);

    [Theory]
    [InlineData("heartwood", "1,1 9,1", "2 points", "3 points or more")]
    [InlineData("heartwood", "", "nothing", "3 points or more")]
    [InlineData("heartwoodRing", "1,1 9,1", "2 points", "3 points or more")]
    [InlineData("pith", "1,1", "it alone", "pith and heartwoodRadiusMm together")]
    [InlineData("heartwoodRadiusMm", "30", "it alone", "pith and heartwoodRadiusMm together")]
    [InlineData("heartwood", "1,1 9", "9", "points as x,y")]
    public void A_border_of_the_heartwood_that_lacks_something_is_refused(
        string field,
        string text,
        string found,
        string expected
    )
    {
        var (marks, faults) = Read((field, text));

        var fault = Assert.Single(faults);
        Assert.Equal((field, found), (fault.Field, fault.Found));
        Assert.StartsWith(expected, fault.Expected, StringComparison.Ordinal);
        Assert.Equivalent(new WrittenMarks(), marks, strict: true);
    }

    [Theory]
    [InlineData("pith", "1,1 2,2", "one point")]
    [InlineData("heartwoodRadiusMm", "0", "0.1 to 2000 mm")]
    [InlineData("heartwoodRadiusMm", "2000.1 mm", "0.1 to 2000 mm")]
    [InlineData("heartwoodRadiusMm", "3 ft", "0.1 to 2000 mm")]
    [InlineData("heartwoodRadiusMm", "wide", "0.1 to 2000 mm")]
    public void A_pith_or_a_radius_that_cannot_be_one_is_refused(string field, string text, string expected)
    {
        var (marks, faults) = Read(("pith", "5,5"), ("heartwoodRadiusMm", "30"), (field, text));

        var fault = Assert.Single(faults);
        Assert.Equal(field, fault.Field);
        Assert.StartsWith(expected, fault.Expected, StringComparison.Ordinal);
        Assert.Equivalent(new WrittenMarks(), marks, strict: true);
    }

    [Fact]
    public void A_measured_size_like_the_nominal_one_is_read()
    {
        var (marks, faults) = Read(("measuredSize", "98.5x101"));

        Assert.Empty(faults);
        Assert.Equal(new RectangularSection(98.5, 101), marks.MeasuredSize);
    }

    [Theory]
    [InlineData("100x60", "within 25 % of the nominal 100 × 100 mm")]
    [InlineData("round 100", "within 25 % of the nominal 100 × 100 mm")]
    [InlineData("big", "within 25 % of the nominal 100 × 100 mm")]
    public void A_measured_size_of_another_piece_is_refused(string text, string expected)
    {
        var (marks, faults) = Read(("measuredSize", text));

        var fault = Assert.Single(faults);
        Assert.Equal(("measuredSize", text), (fault.Field, fault.Found));
        Assert.Contains(expected, fault.Expected, StringComparison.Ordinal);
        Assert.Null(marks.MeasuredSize);
    }

    [Fact]
    public void A_measured_size_beside_a_known_length_is_one_too_many() =>
        Assert.Equal(
            "measuredSize",
            Assert.Single(Read(("measuredSize", "99x99"), ("scale", "1,1 51,1 50")).Faults).Field
        );

    [Theory]
    [InlineData("heartwood", "heartwoodRing")]
    [InlineData("heartwood", "pith")]
    [InlineData("heartwoodRing", "pith")]
    public void A_second_border_of_the_heartwood_is_one_too_many(string one, string two)
    {
        const string Points = "1,1 9,1 9,9";
        var (marks, faults) = Read(
            (one, Points),
            (two, two == "pith" ? "5,5" : Points),
            ("heartwoodRadiusMm", two == "pith" ? "30" : null)
        );

        Assert.Equal(
            new MarkFault(two, "a second border of the heartwood", "one of heartwood, heartwoodRing, or pith"),
            Assert.Single(faults)
        );
        Assert.Equivalent(new WrittenMarks(), marks, strict: true);
    }

    [Theory]
    [InlineData("1,1 9,1", "4 corners", "2 points")]
    [InlineData("1,1 9,1 9,9 1,9 5,5", "4 corners", "5 points")]
    public void A_sawn_section_has_four_corners(string text, string expected, string found)
    {
        var fault = Assert.Single(Read(("corners", text)).Faults);

        Assert.Equal(found, fault.Found);
        Assert.Contains(expected, fault.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rim_takes_five_points_or_more()
    {
        var four = MarksReader.Read(Fields([("corners", "1,1 9,1 9,9 1,9")]), field => field, Round);
        var five = MarksReader.Read(Fields([("corners", "1,1 9,1 9,9 1,9 5,5")]), field => field, Round);

        Assert.Equal(new TooFewPoints("corners", 4, 5, "5 points or more on the rim"), Assert.Single(four.Faults));
        Assert.Equal(5, five.Marks.Corners!.Count);
    }

    [Theory]
    [InlineData("1,1 9,1", true)]
    [InlineData("1,1", true)]
    [InlineData("50 mm", true)]
    [InlineData("1,1 1,1 50", true)]
    [InlineData("1,1 9,1 9,9 50 mm", false)]
    [InlineData("1,1 9,1 2001 mm", false)]
    [InlineData("long", false)]
    [InlineData("", false)]
    public void A_known_length_takes_two_ends_and_how_long_it_is(string text, bool isBegun)
    {
        var (marks, faults) = Read(("scale", text));

        Assert.Equal(isBegun, Assert.Single(faults) is HalfGiven);
        Assert.Null(marks.Scale);
    }

    [Fact]
    public void Fields_are_called_what_they_are_called_where_they_stand() =>
        Assert.Equal(
            "--pith and --heartwoodRadiusMm together",
            Assert.Single(MarksReader.Read(Fields([("pith", "1,1")]), field => $"--{field}", Sawn).Faults).Expected
        );

    [Fact]
    public void What_is_written_of_marks_is_read_back_as_the_same_marks()
    {
        var point = Gen.Select(
            Gen.Int[-9999, 9999],
            Gen.Int[-9999, 9999],
            (x, y) => new MarkedPoint(x / 10.0, y / 10.0)
        );
        // Within the lengths that a scale may have.
        var mm = Gen.Int[100, 200_000].Select(hundredths => hundredths / 100.0);
        Gen.Select(point.Array[4, 4], point.Array[0, 5], point.Array[3, 6], mm, Gen.Int[0, 3])
            .Where((_, _, ring, _, _) => ring[0] != ring[1])
            .Sample(
                (corners, touched, ring, length, border) =>
                {
                    var marks = new WrittenMarks
                    {
                        Corners = corners,
                        Scale = new(ring[0], ring[1], length),
                        Treated = touched,
                        LeaveOut = touched,
                        Heartwood = border == 0 ? ring : null,
                        HeartwoodRing = border == 1 ? ring : null,
                        Pith = border == 2 ? new(ring[0], length) : null,
                    };

                    var fields = MarkText.Fields(marks).Select(field => (field.Field, (string?)field.Text)).ToArray();
                    var (read, faults) = MarksReader.Read(Fields(fields), field => field, Sawn);

                    Assert.Empty(faults);
                    Assert.Equivalent(marks, read, strict: true);
                },
                iter: 200
            );
    }

    private static ReadMarks Read(params (string Field, string? Text)[] fields) =>
        MarksReader.Read(Fields(fields), field => field, Sawn);

    // The last text of a field counts.
    private static Func<string, string?> Fields((string Field, string? Text)[] fields) =>
        field => fields.LastOrDefault(each => each.Field == field).Text;
}
