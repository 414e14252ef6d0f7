using Alburnum.Penetration;
using MathNet.Numerics.Distributions;

namespace Alburnum.Acceptance.Variables;

/// <summary>What is asked of a measure: a share of all pieces must reach a limit, and this must be shown with a confidence.</summary>
public sealed record VariablesDemand
{
    /// <summary>Checks the numbers.</summary>
    /// <param name="limit">Least value that conforms, in <paramref name="unit"/>; above 0.</param>
    /// <param name="unit">Unit of limit and readings, as printed.</param>
    /// <param name="share">Share of all pieces that must reach the limit, 0.5 to 1 (both excluded).</param>
    /// <param name="confidence">One-sided confidence, 0.5 to 1 (both excluded).</param>
    /// <param name="population">Shape that the measure is taken to have.</param>
    public VariablesDemand(double limit, string unit, double share, double confidence, Population population)
    {
        Limit = Require.Positive(limit, unit);
        Unit = unit;
        Share = Require.InRange(share, 0.5 + 1e-9, 1 - 1e-9, "(share)");
        Confidence = Require.InRange(confidence, 0.5 + 1e-9, 1 - 1e-9, "(confidence)");
        Population = population;
    }

    /// <summary>Least value that conforms.</summary>
    public double Limit { get; }

    /// <summary>Unit of limit and readings.</summary>
    public string Unit { get; }

    /// <summary>Share of all pieces that must reach the limit.</summary>
    public double Share { get; }

    /// <summary>One-sided confidence with which that must be shown.</summary>
    public double Confidence { get; }

    /// <summary>Shape that the measure is taken to have.</summary>
    public Population Population { get; }
}

/// <summary>How a measure fares against its demand.</summary>
/// <param name="Verdict">
/// Conforms where the lower limit reaches the demand; does not conform where the upper one falls short. By the count alone where there are no limits.
/// </param>
/// <param name="LowerLimit">With the confidence stated, the share stated exceeds at least this, 0 or more; null where nothing fixes the spread, or the whole lot was measured.</param>
/// <param name="UpperLimit">With the same confidence, the share stated exceeds at most this; null likewise.</param>
/// <param name="ShareLowerBound">Lower bound on the share that reaches the limit, below 1; null where readings are cut off or there are no limits.</param>
/// <param name="ShareUpperBound">Upper bound on it, same confidence; null likewise.</param>
/// <param name="CountedShareLowerBound">Exact bound from counting alone, which takes no shape for granted.</param>
/// <param name="IsExact">True where the limits are exact for the population; false where readings are cut off.</param>
/// <param name="Reasons">What the verdict rests on.</param>
public sealed record VariablesJudgement(
    Verdict Verdict,
    double? LowerLimit,
    double? UpperLimit,
    double? ShareLowerBound,
    double? ShareUpperBound,
    double CountedShareLowerBound,
    bool IsExact,
    IReadOnlyList<Reason> Reasons
)
{
    /// <summary>Whether every piece of the lot was measured: then nothing is inferred.</summary>
    public bool IsWhole { get; init; }

    /// <summary>Pieces whose reading is cut off on the side of the limit where it decides nothing.</summary>
    public int Open { get; init; }

    /// <summary>Exact bound on the share that reaches the limit where every open piece does, from counting alone.</summary>
    public double CountedShareIfOpenReach { get; init; }

    /// <summary>The three findings: the rule by variables, the lot, and what was not judged.</summary>
    /// <param name="demand">What was asked.</param>
    /// <param name="lotSize">Pieces in the batch; null where not known.</param>
    /// <remarks>The lot goes by the values; where some are cut off, by the count alone, which takes no shape for granted.</remarks>
    public BatchFindings Findings(VariablesDemand demand, int? lotSize)
    {
        ArgumentNullException.ThrowIfNull(demand);
        var least = ShareLowerBound ?? CountedShareLowerBound;
        return new(
            new(new(Verdict, null, Reasons), null, null),
            new(
                new(demand.Confidence, least, ShareLowerBound ?? CountedShareIfOpenReach),
                // The values speak of the supply that the pieces come from.
                ShareLowerBound is null
                    ? lotSize
                    : null,
                ShareLowerBound is null ? Open : 0,
                new(demand.Share, WantedBy.Asked)
            )
            {
                IsWhole = IsWhole,
            },
            // Where all were measured, none was drawn.
            IsWhole ? [new OnlyMeasureJudged()] : [new OnlyMeasureJudged(), new DrawingNotRecorded()]
        );
    }
}

/// <summary>Judges a batch by what was measured on its pieces, not by how many passed.</summary>
/// <remarks>
/// One-sided tolerance limits: exact (non-central t) where every reading is a value; where some are cut off, from the mean and
/// spread of greatest likelihood with the factor of the exact readings, which errs on the wide side.
/// Scatter of measuring is contained in the spread of the readings and makes the limits wider; an error common to all readings
/// (a scale, a calibration) is not, and the reasons say so. Where the limits and the plain count of the readings point different ways
/// the shape taken for granted is doubted and nothing is decided. Where nothing fixes the spread, as where all pieces read alike or are cut off, the exact
/// bounds of the count decide; and so where every piece of the lot was measured, when nothing is inferred. A single high value lowered may raise the lower limit, because the
/// spread shrinks: that lies in every rule by variables.
/// </remarks>
public static class VariablesConformity
{
    // Beyond this the share differs from 0 or 1 by nothing that could be printed.
    private const double GreatestDistance = 200;

