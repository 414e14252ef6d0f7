using Alburnum.Flow.Equations;
using Alburnum.Flow.Pieces;
using Alburnum.Impregnation;
using Alburnum.Timber;

namespace Alburnum.Flow.Tests.Pieces;

public class SectionMeshTests
{
    [Fact]
    public void The_cells_of_a_half_round_piece_come_to_its_area()
    {
        var half = new HalfRoundSection(120);
        var log = UsualLog.Place(half, SawingPosition.Boxed, 200, null);
        var wood = new WoodFlow(new Permeability(1e-17, 1e-17, 1e-14), 0.6);
        var mesh = SectionMesh.Of(new Piece(half, log, wood, wood), FluidPair.Of(TreatingLiquid.Water()), 240);

        Assert.Equal(half.AreaMm2, 1e6 / 0.6 * mesh.Problem.Mesh.VoidM3.ToArray().Sum(), 0.005 * half.AreaMm2);
    }

    [Fact]
    public void The_cells_of_a_sawn_piece_fill_it_and_are_thinnest_on_the_way_of_its_front()
    {
        var wood = new WoodFlow(new Permeability(1e-17, 1e-17, 1e-14), 0.6);
        var piece = new Piece(new RectangularSection(120, 50), LogGeometry.AllSapwood, wood, wood);
        var mesh = SectionMesh.Of(piece, FluidPair.Of(TreatingLiquid.Water()), 48, frontMm: 2);

        Assert.Equal(120 * 50 * 0.6e-6, mesh.Problem.Mesh.VoidM3.ToArray().Sum(), 1e-12);
        foreach (var edges in new[] { mesh.ColumnEdgesMm, mesh.RowEdgesMm })
        {
            double[] widths = [.. edges.Zip(edges.Skip(1), (from, to) => to - from)];
            Assert.Equal(widths.Reverse(), widths, (a, b) => Math.Abs(a - b) < 1e-9);
            Assert.Equal(widths.Take(widths.Length / 2).Order(), widths.Take(widths.Length / 2));
            Assert.True(widths[widths.Length / 2] > 5 * widths[0]);
        }
        // As fine where the front goes under the narrow face as under the wide one.
        Assert.Equal(WidthAt(mesh.ColumnEdgesMm, 1), WidthAt(mesh.RowEdgesMm, 1), 0.1);
        Assert.InRange(WidthAt(mesh.RowEdgesMm, 1), 0.1, 0.4);

        static double WidthAt(IReadOnlyList<double> edges, double mm)
        {
            var cell = edges.TakeWhile(edge => edge <= mm).Count();
            return edges[cell] - edges[cell - 1];
        }
    }

    [Theory]
    [InlineData(60.0)]
    [InlineData(80.0)]
    [InlineData(null)]
    public void Cells_are_even_where_the_front_goes_to_the_middle_or_nobody_knows(double? frontMm)
    {
        var grid = SectionGrid.Of(new RectangularSection(120, 60), 24, frontMm);

        Assert.Equal((24, 12), (grid.Columns, grid.Rows));
        Assert.Equal(5, grid.ColumnEdgesMm[1], 1e-9);
        Assert.Equal(5, grid.RowEdgesMm[6] - grid.RowEdgesMm[5], 1e-9);
    }
}
