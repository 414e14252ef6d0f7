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

    // Over which difference of logarithms the slope of an uptake's curve is taken.
    private const double SlopeOver = 0.25;
    private readonly PermeabilityLaw _before;
    private readonly SeededRandom _random;
    private readonly double[] _low;
    private readonly double[] _high;
    private readonly int[] _pieceOf;
    private readonly int[] _chargeOf;
    private readonly double _priorMedian;
    private readonly double _medianVariance;
    private readonly double[] _believed;
    private readonly IReadOnlyList<PlantUptake> _uptakes;
    private readonly PlantUptake?[] _uptakeOf;

    // The state of the chain: logarithms of permeability, and the variances within a piece, between pieces and between charges.
    private readonly double[] _ofDepth;
    private readonly double[] _ofPiece;
    private readonly double[] _ofCharge;
    private readonly double[] _variance;
    private double _median;

    // Logarithm of what the plant's uptakes are over what the laws of flow assumed would give.
    private double _uptakeBias;

    private readonly double[] _sumOfSpreads = new double[3];
    private readonly List<DrawnPlant> _plants = [];

    /// <summary>Starts at what is believed.</summary>
    public PermeabilityChain(
        PermeabilityLaw before,
        IReadOnlyList<FitPoint> points,
        IReadOnlyList<PlantUptake> uptakes,
        SeededRandom random
    )
    {
        (_before, _uptakes, _random) = (before, uptakes, random);
        var pieces = points.Select(point => (point.Charge, point.Piece)).Distinct().ToList();
        var charges = pieces
            .Select(piece => piece.Charge)
            .Concat(uptakes.Select(uptake => uptake.Charge))
            .Distinct(StringComparer.Ordinal)
            .ToList();
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
        _uptakeOf = new PlantUptake?[charges.Count];
        foreach (var uptake in uptakes)
            _uptakeOf[charges.IndexOf(uptake.Charge)] = uptake;
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
        DrawLevel(_ofCharge, (_ofPiece, _chargeOf, _variance[1]), _ => _median, _variance[2], DrawCharge);
        DrawBias();
        double[] one = [_median];
        DrawLevel(one, (_ofCharge, new int[Charges], _variance[2]), _ => _priorMedian, _medianVariance);
        _median = one[0];
        _variance[0] = DrawVariance(_believed[0], _ofDepth, i => _ofPiece[_pieceOf[i]]);
        _variance[1] = DrawVariance(_believed[1], _ofPiece, j => _ofCharge[_chargeOf[j]]);
        _variance[2] = DrawVariance(_believed[2], _ofCharge, _ => _median);
        if (!isKept)
            return;
        _plants.Add(new(_median, Math.Sqrt(_variance[2]), _uptakeBias));
        for (var level = 0; level < 3; level++)
            _sumOfSpreads[level] += Math.Sqrt(_variance[level]);
    }

    /// <summary>What each round kept takes for true of the plant.</summary>
    public IReadOnlyList<DrawnPlant> Plants => _plants;

    /// <summary>Logarithm of the median, m², over the rounds kept.</summary>
    public Estimate LnMedian
    {
        get
        {
            var mean = _plants.Average(plant => plant.LnMedianM2);
            return new(mean, Math.Sqrt(_plants.Average(plant => Squared(plant.LnMedianM2 - mean))));
        }
    }

    /// <summary>The law by the means of the rounds kept; what stays unsure of the median is counted between batches.</summary>
    public PermeabilityLaw Law()
    {
        var median = LnMedian;
        // Means of standard deviations, not of variances: a few pieces leave a long tail, and filled ones set no upper bound.
        double Spread(int level) => _sumOfSpreads[level] / _plants.Count;
        var (within, piece) = (Spread(0), Spread(1));
        var batch = double.Hypot(Spread(2), median.StandardUncertainty);
        if (Math.Max(batch, Math.Max(piece, within)) > PermeabilityLaw.MostLnSpread)
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
            LateralMedianM2 = Math.Exp(median.Value),
            BatchLnSpread = batch,
            PieceLnSpread = piece,
            WithinLnSpread = within,
        };
    }

    // Draws each value of an upper level given those below it and what lies above.
    private void DrawLevel(
        double[] upper,
        (double[] Values, int[] UpperOf, double Variance) lower,
        Func<int, double> above,
        double upperVariance,
        Func<int, double, double, double>? draw = null
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
            var spread = Math.Sqrt(1 / precision);
            upper[j] = draw is null ? mean + _random.NextNormal() * spread : draw(j, mean, spread);
        }
    }

    // A charge's permeability, by what its pieces say and by its uptake: a normal draw with the uptake's curve taken as straight where the
    // charge stands, kept or not by what the curve is (Metropolis and Hastings).
    private double DrawCharge(int charge, double mean, double spread)
    {
        if (_uptakeOf[charge] is not { } uptake)
            return mean + _random.NextNormal() * spread;
        var measured = Math.Log(uptake.LPerM3) - _uptakeBias;
        var here = _ofCharge[charge];
        var from = Straight(here);
        var there = from.Mean + from.Spread * _random.NextNormal();
        var to = Straight(there);
        var change =
            Ln(there, to) - Ln(here, from) + Squared((there - from.Mean) / from.Spread) / 2 + Math.Log(from.Spread);
        change -= Squared((here - to.Mean) / to.Spread) / 2 + Math.Log(to.Spread);
        return Math.Log(_random.NextDouble()) < change ? there : here;

        (double Mean, double Spread, double Ln, double Variance) Straight(double at)
        {
            var (ln, variance) = uptake.Curve.At(at);
            var slope = (uptake.Curve.At(at + SlopeOver).Ln - ln) / SlopeOver;
            var precision = 1 / Squared(spread) + slope * slope / variance;
            return (
                (mean / Squared(spread) + slope * (measured - ln + slope * at) / variance) / precision,
                Math.Sqrt(1 / precision),
                ln,
                variance
            );
        }

        double Ln(double at, (double Mean, double Spread, double Ln, double Variance) straight) =>
            -(
                Squared((at - mean) / spread)
                + Squared(measured - straight.Ln) / straight.Variance
                + Math.Log(straight.Variance)
            ) / 2;
    }

    private void DrawBias()
    {
        if (_uptakes.Count == 0)
            return;
        double precision = 1 / Squared(UptakeCurve.AssumedLaws),
            total = 0;
        for (var j = 0; j < _ofCharge.Length; j++)
        {
            if (_uptakeOf[j] is not { } uptake)
                continue;
            var (ln, variance) = uptake.Curve.At(_ofCharge[j]);
            precision += 1 / variance;
            total += (Math.Log(uptake.LPerM3) - ln) / variance;
        }
        _uptakeBias = total / precision + _random.NextNormal() / Math.Sqrt(precision);
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
