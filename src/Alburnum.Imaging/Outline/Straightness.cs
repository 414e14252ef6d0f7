using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Outline;

/// <summary>How straight one side is once a lens is undone, and how that changes with the lens's bow.</summary>
/// <param name="Along">Weighted product of the departures from a straight line and their change with the bow, px².</param>
/// <param name="Length">Weighted square of that change, px².</param>
/// <param name="MeanSquare">The same, mean over the points.</param>
/// <param name="Sagitta">Weighted product of that change and a bow of one pixel in the middle, px².</param>
/// <param name="ScatterPx">Standard deviation of the points about the line.</param>
/// <param name="LengthPx">Length of the side.</param>
internal readonly record struct Straightness(
    double Along,
    double Length,
    double MeanSquare,
    double Sagitta,
    double ScatterPx,
    double LengthPx
)
{
    /// <summary>Stretches of a side that stray each by itself are no fewer than this, however short it is. Our own choice.</summary>
    private const double LeastIndependent = 3;

    /// <summary>Departures under two lenses whose bows differ a little.</summary>
    public static Straightness Of(BowedSide side, RadialLens lens, RadialLens other, double apart)
    {
        var (line, next) = (StraightLine.Through(side, lens), StraightLine.Through(side, other));
        var n = side.Points.Length;
        // A line's direction may come out either way round.
        var turn = (line.Dx * next.Dx) + (line.Dy * next.Dy) < 0 ? -1 : 1;
        double along = 0,
            length = 0,
            sagitta = 0,
            square = 0,
            weight = 0;
        var (first, last) = (side.Points[0], side.Points[n - 1]);
        var half = line.At.DistanceTo(lens.Straight(first)) + line.At.DistanceTo(lens.Straight(last));
        half /= 2;
        for (var i = 0; i < n; i++)
        {
            var w = side.Weights[i];
            var here = lens.Straight(side.Points[i]);
            var off = line.Off(here);
            var change = ((turn * next.Off(other.Straight(side.Points[i]))) - off) / apart;
            var u = line.Along(here) / half;
            along += w * change * off;
            length += w * change * change;
            sagitta += w * change * (1 - (u * u));
            square += w * off * off;
            weight += w;
        }
        return new(along, length, length / weight, sagitta, Math.Sqrt(square / weight), 2 * half);
    }

    /// <summary>Standard uncertainty of the line's place, px.</summary>
    public double PlaceUncertaintyPx => SideLine.UncertaintyPx(ScatterPx);

    /// <summary>Variance of the bow as this side alone would give it.</summary>
    /// <param name="ownBowPx">Standard deviation of the wood's own bow in the middle of the side.</param>
    /// <param name="wanderPx">Length over which points stray together.</param>
    public double BowVariance(double ownBowPx, double wanderPx)
    {
        var bow = Sagitta * ownBowPx / Length;
        var independent = Math.Max(LeastIndependent, LengthPx / wanderPx);
        return (bow * bow) + (ScatterPx * ScatterPx / (MeanSquare * independent));
    }
}
