using Alburnum.Imaging.Reading;
using Alburnum.Records.Marks;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Drawings;
using Alburnum.Workflows.Measuring;

namespace Alburnum.Reports.Tests.Documents;

public sealed class MarksMappingTests
{
    public static TheoryData<HeartwoodBorder?> Borders =>
        new()
        {
            { (HeartwoodBorder?)null },
            { new OutlinedHeartwood([new(1, 1), new(9, 1), new(9, 9)]) },
            { new RingOfHeartwood([new(1, 1), new(9, 1), new(9, 9)]) },
            { new HeartwoodAboutPith(new(-40, 5), 62.5) },
        };

    [Theory]
    [MemberData(nameof(Borders))]
    public void Marks_come_back_from_their_document_as_they_were(HeartwoodBorder? border)
    {
        var marks = Everything with { Heartwood = border };

        var back = MarksOnPhotograph.Of(MarksMapping.Written(MarksMapping.From(marks)));

        Assert.Equivalent(marks, back, strict: true);
    }

    [Fact]
    public void Nothing_pointed_out_is_null_and_not_an_empty_list()
    {
        Assert.Null(MarksMapping.From(new PhotographMarks()));
        Assert.Equivalent(new WrittenMarks(), MarksMapping.Written(null), strict: true);
        Assert.Equal("", MarksMapping.InWords(null));
    }

    [Fact]
    public void The_report_says_what_was_pointed_out() =>
        Assert.Equal(
            "Pointed out by hand: the outline; a length of 50 mm; 2 places treated; one place to be left out; "
                + "the pith, with heartwood of 62.5 mm about it.",
            MarksMapping.InWords(
                MarksMapping.From(Everything with { Heartwood = new HeartwoodAboutPith(new(-40, 5), 62.5) })
            )
        );

    [Fact]
    public void Every_kind_of_mark_is_drawn_where_it_was_put()
    {
        var document = MarksMapping.From(Everything)!;

        var drawn = MarksDrawing.Of(document, 1).ToList();

        foreach (var point in document.CornersPx!.Concat(document.TreatedPx!).Concat(document.LeaveOutPx!))
            Assert.Contains(drawn, mark => About(mark, point[0], point[1]));
        Assert.Contains(
            drawn,
            mark => mark is Line { Points: [var from, var to] } && from == new Spot(10, 10) && to == new Spot(60, 10)
        );
    }

    private static PhotographMarks Everything { get; } =
        new()
        {
            OutlinePx = [new(1.5, 2), new(99, 3), new(98, 97), new(2, 96)],
            ScaleBar = new(new(10, 10), new(60, 10), 50),
            Touches =
            [
                new(new(20, 20), TouchKind.Treated),
                new(new(25, 20), TouchKind.Treated),
                new(new(80, 15), TouchKind.LeaveOut),
            ],
        };

    private static bool About(Mark mark, double x, double y)
    {
        var points = mark switch
        {
            Area area => area.Outline,
            Line line => line.Points,
            _ => [],
        };
        return points.Count > 0
            && Math.Abs(points.Average(point => point.X) - x) < 0.01
            && Math.Abs(points.Average(point => point.Y) - y) < 0.01;
    }
}
