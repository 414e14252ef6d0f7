using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Reports.Words;
using Alburnum.Timber;

namespace Alburnum.Reports.Tests.Words;

public sealed class ReadingWordsTests
{
    public static TheoryData<ReadingFault> Faults =>
        [
            new OutlineNotFound(),
            new KnownLengthDisagrees(4),
            new TooLittleShown(),
            new NoColour(),
            new NoFront(IsTreated: true),
            new NoFront(IsTreated: false),
            new NoFront(IsTreated: null),
            new DoubtfulBorder(),
            new NothingLeft(),
        ];

    [Theory]
    [MemberData(nameof(Faults))]
    public void Every_fault_begins_by_saying_that_nothing_was_determined(ReadingFault fault) =>
        Assert.StartsWith("Not determined: ", ReadingWords.Notes(Ended(fault, 0.99))[0], StringComparison.Ordinal);

    [Fact]
    public void One_colour_within_an_outline_that_was_found_asks_for_the_outline_too() =>
        Assert.Equal(
            "The outline may be wrong: point out the corners (or rim).",
            ReadingWords.Notes(Ended(new NoFront(IsTreated: false), 0.99))[1]
        );

    [Theory]
    [InlineData(0.99, true)]
    [InlineData(1, false)]
    public void A_sure_outline_is_not_asked_for_where_something_else_is_amiss(double confidence, bool isAskedFor) =>
        Assert.Equal(
            isAskedFor,
            ReadingWords.HowToPointOut("P01", Ended(new TooLittleShown(), confidence)) is not null
        );

    [Fact]
    public void How_to_point_the_outline_out_names_the_piece_and_the_pixels() =>
        Assert.Contains(
            "under piece P01 in case.yaml corners: [\"x,y\", \"x,y\", \"x,y\", \"x,y\"], clockwise, in pixels of the upright photograph (4000 × 3000)",
            ReadingWords.HowToPointOut("P01", Ended(new OutlineNotFound(), 0.2)),
            StringComparison.Ordinal
        );

    [Fact]
    public void Every_finding_says_how_large_it_is_and_what_to_do() =>
        Assert.Equal(
            [
                "Only 2.2 pixels per mm: go closer, so that the section fills most of the picture, or use a camera with more pixels.",
                "Out of focus, or the camera moved: edges are blurred over 1.5 mm. Focus on the cut, hold the camera still, and take it again.",
                "Over-exposed: 51.7 % of the section is burnt out. Keep flash and sun off the wet surface, or expose for the section, and take it again.",
                "Under-exposed: the section is nearly black, at 12 of 255 on average. Bring it into even light, and take it again.",
                "See-through: 50 % of the section lets what is behind it show, which changes its colours. Use the photograph as it left the camera.",
            ],
            ReadingWords.Findings(
                new(
                    QualityGrade.Poor,
                    [
                        new FewPixels(2.2),
                        new Blurred(1.5),
                        new OverExposed(0.5168),
                        new UnderExposed(12),
                        new SeeThrough(0.5),
                    ]
                )
            )
        );

    [Theory]
    [InlineData(HeartwoodFault.TooLittleUntreated)]
    [InlineData(HeartwoodFault.NoRings)]
    [InlineData(HeartwoodFault.OneColour)]
    [InlineData(HeartwoodFault.TooShort)]
    [InlineData(HeartwoodFault.NoArc)]
    public void Heartwood_that_was_not_found_says_what_to_do(HeartwoodFault fault) =>
        Assert.EndsWith(
            "mark the border by hand, or spray a reagent for heartwood that suits the timber.",
            ReadingWords.Heartwood(new UnknownHeartwood(fault, IsMissed: false)),
            StringComparison.Ordinal
        );

    [Fact]
    public void Sapwood_without_a_front_is_told_face_by_face()
    {
        var heartwood = new ShownHeartwood(0.7);
        var ended = Ended(new NoFront(IsTreated: false), 1);
        var reading = ended with
        {
            Outcome = (NotDetermined)ended.Outcome with
            {
                Heartwood = heartwood,
                Sapwood = new(
                    [new(1, 1, [12, 10, 14, null]), new(2, 1, [0, 0, 3, 5]), new(3, 1, [null, null])],
                    new(0.4312, 0.011),
                    heartwood
                ),
            },
        };

        Assert.Equal(
            [
                "The sapwood is measured all the same: it is 43.1 ± 1.1 % of the section.",
                "Face 1: 10.0 mm of sapwood at least, 12.0 mm on average where heartwood lies behind it; no heartwood behind 25.0 % of it before the middle of the piece.",
                "Face 2: 0.0 mm of sapwood at least, 2.0 mm on average where heartwood lies behind it; heartwood at the surface along 50.0 % of it.",
                "Face 3: sapwood to the middle of the piece.",
            ],
            ReadingWords.Notes(reading).TakeLast(4)
        );
    }

    private static SectionReading Ended(ReadingFault fault, double confidence) =>
        new()
        {
            FileName = "P01.jpg",
            Sha256 = "",
            WidthPx = 4000,
            HeightPx = 3000,
            Shape = SectionShape.Rectangle,
            Section = new RectangularSection(100, 75),
            Marks = new PhotographMarks(),
            Outcome = new NotDetermined(ReadingStage.Outline, fault)
            {
                Quality = new(QualityGrade.Poor, []),
                Indicator = null,
                Outline = new([], confidence),
                Scale = null,
            },
        };
}
