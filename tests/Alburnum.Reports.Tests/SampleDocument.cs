using Alburnum.Cases;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;
using Alburnum.Reports.Documents;
using Alburnum.Requirements;

namespace Alburnum.Reports.Tests;

/// <summary>A small whole document for tests that need one.</summary>
internal static class SampleDocument
{
    public static CaseDocument Conforming => Make(Verdict.Conforms, 0.99);

    public static CaseDocument Make(Verdict verdict, double? probability) =>
        new()
        {
            Format = CaseDocument.FormatName,
            Version = CaseDocument.FormatVersion,
            Program = "Alburnum 0.1.0",
            Reference = "T-1",
            Title = "Gate posts & rails",
            Client = "Thornhollow estate",
            SampledOn = new DateOnly(2026, 5, 12),
            RunAt = new DateTime(2026, 5, 13, 9, 30, 0, DateTimeKind.Utc),
            Enquiry = new()
            {
                Component = "fence post",
                Section = "100 × 75 mm",
                Form = TimberForm.Sawn,
                Species = "Scots pine",
                BotanicalName = "Pinus sylvestris",
                UseClass = "4",
                UseClassInWords = "in the ground",
                ServiceLifeYears = 15,
                Incised = false,
                ExposedHeartwood = false,
            },
            Requirement = new()
            {
                Rulebook = "An invented code",
                Outcome = AnswerOutcome.Required,
                Reason = "",
                Penetration = "NP3",
                PenetrationInWords = "at least 6 mm in the sapwood",
                DepthMm = 6,
                AnalyticalZone = "6 mm lateral",
                ZoneDepthMm = 6,
                RetentionFactor = 1,
                RetentionKgPerM3 = 8,
                MoistureMaxPercent = 28,
                Conditions = ["Retreat cut ends."],
                Trace =
                [
                    new()
                    {
                        Row = "row-1",
                        Says = "use class: 4 → NP3",
                        Applies = true,
                        Outcome = "applies",
                        Standing = Standing.FromMemory,
                        Citation = "Invented, 1",
                    },
                ],
            },
            Prediction = new()
            {
                Schedule = "full cell",
                Demand = "at least 6 mm in the sapwood",
                MeanDepthMm = new(12.5, 18, 24.5),
                MeasuredMeanDepthMm = new(9, 0.4),
                CoreShare = new(0.93, 0.08),
                Assumptions = ["From the smallest log that holds the piece."],
                RestsOn = ["Sapwood: an invented law."],
                Standing = Standing.FromMemory,
            },
            Charge = new()
            {
                Name = "charge 12",
                PieceCount = 120,
                VolumeM3 = 1.62,
                RequiredKgPerM3 = 8,
                UptakeLPerM3 = new(360, 30),
                SolutionL = new(583, 49),
                StrengthPercent = new(1.3, 0.1),
                ProductKg = new(7.6, 0.6),
            },
            Remarks = ["Shallower than expected."],
            Batch = new()
            {
                PiecesInBatch = 120,
                PiecesCut = 2,
                AcceptanceRule = "75 % of the pieces cut must pass",
                Verdict = SaidOfRule(verdict, probability, "One reason."),
            },
            Pieces =
            [
                new()
                {
                    Name = "P01",
                    Evidence = EvidenceKind.Ruler,
                    Reading = Reading(9),
                    Verdict = Said(Verdict.Conforms, 0.99, "Deep enough."),
                },
                new()
                {
                    Name = "P02",
                    Evidence = EvidenceKind.Ruler,
                    Reading = Unread,
                    Verdict = Said(Verdict.Undecided, null, "Out of focus."),
                },
            ],
            LeftOut =
            [
                new()
                {
                    File = "spoilt.jpg",
                    Sha256 = new string('a', 64),
                    Reason = "The saw slipped.",
                    Piece = "spoilt.jpg",
                    InWords = "It would have failed.",
                },
            ],
            VerdictWithLeftOut = Said(Verdict.Undecided, null),
            WithLeftOut = "With every photograph left out that could be read: penetration rule not met.",
            Retention = new()
            {
                RequiredKgPerM3 = 8,
                Assays =
                [
                    new()
                    {
                        Sample = "composite",
                        RetentionKgPerM3 = 8.9,
                        UKgPerM3 = 0.3,
                    },
                    new() { Sample = "second", BelowKgPerM3 = 0.2 },
                ],
                Verdict = SaidOfRule(Verdict.Conforms, 0.98),
            },
            Verdict = SaidOfRule(verdict, probability, "The batch is as it is."),
            Findings = new()
            {
                Headline = verdict switch
                {
                    Verdict.Conforms => "Penetration rule met",
                    Verdict.DoesNotConform => "Penetration rule not met",
                    _ => "Penetration rule undecided",
                },
                Weakest = Verdict.Undecided,
                Rule = new()
                {
                    Verdict = verdict,
                    Probability = probability,
                    InWords = "The rule in words.",
                },
                Lot = new()
                {
                    Pieces = 120,
                    Confidence = 0.95,
                    LowerBound = 0.4,
                    LowerBoundIfUndecidedPass = 0.5,
                    InWords = "The lot in words.",
                },
                NotJudged = ["This was not judged."],
            },
            WeakestStanding = Standing.FromMemory,
            Sources = ["Invented, 1 (from memory)"],
            Cautions = ["Treated wood is hazardous when burnt."],
        };

    public static ReadingDocument Reading(double depthMm) =>
        Unread with
        {
            Faces = [.. new[] { 100.0, 75, 100, 75 }.Select((length, i) => Face(i + 1, length, depthMm))],
            Depth = new()
            {
                MinMm = depthMm,
                MinUMm = 0.2,
                P5Mm = depthMm,
                P5UMm = 0.2,
                MedianMm = depthMm,
                MedianUMm = 0.1,
                MeanMm = depthMm,
                MeanUMm = 0.1,
                MaxMm = depthMm,
                MaxUMm = 0.2,
            },
            TreatedShare = 0.5,
        };

    public static ReadingDocument Unread { get; } =
        new()
        {
            Shape = SectionShape.Rectangle,
            SectionMm = [100, 75],
            Faces = [],
            Quality = QualityGrade.Good,
            Notes = [],
        };

    private static VerdictDocument Said(Verdict verdict, double? probability, params IReadOnlyList<string> reasons) =>
        new()
        {
            Verdict = verdict,
            Probability = probability,
            Reasons = reasons,
        };

    private static RuleDocument SaidOfRule(
        Verdict verdict,
        double? probability,
        params IReadOnlyList<string> reasons
    ) =>
        new()
        {
            Verdict = verdict,
            Probability = probability,
            Reasons = reasons,
        };

    private static FaceDocument Face(int number, double lengthMm, double depthMm)
    {
        var positions = Enumerable.Range(0, (int)lengthMm).Select(i => i + 0.5).ToList();
        bool IsCorner(double at) => at < depthMm || at > lengthMm - depthMm;
        return new()
        {
            Number = number,
            StepMm = 1,
            PositionsMm = positions,
            DepthMm = [.. positions.Select(_ => depthMm)],
            UMm = [.. positions.Select(_ => 0.2)],
            Excluded = [.. positions.Select(IsCorner)],
            SapwoodMm = [.. positions.Select(_ => (double?)null)],
        };
    }
}
