using Alburnum.Acceptance;
using Alburnum.Assaying;
using Alburnum.Penetration;
using Alburnum.Requirements;

namespace Alburnum.Cases;

/// <summary>A case with what was measured on each piece cut.</summary>
/// <param name="Predicted">The case with what was expected.</param>
/// <param name="Evidence">What was measured on each piece, in the order given, with the sapwood as stated filled in.</param>
public sealed record MeasuredCase(PredictedCase Predicted, IReadOnlyList<PieceEvidence> Evidence)
{
    /// <summary>The case with what is demanded.</summary>
    public RequiredCase Required => Predicted.Required;

    /// <summary>The case as it was put.</summary>
    public EnquiredCase Enquired => Predicted.Enquired;

    /// <summary>Mean depth over the pieces whose depth could be read, mm; null where there is none.</summary>
    /// <remarks>
    /// Its standard uncertainty joins the scatter between the pieces, s/√n (JCGM 100, 4.2.3), with the mean uncertainty of one reading, as if all
    /// were misread alike.
    /// </remarks>
    public Estimate? MeanDepthMm
    {
        get
        {
            List<Estimate> depths =
            [
                .. Evidence
                    .Where(piece => !piece.IsOffEdge)
                    .Select(piece => piece.Profile?.Statistics.MeanMm)
                    .OfType<Estimate>(),
            ];
            if (depths.Count == 0)
                return null;
            var mean = depths.Average(depth => depth.Value);
            var reading = depths.Average(depth => depth.StandardUncertainty);
            var scatter =
                depths.Count == 1
                    ? 0
                    : depths.Sum(depth => (depth.Value - mean) * (depth.Value - mean))
                        / (depths.Count - 1)
                        / depths.Count;
            return new(mean, Math.Sqrt(scatter + reading * reading));
        }
    }

    /// <summary>What a reader should know beside the verdict, each once: facts that do not go together first.</summary>
    public IReadOnlyList<CaseRemark> Remarks =>
        [
            .. Required.Discrepancies.Select(odd => new EnquiryAtOdds(odd)),
            .. OfDates(),
            .. OfFormula(),
            .. OfZones(),
            .. OfSections(),
            .. Predicted.NotPredicted,
            .. OfPrediction(),
        ];

    private IEnumerable<CaseRemark> OfDates()
    {
        if (Enquired.TreatedOn is not { } treatedOn)
            yield break;
        if (Enquired.SampledOn < treatedOn)
            yield return new SampledBeforeTreated(Enquired.SampledOn, treatedOn);
        if (Enquired.MoistureMeasuredOn is { } measuredOn && measuredOn > treatedOn)
            yield return new MoistureMeasuredLater(measuredOn, treatedOn);
    }

    private IEnumerable<CaseRemark> OfFormula() =>
        Enquired.AssayBasis.Product is { } product
            ?
            [
                .. OtherProduct(product),
                .. Enquired
                    .Assays.Where(assay => assay.PartsNotAnalysed.Count > 0)
                    .GroupBy(
                        assay => string.Join(", ", assay.PartsNotAnalysed.Select(part => part.Name)),
                        StringComparer.Ordinal
                    )
                    .Select(samples => new SamplesInPart(
                        [.. samples.Select(assay => assay.Sample).Distinct(StringComparer.Ordinal)],
                        [.. samples.First().PartsNotAnalysed.Select(part => part.Name)]
                    )),
                .. Enquired
                    .Assays.Where(assay => assay.PartsOffFormula.Count > 0)
                    .Select(assay => new SampleOffFormula(assay.Sample, product, assay.PartsOffFormula)),
            ]
            : [];

    private IEnumerable<CaseRemark> OtherProduct(ProductFormula product) =>
        Enquired is { Enquiry.PreservativeKind: { } stated, AssayBasis.ProductKind: { } counted }
        && stated.Key != counted.Key
            ? [new ProductOfAnotherKind(stated, product)]
            : [];

