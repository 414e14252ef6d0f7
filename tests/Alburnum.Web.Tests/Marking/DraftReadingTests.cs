using Alburnum.Records.Marks;
using Alburnum.Timber;
using Alburnum.Web.Marking;
using Microsoft.AspNetCore.WebUtilities;

namespace Alburnum.Web.Tests.Marking;

/// <summary>What a draft says to the reader, and what it still waits for.</summary>
public sealed class DraftReadingTests
{
    private static readonly Section Sawn = new RectangularSection(100, 100);
    private static readonly Section Round = new RoundSection(120);

    [Fact]
    public void Corners_touched_crosswise_go_round_from_the_first()
    {
        var said = Read("corners=0,0 100,100 100,0 0,100", Sawn);

        Assert.Equal([new(0, 0), new(100, 0), new(100, 100), new(0, 100)], said.Marks.Corners!);
        Assert.Empty(said.Waiting);
    }

    [Theory]
    [InlineData("corners=0,0 100,0", "Two of four corners")]
    [InlineData("heartwood=1,1", "One of three points of the heartwood")]
    [InlineData("pith=1,1", "heartwood's radius")]
    [InlineData("heartwoodRadiusMm=20", "heartwood's radius")]
    [InlineData("scale=1,1 9,9", "its length in mm")]
    [InlineData("scaleLength=50", "both its ends")]
    public void What_is_begun_waits_and_is_not_used(string query, string expected)
    {
        var said = Read(query, Sawn);

        Assert.Contains(expected, Assert.Single(said.Waiting), StringComparison.Ordinal);
        Assert.Equivalent(new WrittenMarks(), said.Marks, strict: true);
        Assert.Empty(said.Problems);
    }

    [Fact]
    public void A_rim_waits_for_five_points() =>
        Assert.Contains(
            "Four of five points on the rim",
            Assert.Single(Read("corners=0,0 9,0 9,9 0,9", Round).Waiting),
            StringComparison.Ordinal
        );

    [Fact]
    public void Half_an_outline_is_drawn_all_the_same() =>
        Assert.Equal(2, Read("corners=0,0 100,0", Sawn).Shown.CornersPx!.Count);

    [Theory]
    [InlineData("treated=here", "found here, expected points as x,y")]
    [InlineData("corners=0,0 9,0 9,9 0,9 5,5", "found 5 points, expected the 4 corners")]
    [InlineData("pith=1,1&heartwoodRadiusMm=wide", "found wide, expected 0.1 to 2000 mm")]
    [InlineData("heartwood=1,1 9,1 9,9&pith=5,5", "found a second border of the heartwood")]
    [InlineData("scale=1,1 9,9 5,5", "found 3 points, expected two points and a length in mm")]
    public void What_cannot_be_read_is_said(string query, string expected) =>
        Assert.Contains(expected, Read(query, Sawn).Problems[0].ToString(), StringComparison.Ordinal);

    [Fact]
    public void Everything_that_is_whole_reaches_the_reader()
    {
        var marks = Read(
            "treated=1,1&untreated=2,2 3,3&leaveOut=4,4&pith=5,5&heartwoodRadiusMm=30&scale=1,1 51,1&scaleLength=25",
            Sawn
        ).Marks;

        Assert.Equal([new MarkedPoint(2, 2), new MarkedPoint(3, 3)], marks.Untreated);
        Assert.Equal([new MarkedPoint(4, 4)], marks.LeaveOut);
        Assert.Equal(new MarkedPith(new(5, 5), 30), marks.Pith);
        Assert.Equal(new MarkedLength(new(1, 1), new(51, 1), 25), marks.Scale);
    }

    private static DraftReading Read(string query, Section section) =>
        DraftReading.Of(MarkDraft.Of(QueryHelpers.ParseQuery($"?next=corners&{query}"))!, section);
}
