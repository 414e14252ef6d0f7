using System.Globalization;

namespace Alburnum.DrawnSections;

/// <summary>Light or reflectance in linear sRGB.</summary>
public readonly record struct Colour(float Red, float Green, float Blue)
{
    public static readonly Colour White = new(1, 1, 1);

    public float Luminance => 0.2126f * Red + 0.7152f * Green + 0.0722f * Blue;

    /// <summary>A colour written as a web colour, for instance "#E3C08E".</summary>
    public static Colour Of(string hex)
    {
        var bits = int.Parse(hex.AsSpan(1), NumberStyles.HexNumber, CultureInfo.InvariantCulture);
        return new(Linear(bits >> 16 & 255), Linear(bits >> 8 & 255), Linear(bits & 255));
    }

    public static Colour operator *(Colour a, float k) => new(a.Red * k, a.Green * k, a.Blue * k);

    public static Colour operator *(Colour a, Colour b) => new(a.Red * b.Red, a.Green * b.Green, a.Blue * b.Blue);

    public static Colour operator +(Colour a, Colour b) => new(a.Red + b.Red, a.Green + b.Green, a.Blue + b.Blue);

    /// <summary>This colour, <paramref name="share"/> of the way to another.</summary>
    public Colour Towards(Colour other, float share) =>
        new(Red + share * (other.Red - Red), Green + share * (other.Green - Green), Blue + share * (other.Blue - Blue));

    /// <summary>What is left after passing a film: each channel times e to the minus amount × absorbance.</summary>
    public Colour Through(Colour absorbance, float amount) =>
        new(
            Red * MathF.Exp(-amount * absorbance.Red),
            Green * MathF.Exp(-amount * absorbance.Green),
            Blue * MathF.Exp(-amount * absorbance.Blue)
        );

    /// <summary>Linear light of an sRGB code, 0 to 255.</summary>
    public static float Linear(int code) => Decoded[code];

    private static readonly float[] Decoded =
    [
        .. Enumerable
            .Range(0, 256)
            .Select(code => code / 255f)
            .Select(v => v <= 0.04045f ? v / 12.92f : MathF.Pow((v + 0.055f) / 1.055f, 2.4f)),
    ];
}
