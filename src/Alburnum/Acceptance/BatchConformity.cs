using Alburnum.Penetration;
using static Alburnum.Figures;

namespace Alburnum.Acceptance;

/// <summary>One piece cut from the batch, and what was said of it.</summary>
/// <param name="Number">The piece's number; no two pieces share one.</param>
/// <param name="Judgement">Its judgement; undecided without a probability where it was not determined.</param>
public sealed record PieceJudgement(string Number, Judgement Judgement);

/// <summary>A batch's judgement: penetration, retention, and the whole.</summary>
/// <param name="Overall">Conforms where every part that was asked for conforms.</param>
/// <param name="Penetration">Whether the named acceptance rule accepts, given how surely each piece was read.</param>
/// <param name="Retention">The assays against the required loading; null where no retention was asked for.</param>
/// <param name="Rule">The acceptance rule used.</param>
/// <param name="Counts">How many pieces conform, fail and stay open.</param>
/// <param name="ConformingShare">What may be said of the pieces that were not cut.</param>
/// <param name="InWords">The whole in one sentence.</param>
public sealed record BatchJudgement(
    Judgement Overall,
    Judgement Penetration,
    Judgement? Retention,
    AcceptanceRule Rule,
    PieceCounts Counts,
    ConformingShareBound ConformingShare,
    string InWords
);

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
    /// <param name="pieces">Pieces cut, 1 or more, each with its own number.</param>
    /// <param name="lotSize">Pieces in the batch; null where not known, or where the process is judged.</param>
    /// <param name="rule">How many may fail.</param>
    /// <param name="assays">Composite assays of the batch; may be empty.</param>
    /// <param name="requiredKgPerM3">Retention asked for, kg/m³; null where none is.</param>
    /// <param name="decision">How sure one must be.</param>
    /// <param name="confidence">Confidence of the bound on the conforming share.</param>
    /// <exception cref="ArgumentException">No pieces; a number twice; more pieces than the lot or the plan has.</exception>
    public static BatchJudgement Judge(
        IReadOnlyList<PieceJudgement> pieces,
        int? lotSize,
        AcceptanceRule rule,
        IReadOnlyList<Assay> assays,
        double? requiredKgPerM3,
        DecisionRule decision,
        double confidence = 0.95
    )
    {
        Check(pieces, lotSize, rule);
        var counts = Count(pieces);
        var share = new ConformingShareBound(
            confidence,
            LotShare.LowerBound(counts.Conforming, counts.Cut, lotSize, confidence),
            LotShare.LowerBound(counts.Conforming + counts.Undecided, counts.Cut, lotSize, confidence)
        );
        var penetration = Penetration(pieces, rule, counts, share, lotSize, decision);
        var retention = requiredKgPerM3 is { } required ? RetentionConformity.Judge(assays, required, decision) : null;
        var overall = Overall(penetration, retention);
        return new(overall, penetration, retention, rule, counts, share, Sentence(overall, penetration, retention));
    }

    private static Judgement Penetration(
        IReadOnlyList<PieceJudgement> pieces,
        AcceptanceRule rule,
        PieceCounts counts,
        ConformingShareBound share,
        int? lotSize,
        DecisionRule decision
    )
    {
        var missing = Math.Max(0, (rule.PiecesAsked ?? 0) - pieces.Count);
        var mayFail = rule.MayFail(pieces.Count + missing);
        var ifBad = Acceptance(Passing(pieces, missing, unknown: 0), mayFail);
        var ifGood = Acceptance(Passing(pieces, missing, unknown: 1), mayFail);

        double low = Math.Min(ifBad.Independent, ifBad.Common),
            high = Math.Max(ifGood.Independent, ifGood.Common);
        var (atLeast, atMost) = (decision.Decide(low), decision.Decide(high));
        var verdict = atLeast == atMost ? atLeast : Verdict.Undecided;

        List<string> reasons =
        [
            $"Rule used: {rule.InWords}.",
            $"{Counted(counts.Cut, "piece")} cut: {counts.Conforming} conform, {counts.Failing} do not conform, "
                + $"{counts.Undecided} undecided; {mayFail} may fail.",
        ];
        if (missing > 0)
            reasons.Add($"The rule asks for {rule.PiecesAsked} pieces; {missing} are still to be cut.");
        var open = missing + pieces.Count(piece => piece.Judgement.Probability is null);
        reasons.Add(
            open == 0
                ? $"The rule accepts with probability {Certainty(ifBad.Independent)} if the pieces were misread independently, "
                    + $"{Certainty(ifBad.Common)} if all were misread alike."
                : $"The rule accepts with probability {Certainty(low)} to {Certainty(high)}, "
                    + $"according to what the {open} pieces not determined are."
        );
        reasons.Add(
            $"With {Percent(share.Confidence)} confidence at least {Percent(share.LowerBound)} of "
                + (lotSize is { } lot ? $"the {lot} pieces in the lot" : "the supply")
                + " conform"
                + (
                    counts.Undecided > 0
                        ? $" ({Percent(share.LowerBoundIfUndecidedPass)} if every undecided piece does)."
                        : "."
                )
        );
        var undetermined = verdict == Verdict.Undecided && open > 0 && ifBad.Independent < ifGood.Independent;
        return new(verdict, undetermined ? null : (ifBad.Independent + ifGood.Independent) / 2, reasons);
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
        [.. pieces.Select(piece => piece.Judgement.Probability ?? unknown), .. Enumerable.Repeat(unknown, missing)];

    private static Judgement Overall(Judgement penetration, Judgement? retention)
    {
        if (retention is null)
            return new(
                penetration.Verdict,
                penetration.Probability,
                [.. penetration.Reasons, "No retention was asked for: penetration alone is judged."]
            );
        string[] reasons = [.. penetration.Reasons, .. retention.Reasons];
        Verdict[] verdicts = [penetration.Verdict, retention.Verdict];
        var verdict =
            verdicts.Contains(Verdict.DoesNotConform) ? Verdict.DoesNotConform
            : verdicts.Contains(Verdict.Undecided) ? Verdict.Undecided
            : Verdict.Conforms;
        // Two methods, two independent errors.
        var probability = penetration.Probability * retention.Probability;
        if (verdict == Verdict.DoesNotConform && probability is null)
            probability = verdicts[0] == Verdict.DoesNotConform ? penetration.Probability : retention.Probability;
        return new(verdict, probability, reasons);
    }

    private static string Sentence(Judgement overall, Judgement penetration, Judgement? retention)
    {
        var parts = $"penetration {Say(penetration)}";
        if (retention is not null)
            parts += $"; retention {Say(retention)}";
        return $"The batch {(overall.Verdict == Verdict.Undecided ? "is undecided" : overall.Verdict.InWords())}: {parts}.";
    }

    private static string Say(Judgement judgement) =>
        judgement is { Verdict: Verdict.Undecided, Probability: null } ? "not determined"
        : judgement.Verdict == Verdict.Undecided ? "is undecided"
        : judgement.Verdict.InWords();

    /// <summary>The pieces by verdict.</summary>
    public static PieceCounts Count(IReadOnlyList<PieceJudgement> pieces)
    {
        int Of(Verdict verdict) => pieces.Count(piece => piece.Judgement.Verdict == verdict);
        return new(pieces.Count, Of(Verdict.Conforms), Of(Verdict.DoesNotConform), Of(Verdict.Undecided));
    }

    private static void Check(IReadOnlyList<PieceJudgement> pieces, int? lotSize, AcceptanceRule rule)
    {
        if (pieces.Count == 0)
            throw new ArgumentException("At least one piece must have been cut.", nameof(pieces));
        if (pieces.Count > (lotSize ?? int.MaxValue))
            throw new ArgumentException($"{pieces.Count} pieces cannot come from a lot of {lotSize}.", nameof(pieces));
        if (pieces.Count > (rule.PiecesAsked ?? int.MaxValue))
            throw new ArgumentException(
                $"{pieces.Count} pieces were cut; the rule is for {rule.PiecesAsked}.",
                nameof(pieces)
            );
        var twice = pieces
            .GroupBy(piece => piece.Number, StringComparer.Ordinal)
            .FirstOrDefault(group => group.Count() > 1);
        if (twice is not null)
            throw new ArgumentException($"Piece {twice.Key} is given twice.", nameof(pieces));
    }
}
