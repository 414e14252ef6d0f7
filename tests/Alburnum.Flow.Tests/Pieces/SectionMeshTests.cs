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

        var cells = mesh.Problem.Mesh.CellCount * Math.Pow(mesh.ColumnEdgesMm[1], 2);
        Assert.Equal(half.AreaMm2, cells, 0.005 * half.AreaMm2);
    }

    [Fact]
    public void The_cells_of_a_sawn_piece_fill_it_and_are_thinnest_at_its_faces()
    {
        var wood = new WoodFlow(new Permeability(1e-17, 1e-17, 1e-14), 0.6);
        var piece = new Piece(new RectangularSection(120, 50), LogGeometry.AllSapwood, wood, wood);
        var mesh = SectionMesh.Of(piece, FluidPair.Of(TreatingLiquid.Water()), 48);

        Assert.Equal(120 * 50 * 0.6e-6, mesh.Problem.Mesh.VoidM3.ToArray().Sum(), 1e-12);
        foreach (var edges in new[] { mesh.ColumnEdgesMm, mesh.RowEdgesMm })
        {
            double[] widths = [.. edges.Zip(edges.Skip(1), (from, to) => to - from)];
            Assert.Equal(widths.Reverse(), widths, (a, b) => Math.Abs(a - b) < 1e-9);
            Assert.Equal(widths.Take(widths.Length / 2).Order(), widths.Take(widths.Length / 2));
            Assert.True(widths[widths.Length / 2] > 5 * widths[0]);
        }
    }
}
