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
    private static RequirementWords Words => RequirementWords.English;

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
        return new(
            CaseDocument.FormatName,
            CaseDocument.FormatVersion,
            program,
            @case.Reference,
            @case.Title,
            @case.Client,
            @case.SampledOn,
            runAt,
            Enquiry(@case.Enquiry),
            Requirement(result),
            Batch(result),
            [.. result.Pieces.Select(piece => Piece(piece, run.Readings.GetValueOrDefault(piece.Evidence.Piece)))],
            Retention(result),
            Verdict(result.Overall),
            trace.WeakestStanding.InWords(),
            Sources(trace),
            cautions
        );
    }

    private static EnquiryDocument Enquiry(Enquiry enquiry) =>
        new(
            enquiry.Component?.Name ?? "not stated",
            enquiry.Section?.Label ?? "not stated",
            enquiry.FormOrFromSection is TimberForm.Round ? "round" : "sawn",
            enquiry.Species?.Name ?? "not stated",
            enquiry.Species is { } species ? string.Join(", ", species.BotanicalNames) : "",
            string.Join(" or ", enquiry.UseClasses.Select(use => use.Label())),
            string.Join("; ", enquiry.UseClasses.Select(use => Words.Exposure.Situation(use))),
            enquiry.Life?.Years,
            enquiry.IsIncised == true,
            enquiry.HasExposedHeartwood switch
            {
                true => "yes",
                false => "no",
                null => "not known",
            },
            enquiry.MoisturePercent
        );

    private static RequirementDocument Requirement(JudgedCase result)
    {
        var trace = result.Required.Answer.Trace;
        var rows = trace.Steps.SelectMany(Rows).ToList();
        return result.Required.Answer switch
        {
            Required { Requirement: var requirement } => new(
                trace.RulebookTitle,
                Words.Answers.Say(AnswerOutcome.Required),
                "",
                requirement.PenetrationName,
                Words.Depths.Say(requirement.Penetration),
                EvenDepthMm(requirement.Penetration),
                requirement.Zone?.Name,
                requirement.Zone?.DepthMm,
                // A figure that the contract names is not a multiple of anything.
                result.Enquired.StatedRetentionKgPerM3
                    is null
                    ? requirement.Retention?.Factor
                    : null,
                result.Required.RequiredKgPerM3,
                requirement.MoistureMaxPercent,
                [.. requirement.Conditions.Select(Words.Answers.Say), .. Words.Answers.Open(requirement)],
                rows
            ),
            var answer => Without(trace, Words.Answers.Say(answer.Outcome), Words.Answers.Reason(answer) ?? "", rows),
        };
    }

    private static RequirementDocument Without(
        Trace trace,
        string outcome,
        string reason,
        IReadOnlyList<TraceRowDocument> rows
    ) => new(trace.RulebookTitle, outcome, reason, null, null, null, null, null, null, null, null, [], rows);

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
            .Matched.Select(row => Row(row, true, "applies"))
            .Concat(step.SetAside.Select(row => Row(row, false, "applies, but gives way to an exception")))
            .Concat(step.Open.Select(miss => Row(miss.Row, false, $"open: {Words.Rows.Say(miss.Field)} is not known")))
            .Concat(
                // A row of one condition that fails has nothing in common with the enquiry: no near miss.
                step.NearMisses.Where(miss => miss.Row.When.Count > 1)
                    .Select(miss =>
                        Row(
                            miss.Row,
                            false,
                            $"fails on {Words.Rows.Say(miss.Field)}: asks {Words.Rows.Say(miss.Asked)}, found {Words.Rows.Say(miss.Found)}"
                        )
                    )
            );

    private static TraceRowDocument Row(Row row, bool applies, string outcome) =>
        new(
            row.Key,
            $"{Words.Rows.When(row)} → {Words.Rows.Say(row.Demand)}",
            applies,
            outcome,
            row.Provenance.Standing.InWords(),
            row.Provenance.Citation
        );

    private static BatchDocument Batch(JudgedCase result) =>
        new(
            result.Enquired.BatchSize,
            result.Pieces.Count,
            ReasonWords.English.Acceptance.Rule(result.Enquired.Acceptance),
            result.Batch is { } batch ? Math.Round(batch.ConformingShare.LowerBound, 4) : null,
            result.Batch is { } judged ? Verdict(judged.Penetration) : Verdict(result.Overall)
        );

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
            EvidenceKind.Ruler => new(
                piece.Evidence.Piece,
                "ruler",
                ReadingMapping.From(
                    piece.Evidence.Profile
                        ?? throw new ArgumentException("A ruler reading always has a profile.", nameof(piece)),
                    ["Read at single positions with a ruler: what lies between them was not seen."]
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
        return new(
            piece.Evidence.Piece,
            "photograph",
            ReadingMapping.From(reading, piece.Evidence.Profile, notes),
            // Why a piece is undecided whose depth could not be read is said of the reading.
            piece.Evidence.Profile
                is null
                ? verdict with
                {
                    Reasons = notes,
                }
                : verdict
        );
    }

    private static RetentionDocument Retention(JudgedCase result) =>
        new(
            result.Required.RequiredKgPerM3,
            [.. result.Enquired.Assays.Select(Assay)],
            Verdict(
                result.Batch?.Retention ?? new Judgement(Penetration.Verdict.Undecided, null, [new RetentionUnknown()])
            )
        );

    private static AssayDocument Assay(Assay assay) =>
        assay switch
        {
            MeasuredAssay measured => new(
                assay.Sample,
                measured.KgPerM3.Value,
                measured.KgPerM3.StandardUncertainty,
                null
            ),
            BelowDetection below => new(assay.Sample, null, null, below.LimitKgPerM3),
            _ => throw new ArgumentOutOfRangeException(nameof(assay), assay, "Not an assay."),
        };

    private static VerdictDocument Verdict(Judgement judgement) =>
        new(
            judgement.Verdict.InWords(),
            judgement.Probability is { } probability ? Math.Round(probability.Middle, 4) : null,
            ReasonWords.English.Say(judgement.Reasons)
        );

    private static IReadOnlyList<string> Sources(Trace trace) =>
        [
            .. trace
                .Steps.SelectMany(step => step.Matched)
                .Select(row => row.Provenance)
                .Concat(trace.FactsUsed.Select(fact => fact.Provenance))
                .Select(source => $"{source.Citation} ({source.Standing.InWords()})")
                .Distinct(StringComparer.Ordinal),
        ];
}
