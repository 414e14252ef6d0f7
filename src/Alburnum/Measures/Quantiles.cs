using MathNet.Numerics.Statistics;

namespace Alburnum.Measures;

/// <summary>Values below which a share of a sample lies.</summary>
public static class Quantiles
{
    /// <summary>
    /// The value below which a share of the sample lies: linear interpolation between order statistics (type 7 of Hyndman and Fan, The American
    /// Statistician 50, 1996). In depths by ruler, by photograph and by prediction alike.
    /// </summary>
    /// <param name="sorted">Values in rising order. At least one.</param>
    /// <param name="share">0 to 1.</param>
    public static double Of(double[] sorted, double share) =>
        SortedArrayStatistics.QuantileCustom(sorted, share, QuantileDefinition.R7);

    /// <summary>The middle value; of the two middle ones of an even number, the upper.</summary>
    /// <param name="values">Values in any order. At least one.</param>
    /// <remarks>
    /// Always one of the values, where <see cref="Of"/> would lie between two. It steers how a photograph is looked at and is never reported: the limits
    /// held against it were set with it.
    /// </remarks>
    public static double UpperMedian(IEnumerable<double> values)
    {
        double[] sorted = [.. values];
        Array.Sort(sorted);
        return sorted[sorted.Length / 2];
    }
}
