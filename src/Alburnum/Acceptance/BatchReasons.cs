using Alburnum.Penetration;

namespace Alburnum.Acceptance;

/// <summary>What the verdict on a batch judged by counting, and by its assays, rests on.</summary>
public abstract record BatchReason : Reason
{
    private protected BatchReason() { }
}

/// <summary>Which rule was used.</summary>
/// <param name="Rule">The rule.</param>
public sealed record RuleUsed(AcceptanceRule Rule) : BatchReason;

/// <summary>The rule lets more of the pieces fail than the code of practice does.</summary>
/// <param name="Share">Share that must pass by the rule, above 0, below 1.</param>
/// <param name="CodesAqlPercent">The code's AQL, %, with its source.</param>
public sealed record RuleAsksLessThanCode(double Share, Fact<double> CodesAqlPercent) : BatchReason;

/// <summary>How the pieces fare.</summary>
/// <param name="Counts">Pieces by verdict.</param>
/// <param name="MayFail">Greatest number of failures that the rule accepts.</param>
public sealed record PiecesCounted(PieceCounts Counts, int MayFail) : BatchReason;

/// <summary>Fewer pieces were cut than the rule asks for.</summary>
/// <param name="Asked">Pieces that the rule asks for.</param>
/// <param name="Missing">Pieces still to be cut.</param>
public sealed record PiecesStillToCut(int Asked, int Missing) : BatchReason;

/// <summary>Probability that the rule accepts where every piece was determined.</summary>
/// <param name="IfIndependent">If the pieces were misread independently of each other, 0 to 1.</param>
/// <param name="IfAlike">If all were misread alike, 0 to 1.</param>
public sealed record AcceptanceProbability(double IfIndependent, double IfAlike) : BatchReason;

/// <summary>Probability that the rule accepts where some pieces were not determined or not yet cut.</summary>
/// <param name="Probability">From all of them failing to all of them conforming.</param>
/// <param name="OpenPieces">How many they are.</param>
public sealed record AcceptanceLeftOpen(ProbabilityRange Probability, int OpenPieces) : BatchReason;

/// <summary>No retention was required.</summary>
public sealed record NoRetentionRequired : BatchReason;

/// <summary>A retention is required, and is not judged.</summary>
public abstract record RetentionNotJudged : BatchReason
{
    private protected RetentionNotJudged() { }
}

/// <summary>No assay was given.</summary>
/// <param name="RequiredKgPerM3">Required retention, kg/m³.</param>
public sealed record AssayMissing(double RequiredKgPerM3) : RetentionNotJudged;

/// <summary>The assays do not settle whether a retention is reached in the zone for which it is required.</summary>
/// <param name="Zone">The zone, as the rulebook names it; null where it is not known.</param>
/// <param name="RequiredKgPerM3">Required retention, kg/m³.</param>
/// <param name="Gap">Why.</param>
public sealed record ZoneNotAssayed(string? Zone, double RequiredKgPerM3, ZoneGap Gap) : RetentionNotJudged;

/// <summary>What was found would be enough only of the product that it is counted as, and some samples are hardly of it: parts of the formula are missing, or far off.</summary>
/// <param name="Samples">Numbers of those samples.</param>
public sealed record HardlyThatProduct(IReadOnlyList<string> Samples) : BatchReason;

/// <summary>What was found would be enough only if parts of the product that were not analysed were there as its formula has them.</summary>
/// <param name="Samples">Numbers of the samples in which they were not.</param>
/// <param name="Parts">Names of the parts.</param>
public sealed record PartsNotAnalysed(IReadOnlyList<string> Samples, IReadOnlyList<string> Parts) : BatchReason;

/// <summary>The mean of the samples against the required retention, where each assay found something and the laboratories agree.</summary>
/// <param name="Samples">Samples, 1 or more. One alone shows no scatter: the probability then leaves out how far samples of the batch differ.</param>
/// <param name="Assays">Assays of them, as many or more.</param>
/// <param name="MeanKgPerM3">Their mean, kg/m³.</param>
/// <param name="RequiredKgPerM3">Required retention, kg/m³.</param>
/// <param name="Probability">Probability that the mean meets it, 0 to 1.</param>
public sealed record RetentionMean(
    int Samples,
    int Assays,
    Estimate MeanKgPerM3,
    double RequiredKgPerM3,
    double Probability
) : BatchReason
{
    /// <summary>Effective degrees of freedom of the mean's standard uncertainty, 1 or more; infinite where it rests on what laboratories state alone.</summary>
    public double DegreesOfFreedom { get; init; } = double.PositiveInfinity;

    /// <summary>Zone in which it is required, as the rulebook names it; null where it is not known.</summary>
    public string? Zone { get; init; }
}

