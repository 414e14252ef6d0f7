using Alburnum.Flow.Equations;
using Alburnum.Flow.Pieces;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Timber;

namespace Alburnum.Flow.Tests.Pieces;

public class SectionFlowTests
{
    private static readonly int[] CellsAcross = [10, 20, 40];
    private static readonly double[] Seconds = [40, 20, 10];
    private static readonly double[] Growth = [1.2, 1.1, 1.05, 1.025];
    private static readonly WoodFlow Sapwood = new(new Permeability(4e-16, 1e-16, 1e-12), 0.6);
    private static readonly WoodFlow Heartwood = new(new Permeability(4e-19, 1e-19, 1e-15), 0.6);
    private static readonly FluidPair Fluids = FluidPair.Of(TreatingLiquid.Water());

    // Elimination and relaxing go from one corner to the other: alike is what is solved closely.
    private static readonly StepControl Close = new(growth: 3, cellTolerance: 1e-6, uptakeError: 5e-4);

    [Fact]
    public void A_piece_with_its_pith_in_the_middle_is_treated_alike_from_every_side()
    {
        // The pith a hair off the middle: otherwise an eighth would stand for the whole.
        var off = Boxed(new RectangularSection(40, 40)) with
        {
            Log = new LogGeometry(1e-5, 2e-5, 10, 80),
        };
        var mesh = SectionMesh.Of(off, Fluids, 20);
        Assert.Equal(400, mesh.Problem.Mesh.CellCount);
        var run = Flows.Run(mesh.Problem, Flows.FullCell, Close);

        Assert.IsType<Completed>(run.Ending);
        for (var row = 0; row < mesh.Rows; row++)
        {
            for (var column = 0; column < mesh.Columns; column++)
            {
                var here = run.Saturation[mesh.CellAt(column, row)!.Value];
                Assert.Equal(here, run.Saturation[mesh.CellAt(mesh.Columns - 1 - column, row)!.Value], 2e-5);
                Assert.Equal(here, run.Saturation[mesh.CellAt(row, column)!.Value], 2e-5);
            }
        }
    }

    [Theory]
    [InlineData(40, 0, 0, 55)]
    [InlineData(32, 0, 0, 90)]
    [InlineData(40, 0, -6, 200)]
    [InlineData(40, 5, 0, 200)]
    public void What_mirrors_itself_is_solved_once_and_comes_to_the_same(
        double heightMm,
        double pithXMm,
        double pithYMm,
        int cells
    )
    {
        var piece = Boxed(new RectangularSection(40, heightMm)) with
        {
            Log = new LogGeometry(pithXMm, pithYMm, 12, 80),
        };
        // A hair off the middle nothing is alike any more.
        var off = piece with
        {
            Log = new LogGeometry(pithXMm + 1e-5, pithYMm + 2e-5, 12, 80),
        };
        var once = SectionMesh.Of(piece, Fluids, 20, frontMm: 8);
        var whole = SectionMesh.Of(off, Fluids, 20, frontMm: 8);
        var first = Flows.Run(once.Problem, Flows.FullCell, Close);
        var second = Flows.Run(whole.Problem, Flows.FullCell, Close);

        Assert.Equal(cells, once.Problem.Mesh.CellCount);
        Assert.Equal(whole.Columns * whole.Rows, whole.Problem.Mesh.CellCount);
        Assert.Equal(second.Moments[^1].GainedM3, first.Moments[^1].GainedM3, 1e-4 * second.Moments[^1].GainedM3);
        Assert.Equal(second.Moments[^1].AirM3, first.Moments[^1].AirM3, 1e-4 * second.Moments[^1].AirM3);
        for (var at = 0; at < whole.Columns * whole.Rows; at++)
        {
            var (column, row) = (at % whole.Columns, at / whole.Columns);
            Assert.Equal(
                second.Saturation[whole.CellAt(column, row)!.Value],
                first.Saturation[once.CellAt(column, row)!.Value],
                1e-3
            );
        }
    }

    [Fact]
    public void A_piece_turned_a_quarter_with_its_log_gives_the_answer_turned_a_quarter()
    {
        var log = new LogGeometry(6, -10, 14, 60);
        var upright = SectionMesh.Of(new Piece(new RectangularSection(48, 24), log, Sapwood, Heartwood), Fluids, 24);
        var turned = SectionMesh.Of(
            new Piece(
                new RectangularSection(24, 48),
                log with
                {
                    PithXMm = -log.PithYMm,
                    PithYMm = log.PithXMm,
                },
                Sapwood,
                Heartwood
            ),
            Fluids,
            24
        );
        var first = Flows.Run(upright.Problem, Flows.FullCell, Close);
        var second = Flows.Run(turned.Problem, Flows.FullCell, Close);

        Assert.Equal(first.Moments[^1].GainedM3, second.Moments[^1].GainedM3, 1e-5 * first.Moments[^1].GainedM3);
        for (var row = 0; row < upright.Rows; row++)
        {
            for (var column = 0; column < upright.Columns; column++)
            {
                var here = first.Saturation[upright.CellAt(column, row)!.Value];
                Assert.Equal(here, second.Saturation[turned.CellAt(upright.Rows - 1 - row, column)!.Value], 2e-5);
            }
        }
    }

