using Alburnum.Acceptance;
using Alburnum.Acceptance.Indexed;
using Alburnum.Acceptance.Variables;
using Alburnum.Cases;
using Alburnum.Penetration;
using Alburnum.Requirements;
using Severity = Alburnum.Acceptance.Indexed.Severity;

namespace Alburnum.Reports.Tests.Words;

/// <summary>At least one reason of each kind with the sentence that is made of it.</summary>
internal static class SaidReasons
{
    private static readonly LeastDepth Sapwood6 = new(WoodZone.Sapwood, 6);
    private static readonly LeastDepth Heartwood6 = new(WoodZone.ExposedHeartwood, 6, 0.75);
    private static readonly UntreatedHeartwoodLimit Limit = new(0.2, 0.5, 0.5);
    private static readonly Provenance Standard = new(Standing.FromMemory, "ISO 2859-1", "", "", "");
    private static readonly Trace Nothing = new("invented", "Invented code", new Enquiry(), [], []);
    private static readonly VariablesDemand Demand = new(11, "kg/m³", 0.9, 0.95, Population.LogNormal);

    public static IndexedPlan Plan { get; } =
        new(new(8, 2), 50, InspectionLevel.II, 10, Severity.Normal, 'D', 'D', IsEveryPieceInspected: false, Standard);

    private static DecidedAt Decided { get; } =
        new()
        {
            Rule = Sapwood6,
            Reading = DepthReading.Minimum,
            Positions = 12,
            LeastDepthMm = 6.5,
            Face = 3,
            PositionMm = 41.25,
            DepthMm = 6.5,
            RequiredMm = 6,
            StandardUncertaintyMm = 0.5,
            Probability = new(0.8413, 1),
        };

    public static IReadOnlyList<(Reason Reason, string Sentence)> All { get; } =
    [.. OfPieces(), .. OfBatches(), .. OfValues(), .. OfSwitching(), .. OfCases()];

    private static IEnumerable<(Reason, string)> OfPieces() =>
        [
            (new NoDepthRequired(), "No depth of penetration is required."),
            (new DepthNotDetermined(), "No depth was read from its photograph."),
            (
                new ZoneAbsent(Heartwood6, WoodZone.ExposedHeartwood),
                "At least 6 mm in exposed heartwood over 75 % of it on every face: no heartwood is exposed on this piece."
            ),
            (
                new ZoneAbsent(Sapwood6, WoodZone.Sapwood),
                "At least 6 mm in the sapwood: no sapwood is present on this piece."
            ),
            (new NothingRead(Sapwood6), "At least 6 mm in the sapwood: no position could be read."),
            (
                Decided,
                "At least 6 mm in the sapwood: the minimum of 12 positions is 6.5 mm, where 6 mm is required (face 3, 41.25 mm along); "
                    + "standard uncertainty 0.5 mm, met with probability 84.1 %."
            ),
            (
                Decided with
                {
                    Positions = 1,
                    Reading = DepthReading.FifthPercentile,
                    Probability = ProbabilityRange.Exactly(1),
                },
                "At least 6 mm in the sapwood: the 5th percentile of 1 position is 6.5 mm, where 6 mm is required (face 3, 41.25 mm along); "
                    + "standard uncertainty 0.5 mm, met with probability over 99.9 %."
            ),
            (
                Decided with
                {
                    DepthMm = 8,
                    StandardUncertaintyMm = 2,
                },
                "At least 6 mm in the sapwood: the minimum of 12 positions is 6.5 mm, the least certain one 8 mm, where 6 mm is required "
                    + "(face 3, 41.25 mm along); standard uncertainty 2 mm, met with probability 84.1 %."
            ),
            (
                new GuardBand(6, 0.5, 6.8224, 5.1776),
                "Guard band: conforms from 6.82 mm, does not conform up to 5.18 mm."
            ),
            (
                new ReachedOnFace
                {
                    Rule = Heartwood6,
                    Face = 2,
                    ReachedShare = 0.65,
                    RequiredShare = 0.75,
                    DepthMm = 0,
                    StandardUncertaintyMm = 0.3,
                    Probability = ProbabilityRange.Exactly(0),
                },
                "At least 6 mm in exposed heartwood over 75 % of it on every face: 65 % of it is reached on face 2, where 75 % is required; "
                    + "the depth over that share is 0 mm or more, standard uncertainty 0.3 mm; met with probability under 0.1 %."
            ),
            (new FacesNotRead([2, 4]), "Less than half of face 2, 4 could be read there: it cannot count as reached."),
            (
                new SapwoodBorderMissing(),
                "The sapwood boundary is not stated, and the depth read is not enough to decide without it."
            ),
            (new NotDemonstrable(), "Not demonstrable on this piece."),
            (
                new OppositeFacesNeeded(Limit),
                "Untreated heartwood under 20 % of the section, not more than 50 % of the way from face to face and not more than "
                    + "50 % of the side: needs readings on opposite faces."
            ),
            (
                new UntreatedArea(Limit, new(0.18, 0.005), 0.999968),
                "Untreated heartwood under 20 % of the section, not more than 50 % of the way from face to face and not more than "
                    + "50 % of the side: 18 % of the section is untreated (standard uncertainty 0.5 %), met with probability over 99.9 %."
            ),
            (
                new UntreatedReach(Limit, new(0.4, 0.01), 0.75),
                "The untreated core reaches 40 % of the way across, met with probability 75 %."
            ),
            (new JudgedElsewhere(Verdict.Conforms), "Judged elsewhere: pass."),
            (new JudgedElsewhere(Verdict.DoesNotConform), "Judged elsewhere: fail."),
            (new JudgedElsewhere(Verdict.Undecided), "Not determined."),
        ];