    private IEnumerable<CaseRemark> OfZones()
    {
        var assayed = new AssayedRetentions(Required);
        if (assayed.IsZoneLeftOpen)
            yield return new ZoneLeftOpen();
        foreach (var assay in assayed.NotCounted)
            yield return new OtherZoneAssayed(assay);
    }

    private IEnumerable<CaseRemark> OfSections()
    {
        if (
            Enquired is
            { StatedSapwoodMm: { } depthMm, Enquiry.Species: { SapwoodWidth.Value.IsDistinct: false } species }
        )
            yield return new BorderNotDistinct(species, depthMm);
        if (
            Enquired.StatedSapwood is { } stated
            && Evidence.Any(piece =>
                piece.Profile?.Faces.Any(face => face.SapwoodDepthMm.Contains(stated.Value)) == true
            )
        )
            yield return new SapwoodAsStated(stated, Enquired.StatedSapwoodUMm is not null, Moves(stated));
        List<double> byRuler =
        [
            .. Evidence
                .Where(piece => piece is { Kind: EvidenceKind.Ruler, Profile: not null })
                .SelectMany(piece => piece.Profile!.Faces)
                .Where(face =>
                    face.SapwoodUncertaintyMm > 0
                    && face.SapwoodDepthMm.Any(depthMm =>
                        depthMm is > 0 and { } border
                        && border != Enquired.StatedSapwoodMm
                        && Moves(new(border, face.SapwoodUncertaintyMm))
                    )
                )
                .Select(face => face.SapwoodUncertaintyMm),
        ];
        if (byRuler.Count > 0)
            yield return new SapwoodByRuler(byRuler.Max());
        List<PieceEvidence> photographed =
        [
            .. Evidence.Where(piece => piece is { Kind: EvidenceKind.Photograph, Profile: not null }),
        ];
        IReadOnlyList<string> Named(Func<PieceEvidence, bool> which) =>
            [.. photographed.Where(which).Select(piece => piece.Piece)];
        var notStated = Named(piece => piece.IsIncised == false && IncisedBorder.LooksIncised(piece.Profile!) == true);
        if (notStated.Count > 0)
            yield return new IncisionsNotStated(notStated);
        var notSeen = Named(piece => piece.IsIncised == true && IncisedBorder.LooksIncised(piece.Profile!) == false);
        if (notSeen.Count > 0)
            yield return new IncisionsNotSeen(notSeen);
        var onTrust = photographed.Count(piece => piece.IsSizeOnTrust);
        if (onTrust > 0)
            yield return new SizesOnTrust(onTrust);
    }

    private bool Moves(Estimate sapwoodMm) =>
        Required.Penetration is { } depth && PieceConformity.MovesWithBorder(depth, sapwoodMm);

    // Both means count what goes deeper at incisions.
    private IEnumerable<CaseRemark> OfPrediction() =>
        Predicted.Prediction is { MeanMm: var expected }
        && MeanDepthMm is { } mean
        && (mean.Value < expected.Low || mean.Value > expected.High)
            ? [new MeasuredOutsidePrediction(mean, expected)]
            : [];

    /// <summary>The case judged: every piece against the demand, then the batch.</summary>
    /// <param name="decision">How sure one must be.</param>
    /// <exception cref="ArgumentException">No pieces, a name twice, or more pieces than the batch has.</exception>
    public JudgedCase Judged(DecisionRule decision) =>
        Required.Penetration is { } depth
            ? Against(depth, decision)
            : Required.Answer switch
            {
                // A prohibition rests on no reading, so that it has no chance of being wrong by one.
                NotPermitted no => ByRetention(new(Verdict.DoesNotConform, null, [new CodeForbids(no)]), decision),
                NotNeeded or NotCovered => ByRetention(new(Verdict.Undecided, null, [.. NoDemandOfCode()]), decision),
                var answer => throw new InvalidOperationException($"{answer} is not an answer."),
            };

