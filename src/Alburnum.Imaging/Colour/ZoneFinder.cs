using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Measures;
using Alburnum.Penetration;
using Alburnum.Timber;

namespace Alburnum.Imaging.Colour;

/// <summary>What explains the colours of a section as a whole.</summary>
/// <param name="Indicator">The indicator that suits it best.</param>
/// <param name="Score">How well it explains the photograph: a logarithm, but for a constant.</param>
internal abstract record ZonesFound(Indicator Indicator, double Score);

/// <summary>Two zones with a front between them.</summary>
/// <param name="Indicator">The indicator that suits them best.</param>
/// <param name="Score">How well they explain the photograph: a logarithm, but for a constant.</param>
/// <param name="Zones">Their colours.</param>
/// <param name="RoughRows">A rough front: treated rows of each column of each coarse strip.</param>
internal sealed record TwoZonesFound(Indicator Indicator, double Score, TwoZones Zones, int[][] RoughRows)
    : ZonesFound(Indicator, Score)
{
    /// <summary>Their colours away from the front, by which mixtures of both are read.</summary>
    public TwoZones Pure { get; init; } = Zones;
}

/// <summary>One colour throughout.</summary>
/// <param name="Indicator">The indicator that suits it best.</param>
/// <param name="Score">How well it explains the photograph: a logarithm, but for a constant.</param>
/// <param name="IsTreated">Whether it is that of treated wood; null where bare wood may look like it under another indicator or a reagent for heartwood.</param>
internal sealed record OneZoneFound(Indicator Indicator, double Score, bool? IsTreated) : ZonesFound(Indicator, Score)
{
    /// <summary>Two colours that explain the photograph still better, neither of them that of treated wood beside untreated; null where none do.</summary>
    public TwoZones? Woods { get; init; }
}

/// <summary>Finds treated and untreated wood by trying many beginnings and keeping the one that explains the photograph best.</summary>
/// <remarks>
/// A beginning is either "treated as deep as d all round" or "treated where the colour leans the way this indicator's does".
/// From each, colours and front are found in turn (classification likelihood, the front by <see cref="DepthPath"/>) until they
/// no longer change; the outcome is scored by how much two zones explain over one, and by how well the two means fit a palette.
/// Two colours that bare wood, sapwood outside heartwood, or heartwood under its own reagent explain better than treated wood does are no zones.
/// Its figures are our own choice.
/// </remarks>
internal sealed class ZoneFinder
{
    /// <summary>Depths all round from which a search begins, mm: close where fronts are shallow, wider apart deeper in.</summary>
    private static readonly double[] BeginningsMm = [1.5, 3, 6, 10, 16, 25, 40];

    /// <summary>A beginning deeper than this share of the way in leaves too little untreated wood to compare with.</summary>
    private const double DeepestBeginning = 0.85;

    /// <summary>Colours and front are found in turn at most so often; most settle in two or three.</summary>
    private const int Turns = 5;

    /// <summary>A zone smaller than this share of the section, or larger than all but so much, is no zone.</summary>
    private const double LeastShare = 0.01;

    private const double MostShare = 0.985;

    /// <summary>Samples that a section's many neighbouring, similar ones are worth.</summary>
    private const double EffectiveSamples = 60;

    /// <summary>What a fit to an indicator's palette weighs against the gain of two zones over one.</summary>
    private const double PaletteWeight = 4;

    /// <summary>What a split of mere texture gains: one zone must not be beaten by it.</summary>
    private const double TextureGain = 12;

    /// <summary>Weight of samples below which a zone's colour is not known.</summary>
    private const double LeastWeight = 20;

    /// <summary>Squared distance, three standard deviations, beyond which a sample is a stray.</summary>
    private const double StrayDistance2 = 9;

    /// <summary>Rows of samples to either side of the rough front that may be a mixture of both zones.</summary>
    private const int RowsBeside = 1;

    /// <summary>One sample speaks for or against at most so much, as a logarithm.</summary>
    private const float MostEvidence = 3;

    /// <summary>A front steeper than this share of the step along the face costs, and what it costs.</summary>
    private const double FreeSlope = 0.6;

    private const float SlopePrice = 3;

    /// <summary>Variance of brightness added within an indicator's palette: light differs between photographs.</summary>
    private const double LightVariance = 0.3;

    /// <summary>Columns with less way than this say nothing of how even a front is, mm.</summary>
    private const double LeastWayMm = 3;

    /// <summary>Added to the median depth, mm, lest shallow fronts count as uneven for a hair.</summary>
    private const double EvenMm = 2;

