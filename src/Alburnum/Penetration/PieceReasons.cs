using Alburnum.Requirements;

namespace Alburnum.Penetration;

/// <summary>What the verdict on one piece rests on.</summary>
public abstract record PieceReason : Reason
{
    private protected PieceReason() { }
}

/// <summary>The rule asks for no depth.</summary>
public sealed record NoDepthRequired : PieceReason;

/// <summary>The piece has nothing of the zone that the rule speaks of.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Zone">Its zone.</param>
public sealed record ZoneAbsent(DepthRule Rule, WoodZone Zone) : PieceReason;

/// <summary>No depth could be determined; at which stage the reading ended, and why, is said of the reading.</summary>
public sealed record DepthNotDetermined : PieceReason;

/// <summary>The outline was pointed out, but no sure edge of the wood lies at its points: depths measured from them decide nothing.</summary>
public sealed record OutlineOffEdge : PieceReason;

/// <summary>The zone is there, but no position of it could be read.</summary>
/// <param name="Rule">The rule.</param>
public sealed record NothingRead(DepthRule Rule) : PieceReason;

/// <summary>The whole zone must be reached, and one position decides.</summary>
public sealed record DecidedAt : PieceReason
{
    /// <summary>The rule.</summary>
    public required DepthRule Rule { get; init; }

    /// <summary>Which depth stands for the whole zone.</summary>
    public required DepthReading Reading { get; init; }

    /// <summary>Positions of the zone that were read.</summary>
    public required int Positions { get; init; }

    /// <summary>Least depth of them, with its standard uncertainty, mm: the profile's own figure where the zone is all that was read.</summary>
    public required Estimate LeastDepthMm { get; init; }

    /// <summary>Face of the position that decides.</summary>
    public required int Face { get; init; }

    /// <summary>Its distance from the start of the face, mm.</summary>
    public required double PositionMm { get; init; }

    /// <summary>Depth there, mm.</summary>
    public required double DepthMm { get; init; }

    /// <summary>Required depth there, mm.</summary>
    public required double RequiredMm { get; init; }

    /// <summary>Standard uncertainty of the depth against what is required, mm.</summary>
    public required double StandardUncertaintyMm { get; init; }

    /// <summary>Probability that the rule is met: low if every position of unknown zone counts, high if none does.</summary>
    public required ProbabilityRange Probability { get; init; }

    /// <summary>True where the whole zone is required at that position: the probability then weighs a zone that is filled against one that is not, each as likely before reading.</summary>
    public bool AsksForWholeZone { get; init; }

    /// <summary>What a filled zone's being unlikely or likely before reading stands for, where the belief used is as likely as not. Ours.</summary>
    public const double UnlikelyFilled = 0.2;

    /// <inheritdoc cref="UnlikelyFilled"/>
    public const double LikelyFilled = 0.8;

    /// <summary>
    /// The low probability where the whole zone is required, had a filled one been taken as unlikely before reading, and had it been taken as likely: Bayes'
    /// rule, since the odds before reading multiply those after it.
    /// </summary>
    public ProbabilityRange ProbabilityByBelief => ProbabilityRange.Between(From(UnlikelyFilled), From(LikelyFilled));

    private double From(double filled)
    {
        var (now, low) = (DepthAtPosition.FrontAtZoneEnd, Probability.Low);
        var ratio = filled / (1 - filled) * (1 - now) / now;
        return low * ratio / (low * ratio + 1 - low);
    }

    /// <summary>True where the least depth was read well and a deeper one so badly that the verdict turns on it.</summary>
    public bool TurnsElsewhere { get; init; }
}

/// <summary>A share of the zone must be reached on every face; this is how one face fares.</summary>
public sealed record ReachedOnFace : PieceReason
{
    /// <summary>The rule.</summary>
    public required DepthRule Rule { get; init; }

    /// <summary>The face.</summary>
    public required int Face { get; init; }

    /// <summary>Share of the zone's positions on the face that reach the required depth, 0 to 1.</summary>
    public required double ReachedShare { get; init; }

    /// <summary>Share that must, 0 to 1.</summary>
    public required double RequiredShare { get; init; }

    /// <summary>Depth that the required share reaches, mm.</summary>
    public required double DepthMm { get; init; }

    /// <summary>Standard uncertainty of that depth against what is required, mm.</summary>
    public required double StandardUncertaintyMm { get; init; }

    /// <summary>Probability that the face meets the rule: low if every position of unknown zone counts, high if none does.</summary>
    public required ProbabilityRange Probability { get; init; }
}

/// <summary>Depths between which the one depth that decides would decide nothing (JCGM 106:2012, clause 8); it holds for that depth alone.</summary>
/// <param name="DepthMm">The depth, mm.</param>
/// <param name="RequiredMm">Required depth, mm.</param>
/// <param name="StandardUncertaintyMm">Standard uncertainty of that depth, mm.</param>
/// <param name="ConformsFromMm">Least depth that conforms, mm.</param>
/// <param name="FailsUpToMm">Greatest depth that does not conform, mm.</param>
public sealed record GuardBand(
    double DepthMm,
    double RequiredMm,
    double StandardUncertaintyMm,
    double ConformsFromMm,
    double FailsUpToMm
) : PieceReason;

/// <summary>On these faces less than half of the zone could be read.</summary>
/// <param name="Faces">Face numbers, one or more.</param>
public sealed record FacesNotRead(IReadOnlyList<int> Faces) : PieceReason;

/// <summary>Faces on which no depth was read at all, as where the piece was cored on one: what is said holds for the others.</summary>
/// <param name="Faces">Face numbers, one or more.</param>
public sealed record FacesWithoutReading(IReadOnlyList<int> Faces) : PieceReason;

/// <summary>The border of the sapwood is not known, and the verdict depends on it.</summary>
public sealed record SapwoodBorderMissing : PieceReason;

/// <summary>The piece has nothing that the rule could be shown on.</summary>
public sealed record NotDemonstrable : PieceReason;

/// <summary>The reach of the untreated core can only be found from readings on opposite faces.</summary>
/// <param name="Limit">The limit.</param>
public sealed record OppositeFacesNeeded(UntreatedHeartwoodLimit Limit) : PieceReason;

/// <summary>How much of the section is untreated.</summary>
/// <param name="Limit">The limit.</param>
/// <param name="UntreatedShare">Untreated share of the section, 0 to 1.</param>
/// <param name="Probability">Probability that it stays under the limit, 0 to 1.</param>
public sealed record UntreatedArea(UntreatedHeartwoodLimit Limit, Estimate UntreatedShare, double Probability)
    : PieceReason;

/// <summary>How far across the section the untreated core reaches.</summary>
/// <param name="Limit">The limit.</param>
/// <param name="AcrossShare">Share of the way across, 0 to 1, in the direction in which it is greatest.</param>
/// <param name="Probability">Probability that it stays within the limit, 0 to 1.</param>
public sealed record UntreatedReach(UntreatedHeartwoodLimit Limit, Estimate AcrossShare, double Probability)
    : PieceReason;

/// <summary>The piece was judged by someone else, who gave no depths.</summary>
/// <param name="Verdict">What was said of it.</param>
public sealed record JudgedElsewhere(Verdict Verdict) : PieceReason;
