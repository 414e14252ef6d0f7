using Alburnum.Measures;
using MathNet.Numerics.Distributions;

namespace Alburnum.Impregnation.Prediction;

/// <summary>Gibbs sampling of a log-normal law of three levels: charge, piece, place.</summary>
/// <remarks>
/// Each unknown is drawn in turn from its distribution given the rest: means from normal, variances from scaled inverse chi-squared
/// distributions, censored depths from their side of the normal curve. Gelman and others, Bayesian Data Analysis, on hierarchical normal
/// models; Tanner and Wong (1987) on drawing what was not seen.
/// </remarks>
internal sealed class PermeabilityChain
{
    // Share of the variance between batches that is our not knowing the median, and the weight of what was believed
    // about each spread, in pieces. Both assumed; a few charges outweigh them.
    private const double NotKnown = 0.75;
    private const double PriorWeight = 4;
    private const double LeastSpread = 0.05;
    private readonly PermeabilityLaw _before;
    private readonly SeededRandom _random;
    private readonly double[] _low;
    private readonly double[] _high;
    private readonly int[] _pieceOf;
    private readonly int[] _chargeOf;
    private readonly double _priorMedian;
    private readonly double _medianVariance;
    private readonly double[] _believed;

    // The state of the chain: logarithms of permeability, and the variances within a piece, between pieces and between charges.
    private readonly double[] _ofDepth;
    private readonly double[] _ofPiece;
    private readonly double[] _ofCharge;
    private readonly double[] _variance;
    private double _median;

    private readonly double[] _sumOfVariances = new double[3];
    private double _sum;
    private double _sumOfSquares;
    private int _kept;

    /// <summary>Starts at what is believed.</summary>
    public PermeabilityChain(PermeabilityLaw before, IReadOnlyList<FitPoint> points, SeededRandom random)
    {
        (_before, _random) = (before, random);
        var pieces = points.Select(point => (point.Charge, point.Piece)).Distinct().ToList();
        var charges = pieces.Select(piece => piece.Charge).Distinct(StringComparer.Ordinal).ToList();
        _pieceOf = Places(points.Select(point => (point.Charge, point.Piece)), pieces);
        _chargeOf = Places(pieces.Select(piece => piece.Charge), charges);
        _low = [.. points.Select(point => Math.Log(point.LeastM2))];
        _high = [.. points.Select(point => Math.Log(point.MostM2))];
        var batch = Math.Max(LeastSpread, before.BatchLnSpread);
        _priorMedian = _median = Math.Log(before.LateralMedianM2);
        _medianVariance = NotKnown * batch * batch;
        _believed =
        [
            Squared(Math.Max(LeastSpread, before.WithinLnSpread)),
            Squared(Math.Max(LeastSpread, before.PieceLnSpread)),
            (1 - NotKnown) * batch * batch,
        ];
        _variance = [.. _believed];
        _ofCharge = [.. Enumerable.Repeat(_median, charges.Count)];
        _ofPiece = [.. Enumerable.Repeat(_median, pieces.Count)];
        _ofDepth = new double[points.Count];
    }

    /// <summary>Charges among the points.</summary>
    public int Charges => _ofCharge.Length;

    /// <summary>Pieces among the points.</summary>
    public int Pieces => _ofPiece.Length;