    /// <summary>What a front as uneven as it is deep costs.</summary>
    private const double UnevennessCost = 25;

    /// <summary>Standard deviation of ln(brightness) from shadows and glare.</summary>
    private const double PatchyLight = 0.2;

    /// <summary>Logarithm of the likelihood ratio from which one colour throughout is taken to be that of treated wood.</summary>
    private const double SurelyTreated = 1;

    /// <summary>The same from which two colours are not those of heartwood and sapwood under a reagent for heartwood.</summary>
    private const double SurelyNoHeartwood = 5;

    private readonly WoodSamples _samples;
    private readonly IReadOnlyList<IndicatorPrior> _priors;
    private readonly HeartwoodPrior? _heartwood;
    private readonly int[] _offset;
    private readonly HashSet<int> _seen = [];
    private readonly double[] _all;
    private readonly double[] _allMean;
    private readonly IlluminationFit _lights;

    /// <summary>Two colours found.</summary>
    /// <param name="Zones">They as two zones.</param>
    /// <param name="IsReaction">Whether treated wood beside untreated explains them better than bare wood does.</param>
    private sealed record ColoursFound(TwoZonesFound Zones, bool IsReaction);

    /// <summary>Why a beginning leads to no zones of its own.</summary>
    private enum Abandoned
    {
        /// <summary>A zone is too small for its colour to be known.</summary>
        ZoneTooSmall,

        /// <summary>Another beginning has been here: from now on both take the same way.</summary>
        SeenBefore,
    }

    /// <param name="samples">Colours of the section.</param>
    /// <param name="candidates">Indicators that may have been sprayed.</param>
    /// <param name="reagent">A reagent for heartwood that was sprayed; null where none was.</param>
    public ZoneFinder(WoodSamples samples, IReadOnlyList<Indicator> candidates, HeartwoodReagent? reagent)
    {
        _samples = samples;
        _heartwood = reagent is null ? null : new(reagent);
        _lights = new(samples);
        _priors = [.. candidates.Select(c => new IndicatorPrior(c))];
        _offset = new int[samples.Strips.Count];
        var n = 0;
        for (var f = 0; f < _offset.Length; f++)
        {
            _offset[f] = n;
            n += samples.Strips[f].ReachRows.Sum();
        }
        var one = new float[samples.Count];
        Array.Fill(one, 1f);
        var (mean, covariance, _) = Moments(one, Illumination.Even);
        (_allMean, _all) = (mean, covariance);
    }

    public ZonesFound Find(CancellationToken ct)
    {
        var found = new List<ColoursFound>();
        var reach = _samples.Strips.Max(s => s.Rows * s.RowMm);
        foreach (var depth in BeginningsMm)
        {
            ct.ThrowIfCancellationRequested();
            if (depth < DeepestBeginning * reach)
                Consider(n => _samples.DepthMm[n] < depth, found);
        }
        foreach (var prior in _priors)
        {
            ct.ThrowIfCancellationRequested();
            var (w, middle) = Lean(prior);
            Consider(n => (w[0] * _samples.L[n]) + (w[1] * _samples.U[n]) + (w[2] * _samples.V[n]) > middle, found);
        }
        var one = OneZone();
        var best = found.Where(pair => pair.IsReaction).MaxBy(pair => pair.Zones.Score)?.Zones;
        if (best?.Score > one.Score)
            return AwayFromFront(best).Has(out var pure, out _) ? best with { Pure = pure } : best;
        return one with
        {
            Woods = found
                .Select(pair => pair.Zones)
                .Where(zones => zones.Score > one.Score)
                .MaxBy(zones => zones.Score)
                ?.Zones,
        };
    }

    // A sample beside the front is a mixture of both zones: there are too many of them, and too much alike, to be told from their colours.
    private Outcome<TwoZones, Abandoned> AwayFromFront(TwoZonesFound found)
    {
        var treated = new float[_samples.Count];
        var untreated = new float[_samples.Count];
        for (var f = 0; f < _offset.Length; f++)
        {
            var strip = _samples.Strips[f];
            var n = _offset[f];
            for (var i = 0; i < strip.Columns; i++)
            {
                var front = found.RoughRows[f][i];
                for (var j = 0; j < strip.ReachRows[i]; j++, n++)
                    if (j < front - RowsBeside)
                        treated[n] = 1;
                    else if (j >= front + RowsBeside)
                        untreated[n] = 1;
            }
        }
        return Bells(treated, untreated, found.Zones.Light).Then(zones => WithoutStrays(treated, untreated, zones));
    }