    private static IEnumerable<(Reason, string)> OfBatches()
    {
        var bound = new ConformingShareBound(0.95, 0.7411, 0.81);
        Judgement conforms = new(Verdict.Conforms, new(0.96, 0.99), []),
            fails = new(Verdict.DoesNotConform, new(0, 0.01), []),
            close = new(Verdict.Undecided, new(0.3, 0.6), []),
            open = new(Verdict.Undecided, null, []);
        return
        [
            (new RuleUsed(new ShareMustPass(0.75)), "Rule used: 75 % of the pieces cut must pass."),
            (
                new RuleUsed(new IndexedSampling(Plan)),
                "Rule used: plan indexed at AQL 10 (ISO 2859-1, level II, normal inspection, letter D): cut 8, accept on at most 2 failures."
            ),
            (
                new RuleUsed(new IndexedSampling(Plan with { UsedLetter = 'F', Severity = Severity.Tightened })),
                "Rule used: plan indexed at AQL 10 (ISO 2859-1, level II, tightened inspection, letter D, arrow to F): cut 8, "
                    + "accept on at most 2 failures."
            ),
            (
                new RuleUsed(new IndexedSampling(Plan with { Severity = Severity.Reduced })),
                "Rule used: plan indexed at AQL 10 (ISO 2859-1, level II, reduced inspection, letter D): cut 8, accept on at most 2 failures."
            ),
            (
                new PiecesCounted(new(8, 5, 2, 1), 2),
                "8 pieces cut: 5 conform, 2 do not conform, 1 undecided; 2 may fail."
            ),
            (
                new PiecesCounted(new(1, 1, 0, 0), 0),
                "1 piece cut: 1 conform, 0 do not conform, 0 undecided; 0 may fail."
            ),
            (new PiecesStillToCut(8, 5), "The rule calls for 8 pieces; 5 are still to be cut."),
            (
                new AcceptanceProbability(0.9619, 0.9),
                "The rule accepts with probability 96.2 % if each piece was misread independently, 90 % if all were misread in the same way."
            ),
            (
                new AcceptanceLeftOpen(new(0, 0.9), 3),
                "The rule accepts with probability under 0.1 % to 90 %, depending on the 3 pieces not determined."
            ),
            (
                new ConformingShareShown(bound, 500, 0),
                "With 95 % confidence, at least 74.1 % of the 500 pieces in the lot conform."
            ),
            (
                new ConformingShareShown(bound, null, 1),
                "With 95 % confidence, at least 74.1 % of the supply conform (81 % if every undecided piece does)."
            ),
            (new NoRetentionRequired(), "No retention is required: only penetration is judged."),
            (new AssayMissing(12), "Retention not determined: no assay was given, 12 kg/m³ is required."),
            (
                new RetentionMean(1, new(14.25, 0.4), 12, 0.9871),
                "Retention: the mean of 1 assay is 14.25 kg/m³, standard uncertainty 0.4 kg/m³, where 12 kg/m³ is required; met with probability 98.7 %."
            ),
            (
                new RetentionMean(3, new(14.25, 0.4), 12, 0.9871),
                "Retention: the mean of 3 assays is 14.25 kg/m³, standard uncertainty 0.4 kg/m³, where 12 kg/m³ is required; met with probability 98.7 %."
            ),
            (
                new BelowDetectionLimit(1, 3, 8, 8.5, 12),
                "1 of 3 assays found nothing above the detection limit; the mean lies between 8 kg/m³ and 8.5 kg/m³, where 12 kg/m³ is required."
            ),
            (
                new LaboratoriesDiffer([new("Northlab", new(9, 0.4)), new("", new(15, 0.4))], 10.6, 1.96),
                "The laboratories differ by more than their uncertainties allow (Northlab 9.0 ± 0.4 kg/m³, not named 15.0 ± 0.4 kg/m³; Birge ratio 10.6, by chance at most 2.0): "
                    + "they are not averaged, and the verdict holds only where it holds for each. Ask both for their methods, and have a third sample analysed."
            ),
            (
                new BatchParts(Verdict.Conforms, conforms, conforms),
                "The batch conforms: penetration conforms; retention conforms."
            ),
            (
                new BatchParts(Verdict.DoesNotConform, fails, null),
                "The batch does not conform: penetration does not conform."
            ),
            (
                new BatchParts(Verdict.DoesNotConform, close, fails),
                "The batch does not conform: penetration is undecided; retention does not conform."
            ),
            (
                new BatchParts(Verdict.Undecided, open, close),
                "The batch is undecided: penetration not determined; retention is undecided."
            ),
            (
                new BatchParts(Verdict.Undecided, conforms, open),
                "The batch is undecided: penetration conforms; retention not determined."
            ),
        ];
    }

