namespace Alburnum.DrawnSections;

/// <summary>The cut face as it is: wood, preservative and reagent together, at any point in mm.</summary>
public sealed class SprayedFace(
    SectionShape shape,
    EndGrain grain,
    Treatment treatment,
    Indicator indicator,
    Spray spray,
    double sawShade
)
{
    private static readonly Colour Sawdust = Colour.Of("#DCC7A0");

    public Front Front { get; } = new(shape, treatment, grain);

    public SectionShape Shape => shape;

    public EndGrain Grain => grain;

    /// <summary>Colour of a point under light from everywhere, and its wetness.</summary>
    public (Colour Colour, float Wet) At(double x, double y, double pixelMm)
    {
        var wood = grain.At(x, y, pixelMm);
        var lightness = 0.42f * grain.Lightness;
        var field = Front.At(x, y);
        var preserved = Smooth.Step(-0.12, 0.12, field);
        var colour = wood.Towards(indicator.Preservative.Over(wood, 1, lightness), preserved);
        // Open earlywood drinks more reagent than dense latewood.
        var amount = spray.Amount(x, y) * (0.75f + 0.25f * Math.Min(wood.Luminance / lightness, 1.5f));
        if (indicator.Treated.Cover > 0)
        {
            var share = spray.Colouring(Front, field, x, y);
            var untreated = indicator.Untreated.Over(colour, amount, lightness);
            var treated = indicator.Treated.Over(colour, amount, lightness);
            colour = untreated.Towards(treated, share);
        }
        if (spray.WetPatches > 0)
            colour *= 1 - spray.WetPatches * Smooth.Step(-0.1, 0.3, Noise.Fractal(x / 13, y / 13, 2, spray.Seed + 6));
        colour = colour.Towards(Sawdust, spray.DustAt(x, y));
        return (colour, Math.Min(1, amount));
    }

    /// <summary>The face on a grid of square texels that reaches a little past its outline; the fourth channel is wetness.</summary>
    public Raster Rendered(double texelsPerMm, double marginMm, Point light)
    {
        var half = shape.HalfExtent + new Point(marginMm, marginMm);
        var raster = new Raster((int)(2 * half.X * texelsPerMm), (int)(2 * half.Y * texelsPerMm));
        var heights = new double[raster.Width * raster.Height];
        void EachRow(Action<int, double> row) =>
            Parallel.For(0, raster.Height, y => row(y, (y + 0.5) / texelsPerMm - half.Y));
        EachRow(
            (y, atY) =>
            {
                for (var x = 0; x < raster.Width; x++)
                    heights[y * raster.Width + x] = grain.HeightMm((x + 0.5) / texelsPerMm - half.X, atY);
            }
        );
        EachRow(
            (y, atY) =>
            {
                var row = raster.Row(y);
                for (var x = 0; x < raster.Width; x++)
                {
                    var atX = (x + 0.5) / texelsPerMm - half.X;
                    if (shape.RoughlyInsideMm(atX, atY) < -marginMm)
                        continue;
                    var (colour, wet) = At(atX, atY, 1 / texelsPerMm);
                    colour *= Shade(heights, raster, x, y, texelsPerMm, light);
                    row[4 * x] = colour.Red;
                    row[4 * x + 1] = colour.Green;
                    row[4 * x + 2] = colour.Blue;
                    row[4 * x + 3] = wet;
                }
            }
        );
        return raster;
    }

    /// <summary>How much brighter a slope of the sawn surface is for facing the light.</summary>
    private float Shade(double[] heights, Raster raster, int x, int y, double texelsPerMm, Point light)
    {
        var left = heights[y * raster.Width + Math.Max(x - 1, 0)];
        var right = heights[y * raster.Width + Math.Min(x + 1, raster.Width - 1)];
        var above = heights[Math.Max(y - 1, 0) * raster.Width + x];
        var below = heights[Math.Min(y + 1, raster.Height - 1) * raster.Width + x];
        var slope = (light.X * (right - left) + light.Y * (below - above)) * texelsPerMm / 2;
        return (float)Math.Clamp(1 - sawShade * slope, 0.45, 1.7);
    }
}
