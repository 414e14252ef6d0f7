using Alburnum.Flow.Equations;
using Alburnum.Flow.LinearAlgebra;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Partitioning;
using Alburnum.Flow.Pieces;
using Alburnum.Impregnation;
using Alburnum.Timber;
using CsCheck;

namespace Alburnum.Flow.Tests.LinearAlgebra;

public class LinearSolverTests
{
    private static readonly FluidPair Fluids = FluidPair.Of(TreatingLiquid.Water());
    private static readonly TwoWayPartition Halved = new(splitFrom: 2);
    private static readonly WoodFlow Wood = new(new Permeability(4e-17, 2e-17, 1e-14), 0.6);

    [Fact]
    public void On_a_line_of_cells_the_incomplete_factors_are_complete()
    {
        Gen.Select(Gen.Double[1e-19, 1e-17], Gen.Double[0.1, 0.9], Gen.Double[1, 60])
            .Sample(
                (permeability, saturation, seconds) =>
                {
                    var mesh = LineMesh.Flat(20, 30, _ => permeability, 0.6);
                    var system = Assembled<double>(
                        mesh,
                        seconds,
                        new TwoWayPartition(int.MaxValue),
                        i => saturation * (1 + i) / 31
                    );
                    var right = system.Residual;
                    var exact = new double[right.Length];
                    Assert.Equal(LinearOutcome.Exact, new BlockThomas(system.Jacobian).Solve(right, exact));

                    var size = right.Max(Math.Abs);
                    var rough = right.Select(part => part / size).ToArray();
                    var factor = new BlockIlu0<double>(system.Jacobian);
                    Assert.Equal(FactorOutcome.Factored, factor.Factor());
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
    public void Gmres_brings_a_line_of_cells_to_the_answer_of_block_elimination()
    {
        var mesh = LineMesh.Flat(20, 60, _ => 2e-18, 0.6);
        var system = Assembled<double>(mesh, 20, new TwoWayPartition(int.MaxValue), i => 0.1 + 0.01 * i);
        var (exact, iterated) = (new double[120], new double[120]);
        new BlockThomas(system.Jacobian).Solve(system.Residual, exact);

        var outcome = Tight(system).Solve(system.Residual, iterated);

        Assert.Equal(LinearEnding.Converged, outcome.Ending);
        AssertSame(exact, iterated, 1e-8);
    }

    [Fact]
    public void Partition_and_order_change_nothing_but_the_last_digits_of_the_answer()
    {
        var natural = SectionMesh
            .Of(new Piece(new RectangularSection(80, 52), Flows.OffCentre, Wood, Wood), Fluids, 80)
            .Problem.Mesh;
        var plain = Answer(natural, new TwoWayPartition(int.MaxValue), i => i);
        foreach (var partition in new[] { new TwoWayPartition(int.MaxValue), Halved })
        {
            var order = LevelSchedule.Of(natural, partition);
            var ordered = Answer(order.Ordered(natural), partition, order.Own);

            AssertSame(Every(plain, 0), order.Back(Every(ordered, 0)), 1e-8);
            AssertSame(Every(plain, 1), order.Back(Every(ordered, 1)), 1e-8);
        }

        static double[] Answer(FlowMesh mesh, TwoWayPartition partition, Func<int, int> own)
        {
            var system = Assembled<double>(mesh, 30, partition, i => 0.3 + 0.2 * Math.Sin(0.01 * own(i)));
            var x = new double[2 * mesh.CellCount];
            Assert.Equal(LinearEnding.Converged, Tight(system).Solve(system.Residual, x).Ending);
            return x;
        }
    }

    [Fact]
    public void What_single_precision_says_is_left_over_is_what_is_left_over()
    {
        // More cells than go in one go: a board of 400 by 260.
        var mesh = SectionMesh
            .Of(new Piece(new RectangularSection(80, 52), Flows.OffCentre, Wood, Wood), Fluids, 400)
            .Problem.Mesh;
        Assert.True(TwoWayPartition.Usual.Split(mesh.CellCount) < mesh.CellCount);
        var system = Assembled<float>(mesh, 30, TwoWayPartition.Usual, i => 0.3 + 0.2 * Math.Sin(0.01 * i));
        var answer = new double[2 * mesh.CellCount];

        var outcome = Solver(system, 0.1, 40).Solve(system.Residual, answer);

        Assert.Equal(LinearEnding.Converged, outcome.Ending);
        Assert.Equal(LeftOver(system, answer), outcome.RelativeResidual, 0.01);
        Assert.InRange(outcome.RelativeResidual, 0, 0.1);
    }

    [Fact]
    public void A_solve_that_ends_for_want_of_iterations_says_so_and_how_far_it_came()
    {
        var mesh = LineMesh.Flat(20, 60, _ => 2e-18, 0.6);
        var system = Assembled<double>(mesh, 20, Halved, i => 0.1 + 0.01 * i);
        var x = new double[120];

        var outcome = Solver(system, 1e-15, maxIterations: 1).Solve(system.Residual, x);

        Assert.Equal((LinearEnding.Stagnated, 1), (outcome.Ending, outcome.Iterations));
        Assert.Equal(LeftOver(system, x), outcome.RelativeResidual, 1e-9);
    }

    [Fact]
    public void A_diagonal_block_without_an_inverse_is_refused_by_both_solvers()
    {
        var matrix = new BlockCsrMatrix<double>(new BlockCsrPattern(2, [0], [1], new TwoWayPartition(int.MaxValue)));
        foreach (var solver in new ILinearSolver[] { new BlockThomas(matrix), Solver(matrix, [1, 1, 1, 1], 0.1, 40) })
            Assert.Equal(LinearEnding.Singular, solver.Solve([1, 1, 1, 1], new double[4]).Ending);
    }

    [Fact]
    public void Nothing_to_solve_is_solved_by_nothing()
    {
        var system = Assembled<double>(
            LineMesh.Flat(20, 8, _ => 2e-18, 0.6),
            20,
            new TwoWayPartition(int.MaxValue),
            _ => 0.3
        );
        double[] x = [.. Enumerable.Repeat(7.0, 16)];

        Assert.Equal(LinearOutcome.Exact, Tight(system).Solve(new double[16], x));
        Assert.All(x, part => Assert.Equal(0, part));
    }

    private static Gmres<double> Tight(JacobianAssembly<double> system) => Solver(system, 1e-13, 500);

    private static Gmres<T> Solver<T>(JacobianAssembly<T> system, double tolerance, int maxIterations)
        where T : unmanaged, System.Numerics.IBinaryFloatingPointIeee754<T> =>
        Solver(system.Jacobian, system.TotalVolumeWeight, tolerance, maxIterations);

    private static Gmres<T> Solver<T>(BlockCsrMatrix<T> matrix, T[] weight, double tolerance, int maxIterations)
        where T : unmanaged, System.Numerics.IBinaryFloatingPointIeee754<T> =>
        new(matrix, new CprPreconditioner<T>(matrix, weight), restart: 12, tolerance, maxIterations);

    // ‖b − A·x‖/‖b‖ by a plain multiplication in double precision.
    private static double LeftOver<T>(JacobianAssembly<T> system, double[] answer)
        where T : unmanaged, System.Numerics.IBinaryFloatingPointIeee754<T>
    {
        var (csr, value) = (system.Jacobian.Pattern.Csr, system.Jacobian.Value);
        double left = 0,
            all = 0;
        for (var i = 0; i < csr.Rows; i++)
        {
            for (var part = 0; part < 2; part++)
            {
                var sum = system.Residual[2 * i + part];
                all += sum * sum;
                for (var k = csr.RowStart[i]; k < csr.RowStart[i + 1]; k++)
                {
                    var (column, at) = (csr.Column[k], 4 * k + 2 * part);
                    sum -=
                        double.CreateTruncating(value[at]) * answer[2 * column]
                        + double.CreateTruncating(value[at + 1]) * answer[2 * column + 1];
                }
                left += sum * sum;
            }
        }
        return Math.Sqrt(left / all);
    }

    private static void AssertSame(double[] expected, double[] actual, double share)
    {
        var most = expected.Max(Math.Abs);
        foreach (var (a, b) in expected.Zip(actual))
            Assert.Equal(a, b, share * most);
    }

    private static JacobianAssembly<T> Assembled<T>(
        FlowMesh mesh,
        double seconds,
        TwoWayPartition partition,
        Func<int, double> saturation
    )
        where T : unmanaged, System.Numerics.IBinaryFloatingPointIeee754<T>
    {
        var assembly = new JacobianAssembly<T>(mesh, Fluids, partition);
        double[] state = [.. Enumerable.Range(0, mesh.CellCount).SelectMany(i => new[] { 2e5, saturation(i) })];
        var held = new double[state.Length];
        for (var i = 0; i < mesh.CellCount; i++)
            (held[2 * i], held[2 * i + 1]) = (0.9 * mesh.VoidM3[i] * state[2 * i + 1], mesh.VoidM3[i] * 0.7);
        var warmth = Flows.Even(mesh.CellCount);
        assembly.Take(state, warmth);
        var vessel = VesselBoundary.Of(1.3e6, Contact.Liquid, Fluids, CellWarmth.Even);
        assembly.Assemble(state, new TimeStep(held, seconds, vessel, warmth));
        return assembly;
    }

    private static double[] Every(double[] pairs, int part) => [.. pairs.Where((_, i) => i % 2 == part)];
}