    // The direction of an indicator's colour change, and the value along it that best parts the samples in two.
    private (double[] W, double Middle) Lean(IndicatorPrior prior)
    {
        var d = prior.Difference;
        var v = prior.DifferenceVariance;
        double[] w = [d[0] / (v[0] + LightVariance), d[1] / v[1], d[2] / v[2]];
        var values = new double[_samples.Count];
        for (var n = 0; n < values.Length; n++)
            values[n] = (w[0] * _samples.L[n]) + (w[1] * _samples.U[n]) + (w[2] * _samples.V[n]);
        return (w, Otsu.Threshold(values, _samples.Weight));
    }

    private void Consider(Func<int, bool> isTreated, List<ColoursFound> found)
    {
        var treated = new float[_samples.Count];
        for (var n = 0; n < treated.Length; n++)
            treated[n] =
                _samples.Treated[n] != 0 ? (_samples.Treated[n] > 0 ? 1 : 0)
                : isTreated(n) ? 1
                : 0;
        if (Settle(treated).Has(out var settled, out _))
            found.AddRange(Scored(settled.Zones, settled.RoughRows, treated));
    }

    // Colours and front in turn, until they no longer change.
    private Outcome<(TwoZones Zones, int[][] RoughRows), Abandoned> Settle(float[] treated)
    {
        var own = new List<int>();
        for (var turn = 1; ; turn++)
        {
            if (!Fit(treated).Has(out var zones, out var abandoned))
                return abandoned;
            var rows = Front(zones, treated);
            var fingerprint = Fingerprint(rows);
            if (own.Contains(fingerprint))
                return (zones, rows);
            if (!_seen.Add(fingerprint))
                return Abandoned.SeenBefore;
            if (turn == Turns)
                return (zones, rows);
            own.Add(fingerprint);
        }
    }

    private IEnumerable<ColoursFound> Scored(TwoZones zones, int[][] rows, float[] treated)
    {
        var t = Moments(treated, zones.Light);
        Invert(treated);
        var u = Moments(treated, zones.Light);
        Invert(treated);
        var share = t.Weight / (t.Weight + u.Weight);
        if (share is < LeastShare or > MostShare)
            yield break;
        var one = new Gaussian3(_allMean, _all);
        var gain =
            0.5
            * EffectiveSamples
            * (
                one.LogDeterminant
                - (share * new Gaussian3(t.Mean, t.Covariance).LogDeterminant)
                - ((1 - share) * new Gaussian3(u.Mean, u.Covariance).LogDeterminant)
            );
        gain -= UnevennessCost * Unevenness(rows);
        var heartwood = _heartwood?.LogFit(t.Mean, u.Mean) ?? double.MinValue;
        foreach (var prior in _priors)
        {
            var fit = prior.LogFit(t.Mean, u.Mean);
            var isReaction = fit > prior.LogFitBare(t.Mean, u.Mean) && fit > heartwood + SurelyNoHeartwood;
            yield return new(new(prior.Indicator, gain + (PaletteWeight * fit), zones, rows), isReaction);
        }
    }

    private static int Fingerprint(int[][] rows)
    {
        var hash = new HashCode();
        foreach (var face in rows)
        foreach (var row in face)
            hash.Add(row);
        return hash.ToHashCode();
    }

    // Liquid enters all faces alike, more or less: mean departure from the median depth, as a share of it.
    private double Unevenness(int[][] rows)
    {
        var depths = new List<double>();
        for (var f = 0; f < rows.Length; f++)
        {
            var strip = _samples.Strips[f];
            for (var i = 0; i < strip.Columns; i++)
                if (strip.ReachRows[i] * strip.RowMm > LeastWayMm)
                    depths.Add(Math.Min(rows[f][i], strip.ReachRows[i]) * strip.RowMm);
        }
        if (depths.Count == 0)
            return 0;
        var median = Quantiles.UpperMedian(depths);
        return depths.Average(d => Math.Abs(d - median)) / (median + EvenMm);
    }

    // The one colour that explains the section best.
    private OneZoneFound OneZone()
    {
        var fits = _priors
            .Select(prior =>
                (
                    prior.Indicator,
                    Treated: prior.LogFit(_allMean, isTreated: true),
                    Bare: prior.LogFit(_allMean, isTreated: false)
                )
            )
            .ToList();
        var (indicator, treated, bare) = fits.MaxBy(fit => Math.Max(fit.Treated, fit.Bare));
        var anyBare = Math.Max(fits.Max(fit => fit.Bare), _heartwood?.LogFit(_allMean) ?? double.MinValue);
        return new(
            indicator,
            TextureGain + (PaletteWeight * Math.Max(treated, bare)),
            treated <= bare + SurelyTreated ? false
                : treated <= anyBare + SurelyTreated ? null
                : true
        );
    }