    private static IEnumerable<(Reason, string)> OfValues() =>
        [
            (
                new DemandUsed(Demand),
                "Rule used: at least 90 % of all pieces must reach 11 kg/m³, shown by measured values with 95 % confidence."
            ),
            (new ValuesRead(Demand, 8, (9.5, 14.125), 0, 0), "8 pieces measured, 9.5 kg/m³ to 14.125 kg/m³."),
            (
                new ValuesRead(Demand, 9, (9.5, 14.125), 1, 2),
                "9 pieces measured, 9.5 kg/m³ to 14.125 kg/m³; 1 below detection; 2 as far as could be read."
            ),
            (new ValuesRead(Demand, 3, null, 0, 3), "3 pieces measured; 3 as far as could be read."),
            (
                new ToleranceLimits(Demand, 8.125, 11.5, IsExact: true),
                "With 95 % confidence, the value that 90 % of all pieces exceed is at least 8.125 kg/m³; with the same confidence, it is at most 11.5 kg/m³."
            ),
            (
                new ToleranceLimits(Demand, 8.125, 11.5, IsExact: false),
                "With 95 % confidence, the value that 90 % of all pieces exceed is at least 8.125 kg/m³; with the same confidence, it is at most 11.5 kg/m³ "
                    + "(approximate, since some readings are cut off)."
            ),
            (
                new ShareBounds(Demand, 0.6, 0.95),
                "With 95 % confidence, at least 60 % of all pieces reach 11 kg/m³, and at most 95 %."
            ),
            (
                new SpreadNotFixed(),
                "Fewer than two different values were read: the spread is not known, so there is no verdict by variables."
            ),
            (
                new CountedAlone(Demand, 8, 9, 0.571, 500),
                "By counting alone, 8 of 9 certainly reach it: with 95 % confidence, at least 57.1 % of the 500 pieces in the lot do."
            ),
            (
                new PopulationAssumed(Population.Normal),
                "Valid only if the measure is close to normal over the pieces and no error is common to all readings."
            ),
            (
                new PopulationDoubted(Population.LogNormal),
                "The values and the count disagree, so the measure is unlikely to be log-normal: no verdict by variables."
            ),
        ];

    private static IEnumerable<(Reason, string)> OfSwitching() =>
        [
            (new RejectedAmongLast(2, 5), "2 of the last 5 lots were rejected"),
            (new AcceptedInARow(5), "5 consecutive lots were accepted"),
            (new ReductionAgreed(10), "10 consecutive lots were accepted and reduction is agreed"),
            (new RejectedOnTightened(5), "5 lots were rejected on tightened inspection"),
            (new TightenedTooLong(10), "10 consecutive lots were on tightened inspection"),
            (new RejectedOnReduced(), "a lot was rejected on reduced inspection"),
            (new CountInGap(), "the count lay between the acceptance and the rejection number"),
            (new ProductionIrregular(), "production was irregular"),
        ];

    private static IEnumerable<(Reason, string)> OfCases() =>
        [
            (new CodeForbids(new("Not with this timber.", Nothing)), "Not with this timber."),
            (
                new RulebookSilent(new(new CellNotRead("The threshold is not known."), Nothing)),
                "The code must be consulted: this cell is not in the rulebook. The threshold is not known."
            ),
            (new NoDepthKnown(), "There is no depth to judge this piece against."),
            (new RetentionUnknown(), "Retention is not judged: there is no figure to meet."),
            (
                new RetentionNotStated(),
                "Retention is not judged: neither the rulebook nor the contract gives a figure in kg/m³."
            ),
            (new RetentionNotAssayed(), "Retention is not judged: no assay was given."),
        ];
}
