using Alburnum.Facts;
using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Incising;

namespace Alburnum.Flow.Pieces;

/// <summary>A quarter of the repeating cell under an incised face, in even boxes: x along the grain, y across it, z down from the face.</summary>
/// <remarks>
/// With rows in line or shifted by half a spacing, the planes through the cuts are planes of symmetry, so the quarter stands
/// for the whole. A cut is the boxes it takes out, at least half a box wide: the cut's walls are faces that the vessel reaches.
/// </remarks>
public sealed class IncisedCell
{
    private readonly int[] _cellAt;

    private IncisedCell((int X, int Y, int Z) boxes, double depthMm, int[] cellAt, FlowProblem problem) =>
        (Boxes, DepthMm, _cellAt, Problem) = (boxes, depthMm, cellAt, problem);

    /// <summary>Boxes along the grain, across it and down.</summary>
    public (int X, int Y, int Z) Boxes { get; }

    /// <summary>Depth of the closed bottom, mm: half the piece's thickness, or less where the front does not go so far.</summary>
    public double DepthMm { get; }

    /// <summary>The wood as the solver takes it.</summary>
    public FlowProblem Problem { get; }

    /// <summary>Cuts the cell into boxes.</summary>
    /// <param name="pattern">The pattern; its rows in line (stagger 0) or shifted by half (0.5).</param>
    /// <param name="wood">The wood under the face.</param>
    /// <param name="fluids">Liquid and air.</param>
    /// <param name="depthMm">Depth of the closed bottom, mm; more than the cuts' depth.</param>
    /// <param name="boxes">Boxes along, across and down, each 8 to 200.</param>
    /// <exception cref="ArgumentOutOfRangeException">Another stagger, a bottom above the cuts, too few or too many boxes.</exception>
    public static IncisedCell Of(
        IncisingPattern pattern,
        WoodFlow wood,
        FluidPair fluids,
        double depthMm,
        (int X, int Y, int Z) boxes
    )
    {
        if (pattern.Stagger is not (0 or 0.5))
            throw new ArgumentOutOfRangeException(
                nameof(pattern),
                pattern.Stagger,
                "The stagger must be 0 or 0.5 for the solver."
            );
        Require.InRange(depthMm, pattern.DepthMm * 1.01, 1000, "mm");
        foreach (var count in new[] { boxes.X, boxes.Y, boxes.Z })
            Require.Within(count, Ranges.CellBoxes, nameof(boxes));
        var dx = pattern.AlongMm / 2 / boxes.X;
        var dy = (pattern.Stagger == 0 ? pattern.AcrossMm / 2 : pattern.AcrossMm) / boxes.Y;
        var dz = depthMm / boxes.Z;
        var cellAt = new int[boxes.X * boxes.Y * boxes.Z];
        var cells = 0;
        for (var at = 0; at < cellAt.Length; at++)
        {
            var (x, y, z) = (at % boxes.X, at / boxes.X % boxes.Y, at / boxes.X / boxes.Y);
            cellAt[at] = IsCut(pattern, (x + 0.5) * dx, (y + 0.5) * dy, (z + 0.5) * dz, dy) ? -1 : cells++;
        }
        var k = wood.Permeability;
        // k·A/d between the middles of two boxes, m³.
        var along = k.LongitudinalM2 * dy * dz / dx / 1000;
        var across = k.TangentialM2 * dx * dz / dy / 1000;
        var down = k.RadialM2 * dx * dy / dz / 1000;
        var joins = new List<(int, int, double)>(3 * cells);
        var faces = new List<(int, double)>();
        for (var at = 0; at < cellAt.Length; at++)
        {
            var (x, y, z) = (at % boxes.X, at / boxes.X % boxes.Y, at / boxes.X / boxes.Y);
            if (x + 1 < boxes.X)
                Join(at, at + 1, along);
            if (y + 1 < boxes.Y)
                Join(at, at + boxes.X, across);
            if (z + 1 < boxes.Z)
                Join(at, at + boxes.X * boxes.Y, down);
            if (z == 0 && cellAt[at] >= 0)
                faces.Add((cellAt[at], 2 * down));
        }
        var volume = dx * dy * dz * 1e-9 * wood.VoidFraction;
        var mesh = new FlowMesh([.. Enumerable.Repeat(volume, cells)], joins, faces);
        var problem = new FlowProblem(mesh, fluids, [.. Enumerable.Repeat(wood.Saturation, cells)]);
        return new IncisedCell(boxes, depthMm, cellAt, problem);

        void Join(int a, int b, double conductance)
        {
            var (first, second) = (cellAt[a], cellAt[b]);
            if (first >= 0 && second >= 0)
                joins.Add((first, second, conductance));
            else if (first >= 0 || second >= 0)
                faces.Add((Math.Max(first, second), 2 * conductance));
        }
    }

    /// <summary>Depth down to which every box is reached, mm.</summary>
    /// <param name="run">The solver's answer for <see cref="Problem"/>.</param>
    public double UnbrokenMm(FlowRun run)
    {
        for (var z = 0; z < Boxes.Z; z++)
            if (ReachedShare(run, z) < 1)
                return z * DepthMm / Boxes.Z;
        return DepthMm;
    }

    private double ReachedShare(FlowRun run, int z)
    {
        var layer = Boxes.X * Boxes.Y;
        int wood = 0,
            reached = 0;
        for (var at = z * layer; at < (z + 1) * layer; at++)
        {
            if (_cellAt[at] < 0)
                continue;
            wood++;
            if (run.ArrivalMinutes[_cellAt[at]] is not null)
                reached++;
        }
        return wood == 0 ? 1 : (double)reached / wood;
    }

    // The cut in the corner at the origin, and the one across from it: shifted by half, or in line.
    private static bool IsCut(IncisingPattern pattern, double x, double y, double z, double dy)
    {
        if (z >= pattern.DepthMm)
            return false;
        var half = Math.Max(pattern.HalfWidthMm(z), dy * 0.51);
        if (x <= pattern.HalfLengthMm(z) && y <= half)
            return true;
        return pattern.Stagger == 0.5
            && pattern.AlongMm / 2 - x <= pattern.HalfLengthMm(z)
            && pattern.AcrossMm - y <= half;
    }
}
