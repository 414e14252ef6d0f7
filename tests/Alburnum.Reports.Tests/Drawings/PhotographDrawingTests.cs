using Alburnum.Reports.Documents;
using Alburnum.Reports.Drawings;
using Alburnum.Reports.Sheets;

namespace Alburnum.Reports.Tests.Drawings;

public sealed class PhotographDrawingTests
{
    private const string Told = "Heartwood detected by its colour on untreated wood, border ± 0.9 mm.";

    [Fact]
    public void A_heartwood_border_that_was_told_lies_dashed_where_it_was_found_and_is_put_in_words()
    {
        var reading = Photographed(
            new()
            {
                DetectedBy = HeartwoodSource.Colour,
                BorderUMm = 0.9,
                PithPx = [50, 40],
                RadiusMm = 20,
                BorderPx =
                [
                    [
                        [30, 40],
                        [50, 20],
                        [70, 40],
                    ],
                ],
                InWords = Told,
            }
        );
        var border = Assert.Single(PhotographDrawing.Draw(reading, "P01").Marks.OfType<Line>(), line => line.Dashed);

        Assert.Equal([new Spot(30, 40), new Spot(50, 20), new Spot(70, 40)], border.Points);
        Assert.Contains(Told, SectionRows.Notes(reading));
    }

    [Fact]
    public void Of_heartwood_that_was_not_told_nothing_is_drawn_nor_said()
    {
        var reading = Photographed(
            new() { DetectedBy = HeartwoodSource.Unknown, InWords = "Heartwood not determined." }
        );

        Assert.DoesNotContain(PhotographDrawing.Draw(reading, "P01").Marks.OfType<Line>(), line => line.Dashed);
        Assert.Equal(reading.Notes, SectionRows.Notes(reading));
    }

    private static ReadingDocument Photographed(HeartwoodDocument heartwood) =>
        SampleDocument.Reading(9) with
        {
            WidthPx = 100,
            HeightPx = 80,
            Heartwood = heartwood,
        };
}
