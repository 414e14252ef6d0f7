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
        .. Enumerable.Range(0, 256).Select(v => (float)Math.Log(LinearOf(v) + Pedestal)),
    ];

    public static LogColour Of(byte r, byte g, byte b)
    {
        var (lr, lg, lb) = (LnLinear[r], LnLinear[g], LnLinear[b]);
        return new((lr + lg + lb) / 3, lr - lg, lb - lg);
    }

    /// <summary>A colour from its linear light, 0 to 1 a channel.</summary>
    public static LogColour OfLinear(double r, double g, double b)
    {
        var (lr, lg, lb) = (Math.Log(r + Pedestal), Math.Log(g + Pedestal), Math.Log(b + Pedestal));
        return new((float)((lr + lg + lb) / 3), (float)(lr - lg), (float)(lb - lg));
    }

    /// <summary>Its linear light; a little below 0 where it is as good as none.</summary>
    public (double R, double G, double B) Linear
    {
        get
        {
            var green = L - ((U + V) / 3);
            return (Math.Exp(green + U) - Pedestal, Math.Exp(green) - Pedestal, Math.Exp(green + V) - Pedestal);
        }
    }

    public static LogColour OfHex(int rgb) => Of((byte)(rgb >> 16), (byte)(rgb >> 8), (byte)rgb);

    // IEC 61966-2-1, the sRGB transfer function.
    private static double LinearOf(int value)
    {
        var c = value / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
    }
}