    /// <summary>Judges a batch.</summary>
    /// <param name="readings">One reading for each piece, above 0, in the demand's unit. One or more.</param>
    /// <param name="demand">What is asked.</param>
    /// <param name="lotSize">Pieces in the batch, at least the readings; null where not known.</param>
    public static VariablesJudgement Judge(
        IReadOnlyList<CensoredReading> readings,
        VariablesDemand demand,
        int? lotSize
    )
    {
        if (readings.Count == 0 || readings.Count > (lotSize ?? int.MaxValue))
            throw new ArgumentException(
                "One reading or more is needed, and no more than the lot has.",
                nameof(readings)
            );
        return Judged(readings, demand, lotSize);
    }

    private static VariablesJudgement Judged(
        IReadOnlyList<CensoredReading> readings,
        VariablesDemand demand,
        int? lotSize
    )
    {
        double[] values = [.. readings.Where(reading => reading.Censoring == Censoring.Exact).Select(r => r.Value)];
        var isExact = values.Length == readings.Count;
        var isWhole = lotSize == readings.Count;
        var (lower, upper) = isWhole ? (null, null) : Limits(readings, values, demand);
        var isBounded = isExact && lower is not null;
        var shareLower = isBounded ? ShareAbove(values, demand, demand.Confidence) : (double?)null;
        var shareUpper = isBounded ? ShareAbove(values, demand, 1 - demand.Confidence) : (double?)null;
        var reaching = readings.Count(reading =>
            reading.Censoring != Censoring.AtMost && reading.Value >= demand.Limit
        );
        var failing = readings.Count(reading => reading.Censoring != Censoring.AtLeast && reading.Value < demand.Limit);
        double Counted(int of) => LotShare.LowerBound(of, readings.Count, lotSize, demand.Confidence);
        var (counted, countedUpper) = (Counted(reaching), 1 - Counted(failing));
        var measured = ByLimits(lower ?? counted, upper ?? countedUpper, lower is null ? demand.Share : demand.Limit);
        var countSays = reaching >= demand.Share * readings.Count ? Verdict.Conforms : Verdict.DoesNotConform;
        var isDoubted = lower is not null && measured != Verdict.Undecided && measured != countSays;

        IEnumerable<Reason> Reasons()
        {
            yield return new DemandUsed(demand);
            yield return Seen(readings, values, demand);
            if (isWhole)
                yield return new LotMeasured(reaching, failing, readings.Count);
            else if (lower is { } least && upper is { } most)
                yield return new ToleranceLimits(demand, least, most, isExact);
            else
                yield return new SpreadNotFixed();
            if (shareLower is { } atLeast && shareUpper is { } atMost)
                yield return new ShareBounds(demand, atLeast, atMost);
            if (!isWhole)
                yield return new CountedAlone(demand, reaching, readings.Count, counted, lotSize);
            if (lower is not null)
                yield return new PopulationAssumed(demand.Population);
            if (isDoubted)
                yield return new PopulationDoubted(demand.Population);
        }

        return new(
            isDoubted ? Verdict.Undecided : measured,
            lower,
            upper,
            shareLower,
            shareUpper,
            counted,
            isExact,
            [.. Reasons()]
        )
        {
            IsWhole = isWhole,
            Open = readings.Count - reaching - failing,
            CountedShareIfOpenReach = Counted(readings.Count - failing),
        };
    }

    private static Verdict ByLimits(double lower, double upper, double demanded) =>
        lower >= demanded ? Verdict.Conforms
        : upper < demanded ? Verdict.DoesNotConform
        : Verdict.Undecided;

    private static (double? Lower, double? Upper) Limits(
        IReadOnlyList<CensoredReading> readings,
        double[] values,
        VariablesDemand demand
    )
    {
        if (values.Distinct().Count() < 2)
            return (null, null);
        var fit = CensoredSample.Fit(readings, demand.Population);
        // Each cut-off reading moves mean and spread, but only the exact ones count as degrees of freedom. With none cut off these
        // are the exact tolerance limits; how often they hold with some cut off is measured in the tests.
        var n = values.Length;
        var spread = fit.StandardDeviation.Value * Math.Sqrt(n / (n - 1.0));
        // No depth and no retention lies below 0, whatever a normal population says.
        double Limit(double confidence) =>
            Math.Max(
                0,
                demand.Population.Unscaled(fit.Mean.Value - ToleranceLimit.Factor(n, demand.Share, confidence) * spread)
            );
        return (Limit(demand.Confidence), Limit(1 - demand.Confidence));
    }

    private static double ShareAbove(double[] values, VariablesDemand demand, double confidence)
    {
        var distance = ToleranceLimit.Distance(values, demand.Limit, demand.Population);
        var root = Math.Sqrt(values.Length);
        var t = Math.Clamp(distance * root, -GreatestDistance, GreatestDistance);
        // No sample shows all of a supply to reach anything.
        return Math.Min(
            Math.BitDecrement(1.0),
            Normal.CDF(0, 1, NonCentralT.ShiftFor(confidence, t, values.Length - 1) / root)
        );
    }

    private static ValuesRead Seen(IReadOnlyList<CensoredReading> readings, double[] values, VariablesDemand demand) =>
        new(
            demand,
            readings.Count,
            values.Length > 0 ? (values.Min(), values.Max()) : null,
            CutOffs(readings, Censoring.AtMost),
            CutOffs(readings, Censoring.AtLeast)
        );

    private static IReadOnlyList<CutOffReadings> CutOffs(IReadOnlyList<CensoredReading> readings, Censoring side) =>
        [
            .. readings
                .Where(reading => reading.Censoring == side)
                .GroupBy(reading => reading.Value)
                .OrderBy(same => same.Key)
                .Select(same => new CutOffReadings(same.Key, same.Count())),
        ];
}
