using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;

namespace Alburnum.Flow.Pieces;

/// <summary>A cross-section cut into cells, 1 m of the piece's length. Rows run from the bottom up.</summary>
/// <remarks>
/// What is alike on both sides of a middle line, or of the diagonal of a square, is solved once: cells that mirror each other are one cell of the problem,
/// with their voids and conductances summed.
/// Permeability across the grain turns with the rings; each connection takes the part of it along the connection, which is
/// exact where rings lie along the faces and leaves out the cross term between (docs/science/flow.md says how much).
/// </remarks>
public sealed class SectionMesh
{
    private readonly SectionGrid _grid;
    private readonly int[] _cellAt;

    private SectionMesh(Piece piece, SectionGrid grid, int[] cellAt, FlowProblem problem) =>
        (Piece, _grid, _cellAt, Problem) = (piece, grid, cellAt, problem);

    /// <summary>The piece.</summary>
    public Piece Piece { get; }

    /// <summary>Where columns begin and end, mm from the left.</summary>
    public IReadOnlyList<double> ColumnEdgesMm => _grid.ColumnEdgesMm;

    /// <summary>Where rows begin and end, mm from the bottom.</summary>
    public IReadOnlyList<double> RowEdgesMm => _grid.RowEdgesMm;

    /// <summary>Cells across.</summary>
    public int Columns => _grid.Columns;

    /// <summary>Cells up.</summary>
    public int Rows => _grid.Rows;

    /// <summary>The wood as the solver takes it.</summary>
    public FlowProblem Problem { get; }

    /// <summary>Number of the problem's cell at a column and row, which stands for its mirror images too; null where there is no wood.</summary>
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
    /// <param name="frontMm">How deep a front is expected in a sawn section, mm, above 0: cells are narrowest on its way; null makes them even.</param>
    /// <exception cref="InputRefusedException">The section is thinner than four cells.</exception>
    internal static SectionMesh Of(
        Piece piece,
        FluidPair fluids,
        int cellsAcross,
        double initialAirKPa = Schedule.AtmosphereKPa,
        double? frontMm = null
    ) => Of(piece, fluids, SectionGrid.Of(piece.Section, cellsAcross, frontMm), initialAirKPa);

    /// <summary>Cuts a piece along a grid.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="fluids">Liquid and air.</param>
    /// <param name="grid">Where columns and rows meet.</param>
    /// <param name="initialAirKPa">Absolute pressure of the air inside, kPa.</param>
    public static SectionMesh Of(Piece piece, FluidPair fluids, SectionGrid grid, double initialAirKPa)
    {
        var cells = Cells(piece, grid);
        var (cellAt, one) = Folded(cells, grid.Columns);
        var problem = new FlowProblem(
            Joined(grid.Columns, cells, cellAt, one.Count),
            fluids,
            [.. one.Select(cell => cell.Saturation)],
            initialAirKPa
        );
        return new SectionMesh(piece, grid, cellAt, problem);
    }

    /// <summary>The same cells in <see cref="WarmedWood.Unit"/>.</summary>
    internal FlowMesh OfUnitWood()
    {
        var unit = Piece with { Sapwood = WarmedWood.Unit, Heartwood = WarmedWood.Unit };
        return Joined(Columns, Cells(unit, _grid), _cellAt, Problem.Mesh.CellCount);
    }

    // Permeability across the section and up it, m²; size, m; and the wood's voids.
    private readonly record struct Cell(
        double Kx,
        double Ky,
        double WidthM,
        double HeightM,
        double Voids,
        double Saturation
    )
    {
        private const double Alike = 1e-9;

        // The cell seen in a mirror along the diagonal.
        public Cell Turned => new(Ky, Kx, HeightM, WidthM, Voids, Saturation);

        public bool IsLike(Cell other) =>
            Same(Kx, other.Kx)
            && Same(Ky, other.Ky)
            && Same(WidthM, other.WidthM)
            && Same(HeightM, other.HeightM)
            && Same(Voids, other.Voids)
            && Same(Saturation, other.Saturation);

        private static bool Same(double a, double b) => Math.Abs(a - b) <= Alike * Math.Abs(a);
    }

