using Alburnum.Records.Marks;
using Alburnum.Reports.Documents;
using Alburnum.Web.Marking;
using Microsoft.AspNetCore.WebUtilities;

namespace Alburnum.Web.Tests.Marking;

/// <summary>Marks being made: they live in the page's address.</summary>
public sealed class MarkDraftTests
{
    private static readonly MarkDraft Empty = MarkDraft.Of((MarksDocument?)null);

    [Fact]
    public void A_point_goes_to_the_field_that_is_next_and_can_be_taken_back()
    {
        var one = (Empty with { Next = Meaning.Treated }).With(new(10, 20), corners: 4);
        var two = (one with { Next = Meaning.LeaveOut }).With(new(30, 40), corners: 4);

        Assert.Equal(("10,20", "30,40"), (two["treated"], two["leaveOut"]));
        var back = two.Undone();
        Assert.Equal(("10,20", "", Meaning.LeaveOut), (back["treated"], back["leaveOut"], back.Next));
        Assert.Equal("", back.Undone()["treated"]);
        Assert.Empty(back.Undone().Undone().UndoSteps);
    }

    [Fact]
    public void An_address_brings_back_the_draft_that_it_was_made_from()
    {
        var draft = (Empty with { Next = Meaning.Untreated })
            .With(new(10.5, 20), corners: 4)
            .With(new(30, 40), corners: 4);

        var again = MarkDraft.Of(QueryHelpers.ParseQuery(draft.Query()))!;

        Assert.True(again.SaysTheSameAs(draft));
        Assert.Equal("10.5,20 30,40", again["untreated"]);
        Assert.Equal(draft.UndoSteps, again.UndoSteps);
        Assert.Equal(Meaning.Untreated, again.Next);
    }

    [Fact]
    public void A_fifth_corner_moves_the_nearest_and_taking_it_back_moves_it_home()
    {
        var corners = Empty;
        foreach (var corner in new MarkedPoint[] { new(0, 0), new(100, 0), new(100, 100), new(0, 100) })
            corners = corners.With(corner, corners: 4);

        var moved = corners.With(new(90, 95), corners: 4);

        Assert.Equal("0,0 100,0 90,95 0,100", moved["corners"]);
        Assert.Equal("0,0 100,0 100,100 0,100", moved.Undone()["corners"]);
    }

    [Fact]
    public void A_rim_takes_as_many_points_as_are_given()
    {
        var rim = Empty;
        for (var x = 0; x < 7; x++)
            rim = rim.With(new(x, x), corners: null);

        Assert.Equal("0,0 1,1 2,2 3,3 4,4 5,5 6,6", rim["corners"]);
    }

    [Fact]
    public void A_second_pith_takes_the_place_of_the_first() =>
        Assert.Equal(
            "3,4",
            (Empty with { Next = Meaning.Pith }).With(new(1, 2), corners: 4).With(new(3, 4), corners: 4)["pith"]
        );

    [Fact]
    public void Kept_marks_become_the_draft_they_came_from()
    {
        var kept = new MarksDocument
        {
            CornersPx =
            [
                [1, 2],
                [3, 4],
                [5, 6],
                [7, 8],
            ],
            Scale = new()
            {
                FromPx = [10, 10],
                ToPx = [60, 10],
                LengthMm = 50,
            },
            TreatedPx =
            [
                [20, 20],
            ],
            PithPx = [40, 40],
            HeartwoodRadiusMm = 25.5,
        };

        var draft = MarkDraft.Of(kept);

        Assert.Equal("1,2 3,4 5,6 7,8", draft["corners"]);
        Assert.Equal(("10,10 60,10", "50"), (draft["scale"], draft["scaleLength"]));
        Assert.Equal(("20,20", "40,40", "25.5"), (draft["treated"], draft["pith"], draft["heartwoodRadiusMm"]));
    }
}
