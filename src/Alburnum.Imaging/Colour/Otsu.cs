namespace Alburnum.Imaging.Colour;

/// <summary>The value that parts weighted numbers in two groups with most variance between them (Otsu 1979).</summary>
internal static class Otsu
{
    /// <summary>Steps between the least and the greatest value. Our own choice.</summary>
    private const int Bins = 128;

    public static double Threshold(double[] values, float[] weights)
    {
        var low = double.MaxValue;
        var high = double.MinValue;
        for (var n = 0; n < values.Length; n++)
        {
            if (weights[n] == 0)
                continue;
            low = Math.Min(low, values[n]);
            high = Math.Max(high, values[n]);
        }
        if (!(high > low))
            return high;
        var mass = new double[Bins];
        for (var n = 0; n < values.Length; n++)
            if (weights[n] > 0)
                mass[Math.Min(Bins - 1, (int)((values[n] - low) / (high - low) * Bins))] += weights[n];
        double total = 0;
        double sum = 0;
        for (var b = 0; b < Bins; b++)
            (total, sum) = (total + mass[b], sum + (b * mass[b]));
        double below = 0;
        double belowSum = 0;
        double best = -1;
        var at = Bins / 2;
        for (var b = 0; b < Bins - 1; b++)
        {
            below += mass[b];
            belowSum += b * mass[b];
            if (below == 0 || below == total)
                continue;
            var apart = (belowSum / below) - ((sum - belowSum) / (total - below));
            var between = below * (total - below) * apart * apart;
            if (between > best)
                (best, at) = (between, b);
        }
        return low + ((at + 1.0) / Bins * (high - low));
    }
}
