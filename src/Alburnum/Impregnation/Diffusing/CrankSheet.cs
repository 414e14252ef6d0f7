namespace Alburnum.Impregnation.Diffusing;

/// <summary>Diffusion into a sheet from both faces, held at a constant concentration (Crank 1975, chapter 4).</summary>
/// <remarks>The time number is D·t/a², a half the thickness. Series that converge everywhere; the erfc form where time is short.</remarks>
internal static class CrankSheet
{
    private const int Terms = 200;

    /// <summary>Share of the final uptake, 0 to 1.</summary>
    /// <param name="timeNumber">D·t/a². 0 or more.</param>
    public static double Uptake(double timeNumber)
    {
        Require.InRange(timeNumber, 0, double.MaxValue, "");
        if (timeNumber < 1e-3)
            return 2 * Math.Sqrt(timeNumber / Math.PI);
        double sum = 0;
        for (var n = 0; n < Terms; n++)
        {
            var odd = 2 * n + 1;
            var term = Math.Exp(-odd * odd * Math.PI * Math.PI * timeNumber / 4) / (odd * (double)odd);
            sum += term;
            if (term < 1e-18)
                break;
        }
        return 1 - 8 / (Math.PI * Math.PI) * sum;
    }

    /// <summary>Time number at which a share of the final uptake is reached.</summary>
    /// <param name="share">0 to just below 1.</param>
    public static double TimeNumber(double share)
    {
        Require.InRange(share, 0, 1 - 1e-12, "(share)");
        double low = 0,
            high = 20;
        for (var i = 0; i < 200 && high - low > 1e-15; i++)
        {
            var middle = (low + high) / 2;
            if (Uptake(middle) < share)
                low = middle;
            else
                high = middle;
        }
        return (low + high) / 2;
    }
}
