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
            LeastDepthMm = new(6.5, 0.5),
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
                new OutlineOffEdge(),
                "No sure edge of the wood lies at the points given for its outline: depths measured from them decide nothing. Point the outline out again, more closely."
            ),
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
                    AsksForWholeZone = true,
                },
                "At least 6 mm in the sapwood: the minimum of 12 positions is 6.5 mm, where 6 mm is required (face 3, 41.25 mm along); "
                    + "standard uncertainty 0.5 mm, met with probability 84.1 %. Before reading, a zone filled to its end and one that is not are "
                    + "taken as equally likely, and the probability weighs that too. That is our choice, from no source: with a filled zone taken as 20 % "
                    + "likely beforehand, the probability at that position would be 57 %; with 80 %, 95.5 %."
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
                    TurnsElsewhere = true,
                },
                "At least 6 mm in the sapwood: the minimum of 12 positions is 6.5 mm, the least certain one 8 mm, where 6 mm is required "
                    + "(face 3, 41.25 mm along); standard uncertainty 2 mm, met with probability 84.1 %."
            ),
            (
                new GuardBand(6.46, 6, 0.5, 6.8224, 5.1776),
                "Guard band of that depth, 6.5 mm: conforms from 6.8 mm, does not conform up to 5.2 mm."
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
                    + "the depth over that share is 0.0 mm or more, standard uncertainty 0.3 mm; met with probability under 0.1 %."
            ),
            (new FacesWithoutReading([2, 4]), "No depth was read on face 2, 4: nothing is said of it."),
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
        Judgement conforms = new(Verdict.Conforms, new(0.96, 0.99), []),
            fails = new(Verdict.DoesNotConform, new(0, 0.01), []),
            close = new(Verdict.Undecided, new(0.3, 0.6), []),
            open = new(Verdict.Undecided, null, []);
        return
        [
            (new RuleUsed(new ShareMustPass(0.75)), "Rule used: 75 % of the pieces cut must pass."),
            (
                new RuleUsed(new IndexedSampling(Plan)),
                "Rule used: plan indexed at AQL 10 of ISO 2859-1, level II, normal inspection, letter D: cut 8, accept on at most 2 failures."
            ),
            (
                new RuleUsed(new IndexedSampling(Plan with { UsedLetter = 'F', Severity = Severity.Tightened })),
                "Rule used: plan indexed at AQL 10 of ISO 2859-1, level II, tightened inspection, letter D, arrow to F: cut 8, "
                    + "accept on at most 2 failures."
            ),
            (
                new RuleUsed(new IndexedSampling(Plan with { Severity = Severity.Reduced })),
                "Rule used: plan indexed at AQL 10 of ISO 2859-1, level II, reduced inspection, letter D: cut 8, accept on at most 2 failures."
            ),
            (
                new PiecesCounted(new(8, 5, 2, 1), 2),
                "8 pieces cut: 5 conform, 2 do not conform, 1 undecided; 2 may fail."
            ),
            (new PiecesCounted(new(1, 1, 0, 0), 0), "One piece cut: conforms; 0 may fail."),
            (
                new RuleAsksLessThanCode(0.75, new(1, Standard)),
                "That 75 % of the pieces cut must pass asks for less than the code's AQL of 1 %, which asks for 99 % (from memory: ISO 2859-1): "
                    + "what meets the one may fall short of the other."
            ),
            (new PiecesStillToCut(8, 5), "The rule calls for 8 pieces; 5 still to be cut."),
            (
                new AcceptanceProbability(0.9619, 0.9),
                "Chance that the rule would be met if the depths were known exactly: 96.2 % if each piece was misread independently, "
                    + "90 % if all were misread in the same way."
            ),
            (
                new AcceptanceLeftOpen(new(0, 0.9), 3),
                "Chance that the rule would be met if the depths were known exactly: under 0.1 % to 90 %, depending on 3 pieces not determined."
            ),
            (
                new PiecesReadInPart(12, 14),
                "On 12 of 14 pieces, faces were left without a reading: what is said holds for the faces read. That is enough only for a code that counts "
                    + "one core from each piece."
            ),
            (new PiecesNotDetermined(["P03", "P07"]), "2 pieces not determined: P03, P07."),
            (new PiecesNotDetermined(["P03"]), "1 piece not determined: P03."),
            (
                new DrawingNotRecorded(),
                "How the pieces were drawn is not recorded: what is said of the lot takes them to be a random sample of it."
            ),
            (
                new ReadingRiskNotKnown(),
                "The pieces came judged, without depths: how surely they were read is not known."
            ),
            (new NoRetentionRequired(), "Retention: no required figure was given."),
            (new AssayMissing(12), "Retention: no assay was given, 12 kg/m³ is required."),
            (
                new RetentionMean(1, 1, new(14.25, 0.4), 12, 0.9871),
                "Retention: the mean of 1 assay is 14.2 kg/m³, standard uncertainty 0.4 kg/m³, where 12 kg/m³ is required; met with probability 98.7 %."
            ),
            (
                new SamplesScatterNotKnown(),
                "A retention rests on one sample alone: how far samples of the batch differ is not known, and the chance that it is met leaves that out."
            ),
            (
                new RetentionMean(3, 3, new(14.25, 0.4), 12, 0.9871) { DegreesOfFreedom = 2.37 },
                "Retention: the mean of 3 assays is 14.2 kg/m³, standard uncertainty 0.4 kg/m³, where 12 kg/m³ is required; met with probability 98.7 %. "
                    + "So few samples show their own scatter only roughly; the probability allows for that (Student's distribution, 2.4 effective degrees of freedom)."
            ),
            (
                new RetentionMean(2, 3, new(14.25, 0.4), 12, 0.9871),
                "Retention: the mean of 2 samples (3 assays) is 14.2 kg/m³, standard uncertainty 0.4 kg/m³, where 12 kg/m³ is required; met with probability 98.7 %."
            ),
            (
                new BelowDetectionLimit(1, 3, new(8, 1.9), new(8.5, 1.7), 12, new(0.04, 0.08)),
                "Retention: 1 of 3 assays below detection; the mean is 8.0 kg/m³ to 8.5 kg/m³, standard uncertainty 1.9 kg/m³, where 12 kg/m³ is required; met with probability 4 % to 8 %."
            ),
            (
                new BelowDetectionLimit(1, 3, new(5.3, 2.9), new(5.31, 2.9), 8, new(0.227, 0.2271)),
                "Retention: 1 of 3 assays below detection; the mean is 5 kg/m³, standard uncertainty 3 kg/m³, where 8 kg/m³ is required; met with probability 22.7 %."
            ),
            (
                new RetentionMean(1, 1, new(14.25, 0.4), 12, 0.9871) { Zone = "all the sapwood" },
                "Retention: the mean of 1 assay is 14.2 kg/m³, standard uncertainty 0.4 kg/m³, where 12 kg/m³ is required in the zone \"all the sapwood\"; met with probability 98.7 %."
            ),
            (
                new ZoneNotAssayed("all the sapwood", 8, ZoneGap.NotStated),
                "Retention, where 8 kg/m³ is required in the zone \"all the sapwood\", is not judged: the assays do not say which zone was cut, and more than one is asked for."
            ),
            (
                new ZoneNotAssayed("all the sapwood", 8, ZoneGap.SomeNotStated),
                "Retention, where 8 kg/m³ is required in the zone \"all the sapwood\", is not judged: some assays do not say which zone was cut, and whether it is met turns on them."
            ),
            (
                new ZoneNotAssayed("all the sapwood", 8, ZoneGap.OthersCut),
                "Retention, where 8 kg/m³ is required in the zone \"all the sapwood\", is not judged: no assay is of that zone."
            ),
            (
                new ZoneNotAssayed(null, 8, ZoneGap.ZoneNotKnown),
                "Retention, where 8 kg/m³ is required, is not judged: in which zone is open."
            ),
            (
                new HardlyThatProduct(["S1", "S4"]),
                "That is enough only of the product as which it is counted, and what was found is hardly that (sample S1, S4): a part of its formula is missing, or its share more than half off. "
                    + "Ask the laboratory and the treater which preservative it is."
            ),
            (
                new PartsNotAnalysed(["S1", "S4"], ["tebuconazole", "propiconazole"]),
                "That is enough only if the product's formula holds for what was not analysed: tebuconazole, propiconazole (sample S1, S4). "
                    + "Have it analysed; or, where what was analysed is to stand for the whole, state its share as the product, such as CuO 66.7 %."
            ),
            (
                new LaboratoriesDiffer(
                    [new ContentFound("Northlab", new(9, 0.4)), new ContentFound("", new(15, 0.4))],
                    new(10.6, 1.96)
                )
                {
                    Sample = "S1",
                },
                "The laboratories differ by more than their uncertainties allow (on sample S1: Northlab 9.0 ± 0.4 kg/m³, not named 15.0 ± 0.4 kg/m³; Birge ratio 10.6, by chance at most 2.0). "
                    + "Nothing here says which is right: none is left out, they are not averaged, each is judged alone, and the verdict stands only where it is the same for all. "
                    + "Ask them for their methods, and have a third sample analysed."
            ),
            (
                new LaboratoriesDiffer(
                    [new ContentFound("Northlab", new(9, 0.4)), new NothingFound("Southlab", 0.5)],
                    null
                )
                {
                    ContradictsLimit = true,
                },
                "The laboratories differ by more than their uncertainties allow (Northlab 9.0 ± 0.4 kg/m³, Southlab below 0.5 kg/m³; one found what another could not have missed). "
                    + "Nothing here says which is right: none is left out, they are not averaged, each is judged alone, and the verdict stands only where it is the same for all. "
                    + "Ask them for their methods, and have a third sample analysed."
            ),
            (
                new BelowDetectionLimit(1, 1, new(0, 0), new(0.5, 0), 12, new(0, 0)),
                "Retention: the assay is below 0.5 kg/m³, where 12 kg/m³ is required."
            ),
            (
                new BelowDetectionLimit(2, 2, new(0, 0), new(0.5, 0), 12, new(0, 0)),
                "Retention: 2 assays, all below detection; the mean is below 0.5 kg/m³, where 12 kg/m³ is required."
            ),
            (new BatchParts(Verdict.Conforms, conforms, conforms), "Penetration rule met; retention met."),
            (new BatchParts(Verdict.DoesNotConform, fails, null), "Penetration rule not met; retention not judged."),
            (new BatchParts(Verdict.DoesNotConform, close, fails), "Penetration rule undecided; retention not met."),
            (new BatchParts(Verdict.Undecided, open, close), "Penetration rule undecided; retention undecided."),
            (
                new BatchParts(Verdict.Undecided, conforms, open with { Reasons = [new AssayMissing(12)] }),
                "Penetration rule met; retention not judged."
            ),
            (
                new BatchParts(
                    Verdict.Undecided,
                    conforms,
                    open with
                    {
                        Reasons =
                        [
                            new RetentionMean(1, 1, new(14.25, 0.4), 12, 0.9871),
                            new ZoneNotAssayed("all the sapwood", 8, ZoneGap.NotStated),
                        ],
                    }
                ),
                "Penetration rule met; retention not judged in each zone asked for."
            ),
        ];
    }

    private static IEnumerable<(Reason, string)> OfValues() =>
        [
            (
                new DemandUsed(Demand),
                "Rule used: at least 90 % of all pieces must reach 11 kg/m³, shown by measured values with 95 % confidence."
            ),
            (new ValuesRead(Demand, 8, (9.5, 14.125), [], []), "8 pieces measured: 9.5 kg/m³ to 14.125 kg/m³."),
            (
                new ValuesRead(Demand, 9, (9.5, 14.125), [new(0.5, 1)], [new(20, 2)]),
                "9 pieces measured: 1 below 0.5 kg/m³ (not detected); the others 9.5 kg/m³ to 14.125 kg/m³; 2 at 20 kg/m³ or more (as far as could be read)."
            ),
            (
                new ValuesRead(Demand, 1, null, [], [new(20, 1)]),
                "1 piece measured: 1 at 20 kg/m³ or more (as far as could be read)."
            ),
            (new OnlyMeasureJudged(), "Nothing else of the pieces was judged."),
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
                "Fewer than two different values were read: the spread is not known, so the verdict goes by counting alone."
            ),
            (
                new LotMeasured(5, 2, 8),
                "All 8 pieces of the lot were measured, so nothing is inferred: 5 certainly reach the limit, 2 certainly do not."
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

    private static TwoDemands Two(StricterDemand? stricter)
    {
        var all = new ShareOfZone(WoodZone.Sapwood, 1);
        var contract = new ContractDemand("NP5", new(new("NP5", all, null, null, null, []), Nothing), stricter);
        return new(
            contract,
            new(true, "NP5", all, new(Verdict.DoesNotConform, null, [])),
            new(false, "NP3", Sapwood6, new(Verdict.Conforms, null, []))
        );
    }

    private static IEnumerable<(Reason, string)> OfCases() =>
        [
            (
                Two(StricterDemand.Contract),
                "With the contract's NP5: rule not met. With the code's NP3: rule met. The contract's NP5 (full penetration in the sapwood; "
                    + "Invented code, published) asks for more than the code's NP3: it decides."
            ),
            (
                Two(StricterDemand.Code),
                "With the contract's NP5: rule not met. With the code's NP3: rule met. The contract's NP5 (full penetration in the sapwood; "
                    + "Invented code, published) asks for less than the code's NP3: the code decides."
            ),
            (
                Two(StricterDemand.NotComparable),
                "With the contract's NP5: rule not met. With the code's NP3: rule met. Neither the contract's NP5 (full penetration in the "
                    + "sapwood; Invented code, published) nor the code's NP3 is sure to meet the other: both must be met."
            ),
            (
                Two(stricter: null),
                "With the contract's NP5: rule not met. With the code's NP3: rule met. The contract's NP5: full penetration in the sapwood "
                    + "(Invented code, published). No depth of the code is known beside it."
            ),
            (
                new CodeOnlyRecommends(
                    new(new("NP1", new NoDepth(), null, null, null, []) { IsRecommended = true }, Nothing)
                ),
                "The code recommends NP1 here and does not require it."
            ),
            (
                new OnlyContractDemands(
                    Two(stricter: null).Contract,
                    new NotNeeded("Heartwood of this timber lasts.", [], Nothing)
                ),
                "Judged by the contract's NP5 (full penetration in the sapwood; Invented code); the code asks for none. "
                    + "Heartwood of this timber lasts."
            ),
            (
                new OnlyContractDemands(Two(stricter: null).Contract, new NotPermitted("It rots there.", Nothing)),
                "The code does not permit this timber here; by the contract's NP5 (full penetration in the sapwood; Invented code) the pieces were judged all the same. "
                    + "It rots there."
            ),
            (
                new LeastOfCode(new(new("NP5", new ShareOfZone(WoodZone.Sapwood, 1), null, null, null, []), Nothing)),
                "Which demand of the code holds is open; judged by the least of those possible, NP5 (full penetration in the sapwood)."
            ),
            (
                new RetentionsJudged([
                    new(new(RetentionDemandedBy.Code, null, 8), new(Verdict.DoesNotConform, null, [])),
                    new(new(RetentionDemandedBy.Class, "H4", 6), new(Verdict.Undecided, null, [])),
                    new(new(RetentionDemandedBy.Contract, null, 4), new(Verdict.Conforms, null, [])),
                ]),
                "Retention, each by itself: the code's 8 kg/m³: does not conform; that of the contract's H4, 6 kg/m³: undecided; "
                    + "the contract's own 4 kg/m³: conforms. The greatest decides."
            ),
            (
                new RetentionsJudged([
                    new(new(RetentionDemandedBy.Code, null, 8), new(Verdict.Conforms, null, [])),
                    new(
                        new(RetentionDemandedBy.Class, "NP5", 8),
                        new(Verdict.Undecided, null, [new ZoneNotAssayed("all the sapwood", 8, ZoneGap.NotStated)])
                    ),
                ])
                {
                    Zones = ZonesAskedFor.Several,
                },
                "Retention, each by itself: the code's 8 kg/m³: conforms; that of the contract's NP5, 8 kg/m³: not judged. "
                    + "They are of different zones; each must be met in its own."
            ),
            (
                new RetentionsJudged([
                    new(new(RetentionDemandedBy.Contract, null, 8), new(Verdict.Conforms, null, [])),
                ]),
                "Retention: the contract's own 8 kg/m³: conforms."
            ),
            (
                new RetentionsJudged([
                    new(
                        new(RetentionDemandedBy.Code, null, 8) { Zone = new(6, "outer 6 mm") },
                        new(Verdict.Conforms, null, [])
                    ),
                    new(new(RetentionDemandedBy.Contract, null, 6), new(Verdict.Conforms, null, [])),
                ])
                {
                    Zones = ZonesAskedFor.NotKnown,
                },
                "Retention, each by itself: the code's 8 kg/m³ (outer 6 mm): conforms; the contract's own 6 kg/m³: conforms. "
                    + "Whether they are of one zone is not known; each must be met."
            ),
            (new DepthNotJudged(), "Penetration is not judged: there is no depth to judge a piece against."),
            (
                new RetentionOfCodeNotKnown(),
                "What the code itself asks of retention here is not judged: no figure in kg/m³ is known."
            ),
            (
                new ZoneTakenForGranted(Zone: null),
                "Neither the zone that the laboratory cut nor the one in which the retention is required is known; they are taken to be the same. "
                    + "A sample cut less deep would flatter it: ask the laboratory, and whoever asks for the retention."
            ),
            (
                new ZoneTakenForGranted("outer 6 mm"),
                "Which zone the laboratory cut is not stated in every assay; they are taken to be of the zone \"outer 6 mm\", in which the retention is required. "
                    + "A sample cut less deep would flatter it: ask the laboratory."
            ),
            (
                new RetentionOfClassNotKnown("H4"),
                "Nothing is judged against the retention of the contract's H4: no figure in kg/m³ is known."
            ),
            (
                new ContractNotJudged(new ContractClassNotKnown("NP7")),
                "The contract's class \"NP7\" is in no rulebook here by that name: nothing is judged against it."
            ),
            (
                new ContractNotJudged(
                    new ContractClassOfSeveral("H4", ["One code", "Another code"], ["AS 1604 H4", "NZS 3640 H4"])
                ),
                "More than one system whose demands are known here has a class \"H4\" (One code; Another code), and which is meant is not said: nothing is judged against it. "
                    + "Write it with its system before it: AS 1604 H4 or NZS 3640 H4."
            ),
            (
                new ContractNotJudged(new ContractClassOfSeveral("H4", ["One code", "Another code"], [])),
                "More than one system whose demands are known here has a class \"H4\" (One code; Another code), and which is meant is not said: nothing is judged against it."
            ),
            (
                new ContractNotJudged(
                    new ContractClassNotAnswered("NP4", new NotPermitted("For round timber only.", Nothing))
                ),
                "The contract's class \"NP4\" (Invented code) gives no demand for this piece: For round timber only."
            ),
            (
                new ContractNotJudged(
                    new ContractClassNotAnswered("NP4", new NotCovered(new NoRowHolds([Field.SpeciesGroup]), Nothing))
                ),
                "What the contract's class \"NP4\" (Invented code) demands of such a piece is not known here: nothing is judged against it."
            ),
            (
                new UseNotJudged(
                    new(
                        new UseClassByContract("AB", new("3.2", [UseClass.ThreeTwo], null), IsOfCode: true),
                        new UseClassByCode("fence post", new("4", [UseClass.Four], null), "Invented code")
                    )
                ),
                "The contract's class AB is for use class 3.2, and it is what was judged; what the code asks for in use class 4, where the component belongs, was not judged."
            ),
            (new CodeForbids(new("Not with this timber.", Nothing)), "Not with this timber."),
            (
                new CodeAsksForNone(new("Heartwood of this timber lasts.", [], Nothing)),
                "The code requires no preservative here. Heartwood of this timber lasts."
            ),
            (
                new RulebookSilent(new(new CellNotRead("The threshold is not known."), Nothing)),
                "The code must be consulted: this cell is not in the rulebook. The threshold is not known."
            ),
            (
                new CodeSilentOnInsects(new([new("termites", [], null, "wood", null!)])),
                "No preservative is required here against decay. What is required against termites, which may attack such timber, is not in the rulebook: "
                    + "the code and the local rules must be consulted."
            ),
            (new NoDepthKnown(), "There is no depth to judge this piece against."),
            (new RetentionUnknown(), "Retention is not judged: there is no figure to meet."),
            (
                new RetentionNotStated(),
                "Retention is not judged: neither the rulebook nor the contract gives a figure in kg/m³."
            ),
            (new RetentionNotAssayed(), "Retention is not judged: no assay was given."),
            (new MoistureNotStated(28), "Moisture before treatment is not stated; the code allows at most 28 %."),
            (new NothingJudged(), "Pieces and batch stay undecided: there is no demand to judge them by."),
        ];
}
