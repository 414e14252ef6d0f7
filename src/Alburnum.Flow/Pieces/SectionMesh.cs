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
        var cells = Cells(piece, columns, rows, out var cellAt);
        var mesh = Joined(columns, cellAt, cells, (width / columns / 1000, height / rows / 1000));
        var problem = new FlowProblem(mesh, fluids, [.. cells.Select(cell => cell.Saturation)], initialAirKPa);
        return new SectionMesh(piece, columns, rows, step, cellAt, problem);
    }

    // Permeability across the section and up it, m², and the wood's voids.
    private readonly record struct Cell(double Kx, double Ky, double Voids, double Saturation);

    private static List<Cell> Cells(Piece piece, int columns, int rows, out int[] cellAt)
    {
        var (width, height) = SectionBox.Of(piece.Section);
        cellAt = new int[columns * rows];
        Array.Fill(cellAt, -1);
        var cells = new List<Cell>();
        for (var at = 0; at < cellAt.Length; at++)
        {
            var x = (at % columns + 0.5) * width / columns - width / 2;
            var y = (at / columns + 0.5) * height / rows - height / 2;
            if (!SectionBox.Contains(piece.Section, x, y) || piece.Log.FromPithMm(x, y) > piece.Log.LogRadiusMm)
                continue;
            var kind = piece.At(x, y);
            var share = piece.Log.RadialShareAlongX(x, y);
            cellAt[at] = cells.Count;
            cells.Add(
                new(
                    kind.Permeability.AcrossM2(share),
                    kind.Permeability.AcrossM2(1 - share),
                    kind.VoidFraction,
                    kind.Saturation
                )
            );
        }
        return cells;
    }

    // Neighbours joined by the harmonic mean of their conductances; every other side is a face that the vessel reaches.
    private static FlowMesh Joined(int columns, int[] cellAt, List<Cell> cells, (double X, double Y) sizeM)
    {
        var joins = new List<(int, int, double)>();
        var faces = new List<(int, double)>();
        for (var at = 0; at < cellAt.Length; at++)
        {
            if (cellAt[at] < 0)
                continue;
            Side(at, at % columns > 0 ? at - 1 : -1, Across);
            Side(at, at % columns < columns - 1 ? at + 1 : -1, Across);
            Side(at, at - columns, Up);
            Side(at, at + columns, Up);
        }
        return new FlowMesh([.. cells.Select(cell => cell.Voids * sizeM.X * sizeM.Y)], joins, faces);

        double Across(Cell cell) => cell.Kx * sizeM.Y / sizeM.X;
        double Up(Cell cell) => cell.Ky * sizeM.X / sizeM.Y;

        void Side(int at, int beside, Func<Cell, double> conductance)
        {
            var (cell, other) = (cellAt[at], beside < 0 || beside >= cellAt.Length ? -1 : cellAt[beside]);
            var own = conductance(cells[cell]);
            if (other < 0)
                faces.Add((cell, 2 * own));
            else if (other > cell)
                joins.Add((cell, other, 2 * own * conductance(cells[other]) / (own + conductance(cells[other]))));
        }
    }
}
