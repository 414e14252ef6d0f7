using Alburnum.Requirements;

namespace Alburnum.Impregnation.Prediction;

/// <summary>Gathers drawn pieces, batch by batch, and says how they spread.</summary>
internal sealed class DrawnPieces
{
    private readonly IReadOnlyList<SectionPosition> _places;
    private readonly DepthRule _rule;
    private readonly int _inBatch;
    private readonly double[][] _depths;
    private readonly double[] _least;
    private readonly double[] _border;
    private readonly double[] _mean;
    private readonly double[] _uptake;
    private readonly double[] _kept;
    private readonly double[] _zone;
    private readonly int[] _conforming;
    private readonly double[] _cores;
    private readonly double _breadthMm;
    private int _count;

    /// <summary>None yet.</summary>
    /// <param name="places">Places around the section.</param>
    /// <param name="rule">Required depth.</param>
    /// <param name="batches">Batches to be drawn.</param>
    /// <param name="inBatch">Pieces in each.</param>
    public DrawnPieces(IReadOnlyList<SectionPosition> places, DepthRule rule, int batches, int inBatch)
    {
        (_places, _rule, _inBatch) = (places, rule, inBatch);
        var pieces = batches * inBatch;
        _depths = [.. places.Select(_ => new double[pieces])];
        (_least, _border, _mean, _uptake, _kept, _zone) = (
            new double[pieces],
            new double[pieces],
            new double[pieces],
            new double[pieces],
            new double[pieces],
            new double[pieces]
        );
        (_conforming, _cores) = (new int[batches], new double[batches]);
        _breadthMm = places.Sum(place => place.Own.BreadthMm);
    }

    /// <summary>Adds a piece.</summary>
    /// <param name="batch">Its batch, from 0.</param>
    /// <param name="piece">The piece; read, not kept.</param>
    public void Add(int batch, DrawnPiece piece)
    {
        for (var i = 0; i < _places.Count; i++)
        {
            _depths[i][_count] = piece.CoreMm[i];
            if (DepthAt.MeetsAt(_rule, _places[i], piece.CoreMm[i]))
                // A core is taken anywhere: the longer face gets more of them.
                _cores[batch] += _places[i].Own.BreadthMm / _breadthMm;
        }
        if (DepthAt.Meets(_rule, _places, piece.BorderMm))
            _conforming[batch]++;
        _least[_count] = piece.LeastMm;
        _border[_count] = piece.MeanBorderMm;
        _mean[_count] = piece.MeanMm;
        _uptake[_count] = piece.UptakeLPerM3;
        _kept[_count] = piece.KeptLPerM3;
        _zone[_count] = piece.ZoneLPerM3;
        _count++;
    }

    /// <summary>What was drawn.</summary>
    public QuickPrediction Summary()
    {
        double[] coreShares = [.. _cores.Select(cores => Math.Min(1, cores / _inBatch)).Order()];
        return new QuickPrediction
        {
            Pieces = _count,
            Places = _places,
            DepthMm = [.. _depths.Select(Spread.Of)],
            LeastMm = Spread.Of(_least),
            BorderMm = Spread.Of(_border),
            MeanMm = Spread.Of(_mean),
            UptakeLPerM3 = Spread.Of(_uptake),
            KeptLPerM3 = Spread.Of(_kept),
            ZoneLPerM3 = Spread.Of(_zone),
            PieceShare = Over([.. _conforming.Select(conforming => (double)conforming / _inBatch)]),
            CoreShare = Over(coreShares),
            BatchShares = coreShares,
        };
    }

    private static Estimate Over(double[] shares)
    {
        var mean = shares.Average();
        return new(mean, Math.Sqrt(shares.Average(share => (share - mean) * (share - mean))));
    }
}
