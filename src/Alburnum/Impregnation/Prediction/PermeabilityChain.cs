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

    // How far a step of a slice may go at first, in logarithms; and how far all charges together try to move at most.
    private const double FactorStep = 0.1;
    private const double Shift = 0.6;
    private const int Shifts = 6;
    private readonly PermeabilityLaw _before;
    private readonly SeededRandom _random;
    private readonly double[] _low;
    private readonly double[] _high;
    private readonly int[] _pieceOf;
    private readonly int[] _chargeOf;
    private readonly double _priorMedian;
    private readonly double _medianVariance;
    private readonly double[] _believed;
    private readonly ChargeEvidence[][] _evidenceOf;
    private readonly bool _hasEvidence;
    private readonly int _wallLaws;

    // The state of the chain: logarithms of permeability, and the variances within a piece, between pieces and between charges.
    private readonly double[] _ofDepth;
    private readonly double[] _ofPiece;
    private readonly double[] _ofCharge;
    private readonly double[] _variance;
    private double _median;

    // Logarithm of what the plant's uptakes are over what the laws of flow assumed would give, and which law the walls follow.
    private double _lnFactor;
    private int _walls;

    private readonly double[] _sumOfSpreads = new double[3];
    private readonly List<DrawnPlant> _plants = [];

    /// <summary>Starts at what is believed.</summary>
    public PermeabilityChain(
        PermeabilityLaw before,
        IReadOnlyList<FitPoint> points,
        IReadOnlyList<ChargeEvidence> evidence,
        SeededRandom random
    )
    {
        (_before, _random) = (before, random);
        var pieces = points.Select(point => (point.Charge, point.Piece)).Distinct().ToList();
        var charges = pieces
            .Select(piece => piece.Charge)
            .Concat(evidence.Select(read => read.Charge))
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
        var readOf = evidence.ToLookup(read => read.Charge, StringComparer.Ordinal);
        _evidenceOf = [.. charges.Select(charge => readOf[charge].ToArray())];
        _hasEvidence = evidence.Count > 0;
        _wallLaws = evidence.Select(read => read.Walls).DefaultIfEmpty(1).Max();
        _walls = _wallLaws / 2;
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
        DrawFactor();
        DrawTogether();
        double[] one = [_median];
        DrawLevel(one, (_ofCharge, new int[Charges], _variance[2]), _ => _priorMedian, _medianVariance);
        _median = one[0];
        _variance[0] = DrawVariance(_believed[0], _ofDepth, i => _ofPiece[_pieceOf[i]]);
        _variance[1] = DrawVariance(_believed[1], _ofPiece, j => _ofCharge[_chargeOf[j]]);
        _variance[2] = DrawVariance(_believed[2], _ofCharge, _ => _median);
        if (!isKept)
            return;
        _plants.Add(new(_median, Math.Sqrt(_variance[2]), _lnFactor, _walls));
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
                    "",
                    "readings that lie too far from what this timber is known to take",
                    "what this timber gives under this schedule: depths in mm, uptakes in L/m³; check species, section, schedule and unit"
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

    // A charge's permeability, by what its pieces say and by what was read of the charge.
    private double DrawCharge(int charge, double mean, double spread)
    {
        if (_evidenceOf[charge].Length == 0)
            return mean + _random.NextNormal() * spread;
        return Slice(
            _ofCharge[charge],
            spread,
            at => LnOf(charge, at, _lnFactor, _walls) - Squared((at - mean) / spread) / 2
        );
    }

    private void DrawFactor()
    {
        if (!_hasEvidence)
            return;
        _lnFactor = Slice(
            _lnFactor,
            FactorStep,
            at => LnOfAll(0, at, _walls) - Squared(at / UptakeCurve.AssumedLaws) / 2
        );
    }

    // Factor, walls and all charges hang together: more permeable wood takes up as much where the factor is smaller, or the walls keep more. They are moved
    // together, and kept or not (Metropolis and Hastings).
    private void DrawTogether()
    {
        if (!_hasEvidence)
            return;
        for (var n = 0; n < Shifts; n++)
        {
            var walls = (int)_random.Below((ulong)_wallLaws);
            var shift = Shift * _random.NextNormal() / (1 << n);
            // Where solution has not met from both sides, uptake goes as the root of the permeability.
            var lnFactor = _lnFactor - (n % 2 == 0 ? 0 : shift / 2);
            var change =
                LnOfAll(shift, lnFactor, walls) - LnOfAll(0, _lnFactor, _walls) + LnOfPieces(shift) - LnOfPieces(0);
            change +=
                (Squared(_median - _priorMedian) - Squared(_median + shift - _priorMedian)) / (2 * _medianVariance)
                + (Squared(_lnFactor) - Squared(lnFactor)) / (2 * Squared(UptakeCurve.AssumedLaws));
            if (Math.Log(_random.NextDouble()) >= change)
                continue;
            (_walls, _lnFactor, _median) = (walls, lnFactor, _median + shift);
            for (var j = 0; j < _ofCharge.Length; j++)
                _ofCharge[j] += shift;
        }
    }

    private double LnOf(int charge, double lnM2, double lnFactor, int walls)
    {
        double sum = 0;
        foreach (var read in _evidenceOf[charge])
            sum += read.LnLikelihood(lnM2, lnFactor, walls);
        return sum;
    }

    private double LnOfAll(double shift, double lnFactor, int walls)
    {
        double sum = 0;
        for (var j = 0; j < _ofCharge.Length; j++)
            sum += LnOf(j, _ofCharge[j] + shift, lnFactor, walls);
        return sum;
    }

    private double LnOfPieces(double shift)
    {
        double sum = 0;
        for (var i = 0; i < _ofPiece.Length; i++)
            sum -= Squared(_ofPiece[i] - _ofCharge[_chargeOf[i]] - shift) / (2 * _variance[1]);
        return sum;
    }

    // One draw that leaves a distribution as it is, from its logarithm alone (Neal 2003, stepping out, from memory).
    private double Slice(double from, double step, Func<double, double> ln)
    {
        var level = ln(from) + Math.Log(1 - _random.NextDouble());
        var low = from - step * _random.NextDouble();
        var high = low + step;
        while (ln(low) > level)
            low -= step;
        while (ln(high) > level)
            high += step;
        while (true)
        {
            var at = low + (high - low) * _random.NextDouble();
            if (ln(at) >= level)
                return at;
            (low, high) = at < from ? (at, high) : (low, at);
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
