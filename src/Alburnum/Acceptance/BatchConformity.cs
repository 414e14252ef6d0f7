using Alburnum.Penetration;

namespace Alburnum.Acceptance;

/// <summary>One piece cut from the batch, and what was said of it.</summary>
/// <param name="Number">The piece's number; no two pieces share one.</param>
/// <param name="Judgement">Its judgement; undecided without a probability where it was not determined.</param>
public sealed record PieceJudgement(string Number, Judgement Judgement);

/// <summary>What is known of a batch, and the rule by which it is to be judged.</summary>
/// <param name="Pieces">Pieces cut, 1 or more, each with its own number.</param>
/// <param name="LotSize">Pieces in the batch; null where not known, or where the process is judged.</param>
/// <param name="Rule">How many may fail.</param>
public sealed record BatchEvidence(IReadOnlyList<PieceJudgement> Pieces, int? LotSize, AcceptanceRule Rule)
{
    /// <summary>Retentions required, each with the assays that speak of it; empty where none is.</summary>
    public IReadOnlyList<RetentionAsked> Retentions { get; init; } = [];

    /// <summary>Confidence of the bound on the conforming share, above 0, below 1.</summary>
    public double Confidence { get; init; } = 0.95;

    /// <summary>Share of the lot that is asked to conform; null to take what the rule wants.</summary>
    public WantedShare? Wanted { get; init; }
}

/// <summary>A batch's judgement: penetration, retention, and both; the lot that the pieces came from; what was not judged.</summary>
/// <param name="Overall">Conforms where every part that was required conforms.</param>
/// <param name="Penetration">Whether the named acceptance rule accepts, given how surely each piece was read.</param>
/// <param name="Retention">The assays against the required loading; null where no retention was required.</param>
/// <param name="Rule">The acceptance rule used.</param>
/// <param name="Counts">How many pieces conform, fail and stay open.</param>
/// <param name="Lot">What is shown of all pieces of the lot.</param>
/// <param name="NotJudged">What was not judged, one reason each.</param>
public sealed record BatchJudgement(
    Judgement Overall,
    Judgement Penetration,
    Judgement? Retention,
    AcceptanceRule Rule,
    PieceCounts Counts,
    LotFinding Lot,
    IReadOnlyList<Reason> NotJudged
)
{
    /// <summary>The three findings.</summary>
    public BatchFindings Findings => new(new(Overall, Penetration, Retention), Lot, NotJudged);

    /// <summary>The whole with its parts.</summary>
    public BatchParts Parts => new(Overall.Verdict, Penetration, Retention);
}

/// <summary>Pieces cut, by verdict.</summary>
/// <param name="Cut">All pieces cut.</param>
/// <param name="Conforming">Pieces that conform.</param>
/// <param name="Failing">Pieces that do not.</param>
/// <param name="Undecided">Pieces within measuring uncertainty, or not determined.</param>
public sealed record PieceCounts(int Cut, int Conforming, int Failing, int Undecided);

/// <summary>Exact lower confidence bound on the conforming share of the lot.</summary>
/// <param name="Confidence">One-sided confidence.</param>
/// <param name="LowerBound">Bound where every undecided piece counts as failing, 0 to 1.</param>
/// <param name="LowerBoundIfUndecidedPass">Bound where every undecided piece counts as conforming, 0 to 1.</param>
public sealed record ConformingShareBound(double Confidence, double LowerBound, double LowerBoundIfUndecidedPass);

/// <summary>Judges a batch from the pieces cut from it and its assays.</summary>
/// <remarks>
/// The probability that the rule accepts is the Poisson-binomial sum over the pieces, whose reading errors are then
/// independent. They may also be one common error (one operator, one reagent, one scale); the probability is then that of the
/// piece on which the count turns. A verdict needs both to call for it. Pieces that were not determined, or not yet cut, may be
/// either; a verdict must hold both ways. See docs/science/acceptance.md.
/// </remarks>
public static class BatchConformity
{
    /// <summary>Judges a batch.</summary>
    /// <param name="batch">What is known of it.</param>
    /// <param name="decision">How sure one must be.</param>
    /// <exception cref="ArgumentException">No pieces; a number twice; more pieces than the lot or the plan has.</exception>
    public static BatchJudgement Judge(BatchEvidence batch, DecisionRule decision)
    {
        ArgumentNullException.ThrowIfNull(batch);
        Check(batch);
        var counts = Count(batch.Pieces);
        var penetration = Penetration(batch, counts, decision);
        var retention = RetentionConformity.Judge(batch.Retentions, decision);
        return new(
            Overall(penetration, retention),
            penetration,
            retention,
            batch.Rule,
            counts,
            Lot(batch, counts),
            [.. NotJudged(batch, retention)]
        );
    }