    private JudgedCase Against(DepthRule depth, DecisionRule decision)
    {
        var (pieces, batch) = Batch(depth, decision);
        var byDemand = ByDemand(decision);
        List<CaseReason> retention = [.. NoRetention()];
        var overall = Overall(batch.Overall, depth) with
        {
            Reasons = [batch.Parts, .. OfDemands(byDemand), .. OfRetentions(decision), .. retention],
        };
        var notJudged = batch.NotJudged.Where(reason => reason is not (NoRetentionRequired or AssayMissing));
        return new(
            this,
            pieces,
            batch,
            batch.Findings with
            {
                Rule = new(overall, batch.Penetration, batch.Retention),
                NotJudged = [.. NoContract(), .. NoCode(), .. retention, .. NoMoisture(), .. notJudged],
            }
        )
        {
            ByDemand = byDemand,
        };
    }

    // Whatever a contract says, timber that the code does not permit does not conform. What meets the least of the demands possible may still fall short of the others.
    private Judgement Overall(Judgement batch, DepthRule depth) =>
        Required.Answer switch
        {
            NotPermitted => batch with { Verdict = Verdict.DoesNotConform, Probability = null },
            NotCovered { Least: not null } open when batch.Verdict == Verdict.Conforms && !open.IsMetBy(depth) =>
                batch with
                {
                    Verdict = Verdict.Undecided,
                },
            _ => batch,
        };

    /// <summary>What becomes of the demands on the depth: which decides of two, or that the contract's stands alone.</summary>
    private IEnumerable<CaseReason> OfDemands(IReadOnlyList<DemandJudged> byDemand)
    {
        if (Required.Answer is Required { Requirement.IsRecommended: true } advised)
            yield return new CodeOnlyRecommends(advised);
        if (Required.Answer is NotCovered { Least: { } least })
            yield return new LeastOfCode(least);
        if (Required.Contract is not ContractDemand demand)
            yield break;
        if (byDemand is [var contract, var code])
            yield return new TwoDemands(demand, contract, code);
        else
            yield return new OnlyContractDemands(demand, Required.Answer);
    }

    private IEnumerable<CaseReason> OfRetentions(DecisionRule decision)
    {
        var assayed = new AssayedRetentions(Required);
        if (
            Enquired.Assays.Count > 0
            && (
                assayed.Demands is [{ By: not RetentionDemandedBy.Code }] or { Count: > 1 }
                || Required.Penetration is null
            )
        )
            yield return new RetentionsJudged([
                .. assayed.Demands.Select(each => new RetentionJudged(
                    each,
                    RetentionConformity.Judge(assayed.Of(each), decision)
                )),
            ])
            {
                Zones = assayed.Zones,
            };
    }

    private IEnumerable<CaseReason> NoDemandOfCode() =>
        Required.Answer switch
        {
            NotNeeded none => [new CodeAsksForNone(none)],
            NotCovered { Reason: InsectsAtWork there } => [new CodeSilentOnInsects(there)],
            NotCovered unknown => [new RulebookSilent(unknown)],
            _ => [],
        };

    // That the code asks for none leaves nothing of it unjudged; that it is silent does.
    private IEnumerable<CaseReason> NoCode() =>
        Required.Answer is NotCovered open && !(Required.Penetration is { } depth && open.IsMetBy(depth))
            ? NoDemandOfCode()
            : [];

    private IEnumerable<CaseReason> NoContract() =>
        Required.Contract is { } stated and not ContractDemand
            ? [new ContractNotJudged(stated)]
            : Required
                .Discrepancies.OfType<UseClassesDiffer>()
                .Where(odd => odd.IsUseLeftOut)
                .Select(odd => new UseNotJudged(odd));

