using Alburnum.Acceptance;
using Alburnum.Cases;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;
using Alburnum.Reports.Words;
using Alburnum.Requirements;
using Alburnum.Workflows.Cases;

namespace Alburnum.Reports.Documents;

/// <summary>From a case's result to the document that leaves the program. The one place where the two meet.</summary>
public static class CaseMapping
{
    // A verdict that turns with what the case leaves out says so in its headline.
    private static FindingsDocument Findings(CaseReading run)
    {
        var findings = FindingsMapping.Of(run.Judged.Findings);
        IEnumerable<JudgedCase?> with = run.LeftOut.Each.OfType<LeftOutRead>().Select(read => read.With);
        return
            with.Append(run.LeftOut.Together)
                .FirstOrDefault(judged => judged is { } && Verdicts(judged) != Verdicts(run.Judged))
                is { Findings: var other }
            ? findings with
            {
                Headline = CaseWords.Current.HeadlineWithLeftOut(findings.Headline, other),
            }
            : findings;
    }

    // The whole is undecided wherever something is not judged: penetration and retention each may turn without it.
    private static (Verdict Whole, Verdict? Penetration, Verdict? Retention) Verdicts(JudgedCase judged) =>
        (judged.Overall.Verdict, judged.Findings.Rule.Penetration?.Verdict, judged.Findings.Rule.Retention?.Verdict);

    private static RequirementWords Words => RequirementWords.Current;

    /// <summary>Makes the document.</summary>
    /// <param name="run">The case measured and judged.</param>
    /// <param name="cautions">Cautions to be printed with the result.</param>
    /// <param name="program">Program and version that made the result.</param>
    /// <param name="runAt">When it was made, UTC.</param>
    public static CaseDocument From(CaseReading run, IReadOnlyList<string> cautions, string program, DateTime runAt)
    {
        ArgumentNullException.ThrowIfNull(run);
        var result = run.Judged;
        var @case = result.Enquired;
        var trace = result.Required.Answer.Trace;
        return new()
        {
            Format = CaseDocument.FormatName,
            Version = CaseDocument.FormatVersion,
            Program = program,
            Reference = @case.Reference,
            Title = @case.Title,
            Client = @case.Client,
            SampledOn = @case.SampledOn,
            RunAt = runAt,
            Enquiry = Enquiry(trace),
            Requirement = Requirement(result) with
            {
                Warnings = [.. run.Warnings.Select(Words.Say)],
                Unless = [.. run.Insects.Select(Words.Answers.Say)],
            },
            Prediction = ExpectationMapping.Prediction(run),
            Charge = ExpectationMapping.Charge(run),
            Remarks = result.Measured.Remarks is { Count: > 0 } remarks
                ? [.. remarks.Select(CaseWords.Current.Say)]
                : null,
            Batch = Batch(result),
            Pieces =
            [
                .. result.Pieces.Select(piece => Piece(piece, run.Readings.GetValueOrDefault(piece.Evidence.Piece))),
            ],
            LeftOut = [.. run.LeftOut.Each.Select(LeftOutMapping.From)],
            VerdictWithLeftOut = run.LeftOut.Together is { } together ? Verdict(together.Overall) : null,
            WithLeftOut = run.LeftOut.Together is { Findings: var all } ? CaseWords.Current.WithAllLeftOut(all) : null,
            Retention = Retention(result),
            Verdict = FindingsMapping.Rule(result.Overall),
            Findings = Findings(run),
            WeakestStanding = trace.WeakestStanding,
            Sources = Sources(trace, (result.Required.Contract as ContractDemand)?.Answer.Trace),
            Cautions =
            [
                .. cautions,
                .. ExpectationMapping.Cautions(run.Expected),
                .. run.Readings.Values.SelectMany(ReadingWords.Cautions).Distinct(StringComparer.Ordinal),
            ],
        };
    }

    private static EnquiryDocument Enquiry(Trace trace)
    {
        var enquiry = trace.AsAnswered;
        return new()
        {
            Component = Words.Answers.Component(enquiry) ?? SheetWords.Current.NotStated,
            Section = enquiry.Section?.Label ?? SheetWords.Current.NotStated,
            Form = enquiry.FormOrFromSection ?? TimberForm.Sawn,
            Species = enquiry.Species?.Name ?? enquiry.NotOneSpecies?.Name ?? SheetWords.Current.NotStated,
            BotanicalName = enquiry.Species is { } species ? string.Join(", ", species.BotanicalNames) : "",
            UseClass = trace.UseClassGiven is { } given ? Words.Rows.Label(given) : SheetWords.Current.NotStated,
            UseClassByCode = trace.Step(Subject.UseClass)?.Finding is Settled,
            UseClassByContract = (trace.Step(Subject.UseClass)?.Finding as UseClassOfContract)?.StatedClass,
            UseClassInWords = string.Join("; ", enquiry.UseClasses.Select(Words.Exposure.Situation)),
            ServiceLifeYears = enquiry.Life?.Years,
            ServiceLifeByCode = trace.Step(Subject.Life)?.Finding is Settled,
            Incised = enquiry.IsIncised,
            ExposedHeartwood = enquiry.HasExposedHeartwood,
            MoisturePercent = enquiry.MoisturePercent,
            StatedClass = enquiry.StatedClass,
        };
    }