/// <summary>Some assays found nothing down to their detection limit.</summary>
/// <param name="Undetected">How many.</param>
/// <param name="Assays">Of how many.</param>
/// <param name="LowestMeanKgPerM3">Mean if they hold nothing, kg/m³.</param>
/// <param name="HighestMeanKgPerM3">Mean if they hold as much as their limit, kg/m³.</param>
/// <param name="RequiredKgPerM3">Required retention, kg/m³.</param>
/// <param name="Probability">Probability that the mean meets it: low if they hold nothing, high if as much as their limit.</param>
public sealed record BelowDetectionLimit(
    int Undetected,
    int Assays,
    Estimate LowestMeanKgPerM3,
    Estimate HighestMeanKgPerM3,
    double RequiredKgPerM3,
    ProbabilityRange Probability
) : BatchReason
{
    /// <summary>Zone in which it is required, as the rulebook names it; null where it is not known.</summary>
    public string? Zone { get; init; }
}

/// <summary>What one laboratory reports.</summary>
public abstract record LaboratoryResult
{
    private protected LaboratoryResult(string laboratory) => Laboratory = laboratory;

    /// <summary>Its name; empty where none is given.</summary>
    public string Laboratory { get; }
}

/// <summary>It found a content.</summary>
public sealed record ContentFound : LaboratoryResult
{
    /// <summary>Keeps what was found.</summary>
    /// <param name="laboratory">Its name; empty where none is given.</param>
    /// <param name="kgPerM3">Mean of its assays, kg/m³; one below detection is anything up to its limit with even chance.</param>
    public ContentFound(string laboratory, Estimate kgPerM3)
        : base(laboratory) => KgPerM3 = kgPerM3;

    /// <summary>Mean of its assays, kg/m³.</summary>
    public Estimate KgPerM3 { get; }
}

/// <summary>It found nothing in any sample.</summary>
public sealed record NothingFound : LaboratoryResult
{
    /// <summary>Keeps the limit.</summary>
    /// <param name="laboratory">Its name; empty where none is given.</param>
    /// <param name="limitKgPerM3">What the mean of its samples lies below, kg/m³.</param>
    public NothingFound(string laboratory, double limitKgPerM3)
        : base(laboratory) => LimitKgPerM3 = limitKgPerM3;

    /// <summary>What the mean of its samples lies below, kg/m³.</summary>
    public double LimitKgPerM3 { get; }
}

/// <summary>How much more laboratories scatter than their uncertainties explain.</summary>
/// <param name="Ratio">About 1 where these explain it.</param>
/// <param name="MostByChance">What the ratio stays below in 95 of 100 cases where they do.</param>
public sealed record BirgeRatio(double Ratio, double MostByChance)
{
    /// <summary>Whether laboratories differ by more than chance allows.</summary>
    public bool IsBeyondChance => Ratio > MostByChance;
}

/// <summary>Laboratories differ by more than their uncertainties allow: they are not averaged, and the verdict must hold for each.</summary>
/// <param name="Laboratories">What each reports. Two or more.</param>
/// <param name="Scatter">How those that found something scatter; null where only one did.</param>
public sealed record LaboratoriesDiffer(IReadOnlyList<LaboratoryResult> Laboratories, BirgeRatio? Scatter) : BatchReason
{
    /// <summary>Number of the sample that several analysed and found different contents in; null where each had samples of its own.</summary>
    public string? Sample { get; init; }

    /// <summary>Whether what one found lies above what another would have missed.</summary>
    public bool ContradictsLimit { get; init; }
}

/// <summary>The whole of a batch's judgement with its parts.</summary>
/// <param name="Batch">The verdict on the batch.</param>
/// <param name="Penetration">Penetration alone.</param>
/// <param name="Retention">Retention alone; null where none was required.</param>
public sealed record BatchParts(Verdict Batch, Judgement Penetration, Judgement? Retention) : BatchReason;
