using Alburnum.Flow.Equations;
using Alburnum.Flow.LinearAlgebra;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Partitioning;
using Alburnum.Flow.Pieces;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Timber;
using CsCheck;

namespace Alburnum.Flow.Tests.LinearAlgebra;

public class LinearEquationsTests
{
    private static readonly FluidPair Fluids = FluidPair.Of(TreatingLiquid.Water());

    [Fact]
    public void On_a_line_of_cells_the_incomplete_factor_is_complete()
    {
        Gen.Select(Gen.Double[1e-19, 1e-17], Gen.Double[0.1, 0.9], Gen.Double[1, 60])
            .Sample(
                (permeability, saturation, seconds) =>
                {
                    var mesh = LineMesh.Flat(20, 30, _ => permeability, 0.6);
                    var kernel = Assembled<double>(mesh, seconds, i => saturation * (1 + i) / 31);
                    var right = kernel.Residual;
                    var exact = new double[right.Length];
                    Assert.True(new LineElimination(kernel.Matrix).Solve([], right, exact));

                    var size = right.Max(Math.Abs);
                    var rough = right.Select(part => part / size).ToArray();
                    var factor = new IncompleteFactor<double>(kernel.Matrix);
                    Assert.True(factor.Factor());
                    factor.Solve(rough);

                    foreach (var unknown in new[] { 0, 1 })
                    {
                        var most = Every(exact, unknown).Max(Math.Abs);
                        foreach (var (a, b) in Every(exact, unknown).Zip(Every(rough, unknown)))
                            Assert.Equal(a, b * size, 2e-3 * most);
                    }
                },
                iter: 50
            );
    }

    [Fact]
    public void Halves_and_order_change_nothing_but_the_last_digits_of_the_answer()
    {
        // More cells than go in one go: a board of 400 by 260.
        var wood = new WoodFlow(new Permeability(4e-17, 2e-17, 1e-14), 0.6);
        var piece = new Piece(new RectangularSection(80, 52), LogGeometry.AllSapwood, wood, wood);
        var mesh = SectionMesh.Of(piece, Fluids, 400).Problem.Mesh;
        Assert.True(Halves.Middle(mesh.CellCount) < mesh.CellCount);
        var kernel = Assembled<float>(mesh, 30, i => 0.3 + 0.2 * Math.Sin(0.01 * i));
        var answer = new double[2 * mesh.CellCount];
        var state = State(mesh, i => 0.3 + 0.2 * Math.Sin(0.01 * i));
        Assert.True(new HelpedKrylov<float>(kernel.Matrix).Solve(state, kernel.Residual, answer));

        // What the answer leaves over, by a plain multiplication in double precision.
        var (layout, value) = (kernel.Matrix.Blocks.Rows, kernel.Matrix.Value);
        double left = 0,
            all = 0;
        for (var i = 0; i < layout.Rows; i++)
        {
            for (var part = 0; part < 2; part++)
            {
                var sum = kernel.Residual[2 * i + part];
                all += sum * sum;
                for (var k = layout.RowStart[i]; k < layout.RowStart[i + 1]; k++)
                {
                    var column = layout.Column[k];
                    sum -=
                        value[4 * k + 2 * part] * answer[2 * column]
                        + value[4 * k + 2 * part + 1] * answer[2 * column + 1];
                }
                left += sum * sum;
            }
        }
        Assert.InRange(Math.Sqrt(left / all), 0, 0.11);
    }

    [Fact]
    public void Cells_that_touch_never_share_a_wave_and_every_cell_comes_back_to_its_place()
    {
        var wood = new WoodFlow(new Permeability(4e-17, 2e-17, 1e-14), 0.6);
        var piece = new Piece(new RoundSection(60), LogGeometry.AllSapwood, wood, wood);
        var problem = SectionMesh.Of(piece, Fluids, 20).Problem;
        var named = problem with
        {
            InitialSaturation = [.. Enumerable.Range(0, problem.Mesh.CellCount).Select(i => i / 1000.0)],
        };
        var order = CellOrder.Of(named.Mesh);
        var ordered = order.Ordered(named);

        var back = order.Back(
            new FlowRun(
                new Settled(0, 0, 0),
                [],
                ordered.InitialSaturation,
                [.. ordered.InitialSaturation],
                new double?[problem.Mesh.CellCount],
                [.. ordered.InitialSaturation]
            )
        );
        Assert.Equal(named.InitialSaturation, back.Saturation);
        Assert.Equal(named.Mesh.First.Length, ordered.Mesh.First.Length);
        var (first, second) = (ordered.Mesh.First.ToArray(), ordered.Mesh.Second.ToArray());
        Assert.All(first.Zip(second), join => Assert.True(join.First < join.Second - 1));
    }

    private static FlowKernel<T> Assembled<T>(FlowMesh mesh, double seconds, Func<int, double> saturation)
        where T : unmanaged
    {
        var kernel = new FlowKernel<T>(mesh, Fluids);
        var state = State(mesh, saturation);
        var held = new double[state.Length];
        for (var i = 0; i < mesh.CellCount; i++)
            (held[2 * i], held[2 * i + 1]) = (0.9 * mesh.VoidM3[i] * state[2 * i + 1], mesh.VoidM3[i] * 0.7);
        kernel.Take(state);
        kernel.Assemble(state, new FlowStep(held, seconds, VesselTerms.Of(1.3e6, Contact.Liquid, Fluids)));
        return kernel;
    }

    private static double[] State(FlowMesh mesh, Func<int, double> saturation) =>
        [.. Enumerable.Range(0, mesh.CellCount).SelectMany(i => new[] { 2e5, saturation(i) })];

    private static double[] Every(double[] pairs, int part) => [.. pairs.Where((_, i) => i % 2 == part)];
}