    /// <summary>The exact bound and the beta-binomial reading of the same pieces; undecided pieces count as failing in both, then as conforming.</summary>
    private static LotFinding Lot(BatchEvidence batch, PieceCounts counts)
    {
        double Bound(int conforming) => LotShare.LowerBound(conforming, counts.Cut, batch.LotSize, batch.Confidence);
        var wanted = batch.Wanted ?? batch.Rule.Wanted;
        return new(
            new(batch.Confidence, Bound(counts.Conforming), Bound(counts.Conforming + counts.Undecided)),
            batch.LotSize,
            counts.Undecided,
            wanted
        )
        {
            IsWhole = batch.LotSize == counts.Cut,
            Chance = Chance(counts.Conforming),
            ChanceIfUndecidedPass = Chance(counts.Conforming + counts.Undecided),
        };

        double? Chance(int conforming)
        {
            var belief = new BetaBinomial(counts.Cut - conforming, counts.Cut);
            return wanted is null ? null
                : batch.LotSize is { } pieces ? belief.LotConforms(wanted.Share, pieces)
                : belief.SupplyConforms(wanted.Share);
        }
    }

    private static IEnumerable<Reason> NotJudged(BatchEvidence batch, Judgement? retention)
    {
        if (retention is null)
            yield return new NoRetentionRequired();
        foreach (var reason in retention?.Reasons.OfType<RetentionNotJudged>() ?? [])
            yield return reason;
        if (batch.Retentions.Any(each => RetentionConformity.Samples(each.Assays) == 1))
            yield return new SamplesScatterNotKnown();
        string[] open = [.. batch.Pieces.Where(IsOpen).Select(piece => piece.Number)];
        if (open.Length > 0)
            yield return new PiecesNotDetermined(open);
        if (batch.Pieces.Count(IsReadInPart) is > 0 and var inPart)
            yield return new PiecesReadInPart(inPart, batch.Pieces.Count);
        if (Missing(batch) is > 0 and var missing)
            yield return new PiecesStillToCut(batch.Pieces.Count + missing, missing);
        // Where all were cut, none was drawn.
        if (batch.LotSize != batch.Pieces.Count)
            yield return new DrawingNotRecorded();
    }

    private static bool IsOpen(PieceJudgement piece) => piece.Judgement.Probability is null;

    private static bool IsReadInPart(PieceJudgement piece) =>
        piece.Judgement.Reasons.Any(reason => reason is FacesWithoutReading);

    private static int Missing(BatchEvidence batch) => Math.Max(0, (batch.Rule.PiecesAsked ?? 0) - batch.Pieces.Count);

