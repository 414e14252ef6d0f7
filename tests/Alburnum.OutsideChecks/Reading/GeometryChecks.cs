using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Zones;
using Alburnum.Impregnation.Sawing;
using Alburnum.Timber;

namespace Alburnum.OutsideChecks.Reading;

/// <summary>The plane geometry that photographs and sawn pieces are read by, against general-purpose libraries.</summary>
[IndependentProgram(
    "Shapely 1.8.5 and scikit-image 0.19.3 (Debian 12)",
    "tests/Alburnum.OutsideChecks/reference/geometry.py, output stored beside it"
)]
[Computed]
public sealed class GeometryChecks
{
    public static TheoryData<double[]> Sawn => ReferenceTable.Rows("geometry.csv", "sawn");
    public static TheoryData<double[]> Homographies => ReferenceTable.Rows("geometry.csv", "homography");
    public static TheoryData<double[]> Ellipses => ReferenceTable.Rows("geometry.csv", "ellipse");
    public static TheoryData<double[]> Circles => ReferenceTable.Rows("geometry.csv", "circle");

    [Theory]
    [MemberData(nameof(Sawn))]
    public void A_piece_sawn_from_a_log_has_its_share_of_heartwood_inside_and_on_each_face(double[] row)
    {
        var piece = new SawnPiece(new RectangularSection(row[0], row[1]), row[2], row[3], row[4], row[5]);

        // Counted on a lattice of 200 by 200.
        Assert.Equal(row[6], piece.HeartwoodShare, 2e-3);
        // The other program draws the circle as a polygon of 16 384 sides.
        for (var face = 0; face < 4; face++)
            Assert.Equal(row[7 + face], piece.HeartwoodOnFace[face], 1e-6);
    }

    [Theory]
    [MemberData(nameof(Homographies))]
    public void Four_corners_carry_a_point_where_another_program_carries_it(double[] row)
    {
        var to = Homography.FromFour(Points(row[..8]), Points(row[8..16])).Map(row[16], row[17]);

        Assert.Equal(row[18], to.X, 1e-6);
        Assert.Equal(row[19], to.Y, 1e-6);
    }

    [Theory]
    [MemberData(nameof(Ellipses))]
    public void An_ellipse_through_points_is_the_one_another_program_fits(double[] row)
    {
        Assert.True(Ellipse.Fit(Points(row[..16]), [1, 1, 1, 1, 1, 1, 1, 1]).Has(out var fit, out _));

        Assert.Equal(row[16], fit.Centre.X, 1e-4);
        Assert.Equal(row[17], fit.Centre.Y, 1e-4);
        Assert.Equal(row[18], fit.Major, 1e-4);
        Assert.Equal(row[19], fit.Minor, 1e-4);
    }

    [Theory]
    [MemberData(nameof(Circles))]
    public void A_circle_through_points_is_the_one_another_program_fits(double[] row)
    {
        var circle = Circle
            .Through([.. Enumerable.Range(0, 6).Select(at => new PointMm(row[2 * at], row[2 * at + 1]))])!
            .Value;

        Assert.Equal(row[12], circle.X, 1e-5);
        Assert.Equal(row[13], circle.Y, 1e-5);
        Assert.Equal(row[14], circle.RadiusMm, 1e-5);
    }

    private static PointPx[] Points(double[] cells) =>
        [.. Enumerable.Range(0, cells.Length / 2).Select(at => new PointPx(cells[2 * at], cells[2 * at + 1]))];
}
