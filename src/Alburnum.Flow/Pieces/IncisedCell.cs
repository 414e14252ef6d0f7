using Alburnum.Facts;
using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Incising;

namespace Alburnum.Flow.Pieces;

/// <summary>The part of the repeating cell under an incised face that stands for the whole, in boxes: x along the grain, y across it, z down from the face.</summary>
/// <remarks>
/// It goes from the middle of a cut to half-way to the next, along the grain and across. With rows in line or shifted by half a spacing, the planes through the
/// cuts are planes of symmetry. Half-way between two rows in line there is another; between two shifted rows the wood is its own image turned about an upright line,
/// so that each box meets there the one as far from the other end. A cut pushes wood aside and takes none out: the vessel reaches the boxes between its walls, and the next one from the wall.
/// Boxes are thinnest beside the planes of the cuts, where the liquid spreads along the grain at once, and under the face; they are even
/// along the grain. Below the cuts they grow down to the bottom, so that the air has the room it has in the piece.
/// </remarks>
public sealed class IncisedCell
{
    // The parts of a box's depth over which the length of a cut is averaged.
    private const int Slices = 8;

    // Logarithm of how many times as wide boxes are away from the cuts as beside them, and as deep past the cuts as under the face.
    private const double AcrossGrading = 3;
    private const double DownGrading = 1.5;

    // The boxes asked for reach this far below the cuts, in their depths, and at least so many mm; below, each is so much deeper than the last.
    private const double Below = 0.5;
    private const double BelowMm = 5;
    private const double Growth = 1.4;

    private IncisedCell(
        (int X, int Y, int Z) boxes,
        IReadOnlyList<double> rowsMm,
        IReadOnlyList<double> edgesMm,
        FlowProblem problem
    ) => (Boxes, RowsMm, EdgesMm, Problem) = (boxes, rowsMm, edgesMm, problem);

    /// <summary>Boxes along the grain, across it and down.</summary>
    public (int X, int Y, int Z) Boxes { get; }

    /// <summary>Distances across the grain at which the boxes meet, mm: from 0, a row of cuts, to half-way to the next.</summary>
    public IReadOnlyList<double> RowsMm { get; }

    /// <summary>Depths at which the boxes meet, mm: from 0 to the closed bottom.</summary>
    public IReadOnlyList<double> EdgesMm { get; }

    /// <summary>The wood as the solver takes it.</summary>
    public FlowProblem Problem { get; }

    /// <summary>Cuts the cell into boxes.</summary>
    /// <param name="pattern">The pattern; its rows in line (stagger 0) or shifted by half (0.5).</param>
    /// <param name="wood">The wood under the face.</param>
    /// <param name="fluids">Liquid and air.</param>
    /// <param name="bottomMm">Depth of the closed bottom, mm: half the piece's thickness; more than the cuts' depth.</param>
    /// <param name="boxes">Boxes on each side, 8 to 200; further, growing ones lie below.</param>
    /// <exception cref="ArgumentOutOfRangeException">Another stagger, a bottom above the cuts, too few or too many boxes.</exception>
    public static IncisedCell Of(IncisingPattern pattern, WoodFlow wood, FluidPair fluids, double bottomMm, int boxes)
    {
        if (pattern.Stagger is not (0 or 0.5))
            throw new ArgumentOutOfRangeException(
                nameof(pattern),
                pattern.Stagger,
                "The stagger must be 0 or 0.5 for the solver."
            );
        Require.InRange(bottomMm, pattern.DepthMm * 1.01, 1000, "mm");
        Require.Within(boxes, Ranges.CellBoxes, nameof(boxes));
        var edges = Edges(pattern.DepthMm + Math.Max(Below * pattern.DepthMm, BelowMm), bottomMm, boxes);
        // As many boxes from row to row as are asked for where rows are shifted, and twice as many where they are in line.
        var rows = GradedEdges.FromOneEnd(
            pattern.AcrossMm / 2,
            pattern.Stagger == 0 ? boxes : (boxes + 1) / 2,
            AcrossGrading
        );
        var mesh = MeshOf(pattern, wood, boxes, rows, edges);
        var saturation = Enumerable.Repeat(wood.Saturation, mesh.VoidM3.Length);
        return new IncisedCell(
            (boxes, rows.Length - 1, edges.Count - 1),
            rows,
            edges,
            new FlowProblem(mesh, fluids, [.. saturation])
        );
    }

