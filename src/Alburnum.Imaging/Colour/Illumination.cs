namespace Alburnum.Imaging.Colour;

/// <summary>How the light falls off over the section: a quadratic in place, in logarithmic brightness.</summary>
/// <param name="X">Coefficient of x.</param>
/// <param name="Y">Coefficient of y.</param>
/// <param name="XX">Coefficient of x².</param>
/// <param name="XY">Coefficient of x·y.</param>
/// <param name="YY">Coefficient of y².</param>
internal readonly record struct Illumination(float X, float Y, float XX, float XY, float YY)
{
    /// <summary>The same light everywhere.</summary>
    public static Illumination Even { get; } = new(0, 0, 0, 0, 0);

    public float At(float x, float y) => (X * x) + (Y * y) + (XX * x * x) + (XY * x * y) + (YY * y * y);
}
