using Alburnum.Acceptance;
using Alburnum.Cases;
using Alburnum.Penetration;
using Alburnum.Records.Store;
using Alburnum.Requirements;
using Alburnum.Workflows.Cases;

namespace Alburnum.Reports.Words;

/// <summary>What the verdict on a case rests on beside its pieces and its batch, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class CaseWords(Wording wording)
{
    private readonly RequirementWords _requirements = new(wording);

    /// <summary>In the language chosen.</summary>
    public static CaseWords Current => new(Wording.Current);

    /// <summary>What a case is about.</summary>
    /// <param name="component">The component.</param>
    /// <param name="section">Its size.</param>
    /// <param name="species">The species.</param>
    /// <param name="useClass">Use class.</param>
    /// <param name="isUseClassOfCode">Whether the use class is the code's own for the component.</param>
    /// <param name="contractsClass">The class of the contract that the use class is for; null where it comes from elsewhere.</param>
    public string Subject(
        string component,
        string section,
        string species,
        string useClass,
        bool isUseClassOfCode,
        string? contractsClass
    ) =>
        wording.Say(
            "cases.subject",
            ("component", component),
            ("section", section),
            ("species", species),
            ("useClass", new SheetWords(wording).UseClass(useClass, isUseClassOfCode, contractsClass))
        );

    /// <summary>The class that the contract names, where nothing else is said of it.</summary>
    public string StatedClass(string named) => wording.Say("cases.stated-class", ("class", named));

    /// <summary>What the code demands, or recommends.</summary>
    /// <param name="outcome">Which of the two.</param>
    /// <param name="rulebook">The code.</param>
    /// <param name="penetration">Its name for the penetration.</param>
    /// <param name="depth">The same in words.</param>
    /// <param name="standing">Standing of that depth.</param>
    public string Demanded(
        AnswerOutcome outcome,
        string rulebook,
        string penetration,
        string depth,
        Standing standing
    ) =>
        wording.Say(
            outcome == AnswerOutcome.Recommended ? "cases.advised" : "cases.demanded",
            ("rulebook", rulebook),
            ("penetration", penetration),
            ("depth", depth),
            ("standing", wording.Say(standing))
        );

    /// <summary>Why the code demands nothing.</summary>
    /// <param name="rulebook">The code.</param>
    /// <param name="outcome">Its answer, in a few words.</param>
    /// <param name="reason">Why, a sentence.</param>
    public string NoDemand(string rulebook, string outcome, string reason) =>
        wording.Say("cases.no-demand", ("rulebook", rulebook), ("outcome", outcome), ("reason", reason));

    /// <summary>The batch and its rule.</summary>
    /// <param name="pieces">Pieces in the batch.</param>
    /// <param name="cut">Pieces cut.</param>
    /// <param name="rule">The acceptance rule.</param>
    public string Batch(int pieces, int cut, string rule) =>
        wording.Say("cases.batch", ("pieces", Figures.Whole(pieces)), ("cut", Figures.Whole(cut)), ("rule", rule));

    /// <summary>That a piece was last read with marks that are not in its folder.</summary>
    /// <param name="piece">Name of the piece.</param>
    public string OtherMarks(string piece) => wording.Say("cases.other-marks", ("piece", piece));

    /// <summary>That the marks of the run before cannot be compared.</summary>
    public string BeforeCannotBeRead => wording.Say("cases.before-cannot-be-read");

    /// <summary>As which case a run was kept, where that may surprise; null where it is the same case as before, or its first run and the only one of its reference.</summary>
    /// <param name="kept">How it was kept.</param>
    /// <param name="reference">Its reference.</param>
    /// <param name="title">What it is about.</param>
    /// <param name="client">Who asked.</param>
    public string? KeptAs(KeptAs kept, string reference, string title, string client)
    {
        ArgumentNullException.ThrowIfNull(kept);
        if (kept.Namesake is { } other)
            return wording.Say(
                "cases.kept-beside",
                ("reference", reference),
                ("other", Figures.Whole(other.Number)),
                ("title", other.Title),
                ("client", other.Client),
                ("number", Figures.Whole(kept.CaseNumber))
            );
        return kept.Before is { } before && (before.Title, before.Client) != (title, client)
            ? wording.Say(
                "cases.kept-as-another-run",
                ("number", Figures.Whole(before.Number)),
                ("reference", reference),
                ("title", before.Title),
                ("client", before.Client)
            )
            : null;
    }

    /// <summary>The sentence of a reason.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A reason of a kind that no sentence is known for.</exception>
    public string Say(CaseReason reason) =>
        reason switch
        {
            CodeAsksForNone { Answer: var none } => wording.Say("cases.code-asks-for-none", ("reason", none.Reason)),
            CodeForbids { Answer: var no } => no.Reason,
            RulebookSilent { Answer: var unknown } => _requirements.Answers.Say(unknown),
            CodeSilentOnInsects { There: var there } => _requirements.Answers.Say(there),
            NoDepthKnown => wording.Say("cases.no-depth-known"),
            RetentionUnknown => wording.Say("cases.retention-unknown"),
            RetentionNotStated => wording.Say("cases.retention-not-stated"),
            RetentionNotAssayed => wording.Say("cases.retention-not-assayed"),
            MoistureNotStated moisture => wording.Say(
                "cases.moisture-not-stated",
                ("percent", Figures.Digits(moisture.MaxPercent))
            ),
            TwoDemands two => wording.Say(
                "cases.two-demands",
                ("contract", two.ByContract.Name),
                ("byContract", wording.SayRule(two.ByContract.Penetration.Verdict)),
                ("code", two.ByCode.Name),
                ("byCode", wording.SayRule(two.ByCode.Penetration.Verdict)),
                ("which", _requirements.Answers.Say(two.Contract, two.ByCode.Name))
            ),
            CodeOnlyRecommends { Answer.Requirement.PenetrationName: var name } => wording.Say(
                "cases.only-recommended",
                ("demand", name)
            ),
            LeastOfCode { Demand.Requirement: var least } => wording.Say(
                "cases.least-of-code",
                ("demand", least.PenetrationName),
                ("depth", _requirements.Depths.Say(least.Penetration))
            ),
            OnlyContractDemands only => Alone(only),
            RetentionsJudged { Each: [var only] } => wording.Say("cases.one-retention", ("each", Say(only))),
            RetentionsJudged several => wording.Say(
                several.Zones switch
                {
                    ZonesAskedFor.One => "cases.several-retentions",
                    ZonesAskedFor.Several => "cases.several-retentions-of-zones",
                    _ => "cases.several-retentions-zone-not-known",
                },
                ("each", string.Join("; ", several.Each.Select(Say)))
            ),
            RetentionOfClassNotKnown unknown => wording.Say(
                "cases.retention-of-class-not-known",
                ("class", unknown.Class)
            ),
            RetentionOfCodeNotKnown => wording.Say("cases.retention-of-code-not-known"),
            ZoneTakenForGranted { Zone: var zone } => TakenForGranted(zone),
            ContractNotJudged stated => _requirements.Answers.Say(stated.Class, codesName: null),
            UseNotJudged { Of: var odd } => wording.Say(
                "cases.use-not-judged",
                ("class", odd.Contract!.StatedClass),
                ("for", odd.Contract.For.Label),
                ("use", _requirements.Rows.Label(odd.Other))
            ),
            DepthNotJudged => wording.Say("cases.depth-not-judged"),
            NothingJudged => wording.Say("cases.nothing-judged"),
            _ => throw ReasonWords.Unknown(reason),
        };

    private string TakenForGranted(string? zone) =>
        zone is null
            ? wording.Say("cases.open-zone-taken-for-granted")
            : wording.Say("cases.zone-taken-for-granted", ("zone", zone));

    private string Alone(OnlyContractDemands only) =>
        wording.Say(
            only.Code switch
            {
                NotNeeded => "cases.only-contract-asks",
                NotPermitted => "cases.only-contract-forbidden",
                _ => "cases.only-contract",
            },
            ("contract", only.Contract.Name),
            ("depth", _requirements.Depths.Say(only.Contract.Penetration)),
            ("rulebook", only.Contract.Answer.Trace.RulebookTitle),
            ("reason", _requirements.Answers.Reason(only.Code) ?? "")
        );

    private string Say(RetentionJudged judged) =>
        wording.Say(
            "cases.retention-judged",
            ("demand", Say(judged.Demand)),
            (
                "verdict",
                judged.Judgement.Reasons.Any(reason => reason is RetentionNotJudged)
                    ? wording.Say("cases.retention-not-judged")
                    : wording.Say(judged.Judgement.Verdict)
            )
        );

    /// <summary>Who asks for how much, and in which zone.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Nobody known asks for it.</exception>
    public string Say(RetentionDemand demand)
    {
        ArgumentNullException.ThrowIfNull(demand);
        var kgPerM3 = Figures.KgPerM3(demand.KgPerM3);
        (string, string) amount = (
            "amount",
            demand.Zone is { Name: var zone }
                ? wording.Say("cases.retention-in-zone", ("amount", kgPerM3), ("zone", zone))
                : kgPerM3
        );
        return demand.By switch
        {
            RetentionDemandedBy.Code => wording.Say("cases.retention-by-code", amount),
            RetentionDemandedBy.Class => wording.Say("cases.retention-by-class", ("class", demand.Class ?? ""), amount),
            RetentionDemandedBy.Contract => wording.Say("cases.retention-by-contract", amount),
            _ => throw new ArgumentOutOfRangeException(nameof(demand), demand, "Nobody known asks for it."),
        };
    }

    /// <summary>What stands in place of a piece's name for a photograph that was left out.</summary>
    public string LeftOut => wording.Say("cases.left-out");

    /// <summary>A photograph that was left out, why, and what it would have changed.</summary>
    public string LeftOutFor(string file, string reason, string changes) =>
        wording.Say("cases.left-out.for", ("file", file), ("reason", reason), ("changes", changes));

    /// <summary>What a photograph that was left out would have changed.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A reading of a kind that no sentence is known for.</exception>
    public string Say(LeftOutReading leftOut) =>
        leftOut switch
        {
            LeftOutUnread { Photograph.File: null } => wording.Say("cases.left-out.not-opened"),
            LeftOutUnread => wording.Say("cases.left-out.not-read"),
            LeftOutRead { With: null } => wording.Say("cases.left-out.more-than-batch"),
            LeftOutRead { Piece: { } piece, With: { } with } => wording.Say(
                piece.Evidence.Profile is null ? "cases.left-out.no-depth" : "cases.left-out.with-it",
                ("piece", wording.Say(piece.Judgement.Verdict)),
                ("rule", new FindingWords(wording).Begins(with.Findings))
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(leftOut), leftOut, "Not a reading."),
        };

    /// <summary>Whether the rule would be met with every photograph that was left out, where no more is known.</summary>
    /// <param name="verdict">The rule's verdict.</param>
    public string WithAllLeftOut(Verdict verdict) =>
        wording.Say("cases.left-out.with-all", ("rule", wording.SayRule(verdict)));

    /// <summary>What would be found with every photograph that was left out.</summary>
    /// <param name="with">What would be found.</param>
    public string WithAllLeftOut(BatchFindings with) =>
        wording.Say("cases.left-out.with-all", ("rule", new FindingWords(wording).Begins(with)));

    /// <summary>A headline whose verdicts turn with photographs that were left out.</summary>
    /// <param name="headline">The headline without them.</param>
    /// <param name="with">What would be found with one of them, or with all.</param>
    public string HeadlineWithLeftOut(string headline, BatchFindings with) =>
        wording.Say(
            "cases.left-out.headline",
            ("headline", headline),
            ("rule", new FindingWords(wording).Begins(with))
        );

    /// <summary>The sentence of a remark.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A remark of a kind that no sentence is known for.</exception>
    public string Say(CaseRemark remark) =>
        remark switch
        {
            EnquiryAtOdds { Discrepancy: var odd } => new DiscrepancyWords(wording).Say(odd),
            SampledBeforeTreated(var sampled, var treated) => wording.Say(
                "cases.remark.sampled-before-treated",
                ("sampled", Figures.Day(sampled, wording)),
                ("treated", Figures.Day(treated, wording))
            ),
            MoistureMeasuredLater(var measured, var treated) => wording.Say(
                "cases.remark.moisture-measured-later",
                ("measured", Figures.Day(measured, wording)),
                ("treated", Figures.Day(treated, wording))
            ),
            BorderNotDistinct(var species, var stated) => wording.Say(
                "cases.remark.border-not-distinct",
                ("species", species.Name),
                ("stated", Figures.Mm(stated))
            ),
            SapwoodAsStated { MovesDemand: false, DepthMm: var depth } => wording.Say(
                "cases.remark.sapwood-taken",
                ("depth", Figures.Mm(depth.Value))
            ),
            SapwoodAsStated(var depth, var isStated, _) => wording.Say(
                isStated ? "cases.remark.sapwood-as-stated" : "cases.remark.sapwood-to-the-millimetre",
                ("depth", Figures.Mm(depth.Value)),
                ("u", Figures.Number(depth.StandardUncertainty, 2))
            ),
            SapwoodByRuler(var u) => wording.Say("cases.remark.sapwood-by-ruler", ("u", Figures.Number(u, 2))),
            IncisionsNotStated(var pieces) => wording.Say("cases.remark.incisions-not-stated", Pieces(pieces)),
            IncisionsNotSeen(var pieces) => wording.Say("cases.remark.incisions-not-seen", Pieces(pieces)),
            SampleOffFormula(var sample, var product, var parts) => wording.Say(
                "cases.remark.sample-off-formula",
                ("sample", sample),
                ("said", new AssayWords(wording).OffFormula(product, parts))
            ),
            ProductOfAnotherKind(var stated, var counted) => wording.Say(
                "cases.remark.product-of-another-kind",
                ("stated", stated.Name),
                ("counted", counted.Name)
            ),
            SamplesInPart(var samples, var parts) => wording.Say(
                "cases.remark.samples-in-part",
                ("parts", string.Join(", ", parts)),
                ("samples", string.Join(", ", samples))
            ),
            ZoneLeftOpen => wording.Say("cases.remark.zone-left-open"),
            OtherZoneAssayed { Assay: { Sample: var sample, Zone: var zone } } => zone?.DepthMm is { } zoneMm
                ? wording.Say("cases.remark.other-zone-assayed", ("sample", sample), ("depth", Figures.Digits(zoneMm)))
                : wording.Say("cases.remark.sapwood-assayed", ("sample", sample)),
            SizesOnTrust(var pieces) => wording.Say(
                "cases.remark.sizes-on-trust",
                ("pieces", wording.Count("count.piece", pieces))
            ),
            _ => OfExpectation(remark),
        };

    private string OfExpectation(CaseRemark remark) =>
        remark switch
        {
            NoDepthToReach => wording.Say("expectation.no-depth"),
            PermeabilityNotKnown { IsHeartwood: true, Species: var species } => wording.Say(
                "expectation.heartwood-permeability-not-known",
                ("species", species.Name)
            ),
            PermeabilityNotKnown { Species: var species } => wording.Say(
                "expectation.sapwood-permeability-not-known",
                ("species", species.Name)
            ),
            DensityNotKnown { Species: var species } => wording.Say(
                "expectation.density-not-known",
                ("species", species.Name)
            ),
            SapwoodNotKnown { Species: var species } => wording.Say(
                "expectation.sapwood-not-known",
                ("species", species.Name)
            ),
            ChargeNotPlanned { Shortfall: var shortfall } => wording.Say(
                "expectation.charge-not-planned",
                ("why", new ChargeWords(wording).Say(shortfall))
            ),
            NotInWater { Preservative: var kind } => _requirements.Preservatives.NotPredicted(kind),
            MeasuredOutsidePrediction { MeasuredMm: var measured, PredictedMm: var predicted } => wording.Say(
                measured.Value < predicted.Low ? "expectation.shallower" : "expectation.deeper",
                ("measured", Figures.Measured(measured.Value, measured.StandardUncertainty, "mm")),
                ("low", Figures.Number(predicted.Low, 1)),
                ("high", Figures.Number(predicted.High, 1))
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(remark), remark, "Not a remark."),
        };

    private static (string, string) Pieces(IReadOnlyList<string> names) => ("pieces", string.Join(", ", names));
}
