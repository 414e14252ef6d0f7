using Alburnum.Penetration;

namespace Alburnum.Acceptance;

/// <summary>What may be said of a batch, as three findings that do not stand for each other.</summary>
/// <param name="Rule">Whether the rules are met: the acceptance rule on penetration, and the retention.</param>
/// <param name="Lot">What is shown of all pieces of the batch, cut or not; null where there was nothing to judge by.</param>
/// <param name="NotJudged">What was asked for, or is taken for granted, and was not judged; one reason each.</param>
public sealed record BatchFindings(RuleFinding Rule, LotFinding? Lot, IReadOnlyList<Reason> NotJudged)
{
    /// <summary>The weakest of the three: conforms only where the rules are met, the lot is shown to conform and nothing demanded stays unjudged.</summary>
    /// <remarks>
    /// A retention that nobody requires leaves nothing demanded unjudged. A verdict on one measure never makes a whole that conforms: what else the pieces
    /// must meet is not known there.
    /// </remarks>
    public Verdict Weakest =>
        Rule.Whole.Verdict != Verdict.Conforms ? Rule.Whole.Verdict
        // That the sample is a random one is taken for granted by every rule; nobody can judge it afterwards. Codes that count cores ask for one face of a piece.
        : Lot is { IsShown: true }
        && NotJudged.All(reason => reason is DrawingNotRecorded or NoRetentionRequired or PiecesReadInPart)
            ? Verdict.Conforms
        : Verdict.Undecided;
}

/// <summary>Whether the rules are met, and with which chance they would be if every depth and retention were known exactly.</summary>
/// <param name="Whole">Everything that is required.</param>
/// <param name="Penetration">The acceptance rule alone; null where there was nothing to judge by.</param>
/// <param name="Retention">The retention alone; null where none was required.</param>
public sealed record RuleFinding(Judgement Whole, Judgement? Penetration, Judgement? Retention);

/// <summary>What is shown of all pieces of a lot, or of the supply where its size is not known.</summary>
/// <param name="Bound">Least share that conforms, with a confidence.</param>
/// <param name="LotSize">Pieces in the lot; null for the supply.</param>
/// <param name="Undecided">Pieces cut that stay undecided; they count as failing.</param>
/// <param name="Wanted">The share that is wanted to conform; null where neither the rule nor anyone names one.</param>
public sealed record LotFinding(ConformingShareBound Bound, int? LotSize, int Undecided, WantedShare? Wanted)
{
    /// <summary>Chance that the wanted share conforms, 0 to 1; null where no share is wanted, or a verdict by variables gives none.</summary>
    /// <remarks>Beta-binomial with Jeffreys' prior; undecided pieces count as failing.</remarks>
    public double? Chance { get; init; }

    /// <summary>The same where every undecided piece conforms, 0 to 1; null where <see cref="Chance"/> is.</summary>
    public double? ChanceIfUndecidedPass { get; init; }

    /// <summary>Whether every piece of the lot was cut: then nothing is inferred, and the bound is the share itself.</summary>
    public bool IsWhole { get; init; }

    /// <summary>True where the bound reaches the wanted share; never where none is wanted.</summary>
    public bool IsShown => Bound.LowerBound >= Wanted?.Share;
}

/// <summary>Who wants a share of the lot to conform.</summary>
public enum WantedBy
{
    /// <summary>The rule that names the share of the pieces cut that must pass.</summary>
    MustPass,

    /// <summary>The acceptance quality limit: all but so many per cent.</summary>
    Aql,

    /// <summary>It was asked for.</summary>
    Asked,
}

/// <summary>Share of the lot that is wanted to conform.</summary>
/// <param name="Share">Above 0, at most 1.</param>
/// <param name="By">Who wants it.</param>
public sealed record WantedShare(double Share, WantedBy By);

/// <summary>Nothing is recorded of how the pieces were drawn; what is said of the lot takes them to be a random sample of it.</summary>
public sealed record DrawingNotRecorded : BatchReason;

/// <summary>One sample alone was analysed: how far samples of the batch differ, and so whether another would meet the retention, is not known.</summary>
public sealed record SamplesScatterNotKnown : BatchReason;

/// <summary>Some of the pieces cut could not be judged.</summary>
/// <param name="Pieces">Their names, one or more.</param>
public sealed record PiecesNotDetermined(IReadOnlyList<string> Pieces) : BatchReason;

/// <summary>On some faces of these pieces no depth was read: what is said holds for the others.</summary>
/// <param name="Pieces">How many, 1 or more.</param>
/// <param name="Cut">Pieces cut.</param>
public sealed record PiecesReadInPart(int Pieces, int Cut) : BatchReason;

/// <summary>The pieces came judged, without depths: how surely they were read is not known.</summary>
public sealed record ReadingRiskNotKnown : BatchReason;
