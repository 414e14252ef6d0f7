namespace Alburnum.Imaging.Colour;

/// <summary>A colour as brightness and two ratios that keep still when the light on the wood changes its strength.</summary>
/// <param name="L">Natural logarithm of the linear light (mean of the three logarithms).</param>
/// <param name="U">ln(red ⁄ green) in linear light.</param>
/// <param name="V">ln(blue ⁄ green) in linear light.</param>
internal readonly record struct LogColour(float L, float U, float V)
{
    /// <summary>Light, 0 to 1, added before the logarithm, so that noise in the darkest pixels does not become colour. Our own choice.</summary>
    private const double Pedestal = 0.012;

    /// <summary>ln of the linear light of each 8-bit sRGB value.</summary>
    public static readonly float[] LnLinear =
    [
        .. Enumerable.Range(0, 256).Select(v => (float)Math.Log(Linear(v) + Pedestal)),
    ];

    public static LogColour Of(byte r, byte g, byte b)
    {
        var (lr, lg, lb) = (LnLinear[r], LnLinear[g], LnLinear[b]);
        return new((lr + lg + lb) / 3, lr - lg, lb - lg);
    }

    public static LogColour OfHex(int rgb) => Of((byte)(rgb >> 16), (byte)(rgb >> 8), (byte)rgb);

    // IEC 61966-2-1, the sRGB transfer function.
    private static double Linear(int value)
    {
        var c = value / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
    }
}
