using Alburnum.Flow.Mesh;

namespace Alburnum.Flow.Tests;

/// <summary>Meshes of one dimension: straight in from a flat face, or from the round surface towards the pith.</summary>
internal static class LineMesh
{
    /// <summary>A column of wood of 1 m² under a flat face, closed at the far end.</summary>
    /// <param name="depthMm">Depth of the closed end, mm. Above 0.</param>
    /// <param name="cells">Number of cells, 2 or more.</param>
    /// <param name="permeabilityM2">Permeability at a depth in mm, m².</param>
    /// <param name="voidFraction">Void share of the volume, above 0, at most 1.</param>
    public static FlowMesh Flat(double depthMm, int cells, Func<double, double> permeabilityM2, double voidFraction)
    {
        Check(depthMm, cells, voidFraction);
        var width = depthMm / 1000 / cells;
        var k = new double[cells];
        for (var i = 0; i < cells; i++)
            k[i] = Permeability(permeabilityM2, (i + 0.5) * width * 1000);
        var joins = Enumerable.Range(0, cells - 1).Select(i => (i, i + 1, 2 / (width / k[i] + width / k[i + 1])));
        return new FlowMesh([.. Enumerable.Repeat(width * voidFraction, cells)], [.. joins], [(0, 2 * k[0] / width)]);
    }

    /// <summary>The same in cells of given edges, of one wood.</summary>
    /// <param name="edgesMm">Where cells begin and end, mm from the face; rising from 0.</param>
    /// <param name="permeabilityM2">Permeability, m².</param>
    /// <param name="voidFraction">Void share of the volume, above 0, at most 1.</param>
    public static FlowMesh Flat(IReadOnlyList<double> edgesMm, double permeabilityM2, double voidFraction)
    {
        double[] width = [.. edgesMm.Zip(edgesMm.Skip(1), (from, to) => (to - from) / 1000)];
        return new FlowMesh(
            [.. width.Select(cell => cell * voidFraction)],
            [
                .. Enumerable
                    .Range(0, width.Length - 1)
                    .Select(i => (i, i + 1, 2 * permeabilityM2 / (width[i] + width[i + 1]))),
            ],
            [(0, 2 * permeabilityM2 / width[0])]
        );
    }

    /// <summary>A round piece, 1 m of its length, from the surface to the pith in rings of even width.</summary>
    /// <param name="radiusMm">Radius, mm. Above 0.</param>
    /// <param name="cells">Number of rings, 2 or more. The first is the outermost.</param>
    /// <param name="permeabilityM2">Radial permeability at a depth in mm, m².</param>
    /// <param name="voidFraction">Void share of the volume, above 0, at most 1.</param>
    public static FlowMesh Round(double radiusMm, int cells, Func<double, double> permeabilityM2, double voidFraction)
    {
        Check(radiusMm, cells, voidFraction);
        var radius = radiusMm / 1000;
        var width = radius / cells;
        var volumes = new double[cells];
        var middle = new double[cells];
        var k = new double[cells];
        for (var i = 0; i < cells; i++)
        {
            var (outer, inner) = (radius - i * width, radius - (i + 1) * width);
            volumes[i] = Math.PI * (outer * outer - inner * inner) * voidFraction;
            middle[i] = (outer + inner) / 2;
            k[i] = Permeability(permeabilityM2, (radius - middle[i]) * 1000);
        }
        // Exact for steady radial flow: 2πk over the logarithm of the radii.
        var joins = Enumerable
            .Range(0, cells - 1)
            .Select(i =>
            {
                var edge = radius - (i + 1) * width;
                var resistance = Math.Log(middle[i] / edge) / k[i] + Math.Log(edge / middle[i + 1]) / k[i + 1];
                return (i, i + 1, 2 * Math.PI / resistance);
            });
        return new FlowMesh(volumes, [.. joins], [(0, 2 * Math.PI * k[0] / Math.Log(radius / middle[0]))]);
    }

    private static void Check(double sizeMm, int cells, double voidFraction)
    {
        Require.InRange(sizeMm, 1e-3, 10_000, "mm");
        Require.InRange(cells, 2, 1_000_000, "cells");
        Require.InRange(voidFraction, 1e-6, 1, "(share)");
    }

    private static double Permeability(Func<double, double> permeabilityM2, double depthMm) =>
        Require.InRange(permeabilityM2(depthMm), 1e-25, 1e-9, "m²", nameof(permeabilityM2));
}