    // Row by row; null where there is no wood.
    private static Cell?[] Cells(Piece piece, SectionGrid grid)
    {
        var (across, up) = (grid.ColumnEdgesMm, grid.RowEdgesMm);
        var cells = new Cell?[grid.Columns * grid.Rows];
        for (var at = 0; at < cells.Length; at++)
        {
            var (column, row) = (at % grid.Columns, at / grid.Columns);
            var x = (across[column] + across[column + 1] - across[^1]) / 2;
            var y = (up[row] + up[row + 1] - up[^1]) / 2;
            if (!SectionBox.Contains(piece.Section, x, y) || piece.Log.FromPithMm(x, y) > piece.Log.LogRadiusMm)
                continue;
            var kind = piece.At(x, y);
            var share = piece.Log.RadialShareAlongX(x, y);
            cells[at] = new(
                kind.Permeability.AcrossM2(share),
                kind.Permeability.AcrossM2(1 - share),
                (across[column + 1] - across[column]) / 1000,
                (up[row + 1] - up[row]) / 1000,
                kind.VoidFraction,
                kind.Saturation
            );
        }
        return cells;
    }

    // The problem's cell at every place, -1 where there is no wood: one for all places that mirror each other.
    private static (int[] CellAt, List<Cell> One) Folded(Cell?[] cells, int columns)
    {
        var rows = cells.Length / columns;
        var first = Enumerable.Range(0, cells.Length).ToArray();
        Fold(at => at - at % columns + columns - 1 - at % columns, cell => cell);
        Fold(at => (rows - 1 - at / columns) * columns + at % columns, cell => cell);
        if (rows == columns)
            Fold(at => at % columns * columns + at / columns, cell => cell.Turned);
        var one = new List<Cell>();
        var cellAt = new int[cells.Length];
        for (var at = 0; at < cellAt.Length; at++)
        {
            // A place takes the number of the first of its mirror images, which comes before it.
            cellAt[at] =
                cells[at] is not { } cell ? -1
                : first[at] < at ? cellAt[first[at]]
                : one.Count;
            if (cellAt[at] == one.Count)
                one.Add(cells[at]!.Value);
        }
        return (cellAt, one);

        void Fold(Func<int, int> mirror, Func<Cell, Cell> seen)
        {
            for (var at = 0; at < cells.Length; at++)
                if (
                    cells[at] is { } cell
                        ? cells[mirror(at)] is not { } image || !cell.IsLike(seen(image))
                        : cells[mirror(at)] is not null
                )
                    return;
            for (var at = 0; at < cells.Length; at++)
                first[at] = first[Math.Min(at, mirror(at))];
        }
    }

    // Neighbours joined by the harmonic mean of their conductances; every other side is a face that the vessel reaches.
    private static FlowMesh Joined(int columns, Cell?[] cells, int[] cellAt, int count)
    {
        var voids = new double[count];
        var joins = new Dictionary<(int First, int Second), double>();
        var faces = new Dictionary<int, double>();
        for (var at = 0; at < cells.Length; at++)
        {
            if (cells[at] is not { } cell)
                continue;
            voids[cellAt[at]] += cell.Voids * cell.WidthM * cell.HeightM;
            Side(at, at % columns > 0 ? at - 1 : -1, Across);
            Side(at, at % columns < columns - 1 ? at + 1 : -1, Across);
            Side(at, at - columns, Up);
            Side(at, at + columns, Up);
        }
        return new FlowMesh(
            voids,
            [.. joins.Select(join => (join.Key.First, join.Key.Second, join.Value))],
            [.. faces.Select(face => (face.Key, face.Value))]
        );

        // From a cell's middle to its side.
        static double Across(Cell cell) => 2 * cell.Kx * cell.HeightM / cell.WidthM;
        static double Up(Cell cell) => 2 * cell.Ky * cell.WidthM / cell.HeightM;

        void Side(int at, int beside, Func<Cell, double> conductance)
        {
            var own = conductance(cells[at]!.Value);
            if (beside < 0 || beside >= cells.Length || cells[beside] is not { } other)
                faces[cellAt[at]] = faces.GetValueOrDefault(cellAt[at]) + own;
            else if (beside > at && cellAt[at] != cellAt[beside])
            {
                var pair = (Math.Min(cellAt[at], cellAt[beside]), Math.Max(cellAt[at], cellAt[beside]));
                joins[pair] = joins.GetValueOrDefault(pair) + own * conductance(other) / (own + conductance(other));
            }
        }
    }
}
