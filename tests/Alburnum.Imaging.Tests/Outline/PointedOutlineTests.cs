using Alburnum.DrawnSections;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Accuracy;
using Alburnum.Imaging.Tests.Drawn;
using Alburnum.Timber;

namespace Alburnum.Imaging.Tests.Outline;

/// <summary>Points that a hand gave: drawn to the wood's edge, or not believed.</summary>
public class PointedOutlineTests
{
    private static PlainSection Drawn(int kind) =>
        new() { Kind = (DrawnOutline)kind, WidthMm = (DrawnOutline)kind is DrawnOutline.Sawn ? 100 : 140 };

    // Moved away from the section's middle, in each direction, or towards it.
    private static IReadOnlyList<PointPx> Moved(IReadOnlyList<PointPx> points, double byPx)
    {
        var (x, y) = (points.Average(p => p.X), points.Average(p => p.Y));
        return [.. points.Select(p => new PointPx(p.X + Part(p.X - x), p.Y + Part(p.Y - y)))];

        double Part(double off) => points.Count == 4 ? byPx * Math.Sign(off) : byPx * off / Radius();
        double Radius() => points.Average(p => double.Hypot(p.X - x, p.Y - y));
    }

    [Theory]
    [InlineData((int)DrawnOutline.Sawn, 4)]
    [InlineData((int)DrawnOutline.Sawn, -4)]
    [InlineData((int)DrawnOutline.Round, 4)]
    [InlineData((int)DrawnOutline.Round, -4)]
    public void Points_four_millimetres_beside_the_edge_are_drawn_to_it(int kind, double byMm)
    {
        var drawn = Drawn(kind);

        var read = DrawnReading.Read(
            DrawnReading.Of(
                drawn,
                DrawnReading.Request(drawn) with
                {
                    OutlinePx = Moved(drawn.Outline, byMm * drawn.PxPerMm),
                }
            )
        );

        Assert.Equal(9, read.Profile.Statistics.MeanMm.Value, 0.15);
        Assert.Equal(QualityGrade.Good, read.Quality.Grade);
    }

    [Theory]
    [InlineData((int)DrawnOutline.Half)]
    [InlineData((int)DrawnOutline.Quarter)]
    public void Rough_points_of_a_half_or_a_quarter_are_drawn_to_its_edge(int kind)
    {
        var drawn = Drawn(kind) with { DepthMm = _ => 7 };
        var rough = drawn.Outline.Select((p, k) => new PointPx(p.X + (k == 1 ? 6 : -5), p.Y + (k == 2 ? 7 : -6)));

        var read = DrawnReading.Read(
            DrawnReading.Of(drawn, DrawnReading.Request(drawn) with { OutlinePx = [.. rough] })
        );

        Assert.Equal(7, read.Profile.Statistics.MeanMm.Value, 0.15);
        Assert.All(drawn.Outline.Zip(read.Outline.PointsPx), pair => Assert.True(Apart(pair) < 2.5, $"{pair}"));
    }

    [Fact]
    public void Where_no_edge_lies_at_the_points_the_depth_is_poor_wide_and_decides_nothing()
    {
        // Wood of the ground's own colour: no edge shows anywhere.
        var drawn = new PlainSection { Background = 0x2B3F8C };

        var read = DrawnReading.Read(
            DrawnReading.Of(
                drawn,
                DrawnReading.Request(drawn) with
                {
                    OutlinePx = Moved(drawn.Outline, 3.5 * drawn.PxPerMm),
                }
            )
        );

        Assert.True(read.IsOffEdge);
        Assert.Equal(QualityGrade.Poor, read.Quality.Grade);
        Assert.Equal([1, 2, 3, 4], Assert.Single(read.Quality.Findings.OfType<PointsOffEdge>()).Corners);
        Assert.Equal(0, read.Outline.Confidence);
        // How well a hand points, and not the pixel and a half of a careful one.
        var outline = read.Budget.MeanMm.Components.Single(part => part.Cause.Key == "given-outline").Contribution;
        Assert.Equal(0.005 * Math.Max(drawn.WidthPx, drawn.HeightPx) / drawn.PxPerMm, outline, 0.1);
    }

