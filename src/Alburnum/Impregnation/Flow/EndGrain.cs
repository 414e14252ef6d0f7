namespace Alburnum.Impregnation.Flow;

/// <summary>A lengthwise strip of a piece near a cut end: x from the end along the grain, y from the face to the middle.</summary>
public static class EndGrain
{
    /// <summary>A strip 1 m wide, closed at its middle plane and at its far end.</summary>
    /// <param name="wood">The wood.</param>
    /// <param name="fluids">Liquid and air.</param>
    /// <param name="lengthMm">Length of the strip, mm; more than the end is expected to draw in.</param>
    /// <param name="halfThicknessMm">Half the thickness, mm.</param>
    /// <param name="along">Cells along the grain, 4 to 2000.</param>
    /// <param name="across">Cells across it, 4 to 2000.</param>
    /// <returns>The problem; cell number = row · along + column, the end first.</returns>
    public static FlowProblem Strip(
        WoodFlow wood,
        FluidPair fluids,
        double lengthMm,
        double halfThicknessMm,
        int along,
        int across
    )
    {
        Require.InRange(lengthMm, 1, 20_000, "mm");
        Require.InRange(halfThicknessMm, 0.5, 1000, "mm");
        Require.InRange(along, 4, 2000, "cells");
        Require.InRange(across, 4, 2000, "cells");
        var (dx, dy) = (lengthMm / 1000 / along, halfThicknessMm / 1000 / across);
        var (kx, ky) = (wood.Permeability.LongitudinalM2 * dy / dx, wood.Permeability.RadialM2 * dx / dy);
        var joins = new List<(int, int, double)>();
        var faces = new List<(int, double)>();
        for (var row = 0; row < across; row++)
        {
            for (var column = 0; column < along; column++)
            {
                var cell = row * along + column;
                if (column + 1 < along)
                    joins.Add((cell, cell + 1, kx));
                if (row + 1 < across)
                    joins.Add((cell, cell + along, ky));
                if (column == 0)
                    faces.Add((cell, 2 * kx));
                if (row == 0)
                    faces.Add((cell, 2 * ky));
            }
        }
        var mesh = new FlowMesh([.. Enumerable.Repeat(dx * dy * wood.VoidFraction, along * across)], joins, faces);
        return new FlowProblem(mesh, fluids, [.. Enumerable.Repeat(wood.Saturation, along * across)]);
    }
}
