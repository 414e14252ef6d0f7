namespace Alburnum.DrawnSections;

/// <summary>Where sapwood truly ends behind the faces.</summary>
public static class SapwoodTruth
{
    private const double MarchMm = 0.05;
    private const double AreaStepMm = 0.2;

    /// <summary>Depth below a place of a face at which heartwood begins, mm: 0 where it lies at the face, null where none is met before a depth.</summary>
    public static double? DepthMm(SectionScene scene, int face, double alongMm, double mostMm)
    {
        var side = scene.Shape.Faces[face];
        var (from, inward) = (side.At(alongMm), side.Inward(alongMm));
        for (var depth = 0.0; depth < mostMm; depth += MarchMm)
        {
            var at = from + inward * depth;
            if (scene.Grain.SapwoodMm(at.X, at.Y) < 0)
                return depth;
        }
        return null;
    }

    /// <summary>Share of the section's area that is sapwood.</summary>
    public static double Share(SectionScene scene)
    {
        var half = scene.Shape.HalfExtent;
        var (sapwood, all) = (0, 0);
        for (var y = -half.Y; y < half.Y; y += AreaStepMm)
        for (var x = -half.X; x < half.X; x += AreaStepMm)
        {
            if (scene.Shape.RoughlyInsideMm(x, y) <= 0)
                continue;
            all++;
            sapwood += scene.Grain.SapwoodMm(x, y) >= 0 ? 1 : 0;
        }
        return (double)sapwood / all;
    }
}