    [Fact]
    public void A_corner_that_lies_on_no_edge_is_named()
    {
        var drawn = new PlainSection();
        PointPx[] points = [.. drawn.Outline];
        points[1] = new(points[1].X + (22 * drawn.PxPerMm), points[1].Y - (16 * drawn.PxPerMm));

        var read = DrawnReading.Read(DrawnReading.Of(drawn, DrawnReading.Request(drawn) with { OutlinePx = points }));

        Assert.Equal([2], Assert.Single(read.Quality.Findings.OfType<PointsOffEdge>()).Corners);
    }

    [Theory]
    [InlineData("0 2 1 3", "sides cross")]
    [InlineData("1 0 2 3", "sides cross")]
    public void Corners_that_have_changed_places_are_refused(string order, string found)
    {
        var corners = new PlainSection().Outline;

        Assert.Contains(
            found,
            Refused([.. order.Split(' ').Select(k => corners[int.Parse(k, null)])]),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_corner_in_line_with_two_others_or_within_them_is_refused_by_its_number()
    {
        var drawn = new PlainSection();
        var corners = drawn.Outline;

        Assert.Contains(
            "corner 2",
            Refused([corners[0], drawn.Place(50, 1), corners[1], corners[2]]),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "corner 4",
            Refused([corners[0], corners[1], corners[2], drawn.Place(70, 30)]),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_rim_point_far_from_the_others_rim_is_refused_by_its_number()
    {
        var drawn = Drawn((int)DrawnOutline.Round);
        PointPx[] points = [.. drawn.Outline];
        points[4] = drawn.Place(70, 70);

        Assert.Contains("point 5", Refused(drawn, points), StringComparison.Ordinal);
    }

    [Fact]
    public void A_rim_is_given_as_a_curve()
    {
        var drawn = Drawn((int)DrawnOutline.Round);

        var rim = DrawnReading.Read(DrawnReading.Of(drawn)).Outline.PointsPx;

        var middle = drawn.Place(70, 70);
        for (var k = 0; k < rim.Count; k++)
        {
            var (a, b) = (rim[k], rim[(k + 1) % rim.Count]);
            var half = double.Hypot(((a.X + b.X) / 2) - middle.X, ((a.Y + b.Y) / 2) - middle.Y) / drawn.PxPerMm;
            Assert.Equal(70, half, 0.1);
        }
    }

    // Seeds on which no limit was set.
    [Theory]
    [InlineData(Stratum.Easy, 3)]
    [InlineData(Stratum.Ordinary, 4)]
    [InlineData(Stratum.Ordinary, -3)]
    [InlineData(Stratum.Hard, 3)]
    public void Rough_corners_are_drawn_to_within_a_millimetre_or_not_believed(Stratum stratum, double byMm)
    {
        var drawn = 0;
        for (var seed = 3001; drawn < 6; seed++)
        {
            var photograph = TestPhotographs.Of(stratum, seed);
            if (photograph.Truth.SectionMm is not [var width, var height] || photograph.Truth.Depth is null)
                continue;
            drawn++;
            PointPx[] corners = [.. photograph.Truth.OutlinePx.Select(p => new PointPx(p.X, p.Y))];
            var reading = DrawnReading.Of(
                photograph.Jpeg,
                new()
                {
                    Section = new RectangularSection(width, height),
                    Candidates = KnownIndicators.All,
                    OutlinePx = Moved(corners, byMm * photograph.Truth.PixelsPerMm),
                }
            );
            if (reading.Outcome is not Read { IsOffEdge: false } read)
                continue;
            var worst = read.Outline.PointsPx.Zip(corners).Max(Apart) / photograph.Truth.PixelsPerMm;
            Assert.True(worst < 1, $"{photograph.Truth.Name}: {worst:0.0} mm");
        }
    }

    private static double Apart((PointPx Found, PointPx True) pair) =>
        double.Hypot(pair.Found.X - pair.True.X, pair.Found.Y - pair.True.Y);

    private static string Refused(IReadOnlyList<PointPx> points) => Refused(new(), points);

    private static string Refused(PlainSection drawn, IReadOnlyList<PointPx> points) =>
        Assert
            .Throws<InputRefusedException>(() =>
                DrawnReading.Of(drawn, DrawnReading.Request(drawn) with { OutlinePx = points })
            )
            .Problems[0]
            .Found;
}