    /// <summary>Every piece against a depth, then the batch.</summary>
    private (IReadOnlyList<JudgedPiece> Pieces, BatchJudgement Batch) Batch(DepthRule depth, DecisionRule decision)
    {
        List<JudgedPiece> pieces = [.. Evidence.Select(piece => new JudgedPiece(piece, Judge(piece, depth, decision)))];
        var batch = BatchConformity.Judge(
            new(
                [.. pieces.Select(piece => new PieceJudgement(piece.Evidence.Piece, piece.Judgement))],
                Enquired.BatchSize,
                Required.Acceptance
            )
            {
                Retentions = new AssayedRetentions(Required).Deciding,
            },
            decision
        );
        return (pieces, batch);
    }

    private IReadOnlyList<DemandJudged> ByDemand(DecisionRule decision) =>
        (Required.Contract, Required.Answer.InAnyEvent) is (ContractDemand contract, { Requirement: var code })
            ?
            [
                new(true, contract.Name, contract.Penetration, Batch(contract.Penetration, decision).Batch.Penetration),
                new(false, code.PenetrationName, code.Penetration, Batch(code.Penetration, decision).Batch.Penetration),
            ]
            : [];

    // Where no depth is known, a retention may be all the same.
    private JudgedCase ByRetention(Judgement overall, DecisionRule decision)
    {
        var nothingToMeet = new Judgement(Verdict.Undecided, null, [new NoDepthKnown()]);
        var retention =
            Enquired.Assays.Count > 0
                ? RetentionConformity.Judge(new AssayedRetentions(Required).Deciding, decision)
                : null;
        var whole = retention is null
            ? overall
            : overall with
            {
                Verdict = BatchConformity.Weakest([overall.Verdict, retention.Verdict]),
                Reasons = [.. overall.Reasons, .. OfRetentions(decision)],
            };
        return new(
            this,
            [.. Evidence.Select(piece => new JudgedPiece(piece, nothingToMeet))],
            null,
            new(
                new(whole, null, retention),
                null,
                [
                    .. NoContract(),
                    retention is null ? new NothingJudged() : new DepthNotJudged(),
                    .. retention?.Reasons.OfType<RetentionNotJudged>() ?? [],
                    .. OpenOfRetention(),
                ]
            )
        );
    }

    private static Judgement Judge(PieceEvidence piece, DepthRule rule, DecisionRule decision) =>
        piece switch
        {
            { Profile: null } => new(Verdict.Undecided, null, [new DepthNotDetermined()]),
            { IsOffEdge: true } => new(Verdict.Undecided, null, [new OutlineOffEdge()]),
            { Profile: var profile } => PieceConformity.Judge(rule, profile, decision),
        };

    /// <summary>What the verdict leaves out, so that silence is never taken for a pass.</summary>
    private IEnumerable<CaseReason> NoRetention()
    {
        if (Required.RequiredKgPerM3 is null)
            yield return new RetentionNotStated();
        else if (Enquired.Assays.Count == 0)
            yield return new RetentionNotAssayed();
        foreach (var reason in OpenOfRetention())
            yield return reason;
        // A figure that the contract itself names stands for that of its class.
        if (
            Required is
            {
                Contract: ContractDemand { Name: var name },
                ClassKgPerM3: null,
                RequiredKgPerM3: not null,
                Enquired.StatedRetentionKgPerM3: null
            }
        )
            yield return new RetentionOfClassNotKnown(name);
    }

    // What stands behind a retention that was judged.
    private IEnumerable<CaseReason> OpenOfRetention()
    {
        var assayed = new AssayedRetentions(Required);
        if (Enquired.Assays.Count == 0 || assayed.Demands.Count == 0)
            yield break;
        if (
            Required.Answer is Required { } or NotCovered
            && assayed.Demands.All(demand => demand.By != RetentionDemandedBy.Code)
        )
            yield return new RetentionOfCodeNotKnown();
        if (assayed.TakenForGranted is { } taken)
            yield return taken;
    }

    private IEnumerable<CaseReason> NoMoisture()
    {
        if (
            Required.Answer is Required { Requirement.MoistureMaxPercent: { } most }
            && Enquired.Enquiry.MoisturePercent is null
        )
            yield return new MoistureNotStated(most);
    }
}
