using System.Xml.Linq;
using Alburnum.Imaging.Geometry;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Drawings;

namespace Alburnum.Reports.Tests.Drawings;

public sealed class SectionDrawingTests
{
    [Fact]
    public void The_treated_band_of_an_even_depth_has_the_area_that_geometry_gives()
    {
        var drawing = SectionDrawing.Draw(SampleDocument.Reading(9), 6, "P01");

        // 100 × 75 with a core of 82 × 57 untreated: the four bands without corners, and the corners between them.
        Assert.Equal(2 * 82 * 9 + 2 * 57 * 9, AreaOf(drawing, Ink.Treated), tolerance: 1e-6);
        Assert.Equal(4 * 9 * 9, AreaOf(drawing, Ink.Between), tolerance: 1e-6);
    }

    [Fact]
    public void The_outline_is_drawn_to_scale()
    {
        var drawing = SectionDrawing.Draw(SampleDocument.Reading(9), 6, "P01");

        Assert.Equal(100 * 75, AreaOf(drawing, Ink.Wood), tolerance: 1e-6);
    }

    [Fact]
    public void The_depth_demanded_is_a_dashed_line_that_far_inside()
    {
        var demand = Assert.Single(
            SectionDrawing.Draw(SampleDocument.Reading(9), 6, "P01").Marks.OfType<Line>(),
            line => line.Dashed
        );

        Assert.Equal(100 - 12, demand.Points.Max(spot => spot.X) - demand.Points.Min(spot => spot.X), tolerance: 1e-9);
    }

    [Fact]
    public void A_round_band_has_the_area_of_its_ring()
    {
        var positions = Enumerable.Range(0, 377).Select(i => i + 0.5).ToList();
        var round = SampleDocument.Unread with
        {
            Shape = SectionShape.Round,
            SectionMm = [120],
            Faces =
            [
                new FaceDocument
                {
                    Number = 1,
                    StepMm = 1,
                    PositionsMm = positions,
                    DepthMm = [.. positions.Select(_ => 8.0)],
                    UMm = [.. positions.Select(_ => 0.2)],
                    Excluded = [.. positions.Select(_ => false)],
                    SapwoodMm = [.. positions.Select(_ => (double?)null)],
                },
            ],
        };

        Assert.Equal(
            Math.PI * (60 * 60 - 52 * 52),
            AreaOf(SectionDrawing.Draw(round, null, "P01"), Ink.Treated),
            tolerance: 5
        );
    }

    [Fact]
    public void A_reading_that_was_not_determined_shows_no_band()
    {
        var drawing = SectionDrawing.Draw(SampleDocument.Unread, 6, "P02");

        Assert.Equal(0, AreaOf(drawing, Ink.Treated));
        Assert.Contains("not determined", drawing.Title, StringComparison.Ordinal);
    }

    [Fact]
    public void The_svg_is_well_formed_and_says_what_it_shows()
    {
        var svg = XElement.Parse(Svg.Write(SectionDrawing.Draw(SampleDocument.Reading(9), 6, "P<1>")));

        Assert.Equal("img", svg.Attribute("role")!.Value);
        Assert.Contains("piece P<1>", svg.Attribute("aria-label")!.Value, StringComparison.Ordinal);
    }

    private static double AreaOf(Drawing drawing, Ink ink) =>
        drawing.Marks.OfType<Area>().Where(area => area.Fill == ink).Sum(area => ShoelaceArea(area.Outline));

    private static double ShoelaceArea(IReadOnlyList<Spot> outline) =>
        Math.Abs(
            outline
                .Select((spot, i) => (spot, next: outline[(i + 1) % outline.Count]))
                .Sum(pair => pair.spot.X * pair.next.Y - pair.next.X * pair.spot.Y)
        ) / 2;
}