    private static RequirementDocument Requirement(JudgedCase result)
    {
        var trace = result.Required.Answer.Trace;
        RequirementDocument Answered(Answer answer) =>
            new()
            {
                Rulebook = trace.RulebookTitle,
                RulebookCopy = RulebookCopyDocument.Of(trace.Copy),
                Outcome = answer.Outcome,
                Reason = Words.Answers.Reason(answer),
                DepthMm = result.Required.Penetration is { } depth ? EvenDepthMm(depth) : null,
                RetentionKgPerM3 = result.Required.RequiredKgPerM3,
                AnalyticalZone = result.Required.CodesZone?.Name,
                AnalyticalZoneStanding = result.Required.CodesZoneStanding,
                Conditions = [.. Words.Answers.Beside(answer)],
                Contract = ContractDocument.Of(result.Required.Contract, answer),
                Trace = [.. trace.Steps.SelectMany(Rows), .. trace.FactsUsed.Select(Row)],
            };
        return result.Required.Answer switch
        {
            Required { Requirement: var requirement } required => Answered(required) with
            {
                Penetration = requirement.PenetrationName,
                PenetrationInWords = Words.Depths.Say(requirement.Penetration),
                PenetrationStanding = trace.PenetrationStanding,
                ZoneFromMm = requirement.Zone?.FromMm,
                ZoneDepthMm = requirement.Zone?.DepthMm,
                // A figure that the contract names is not a multiple of anything.
                RetentionFactor = IsRetentionOfCode(result.Required) ? requirement.Retention?.Factor : null,
                RetentionStanding = IsRetentionOfCode(result.Required) ? trace.StandingOf(Subject.Retention) : null,
                MoistureMaxPercent = requirement.MoistureMaxPercent,
                MoistureStanding = requirement.MoistureMaxPercent is null ? null : trace.StandingOf(Subject.Moisture),
                Conditions = [.. requirement.Conditions.Select(Words.Answers.Say), .. Words.Answers.Open(requirement)],
            },
            var answer => Answered(answer),
        };
    }

    private static bool IsRetentionOfCode(RequiredCase required) =>
        required.Retentions.MaxBy(demand => demand.KgPerM3) is null or { By: RetentionDemandedBy.Code };

    /// <summary>The depth that a rule asks for all round, for the dashed line of the drawings; null where it asks for something else.</summary>
    private static double? EvenDepthMm(DepthRule rule) =>
        rule switch
        {
            LeastDepth { Zone: WoodZone.Sapwood or WoodZone.Lateral } least => least.DepthMm,
            AllOf all => all.Parts.Select(EvenDepthMm).FirstOrDefault(depth => depth is not null),
            _ => null,
        };

    private static IEnumerable<TraceRowDocument> Rows(TraceStep step) =>
        step
            .Matched.Select(row => Row(row, TraceOutcome.Applies, Words.Rows.Applies))
            .Concat(step.SetAside.Select(row => Row(row, TraceOutcome.GivesWay, Words.Rows.GivesWay)))
            .Concat(step.Open.Select(miss => Row(miss.Row, TraceOutcome.Open, Words.Rows.Open(miss.Field))))
            .Concat(
                // A row of one condition that fails has nothing in common with the enquiry: no near miss.
                step.NearMisses.Where(miss => miss.Row.When.Count > 1)
                    .Select(miss =>
                        Row(miss.Row, TraceOutcome.Fails, Words.Rows.Fails(miss.Field, miss.Asked, miss.Found))
                    )
            );

    private static TraceRowDocument Row(Row row, TraceOutcome kind, string outcome) =>
        new()
        {
            Row = row.Key,
            Says = Words.Rows.WhenAndDemand(row),
            Applies = kind == TraceOutcome.Applies,
            Kind = kind,
            Outcome = outcome,
            Standing = row.Provenance.Standing,
            Citation = row.Provenance.Citation,
        };

    private static TraceRowDocument Row(FactUsed fact) =>
        new()
        {
            Row = Wording.Said("answers.sheet.fact"),
            Says = Words.Answers.Say(fact),
            Applies = true,
            Kind = TraceOutcome.Applies,
            Outcome = Words.Rows.Applies,
            Standing = fact.Provenance.Standing,
            Citation = fact.Provenance.Citation,
        };

    private static BatchDocument Batch(JudgedCase result) =>
        new()
        {
            PiecesInBatch = result.Enquired.BatchSize,
            PiecesCut = result.Pieces.Count,
            AcceptanceRule = ReasonWords.Current.Acceptance.Rule(result.Enquired.Acceptance),
            Verdict = FindingsMapping.Rule(result.Batch?.Penetration ?? result.Overall),
            ByDemand =
            [
                .. result.ByDemand.Select(each => new DemandJudgedDocument
                {
                    By = each.IsContract ? "contract" : "code",
                    Name = each.Name,
                    PenetrationInWords = Words.Depths.Say(each.Depth),
                    Verdict = FindingsMapping.Rule(each.Penetration),
                }),
            ],
        };