    [Fact]
    public void No_liquid_and_no_air_is_lost_in_two_dimensions()
    {
        foreach (var schedule in new[] { Flows.FullCell, Flows.EmptyCell })
        {
            var mesh = SectionMesh.Of(
                new Piece(new RoundSection(60), new LogGeometry(5, 0, 15, 40), Sapwood, Heartwood),
                Fluids,
                20
            );
            var run = Flows.Run(mesh.Problem, schedule, StepControl.Usual);

            Assert.IsType<Completed>(run.Ending);
            Assert.All(run.Moments, moment => Assert.InRange(Math.Abs(moment.LiquidImbalance), 0, 1e-9));
            Assert.All(run.Moments, moment => Assert.InRange(Math.Abs(moment.AirImbalance), 0, 1e-9));
        }
    }

    [Fact]
    public void A_wide_board_under_a_wet_face_behaves_as_the_flat_front()
    {
        // 200 mm wide and 20 mm thick: the middle column does not feel the edges.
        var wood = new WoodFlow(new Permeability(1e-17, 1e-17, 1e-14), 0.6);
        var mesh = SectionMesh.Of(
            new Piece(new RectangularSection(160, 20), LogGeometry.AllSapwood, wood, wood),
            Fluids,
            160
        );
        var line = LineMesh.Flat([.. mesh.RowEdgesMm.Take(11)], 1e-17, 0.6);
        var schedule = Flows.Hold(1300, 20);
        var sheet = Flows.Run(mesh.Problem, schedule, StepControl.Usual);
        var column = Flows.Run(DryWood.Of(line, Fluids), schedule, StepControl.Usual);

        for (var row = 0; row < 10; row++)
            Assert.Equal(column.Saturation[row], sheet.Saturation[mesh.CellAt(80, row)!.Value], 0.003);
    }

    [Fact]
    public void The_answer_settles_as_cells_grow_finer()
    {
        var uptake = CellsAcross
            .Select(cells =>
            {
                var wood = new WoodFlow(new Permeability(2e-17, 2e-17, 1e-14), 0.6);
                var mesh = SectionMesh.Of(
                    new Piece(new RectangularSection(40, 40), LogGeometry.AllSapwood, wood, wood),
                    Fluids,
                    cells
                );
                return Flows.Run(mesh.Problem, Flows.Hold(1300, 10), new StepControl(growth: 1.1)).Moments[^1].GainedM3;
            })
            .ToArray();

        var (coarse, fine) = (Math.Abs(uptake[1] - uptake[0]), Math.Abs(uptake[2] - uptake[1]));
        Assert.InRange(Math.Log2(coarse / fine), 0.5, 2.5);
    }

    [Fact]
    public void Uptake_settles_at_second_order_as_steps_grow_shorter()
    {
        var problem = DryWood.Of(LineMesh.Flat(30, 60, _ => 2e-17, 0.6), Fluids);
        double Uptake(StepControl control) => Flows.Run(problem, Flows.Hold(1300, 10), control).Moments[^1].GainedM3;
        var truth = Uptake(new StepControl(0.001, 2, cellTolerance: 1e-10, uptakeError: 1e-7));
        // A front goes in as the root of time: steps grow in proportion to it, and by half as much each time.
        var errors = Growth
            .Select(growth => Math.Abs(Uptake(new StepControl(0.01, growth, cellTolerance: 1e-10)) - truth))
            .ToArray();

        // Where in a cell the front happens to stand makes it uneven: over all of them, not from one to the next.
        Assert.InRange(Math.Log2(errors[0] / errors[^1]) / (Growth.Length - 1), 1.5, 2.5);
    }

    [Fact]
    public void Air_drawn_out_settles_at_second_order_as_steps_grow_shorter()
    {
        var problem = DryWood.Of(LineMesh.Flat(30, 60, _ => 2e-16, 0.6), Fluids);
        var vacuum = new Schedule("vacuum", [new Stage("vacuum", Contact.Air, 20, 101.325, 15)]);
        double Air(double seconds) =>
            Flows.Run(problem, vacuum, new StepControl(seconds, 1, seconds, 1e-12)).Moments[^1].AirM3;
        var truth = Air(Seconds[^1] / 8);
        var errors = Seconds.Select(seconds => Math.Abs(Air(seconds) - truth)).ToArray();

        for (var i = 1; i < errors.Length; i++)
            Assert.InRange(Math.Log2(errors[i - 1] / errors[i]), 1.6, 2.4);
    }

    [Fact]
    public void A_section_thinner_than_four_cells_is_refused()
    {
        var piece = Boxed(new RectangularSection(100, 5));

        var refused = Assert.Throws<InputRefusedException>(() => SectionMesh.Of(piece, Fluids, 20));
        Assert.Contains("four cells", refused.Message, StringComparison.Ordinal);
    }

    private static Piece Boxed(Section section) => new(section, new LogGeometry(0, 0, 10, 80), Sapwood, Heartwood);
}
