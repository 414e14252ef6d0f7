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

        var cells = mesh.Problem.Mesh.CellCount * mesh.StepMm * mesh.StepMm;
        Assert.Equal(half.AreaMm2, cells, 0.005 * half.AreaMm2);
    }
}