    private static FlowMesh MeshOf(IncisingPattern pattern, WoodFlow wood, int boxes, double[] rows, List<double> edges)
    {
        var count = (X: boxes, Y: rows.Length - 1, Z: edges.Count - 1);
        var dx = pattern.AlongMm / 2 / boxes;
        var (k, layer) = (wood.Permeability, count.X * count.Y);
        var cells = layer * count.Z;
        var joins = new List<(int, int, double)>(3 * cells);
        var faces = new List<(int, double)>();
        var volumes = new double[cells];
        for (var at = 0; at < cells; at++)
        {
            var (x, y, z) = (at % count.X, at / count.X % count.Y, at / layer);
            var (dy, dz) = (rows[y + 1] - rows[y], edges[z + 1] - edges[z]);
            volumes[at] = dx * dy * dz * 1e-9 * wood.VoidFraction;
            // k·A/d between the middles of two boxes, m³.
            var across = k.TangentialM2 * dx * dz / 1000;
            var along = k.LongitudinalM2 * dy * dz / dx / 1000;
            // Half-way to a shifted row a box meets the one as far from the other end; the two in the middle are neighbours along the grain too.
            var turned = pattern.Stagger == 0.5 && y + 1 == count.Y ? count.X - 1 - x : x;
            if (x + 1 < count.X)
                joins.Add((at, at + 1, along + (turned == x + 1 ? across / dy : 0)));
            if (turned > x + 1)
                joins.Add((at, at + turned - x, across / dy));
            if (y + 1 < count.Y)
                joins.Add((at, at + count.X, across / ((rows[y + 2] - rows[y]) / 2)));
            if (z + 1 < count.Z)
                joins.Add((at, at + layer, k.RadialM2 * dx * dy / ((edges[z + 2] - edges[z]) / 2) / 1000));
            if (z == 0)
                faces.Add((at, k.RadialM2 * dx * dy / (dz / 2) / 1000));
            // From the wall of the cut to the middle of the box, which may begin beyond the wall.
            var wallMm = rows[y] - pattern.HalfWidthMm((edges[z] + edges[z + 1]) / 2);
            if (wallMm < 1e-9 && OpenShare(pattern, (x * dx, dx), (edges[z], dz)) is > 0 and var share)
                faces.Add((at, across / Math.Max(wallMm + dy / 2, dy / 4) * share));
        }
        return new FlowMesh(volumes, joins, faces);
    }

    // The part of a box's length along the grain that lies beside a cut whose middle lies at 0.
    private static double OpenShare(
        IncisingPattern pattern,
        (double FromMm, double Mm) along,
        (double FromMm, double Mm) down
    ) =>
        Enumerable
            .Range(0, Slices)
            .Average(slice =>
                Math.Clamp(
                    (pattern.HalfLengthMm(down.FromMm + (slice + 0.5) * down.Mm / Slices) - along.FromMm) / along.Mm,
                    0,
                    1
                )
            );

    /// <summary>Depth to the first wood that was not reached, mm, and the share of the face that it stands for, place by place.</summary>
    /// <param name="run">The solver's answer for <see cref="Problem"/>.</param>
    public IReadOnlyList<(double Share, double DepthMm)> Depths(FlowRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        var layer = Boxes.X * Boxes.Y;
        return
        [
            .. Enumerable
                .Range(0, layer)
                .Select(place =>
                    (
                        (RowsMm[place / Boxes.X + 1] - RowsMm[place / Boxes.X]) / RowsMm[^1] / Boxes.X,
                        run.ReachedDepth(
                            Boxes.Z,
                            step => place + step * layer,
                            step => EdgesMm[step + 1] - EdgesMm[step]
                        )
                    )
                ),
        ];
    }

    private static List<double> Edges(double fineMm, double bottomMm, int boxes)
    {
        List<double> edges = [.. GradedEdges.FromOneEnd(Math.Min(fineMm, bottomMm), boxes, DownGrading)];
        for (var step = (edges[^1] - edges[^2]) * Growth; bottomMm - edges[^1] > 1e-9; step *= Growth)
            // The last box takes in a rest that would be thinner than it.
            edges.Add(bottomMm - edges[^1] < 2 * step ? bottomMm : edges[^1] + step);
        return edges;
    }
}