    private static void Invert(float[] share)
    {
        for (var n = 0; n < share.Length; n++)
            share[n] = 1 - share[n];
    }

    private int[][] Front(TwoZones zones, float[] treated)
    {
        var rows = new int[_samples.Strips.Count][];
        for (var f = 0; f < rows.Length; f++)
        {
            var strip = _samples.Strips[f];
            var evidence = new float[strip.Columns * strip.Rows];
            var n = _offset[f];
            for (var i = 0; i < strip.Columns; i++)
            {
                for (var j = 0; j < strip.ReachRows[i]; j++, n++)
                {
                    var l = _samples.L[n] - zones.Light.At(_samples.X[n], _samples.Y[n]);
                    var e =
                        _samples.Weight[n] == 0
                            ? 0
                            : Math.Clamp(zones.Evidence(l, _samples.U[n], _samples.V[n]), -MostEvidence, MostEvidence);
                    if (_samples.Treated[n] != 0)
                        e = TwoZones.HandEvidence * _samples.Treated[n];
                    evidence[(i * strip.Rows) + j] = e;
                }
            }
            var free = Math.Max(1, (int)Math.Round(FreeSlope * strip.StepMm / strip.RowMm));
            rows[f] = DepthPath.Find(
                evidence,
                strip.Rows,
                strip.ReachRows,
                strip.Face.Closed,
                new SlopeCost(free, SlopePrice)
            );
            n = _offset[f];
            for (var i = 0; i < strip.Columns; i++)
            for (var j = 0; j < strip.ReachRows[i]; j++, n++)
                treated[n] = j < rows[f][i] ? 1 : 0;
        }
        return rows;
    }

    /// <summary>One bell a zone and the fall-off of the light, from a rough division; strays are set aside in a second pass.</summary>
    private Outcome<TwoZones, Abandoned> Fit(float[] treated)
    {
        var untreated = (float[])treated.Clone();
        Invert(untreated);
        return Bells(treated, untreated, _lights.Of(treated)).Then(zones => WithoutStrays(treated, untreated, zones));
    }

    private Outcome<TwoZones, Abandoned> WithoutStrays(float[] treated, float[] untreated, TwoZones zones)
    {
        var kept = new float[_samples.Count];
        var left = new float[_samples.Count];
        for (var n = 0; n < kept.Length; n++)
        {
            if (!(treated[n] + untreated[n] > 0))
                continue;
            var own = treated[n] > 0.5 ? zones.Treated[0] : zones.Untreated[0];
            var l = _samples.L[n] - zones.Light.At(_samples.X[n], _samples.Y[n]);
            if (own.Distance2(l, _samples.U[n], _samples.V[n]) < StrayDistance2)
                (treated[n] > 0.5 ? kept : left)[n] = 1;
        }
        return Bells(kept, left, zones.Light);
    }

    private Outcome<TwoZones, Abandoned> Bells(float[] treated, float[] untreated, Illumination light)
    {
        var t = Moments(treated, light);
        var u = Moments(untreated, light);
        if (t.Weight < LeastWeight || u.Weight < LeastWeight)
            return Abandoned.ZoneTooSmall;
        return new TwoZones([new(t.Mean, t.Covariance)], [new(u.Mean, u.Covariance)], light);
    }

    private (double[] Mean, double[] Covariance, double Weight) Moments(float[] share, Illumination light)
    {
        double w = 0;
        var m = new double[3];
        var c = new double[6];
        for (var n = 0; n < share.Length; n++)
        {
            double k = share[n] * _samples.Weight[n];
            if (k == 0)
                continue;
            double l = _samples.L[n] - light.At(_samples.X[n], _samples.Y[n]);
            double u = _samples.U[n];
            double v = _samples.V[n];
            w += k;
            m[0] += k * l;
            m[1] += k * u;
            m[2] += k * v;
            c[0] += k * l * l;
            c[1] += k * l * u;
            c[2] += k * l * v;
            c[3] += k * u * u;
            c[4] += k * u * v;
            c[5] += k * v * v;
        }
        if (w == 0)
            return (m, c, 0);
        for (var i = 0; i < 3; i++)
            m[i] /= w;
        var index = 0;
        // Shadows and glare change brightness in patches that no smooth fall-off follows.
        c[0] += PatchyLight * PatchyLight * w;
        for (var i = 0; i < 3; i++)
        for (var j = i; j < 3; j++, index++)
            c[index] = (c[index] / w) - (m[i] * m[j]);
        return (m, c, w);
    }
}
