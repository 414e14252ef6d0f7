using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;

namespace Alburnum.Flow.Pieces;

/// <summary>A cross-section cut into even square cells, 1 m of the piece's length. Rows run from the bottom up.</summary>
/// <remarks>
/// Permeability across the grain turns with the rings; each connection takes the part of it along the connection, which is
/// exact where rings lie along the faces and leaves out the cross term between (docs/science/flow.md says how much).
/// </remarks>
public sealed class SectionMesh
{
    private readonly int[] _cellAt;

    private SectionMesh(Piece piece, int columns, int rows, double stepMm, int[] cellAt, FlowProblem problem)
    {
        (Piece, Columns, Rows, StepMm, _cellAt, Problem) = (piece, columns, rows, stepMm, cellAt, problem);
    }

    /// <summary>The piece.</summary>
    public Piece Piece { get; }

    /// <summary>Cells across.</summary>
    public int Columns { get; }

    /// <summary>Cells up.</summary>
    public int Rows { get; }

    /// <summary>Side of a cell, mm; a sawn section's cells are stretched to fit it exactly.</summary>
    public double StepMm { get; }

    /// <summary>The wood as the solver takes it.</summary>
    public FlowProblem Problem { get; }

    /// <summary>Cell number at a column and row; null where there is no wood.</summary>
    public int? CellAt(int column, int row)
    {
        Require.InRange(column, 0, Columns - 1, "(column)");
        Require.InRange(row, 0, Rows - 1, "(row)");
        var cell = _cellAt[row * Columns + column];
        return cell < 0 ? null : cell;
    }

    /// <summary>Cuts a piece into cells.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="fluids">Liquid and air.</param>
    /// <param name="cellsAcross">Cells across the wider side, 4 to 2000.</param>
    /// <param name="initialAirKPa">Absolute pressure of the air inside, kPa.</param>
    /// <exception cref="InputRefusedException">The section is thinner than four cells.</exception>
    public static SectionMesh Of(
        Piece piece,
        FluidPair fluids,
        int cellsAcross,
        double initialAirKPa = Schedule.AtmosphereKPa
    )
    {
        Require.InRange(cellsAcross, 4, 2000, "cells");
        var (width, height) = SectionBox.Of(piece.Section);
        var step = Math.Max(width, height) / cellsAcross;
        var columns = (int)Math.Round(width / step);
        var rows = (int)Math.Round(height / step);
        if (Math.Min(columns, rows) < 4)
        {
            var expected = FormattableString.Invariant(
                $"at least four cells across the thinner side: {4 * step:0.##} mm, or a finer grid"
            );
            throw new InputRefusedException(new InputProblem("section", 0, "", "size", piece.Section.Label, expected));
        }
        var (dx, dy) = (width / columns / 1000, height / rows / 1000);
        var cellAt = new int[columns * rows];
        var wood = new List<(double Kx, double Ky, double Voids, double Saturation)>();
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                var x = ((column + 0.5) * dx * 1000) - width / 2;
                var y = ((row + 0.5) * dy * 1000) - height / 2;
                cellAt[row * columns + column] = -1;
                if (!SectionBox.Contains(piece.Section, x, y))
                    continue;
                if (piece.Log.FromPithMm(x, y) > piece.Log.LogRadiusMm)
                    continue;
                var kind = piece.At(x, y);
                var share = piece.Log.RadialShareAlongX(x, y);
                cellAt[row * columns + column] = wood.Count;
                wood.Add(
                    (
                        kind.Permeability.AcrossM2(share),
                        kind.Permeability.AcrossM2(1 - share),
                        kind.VoidFraction,
                        kind.Saturation
                    )
                );
            }
        }
        var joins = new List<(int, int, double)>();
        var faces = new List<(int, double)>();
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                var cell = cellAt[row * columns + column];
                if (cell < 0)
                    continue;
                Side(cell, column - 1, row, wood[cell].Kx * dy / dx, alongX: true);
                Side(cell, column + 1, row, wood[cell].Kx * dy / dx, alongX: true);
                Side(cell, column, row - 1, wood[cell].Ky * dx / dy, alongX: false);
                Side(cell, column, row + 1, wood[cell].Ky * dx / dy, alongX: false);
            }
        }
        var mesh = new FlowMesh([.. wood.Select(w => w.Voids * dx * dy)], joins, faces);
        var problem = new FlowProblem(mesh, fluids, [.. wood.Select(w => w.Saturation)], initialAirKPa);
        return new SectionMesh(piece, columns, rows, step, cellAt, problem);

        void Side(int cell, int column, int row, double conductance, bool alongX)
        {
            var outside =
                column < 0 || row < 0 || column >= columns || row >= rows || cellAt[row * columns + column] < 0;
            if (outside)
            {
                faces.Add((cell, 2 * conductance));
                return;
            }
            var other = cellAt[row * columns + column];
            if (other < cell)
                return;
            var beyond = alongX ? wood[other].Kx * dy / dx : wood[other].Ky * dx / dy;
            joins.Add((cell, other, 2 * conductance * beyond / (conductance + beyond)));
        }
    }
}