    /// <summary>One piece: its reading and what is said of it.</summary>
    /// <param name="piece">The piece judged.</param>
    /// <param name="photographed">Reading of its photograph; null for a piece read with a ruler.</param>
    public static PieceDocument Piece(JudgedPiece piece, SectionReading? photographed)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return piece.Evidence.Kind switch
        {
            EvidenceKind.Photograph => Photographed(
                piece,
                photographed ?? throw new ArgumentNullException(nameof(photographed))
            ),
            EvidenceKind.Ruler => Read(
                piece,
                ReadingMapping.From(
                    piece.Evidence.Profile
                        ?? throw new ArgumentException("A ruler reading always has a profile.", nameof(piece)),
                    [ReadingWords.RulerNote]
                ),
                Verdict(piece.Judgement)
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(piece), piece.Evidence.Kind, "Not a kind of evidence."),
        };
    }

    private static PieceDocument Photographed(JudgedPiece piece, SectionReading reading)
    {
        List<string> notes = [.. ReadingWords.Notes(reading)];
        if (ReadingWords.HowToPointOut(piece.Evidence.Piece, reading) is { } how)
            notes.Add(how);
        var verdict = Verdict(piece.Judgement);
        return Read(
            piece,
            ReadingMapping.From(reading, piece.Evidence.Profile, notes),
            // Why a depth was not determined is said of the reading.
            piece.Evidence.Profile
                is null
                ? verdict with
                {
                    Reasons = [.. verdict.Reasons, .. notes],
                }
                : verdict
        );
    }

    private static PieceDocument Read(JudgedPiece piece, ReadingDocument reading, VerdictDocument verdict) =>
        new()
        {
            Name = piece.Evidence.Piece,
            Evidence = piece.Evidence.Kind,
            Reading = reading,
            Verdict = verdict,
        };

    private static RetentionDocument Retention(JudgedCase result) =>
        new()
        {
            RequiredKgPerM3 = result.Required.RequiredKgPerM3,
            Assays = [.. result.Enquired.Assays.Select(Assay)],
            Conversion = result.Enquired.Assays.Any(assay => assay.AsReported.Length > 0)
                ? [.. AssayWords.Current.Conversion(result.Enquired.AssayBasis)]
                : [],
            Verdict = FindingsMapping.Rule(
                result.Findings.Rule.Retention
                    ?? new Judgement(Penetration.Verdict.Undecided, null, [new RetentionUnknown()])
            ),
            ByDemand =
            [
                .. result
                    .Overall.Reasons.OfType<RetentionsJudged>()
                    .SelectMany(several => several.Each)
                    .Select(each => new RetentionJudgedDocument
                    {
                        Demand = CaseWords.Current.Say(each.Demand),
                        KgPerM3 = each.Demand.KgPerM3,
                        Zone = each.Demand.Zone?.Name,
                        Verdict = FindingsMapping.Rule(each.Judgement),
                    }),
            ],
        };

    private static AssayDocument Assay(Assay assay)
    {
        var measured = (assay as MeasuredAssay)?.KgPerM3;
        return new()
        {
            Sample = assay.Sample,
            Laboratory = Named(assay.Laboratory),
            Report = Named(assay.Report),
            Method = Named(assay.Method),
            SubSamples = assay.SubSamples,
            Zone = assay.Zone is { } zone ? AssayWords.Current.Zone(zone) : null,
            AsReported = Named(assay.AsReported),
            RetentionKgPerM3 = measured?.Value,
            UKgPerM3 = measured?.StandardUncertainty,
            UOfDensityKgPerM3 = assay.SharedKgPerM3,
            BelowKgPerM3 = (assay as BelowDetection)?.LimitKgPerM3,
        };

        static string? Named(string text) => text.Length > 0 ? text : null;
    }

    /// <summary>A verdict with its reasons.</summary>
    internal static VerdictDocument Verdict(Judgement judgement) =>
        new()
        {
            Verdict = judgement.Verdict,
            Probability = FindingsMapping.Chance(judgement.Probability?.Middle),
            ProbabilityLow = FindingsMapping.Chance(judgement.Probability?.Low),
            ProbabilityHigh = FindingsMapping.Chance(judgement.Probability?.High),
            Reasons = ReasonWords.Current.Say(judgement.Reasons),
            Grounds = ReasonMapping.Of(judgement.Reasons),
        };

    /// <summary>What the code's answer rests on, and the contract's where it has one of its own.</summary>
    private static IReadOnlyList<string> Sources(params IEnumerable<Trace?> traces) =>
        [
            .. traces
                .OfType<Trace>()
                .SelectMany(trace =>
                    trace
                        .Steps.SelectMany(step => step.Matched)
                        .Select(row => row.Provenance)
                        .Concat(trace.FactsUsed.Select(fact => fact.Provenance))
                )
                .Select(source => $"{source.Citation} ({Wording.Current.Say(source.Standing)})")
                .Distinct(StringComparer.Ordinal),
        ];
}