    /// <summary>Draws every unknown once.</summary>
    /// <param name="isKept">True once the start is forgotten, so that the round counts.</param>
    public void Round(bool isKept)
    {
        for (var i = 0; i < _ofDepth.Length; i++)
            _ofDepth[i] = _low[i] == _high[i] ? _low[i] : DrawBetween(_ofPiece[_pieceOf[i]], _low[i], _high[i]);
        DrawLevel(_ofPiece, (_ofDepth, _pieceOf, _variance[0]), j => _ofCharge[_chargeOf[j]], _variance[1]);
        DrawLevel(_ofCharge, (_ofPiece, _chargeOf, _variance[1]), _ => _median, _variance[2]);
        double[] one = [_median];
        DrawLevel(one, (_ofCharge, new int[Charges], _variance[2]), _ => _priorMedian, _medianVariance);
        _median = one[0];
        _variance[0] = DrawVariance(_believed[0], _ofDepth, i => _ofPiece[_pieceOf[i]]);
        _variance[1] = DrawVariance(_believed[1], _ofPiece, j => _ofCharge[_chargeOf[j]]);
        _variance[2] = DrawVariance(_believed[2], _ofCharge, _ => _median);
        if (!isKept)
            return;
        _kept++;
        _sum += _median;
        _sumOfSquares += _median * _median;
        for (var level = 0; level < 3; level++)
            _sumOfVariances[level] += _variance[level];
    }

    /// <summary>The law by the means of the rounds kept; what stays unsure of the median is counted between batches.</summary>
    public PermeabilityLaw Law()
    {
        var found = _sum / _kept;
        var unsure = Math.Max(0, _sumOfSquares / _kept - found * found);
        var betweenBatches = Math.Sqrt(_sumOfVariances[2] / _kept + unsure);
        if (betweenBatches > PermeabilityLaw.MostLnSpread)
            throw new InputRefusedException(
                new InputProblem(
                    "",
                    0,
                    "",
                    "depth_mm",
                    "depths that lie too far from what this timber is known to take",
                    "depths of this timber under this schedule, in mm; check species, section, schedule and unit"
                )
            );
        return _before with
        {
            FittedCharges = Charges,
            LateralMedianM2 = Math.Exp(found),
            BatchLnSpread = betweenBatches,
            PieceLnSpread = Math.Sqrt(_sumOfVariances[1] / _kept),
            WithinLnSpread = Math.Sqrt(_sumOfVariances[0] / _kept),
        };
    }

    // Draws each value of an upper level given those below it and what lies above.
    private void DrawLevel(
        double[] upper,
        (double[] Values, int[] UpperOf, double Variance) lower,
        Func<int, double> above,
        double upperVariance
    )
    {
        var count = new int[upper.Length];
        var total = new double[upper.Length];
        for (var i = 0; i < lower.Values.Length; i++)
        {
            count[lower.UpperOf[i]]++;
            total[lower.UpperOf[i]] += lower.Values[i];
        }
        for (var j = 0; j < upper.Length; j++)
        {
            var precision = count[j] / lower.Variance + 1 / upperVariance;
            var mean = (total[j] / lower.Variance + above(j) / upperVariance) / precision;
            upper[j] = mean + _random.NextNormal() * Math.Sqrt(1 / precision);
        }
    }

    private double DrawVariance(double believed, double[] values, Func<int, double> about)
    {
        double squares = 0;
        for (var i = 0; i < values.Length; i++)
            squares += Squared(values[i] - about(i));
        return (PriorWeight * believed + squares) / ChiSquared.Sample(_random, PriorWeight + values.Length);
    }

    // A normal draw between two bounds, by the inverse of the distribution; at a bound far out in the tail, the bound.
    private double DrawBetween(double mean, double low, double high)
    {
        var spread = Math.Sqrt(_variance[0]);
        var (a, b) = (Normal.CDF(mean, spread, low), Normal.CDF(mean, spread, high));
        if (b - a < 1e-12)
            return double.IsFinite(low) ? low : high;
        return Normal.InvCDF(mean, spread, Math.Clamp(a + _random.NextDouble() * (b - a), 1e-15, 1 - 1e-15));
    }

    // Where each item stands in a list of different ones.
    private static int[] Places<T>(IEnumerable<T> items, List<T> different)
        where T : notnull
    {
        var at = different.Select((item, i) => (item, i)).ToDictionary(pair => pair.item, pair => pair.i);
        return [.. items.Select(item => at[item])];
    }

    private static double Squared(double value) => value * value;
}
