using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Timber;

namespace Alburnum.Flow.Pieces;

/// <summary>A piece near a cut end, cut lengthwise: x from the end along the grain, y from the face to the middle.</summary>
public static class EndGrainMesh
{
    /// <summary>A strip 1 m wide of a sawn piece, or a round piece in rings; closed at its middle and at its far end.</summary>
    /// <param name="section">The section; a half-round piece is taken as a sawn one of its thickness.</param>
    /// <param name="wood">The wood.</param>
    /// <param name="fluids">Liquid and air.</param>
    /// <param name="lengthMm">Length of the strip, mm; more than the end is expected to draw in.</param>
    /// <param name="along">Cells along the grain, 4 to 2000.</param>
    /// <param name="across">Cells from the face to the middle, 4 to 2000.</param>
    /// <returns>The problem; cell number = row · along + column, the end and the face first.</returns>
    public static FlowProblem Of(
        Section section,
        WoodFlow wood,
        FluidPair fluids,
        double lengthMm,
        int along,
        int across
    )
    {
        Require.InRange(lengthMm, 1, 20_000, "mm");
        Require.InRange(along, 4, 2000, "cells");
        Require.InRange(across, 4, 2000, "cells");
        var (dx, half) = (lengthMm / 1000 / along, section.ThicknessMm / 2000);
        Row[] rows = section is RoundSection ? Rings(half, across) : Layers(half, across);
        var (voids, joins, faces) = (new List<double>(), new List<(int, int, double)>(), new List<(int, double)>());
        for (var row = 0; row < across; row++)
        {
            var lengthwise = wood.Permeability.LongitudinalM2 * rows[row].AreaM2 / dx;
            var inwards = wood.Permeability.RadialM2 * dx;
            for (var column = 0; column < along; column++)
            {
                var cell = row * along + column;
                voids.Add(rows[row].AreaM2 * dx * wood.VoidFraction);
                if (column + 1 < along)
                    joins.Add((cell, cell + 1, lengthwise));
                if (row + 1 < across)
                    joins.Add((cell, cell + along, inwards * rows[row].ToNext));
                if (column == 0)
                    faces.Add((cell, 2 * lengthwise));
                if (row == 0)
                    faces.Add((cell, inwards * rows[0].ToFace));
            }
        }
        var mesh = new FlowMesh(voids, joins, faces);
        return new FlowProblem(mesh, fluids, [.. Enumerable.Repeat(wood.Saturation, along * across)]);
    }

    /// <summary>Depth reached from the end along the middle of the piece, mm.</summary>
    /// <param name="run">The solver's answer.</param>
    /// <param name="lengthMm">Length of the strip, mm.</param>
    /// <param name="along">Cells along the grain.</param>
    public static double MiddleDepthMm(FlowRun run, double lengthMm, int along)
    {
        var middle = run.ArrivalMinutes.Skip(run.ArrivalMinutes.Count - along);
        return middle.TakeWhile(arrival => arrival is not null).Count() * lengthMm / along;
    }

    private static Row[] Layers(double half, int across)
    {
        var dy = half / across;
        return [.. Enumerable.Repeat(new Row(dy, 1 / dy, 2 / dy), across)];
    }

    // Exact for steady radial flow: 2π over the logarithm of the radii.
    private static Row[] Rings(double radius, int across)
    {
        var width = radius / across;
        double Middle(int ring) => radius - (ring + 0.5) * width;
        return
        [
            .. Enumerable
                .Range(0, across)
                .Select(ring => new Row(
                    2 * Math.PI * Middle(ring) * width,
                    ring + 1 < across ? 2 * Math.PI / Math.Log(Middle(ring) / Middle(ring + 1)) : 0,
                    2 * Math.PI / Math.Log(radius / Middle(0))
                )),
        ];
    }

    // One layer or ring: its area across the grain, and area over distance to the next one and to the face, for 1 m of length.
    private readonly record struct Row(double AreaM2, double ToNext, double ToFace);
}
