using Alburnum.Acceptance;
using Alburnum.Acceptance.Risk;
using Alburnum.Acceptance.Variables;
using Alburnum.Cases;
using Alburnum.Penetration;
using Alburnum.Records.Tables;
using Alburnum.Requirements;

namespace Alburnum.Workflows.Acceptance;

/// <summary>What a batch is judged by where its pieces are counted.</summary>
public sealed record CountingRequest
{
    /// <summary>Pieces in the batch, at least those cut; null where not known.</summary>
    public int? Lot { get; init; }

    /// <summary>How many may fail.</summary>
    public required AcceptanceRule Rule { get; init; }

    /// <summary>The other rule that the same figure is read as; null where there is none.</summary>
    public AcceptanceRule? OtherRule { get; init; }

    /// <summary>Composite assays.</summary>
    public IReadOnlyList<Assay> Assays { get; init; } = [];

    /// <summary>Required retention, kg/m³; null where none is.</summary>
    public double? RequiredKgPerM3 { get; init; }

    /// <summary>How sure one must be.</summary>
    public DecisionRule Decision { get; init; } = DecisionRule.Usual;

    /// <summary>Confidence of the bound on the conforming share.</summary>
    public double Confidence { get; init; } = 0.95;

    /// <summary>Share of the lot that is asked to conform; null to take what the rule wants.</summary>
    public double? WantedShare { get; init; }
}

/// <summary>Judges a batch from the pieces cut from it.</summary>
public static class JudgeBatch
{
    private const int MorePiecesMax = 500;

    /// <summary>Pieces known by two counts alone, numbered from 1.</summary>
    /// <param name="cut">Pieces cut, 1 or more.</param>
    /// <param name="failures">Of them failing, 0 to all.</param>
    public static JudgedPieces Counted(int cut, int failures)
    {
        Require.InRange(failures, 0, cut, "failures");
        return new([
            .. Enumerable
                .Range(1, cut)
                .Select(i =>
                    (
                        i.ToString(System.Globalization.CultureInfo.InvariantCulture),
                        i > failures ? Verdict.Conforms : Verdict.DoesNotConform
                    )
                ),
        ]);
    }

    /// <summary>Pieces that somebody has judged.</summary>
    public static CountedBatch ByVerdicts(JudgedPieces pieces, CountingRequest request) =>
        ByCounting(
            [.. pieces.Pieces.Select(piece => new PieceJudgement(piece.Piece, Said(piece.Verdict)))],
            null,
            request
        );

    /// <summary>Pieces judged by their depths.</summary>
    /// <param name="pieces">The pieces.</param>
    /// <param name="rule">Required depth.</param>
    /// <param name="reading">Depth that stands for a whole zone.</param>
    /// <param name="request">What the batch is judged by.</param>
    public static CountedBatch ByDepths(
        MeasuredPieces pieces,
        DepthRule rule,
        DepthReading reading,
        CountingRequest request
    ) =>
        ByCounting(
            [
                .. pieces.Pieces.Select(piece => new PieceJudgement(
                    piece.Piece,
                    PieceConformity.Judge(
                        rule,
                        HandReadings.Profile(pieces.Section, piece.Readings),
                        request.Decision,
                        reading
                    )
                )),
            ],
            rule,
            request
        );