    private static Judgement Penetration(BatchEvidence batch, PieceCounts counts, DecisionRule decision)
    {
        var (pieces, rule) = (batch.Pieces, batch.Rule);
        var missing = Missing(batch);
        var mayFail = rule.MayFail(pieces.Count + missing);
        var ifBad = Acceptance(Passing(pieces, missing, unknown: 0), mayFail);
        var ifGood = Acceptance(Passing(pieces, missing, unknown: 1), mayFail);

        var probability = ProbabilityRange.Between(
            Math.Min(ifBad.Independent, ifBad.Common),
            Math.Max(ifGood.Independent, ifGood.Common)
        ) with
        {
            // Independent errors are the usual case; the common error only widens the range.
            Middle = (ifBad.Independent + ifGood.Independent) / 2,
        };
        var (atLeast, atMost) = (decision.Decide(probability.Low), decision.Decide(probability.High));
        var verdict = atLeast == atMost ? atLeast : Verdict.Undecided;

        List<Reason> reasons = [new RuleUsed(rule), new PiecesCounted(counts, mayFail)];
        if (rule is ShareMustPass { StricterAqlPercent: { } aql, Share: var share })
            reasons.Add(new RuleAsksLessThanCode(share, aql));
        if (missing > 0)
            reasons.Add(new PiecesStillToCut(pieces.Count + missing, missing));
        var open = missing + pieces.Count(IsOpen);
        // A table of passes and fails says nothing of the depths: 0 and 1 stand for what was said, and are no risks.
        var isRiskKnown = !pieces.Any(piece => piece.Judgement.Reasons.Any(reason => reason is JudgedElsewhere));
        reasons.Add(
            !isRiskKnown ? new ReadingRiskNotKnown()
            : open == 0 ? new AcceptanceProbability(ifBad.Independent, ifBad.Common)
            : new AcceptanceLeftOpen(probability, open)
        );
        var undetermined = verdict == Verdict.Undecided && open > 0 && ifBad.Independent < ifGood.Independent;
        return new(verdict, undetermined || !isRiskKnown ? null : probability, reasons);
    }

    /// <summary>Probability of acceptance under both views of the reading errors.</summary>
    private static (double Independent, double Common) Acceptance(List<double> passing, int mayFail)
    {
        if (mayFail >= passing.Count)
            return (1, 1);
        passing.Sort();
        return (PoissonBinomial.AtMost(mayFail, [.. passing.Select(p => 1 - p)]), passing[mayFail]);
    }

    private static List<double> Passing(IReadOnlyList<PieceJudgement> pieces, int missing, double unknown) =>
        [
            .. pieces.Select(piece => piece.Judgement.Probability?.Middle ?? unknown),
            .. Enumerable.Repeat(unknown, missing),
        ];

    private static Judgement Overall(Judgement penetration, Judgement? retention)
    {
        if (retention is null)
            return penetration;
        var verdict = Weakest([penetration.Verdict, retention.Verdict]);
        // Two methods, two independent errors. What was not assayed has none: the chance is that of the rest, as where no figure is known.
        var probability =
            retention.Probability is { } met ? penetration.Probability?.And(met)
            : retention.Reasons.All(reason => reason is RetentionNotJudged) ? penetration.Probability
            : null;
        if (verdict == Verdict.DoesNotConform && probability is null)
            probability =
                penetration.Verdict == Verdict.DoesNotConform ? penetration.Probability : retention.Probability;
        return new(verdict, probability, [.. penetration.Reasons, .. retention.Reasons]);
    }

    /// <summary>The verdict on a whole all parts of which must conform.</summary>
    internal static Verdict Weakest(IReadOnlyList<Verdict> parts) =>
        parts.Contains(Verdict.DoesNotConform) ? Verdict.DoesNotConform
        : parts.Contains(Verdict.Undecided) ? Verdict.Undecided
        : Verdict.Conforms;

    /// <summary>The pieces by verdict.</summary>
    public static PieceCounts Count(IReadOnlyList<PieceJudgement> pieces)
    {
        int Of(Verdict verdict) => pieces.Count(piece => piece.Judgement.Verdict == verdict);
        return new(pieces.Count, Of(Verdict.Conforms), Of(Verdict.DoesNotConform), Of(Verdict.Undecided));
    }

    private static void Check(BatchEvidence batch)
    {
        var (pieces, lotSize, asked) = (batch.Pieces, batch.LotSize, batch.Rule.PiecesAsked);
        if (pieces.Count == 0)
            throw new ArgumentException("At least one piece must have been cut.", nameof(batch));
        if (pieces.Count > (lotSize ?? int.MaxValue))
            throw new ArgumentException($"{pieces.Count} pieces cannot come from a lot of {lotSize}.", nameof(batch));
        if (pieces.Count > (asked ?? int.MaxValue))
            throw new ArgumentException($"{pieces.Count} pieces were cut; the rule is for {asked}.", nameof(batch));
        var twice = pieces
            .GroupBy(piece => piece.Number, StringComparer.Ordinal)
            .FirstOrDefault(group => group.Count() > 1);
        if (twice is not null)
            throw new ArgumentException($"Piece {twice.Key} is given twice.", nameof(batch));
    }
}
