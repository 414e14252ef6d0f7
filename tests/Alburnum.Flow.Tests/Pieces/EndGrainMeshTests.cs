using Alburnum.Flow.Equations;
using Alburnum.Flow.Pieces;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Timber;

namespace Alburnum.Flow.Tests.Pieces;

public class EndGrainMeshTests
{
    private const double K = 1e-19;
    private static readonly FluidPair Fluids = FluidPair.Of(TreatingLiquid.Water());
    private static readonly WoodFlow Wood = new(new Permeability(K, K, 6000 * K), 0.6);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Away_from_the_faces_an_end_takes_in_as_a_flat_front_along_the_grain(bool isRound)
    {
        Section section = isRound ? new RoundSection(100) : new RectangularSection(100, 100);
        var problem = EndGrainMesh.Of(section, Wood, Fluids, lengthMm: 300, along: 60, across: 8);
        var run = Flows.Run(problem, Flows.FullCell, StepControl.Usual);
        var line = Flows.Run(
            DryWood.Of(LineMesh.Flat(300, 60, _ => 6000 * K, 0.6), Fluids),
            Flows.FullCell,
            StepControl.Usual
        );

        Assert.IsType<Completed>(run.Ending);
        var flat = line.ArrivalMinutes.Count(arrival => arrival is not null) * 5.0;
        Assert.Equal(flat, EndGrainMesh.MiddleDepthMm(run, 300, 60), 10.1);
    }

    [Fact]
    public void Far_from_the_end_the_face_takes_in_as_a_flat_front_across_the_grain()
    {
        var wood = new WoodFlow(new Permeability(1e-18, 1e-18, 1e-25), 0.6);
        var problem = EndGrainMesh.Of(new RectangularSection(50, 50), wood, Fluids, 40, 4, 50);
        var run = Flows.Run(problem, Flows.FullCell, StepControl.Usual);
        var line = Flows.Run(
            DryWood.Of(LineMesh.Flat(25, 50, _ => 1e-18, 0.6), Fluids),
            Flows.FullCell,
            StepControl.Usual
        );

        for (var row = 0; row < 50; row++)
            Assert.Equal(line.Saturation[row], run.Saturation[row * 4 + 3], 0.003);
    }

    [Fact]
    public void The_rings_of_a_round_piece_hold_its_volume()
    {
        var problem = EndGrainMesh.Of(new RoundSection(100), Wood, Fluids, 200, 10, 10);

        Assert.Equal(Math.PI * 0.05 * 0.05 * 0.2 * 0.6, problem.Mesh.VoidM3.ToArray().Sum(), 1e-12);
    }
}
