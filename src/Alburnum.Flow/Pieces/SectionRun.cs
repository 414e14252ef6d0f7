using Alburnum.Flow.Equations;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;

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
        var piece = new Piece(
            question.Section,
            question.Log,
            new WoodFlow(question.Sapwood.Typical(factor), question.VoidFraction),
            new WoodFlow(question.Heartwood.Typical(factor), question.VoidFraction)
        );
        var mesh = SectionMesh.Of(piece, FluidPair.Of(question.Liquid), cellsAcross);
        return new SectionRun(
            mesh,
            FlowSolver.Run(mesh.Problem, question.Schedule, StepControl.Usual, progress, cancellation)
        );
    }

    /// <summary>Uptake at each moment, L per m³ of wood.</summary>
    public IEnumerable<(double Minutes, double KPa, double UptakeLPerM3)> Uptake()
    {
        var perM3 = 1e3 * 1e6 / Mesh.Piece.Section.AreaMm2;
        return Run.Moments.Select(moment => (moment.Minutes, moment.VesselKPa, moment.GainedM3 * perM3));
    }

    /// <summary>Share of the section that solution has reached, 0 to 1.</summary>
    public double ReachedShare =>
        (double)Run.ArrivalMinutes.Count(arrival => arrival is not null) / Run.ArrivalMinutes.Count;

    /// <summary>Mean depth reached straight in from the middle half of the four sides, mm, by how much of each way is reached.</summary>
    /// <remarks>Counts cells from each side until the first not reached, half a cell fine.</remarks>
    public double MeanDepthMm()
    {
        double sum = 0;
        var ways = 0;
        for (var column = Mesh.Columns / 4; column < Mesh.Columns - Mesh.Columns / 4; column++)
        {
            sum += Depth(step => Mesh.CellAt(column, step), Mesh.Rows);
            sum += Depth(step => Mesh.CellAt(column, Mesh.Rows - 1 - step), Mesh.Rows);
            ways += 2;
        }
        for (var row = Mesh.Rows / 4; row < Mesh.Rows - Mesh.Rows / 4; row++)
        {
            sum += Depth(step => Mesh.CellAt(step, row), Mesh.Columns);
            sum += Depth(step => Mesh.CellAt(Mesh.Columns - 1 - step, row), Mesh.Columns);
            ways += 2;
        }
        return sum / ways;
    }

    // The last cell counts by the share of its voids that filled.
    private double Depth(Func<int, int?> cellAt, int steps)
    {
        double depth = 0;
        for (var step = 0; step < (steps + 1) / 2; step++)
        {
            if (cellAt(step) is not { } cell)
                continue;
            depth += Mesh.StepMm * Math.Min(1, Run.PeakGain[cell] / 0.9);
            if (Run.ArrivalMinutes[cell] is null)
                break;
        }
        return depth;
    }
}
