using Alburnum.Flow.Equations;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;
using Alburnum.Timber;

namespace Alburnum.Flow.Pieces;

/// <summary>The flow solver's answer for the median piece of a question: where the solution goes, and how uptake grows.</summary>
/// <param name="Mesh">The section in cells.</param>
/// <param name="Run">What the solver found.</param>
public sealed record SectionRun(SectionMesh Mesh, FlowRun Run)
{
    /// <summary>Treats the median piece.</summary>
    /// <param name="question">What is asked; cuts are left out, as they lie across the section.</param>
    /// <param name="cellsAcross">Cells across the wider side, 4 to 2000.</param>
    /// <param name="factor">Permeability over the median, for a slow or a fast piece. Above 0.</param>
    /// <param name="progress">Told the share done.</param>
    /// <param name="cancellation">Stops the run.</param>
    public static SectionRun Of(
        PredictionQuestion question,
        int cellsAcross,
        double factor = 1,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(question);
        var grid = SectionGrid.Of(question.Section, cellsAcross, ExpectedFront.Mm(question, factor));
        return Of(question, grid, factor, StepControl.Usual, progress, cancellation);
    }

    private static SectionRun Of(
        PredictionQuestion question,
        SectionGrid grid,
        double factor,
        StepControl steps,
        IProgress<double>? progress,
        CancellationToken cancellation
    )
    {
        var piece = new Piece(
            question.Section,
            question.Log,
            new WoodFlow(question.Sapwood.Typical(factor), question.VoidFraction, question.WaterShare),
            new WoodFlow(question.Heartwood.Typical(factor), question.VoidFraction, question.WaterShare)
        );
        var mesh = SectionMesh.Of(piece, FluidPair.Of(question.Liquid), grid, Schedule.AtmosphereKPa);
        var problem = mesh.Problem with
        {
            Heat = question.Warming is { } warming ? new(mesh.OfUnitWood(), warming) : null,
        };
        return new SectionRun(mesh, FlowSolver.Run(problem, question.Schedule, steps, progress, cancellation));
    }

    // Fewer even cells than this on the way of a front tell nothing of it. Our own choice.
    private const double CellsToFront = 3;

    /// <summary>Cells across the wider side without which the solver tells nothing of a question's front: 4 where a section is sawn, as its cells are narrowest there.</summary>
    /// <param name="question">What is asked; cuts are left out.</param>
    public static (double Cells, double FrontMm) LeastCells(PredictionQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var frontMm = ExpectedFront.Mm(question, 1);
        var (width, height) = SectionBox.Of(question.Section);
        return (
            question.Section is RectangularSection
                ? SectionGrid.Least
                : Math.Ceiling(CellsToFront * Math.Max(width, height) / frontMm),
            frontMm
        );
    }

    /// <summary>The same on half the cells, from which the error of the grid is estimated; null where it was not run, or the section is too thin for fewer.</summary>
    public SectionRun? Coarser { get; private init; }

    /// <summary>The same in fewer steps, from which the error of the steps is estimated; null where it was not run.</summary>
    public SectionRun? Rougher { get; private init; }

    /// <summary>Treats the median piece, and beside it on half and a quarter of the cells across, and on the half in fewer steps twice over.</summary>
    /// <param name="question">What is asked; cuts are left out, as they lie across the section.</param>
    /// <param name="cellsAcross">Cells across the wider side, 4 to 2000.</param>
    /// <param name="progress">Told the share done of the first run, which takes most of the time.</param>
    /// <param name="cancellation">Stops the runs.</param>
    public static SectionRun WithCoarser(
        PredictionQuestion question,
        int cellsAcross,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(question);
        var front = ExpectedFront.Mm(question, 1);
        // A section too thin is refused before anything is begun.
        SectionGrid.Of(question.Section, cellsAcross, front);
        SectionRun? fine = null,
            coarser = null;
        Parallel.Invoke(
            new ParallelOptions { CancellationToken = cancellation },
            () => fine = Of(question, cellsAcross, 1, progress, cancellation),
            () => coarser = Coarse(question, cellsAcross / 2, front, cancellation)
        );
        return fine! with { Coarser = coarser };
    }

    private static SectionRun? Coarse(PredictionQuestion question, int cells, double frontMm, CancellationToken stop)
    {
        if (Run(cells, StepControl.Usual) is not { } run)
            return null;
        return run with
        {
            Coarser = Run(cells / 2, StepControl.Usual),
            Rougher = Run(cells, StepControl.Rough)! with { Rougher = Run(cells, StepControl.Roughest) },
        };

        SectionRun? Run(int cellsAcross, StepControl steps) =>
            cellsAcross >= SectionGrid.Least && SectionGrid.Fitting(question.Section, cellsAcross, frontMm) is { } grid
                ? Of(question, grid, 1, steps, progress: null, stop)
                : null;
    }