    /// <summary>Pieces by a value measured on each.</summary>
    /// <param name="pieces">The pieces.</param>
    /// <param name="request">What the batch is judged by.</param>
    /// <exception cref="InputRefusedException">The request does not go with what was measured.</exception>
    public static ValuedBatch ByVariables(ValuedPieces pieces, ValuesRequest request)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        ArgumentNullException.ThrowIfNull(request);
        var demand = request.Demand(pieces);
        return new(
            pieces,
            demand,
            VariablesConformity.Judge([.. pieces.Pieces.Select(piece => piece.Reading)], demand, request.Lot),
            request.Lot
        );
    }

    /// <summary>A case that was run.</summary>
    public static CaseBatch OfCase(JudgedCase judged)
    {
        PieceJudgement[] pieces =
        [
            .. judged.Pieces.Select(piece => new PieceJudgement(piece.Evidence.Piece, piece.Judgement)),
        ];
        return new(
            judged,
            pieces,
            judged is { Batch: { } batch, Required.Penetration: { } demand }
                ? Whole(batch, pieces, demand, new() { Lot = judged.Enquired.BatchSize, Rule = batch.Rule })
                : null
        );
    }

    private static CountedBatch ByCounting(
        IReadOnlyList<PieceJudgement> pieces,
        DepthRule? demand,
        CountingRequest request
    ) =>
        Whole(
            BatchConformity.Judge(
                new(pieces, request.Lot, request.Rule)
                {
                    Retentions = request.RequiredKgPerM3 is { } kgPerM3 ? [new(kgPerM3, request.Assays)] : [],
                    Confidence = request.Confidence,
                    Wanted = request.WantedShare is { } share ? new(share, WantedBy.Asked) : null,
                },
                request.Decision
            ),
            pieces,
            demand,
            request
        );

    private static CountedBatch Whole(
        BatchJudgement batch,
        IReadOnlyList<PieceJudgement> pieces,
        DepthRule? demand,
        CountingRequest request
    ) =>
        new()
        {
            Batch = batch,
            Pieces = pieces,
            Demand = demand,
            Other = request.OtherRule is { } other
                ? new(
                    other,
                    other.MayFail(pieces.Count),
                    BatchConformity.Judge(new(pieces, request.Lot, other), request.Decision).Penetration.Verdict
                )
                : null,
            Risks = demand is null ? null : RisksOf([.. pieces.Select(piece => piece.Judgement)], request.Decision),
            // A verdict that stands needs no more wood.
            SecondReadings =
                batch.Penetration.Verdict == Verdict.Undecided ? [.. Readings(pieces, request.Decision)] : [],
            MorePieces = batch.Penetration.Verdict == Verdict.Undecided ? More(batch, request.Lot) : null,
        };

    private static ReadingRisks RisksOf(IReadOnlyList<Judgement> pieces, DecisionRule decision) =>
        PieceRisks.Of(pieces, decision) is { } now && PieceRisks.Of(pieces, decision, 0.5) is { } better
            ? new(now, better)
            : new(null, null);

    private static IEnumerable<SecondReading> Readings(IReadOnlyList<PieceJudgement> pieces, DecisionRule decision)
    {
        foreach (var piece in pieces.Where(piece => piece.Judgement.Verdict == Verdict.Undecided))
            if (piece.Judgement.MarginMm is { StandardUncertainty: > 0 and var u } margin)
                yield return new(
                    piece.Number,
                    NextEvidence.SecondReadingDecides(margin, 0, u, decision),
                    NextEvidence.SecondReadingDecides(margin, 0, u / 2, decision)
                );
    }

    private static MorePieces? More(BatchJudgement batch, int? lot)
    {
        if (batch.Rule is not ShareMustPass { Share: < 1 } rule || batch.Lot.Bound.LowerBound >= rule.Share)
            return null;
        var (cut, conforming, sure) = (batch.Counts.Cut, batch.Counts.Conforming, batch.Lot.Bound.Confidence);
        var mostMore = Math.Min(MorePiecesMax, (lot ?? int.MaxValue) - cut);
        var needed = Enumerable
            .Range(1, Math.Max(0, mostMore))
            .Cast<int?>()
            .FirstOrDefault(more =>
                LotShare.LowerBound(conforming + more!.Value, cut + more.Value, lot, sure) >= rule.Share
            );
        return needed is { } pieces
            ? new EnoughPieces(
                rule.Share,
                pieces,
                NextEvidence.MorePiecesShow(cut - conforming, cut, pieces, lot, rule.Share, sure)
            )
            : new TooFewPieces(rule.Share, mostMore);
    }

    private static Judgement Said(Verdict verdict) =>
        new(
            verdict,
            verdict switch
            {
                Verdict.Conforms => ProbabilityRange.Exactly(1),
                Verdict.DoesNotConform => ProbabilityRange.Exactly(0),
                _ => null,
            },
            [new JudgedElsewhere(verdict)]
        );
}
