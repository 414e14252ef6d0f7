using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Timber;

namespace Alburnum.Flow.Pieces;

/// <summary>A cross-section cut into cells, 1 m of the piece's length. Rows run from the bottom up.</summary>
/// <remarks>
/// A sawn section's cells are thin at its faces and grow inwards, as a front in refractory wood stays close to them; a round or half-round
/// section's are even squares.
/// Permeability across the grain turns with the rings; each connection takes the part of it along the connection, which is
/// exact where rings lie along the faces and leaves out the cross term between (docs/science/flow.md says how much).
/// </remarks>
public sealed class SectionMesh
{
    // Ten times as wide in the middle as at the faces.
    private const double Grading = 2.3;
    private readonly int[] _cellAt;

    private SectionMesh(
        Piece piece,
        IReadOnlyList<double> columnEdgesMm,
        IReadOnlyList<double> rowEdgesMm,
        int[] cellAt,
        FlowProblem problem
    ) => (Piece, ColumnEdgesMm, RowEdgesMm, _cellAt, Problem) = (piece, columnEdgesMm, rowEdgesMm, cellAt, problem);

    /// <summary>The piece.</summary>
    public Piece Piece { get; }

    /// <summary>Where columns begin and end, mm from the left.</summary>
    public IReadOnlyList<double> ColumnEdgesMm { get; }

    /// <summary>Where rows begin and end, mm from the bottom.</summary>
    public IReadOnlyList<double> RowEdgesMm { get; }

    /// <summary>Cells across.</summary>
    public int Columns => ColumnEdgesMm.Count - 1;

    /// <summary>Cells up.</summary>
    public int Rows => RowEdgesMm.Count - 1;

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
    /// <param name="cellsAcross">Cells across the wider side, 4 to 2000; as many to the mm up.</param>
    /// <param name="initialAirKPa">Absolute pressure of the air inside, kPa.</param>
    /// <param name="grading">Logarithm of how many times as wide as at its faces a sawn section's cells are in its middle; 0 makes them even.</param>
    /// <exception cref="InputRefusedException">The section is thinner than four cells.</exception>
    public static SectionMesh Of(
        Piece piece,
        FluidPair fluids,
        int cellsAcross,
        double initialAirKPa = Schedule.AtmosphereKPa,
        double grading = Grading
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
        var growth = piece.Section is RectangularSection ? grading : 0;
        var (across, up) = (
            GradedEdges.FromBothEnds(width, columns, growth),
            GradedEdges.FromBothEnds(height, rows, growth)
        );
        var cells = Cells(piece, across, up, out var cellAt);
        var problem = new FlowProblem(
            Joined(columns, cellAt, cells),
            fluids,
            [.. cells.Select(cell => cell.Saturation)],
            initialAirKPa
        );
        return new SectionMesh(piece, across, up, cellAt, problem);
    }

    /// <summary>The same cells in <see cref="WarmedWood.Unit"/>.</summary>
    internal FlowMesh OfUnitWood()
    {
        var unit = Piece with { Sapwood = WarmedWood.Unit, Heartwood = WarmedWood.Unit };
        return Joined(Columns, _cellAt, Cells(unit, [.. ColumnEdgesMm], [.. RowEdgesMm], out _));
    }

    // Permeability across the section and up it, m²; size, m; and the wood's voids.
    private readonly record struct Cell(
        double Kx,
        double Ky,
        double WidthM,
        double HeightM,
        double Voids,
        double Saturation
    );

    private static List<Cell> Cells(Piece piece, double[] across, double[] up, out int[] cellAt)
    {
        var (columns, rows) = (across.Length - 1, up.Length - 1);
        cellAt = new int[columns * rows];
        Array.Fill(cellAt, -1);
        var cells = new List<Cell>();
        for (var at = 0; at < cellAt.Length; at++)
        {
            var (column, row) = (at % columns, at / columns);
            var x = (across[column] + across[column + 1] - across[^1]) / 2;
            var y = (up[row] + up[row + 1] - up[^1]) / 2;
            if (!SectionBox.Contains(piece.Section, x, y) || piece.Log.FromPithMm(x, y) > piece.Log.LogRadiusMm)
                continue;
            var kind = piece.At(x, y);
            var share = piece.Log.RadialShareAlongX(x, y);
            cellAt[at] = cells.Count;
            cells.Add(
                new(
                    kind.Permeability.AcrossM2(share),
                    kind.Permeability.AcrossM2(1 - share),
                    (across[column + 1] - across[column]) / 1000,
                    (up[row + 1] - up[row]) / 1000,
                    kind.VoidFraction,
                    kind.Saturation
                )
            );
        }
        return cells;
    }

    // Neighbours joined by the harmonic mean of their conductances; every other side is a face that the vessel reaches.
    private static FlowMesh Joined(int columns, int[] cellAt, List<Cell> cells)
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
        return new FlowMesh([.. cells.Select(cell => cell.Voids * cell.WidthM * cell.HeightM)], joins, faces);

        // From a cell's middle to its side.
        static double Across(Cell cell) => 2 * cell.Kx * cell.HeightM / cell.WidthM;
        static double Up(Cell cell) => 2 * cell.Ky * cell.WidthM / cell.HeightM;

        void Side(int at, int beside, Func<Cell, double> conductance)
        {
            var (cell, other) = (cellAt[at], beside < 0 || beside >= cellAt.Length ? -1 : cellAt[beside]);
            var own = conductance(cells[cell]);
            if (other < 0)
                faces.Add((cell, own));
            else if (other > cell)
                joins.Add((cell, other, own * conductance(cells[other]) / (own + conductance(cells[other]))));
        }
    }
}