    /// <summary>About how far a number of this run lies from that of endlessly many cells; null where no coarser run tells.</summary>
    /// <param name="number">The number, of any run.</param>
    /// <remarks>
    /// An estimate, not a bound. The error falls in proportion to the cells' size (Richardson's extrapolation): it is what half the cells change, or half of
    /// what a quarter changes again, whichever is more, as two runs may agree by chance.
    /// </remarks>
    public double? GridError(Func<SectionRun, double> number)
    {
        ArgumentNullException.ThrowIfNull(number);
        if (Coarser is not { } coarser)
            return null;
        var own = Change(this, coarser);
        return coarser.Coarser is { } coarsest ? Math.Max(own, Change(coarser, coarsest) / Ratio(this, coarser)) : own;

        double Change(SectionRun fine, SectionRun coarse) =>
            Math.Abs(number(fine) - number(coarse)) / (Ratio(fine, coarse) - 1);

        static double Ratio(SectionRun fine, SectionRun coarse) => (double)fine.Mesh.Columns / coarse.Mesh.Columns;
    }

    /// <summary>About how far the time steps put a number of this run off; null where no rougher run tells.</summary>
    /// <param name="number">The number, of any run.</param>
    /// <remarks>
    /// An estimate, not a bound, on half the cells: what four times the error allowed in a step changes, or half of what four times as much changes again,
    /// whichever is more. Four times as much allowed doubles the error at least (docs/science/flow.md).
    /// </remarks>
    public double? StepError(Func<SectionRun, double> number)
    {
        ArgumentNullException.ThrowIfNull(number);
        return Coarser is { Rougher: { Rougher: { } roughest } rougher } coarser
            ? Math.Max(Math.Abs(number(coarser) - number(rougher)), Math.Abs(number(rougher) - number(roughest)) / 2)
            : null;
    }

    /// <summary>About how far cells and steps together put a number of this run off; 0 where nothing tells.</summary>
    /// <param name="number">The number, of any run.</param>
    public double SolverError(Func<SectionRun, double> number) => (GridError(number) ?? 0) + (StepError(number) ?? 0);

    /// <summary>Liquid kept at the end, L per m³ of wood.</summary>
    public double NetLPerM3 => Uptake().Last().UptakeLPerM3;

    /// <summary>Temperature at the end in the cell at the middle of the section's box, °C; null where nothing warms the wood, or none of it lies there.</summary>
    public double? MiddleCelsius =>
        Run.Celsius is { } celsius && Mesh.CellAt(Mesh.Columns / 2, Mesh.Rows / 2) is { } middle
            ? celsius[middle]
            : null;

    /// <summary>Uptake at each moment, L per m³ of wood.</summary>
    public IEnumerable<(double Minutes, double KPa, double UptakeLPerM3)> Uptake()
    {
        var perM3 = 1e3 * 1e6 / Mesh.Piece.Section.AreaMm2;
        return Run.Moments.Select(moment => (moment.Minutes, moment.VesselKPa, moment.GainedM3 * perM3));
    }

    /// <summary>Share of the section that solution has reached, 0 to 1.</summary>
    public double ReachedShare
    {
        get
        {
            double reached = 0,
                all = 0;
            for (var row = 0; row < Mesh.Rows; row++)
            {
                for (var column = 0; column < Mesh.Columns; column++)
                {
                    if (Mesh.CellAt(column, row) is not { } cell)
                        continue;
                    var area = Length(Mesh.ColumnEdgesMm, column) * Length(Mesh.RowEdgesMm, row);
                    all += area;
                    if (Run.ArrivalMinutes[cell] is not null)
                        reached += area;
                }
            }
            return reached / all;
        }
    }

    /// <summary>Mean depth reached straight in from the middle half of the four sides, mm, by how much of each way is reached.</summary>
    /// <remarks>Counts cells from each side until the first not reached.</remarks>
    public double MeanDepthMm()
    {
        double sum = 0,
            breadth = 0;
        for (var column = 0; column < Mesh.Columns; column++)
            Add(Mesh.ColumnEdgesMm, column, Mesh.RowEdgesMm, step => Mesh.CellAt(column, step));
        for (var row = 0; row < Mesh.Rows; row++)
            Add(Mesh.RowEdgesMm, row, Mesh.ColumnEdgesMm, step => Mesh.CellAt(step, row));
        return sum / breadth;

        // The ways in from both ends of a column or row, if it lies in the middle half.
        void Add(IReadOnlyList<double> beside, int at, IReadOnlyList<double> along, Func<int, int?> cellAt)
        {
            var middle = (beside[at] + beside[at + 1]) / 2 / beside[^1];
            if (middle is < 0.25 or > 0.75)
                return;
            var (own, last) = (Length(beside, at), along.Count - 2);
            sum += own * Run.ReachedDepth((last + 2) / 2, cellAt, step => Length(along, step));
            sum += own * Run.ReachedDepth((last + 2) / 2, step => cellAt(last - step), step => Length(along, step));
            breadth += 2 * own;
        }
    }

    private static double Length(IReadOnlyList<double> edges, int at) => edges[at + 1] - edges[at];
}
