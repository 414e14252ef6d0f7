using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Partitioning;
using Alburnum.Flow.Pieces;
using Alburnum.Impregnation;
using Alburnum.Timber;

namespace Alburnum.Flow.Tests.Mesh;

public class LevelScheduleTests
{
    [Fact]
    public void Cells_that_touch_never_share_a_level_and_every_cell_comes_back_to_its_place()
    {
        var wood = new WoodFlow(new Permeability(4e-17, 2e-17, 1e-14), 0.6);
        var piece = new Piece(new RoundSection(60), Flows.OffCentre, wood, wood);
        var mesh = SectionMesh.Of(piece, FluidPair.Of(TreatingLiquid.Water()), 20).Problem.Mesh;
        double[] named = [.. Enumerable.Range(0, mesh.CellCount).Select(i => i / 1000.0)];
        var order = LevelSchedule.Of(mesh, new TwoWayPartition(int.MaxValue));

        Assert.Equal(named, order.Back(order.Ordered<double>(named)));
        var ordered = order.Ordered(mesh);
        Assert.Equal(mesh.First.Length, ordered.First.Length);
        var (first, second) = (ordered.First.ToArray(), ordered.Second.ToArray());
        Assert.All(first.Zip(second), join => Assert.True(join.First < join.Second - 1));
    }
}
