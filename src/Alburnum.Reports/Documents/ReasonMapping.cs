using System.Text.Json;
using System.Text.Json.Nodes;
using Alburnum.Acceptance;
using Alburnum.Acceptance.Variables;
using Alburnum.Cases;
using Alburnum.Penetration;
using Alburnum.Reports.Words;
using Alburnum.Requirements;

namespace Alburnum.Reports.Documents;

/// <summary>
/// Reasons as data: one object each, with its <c>kind</c> and the fields of that kind, described in docs/json/reasons.md. Kinds and fields are the same in every
/// language.
/// </summary>
public static class ReasonMapping
{
    /// <summary>One object for each reason, in their order.</summary>
    public static IReadOnlyList<JsonObject> Of(IEnumerable<Reason> reasons) => [.. reasons.Select(Of)];

    private static JsonObject Of(Reason reason) =>
        reason switch
        {
            PieceReason piece => Of(piece),
            BatchReason batch => Of(batch),
            VariablesReason variables => Of(variables),
            CaseReason @case => Of(@case),
            // A reason of any other kind has no figures of its own here.
            _ => Kind(reason),
        };

    private static JsonObject Of(PieceReason reason) =>
        reason switch
        {
            ZoneAbsent absent => Kind(reason, Rule(absent.Rule), ("zone", Name(absent.Zone))),
            NothingRead nothing => Kind(reason, Rule(nothing.Rule)),
            DecidedAt at => Of(at),
            ReachedOnFace face => Kind(
                reason,
                Rule(face.Rule),
                ("face", face.Face),
                ("reached_share", Share(face.ReachedShare)),
                ("required_share", Share(face.RequiredShare)),
                ("depth_mm", Mm(face.DepthMm)),
                ("u_mm", Mm(face.StandardUncertaintyMm)),
                Low(face.Probability),
                High(face.Probability)
            ),
            GuardBand band => Kind(
                reason,
                ("depth_mm", Mm(band.DepthMm)),
                ("required_mm", Mm(band.RequiredMm)),
                ("u_mm", Mm(band.StandardUncertaintyMm)),
                ("conforms_from_mm", Mm(band.ConformsFromMm)),
                ("fails_up_to_mm", Mm(band.FailsUpToMm))
            ),
            FacesNotRead unread => Kind(reason, ("faces", Numbers(unread.Faces))),
            FacesWithoutReading without => Kind(reason, ("faces", Numbers(without.Faces))),
            OppositeFacesNeeded needed => Kind(reason, Rule(needed.Limit)),
            UntreatedArea area => Kind(
                reason,
                Rule(area.Limit),
                ("untreated_share", Share(area.UntreatedShare.Value)),
                ("u_share", Share(area.UntreatedShare.StandardUncertainty)),
                ("probability", FindingsMapping.Chance(area.Probability))
            ),
            UntreatedReach reach => Kind(
                reason,
                Rule(reach.Limit),
                ("across_share", Share(reach.AcrossShare.Value)),
                ("u_share", Share(reach.AcrossShare.StandardUncertainty)),
                ("probability", FindingsMapping.Chance(reach.Probability))
            ),
            JudgedElsewhere elsewhere => Kind(reason, ("verdict", Name(elsewhere.Verdict))),
            _ => Kind(reason),
        };

    private static JsonObject Of(DecidedAt at) =>
        Kind(
            at,
            Rule(at.Rule),
            ("reading", Name(at.Reading)),
            ("positions", at.Positions),
            ("least_depth_mm", Mm(at.LeastDepthMm.Value)),
            ("least_u_mm", Mm(at.LeastDepthMm.StandardUncertainty)),
            ("face", at.Face),
            ("position_mm", Mm(at.PositionMm)),
            ("depth_mm", Mm(at.DepthMm)),
            ("required_mm", Mm(at.RequiredMm)),
            ("u_mm", Mm(at.StandardUncertaintyMm)),
            Low(at.Probability),
            High(at.Probability)
        );

    private static JsonObject Of(BatchReason reason) =>
        reason switch
        {
            RuleUsed used => Kind(reason, ("rule", ReasonWords.Current.Acceptance.Rule(used.Rule))),
            PiecesCounted counted => Kind(
                reason,
                ("cut", counted.Counts.Cut),
                ("conforming", counted.Counts.Conforming),
                ("failing", counted.Counts.Failing),
                ("undecided", counted.Counts.Undecided),
                ("may_fail", counted.MayFail)
            ),
            RuleAsksLessThanCode less => Kind(
                reason,
                ("share", Share(less.Share)),
                ("codes_aql_percent", less.CodesAqlPercent.Value)
            ),
            PiecesStillToCut still => Kind(reason, ("required", still.Asked), ("missing", still.Missing)),
            AcceptanceProbability accepted => Kind(
                reason,
                ("if_independent", FindingsMapping.Chance(accepted.IfIndependent)),
                ("if_alike", FindingsMapping.Chance(accepted.IfAlike))
            ),
            AcceptanceLeftOpen open => Kind(
                reason,
                Low(open.Probability),
                High(open.Probability),
                ("open_pieces", open.OpenPieces)
            ),
            PiecesReadInPart part => Kind(reason, ("pieces", part.Pieces), ("cut", part.Cut)),
            PiecesNotDetermined open => Kind(reason, ("pieces", Texts(open.Pieces))),
            BatchParts parts => Kind(
                reason,
                ("verdict", DocumentNames.OfRule(parts.Batch)),
                ("penetration", DocumentNames.OfRule(parts.Penetration.Verdict)),
                ("retention", parts.Retention is { Verdict: var retention } ? DocumentNames.OfRule(retention) : null)
            ),
            _ => OfRetention(reason),
        };

    private static JsonObject OfRetention(BatchReason reason) =>
        reason switch
        {
            AssayMissing missing => Kind(reason, ("required_kg_per_m3", missing.RequiredKgPerM3)),
            ZoneNotAssayed missing => Kind(
                reason,
                ("zone", missing.Zone),
                ("required_kg_per_m3", missing.RequiredKgPerM3),
                ("gap", DocumentNames.Of(missing.Gap))
            ),
            HardlyThatProduct hardly => Kind(reason, ("samples", Texts(hardly.Samples))),
            PartsNotAnalysed missing => Kind(
                reason,
                ("samples", Texts(missing.Samples)),
                ("parts", Texts(missing.Parts))
            ),
            RetentionMean mean => Kind(
                reason,
                ("samples", mean.Samples),
                ("assays", mean.Assays),
                ("mean_kg_per_m3", mean.MeanKgPerM3.Value),
                ("u_kg_per_m3", mean.MeanKgPerM3.StandardUncertainty),
                ("required_kg_per_m3", mean.RequiredKgPerM3),
                ("zone", mean.Zone),
                ("degrees_of_freedom", double.IsFinite(mean.DegreesOfFreedom) ? mean.DegreesOfFreedom : null),
                ("probability", FindingsMapping.Chance(mean.Probability))
            ),
            BelowDetectionLimit below => Kind(
                reason,
                ("undetected", below.Undetected),
                ("assays", below.Assays),
                ("lowest_mean_kg_per_m3", below.LowestMeanKgPerM3.Value),
                ("lowest_mean_u_kg_per_m3", below.LowestMeanKgPerM3.StandardUncertainty),
                ("highest_mean_kg_per_m3", below.HighestMeanKgPerM3.Value),
                ("highest_mean_u_kg_per_m3", below.HighestMeanKgPerM3.StandardUncertainty),
                ("required_kg_per_m3", below.RequiredKgPerM3),
                ("zone", below.Zone),
                Low(below.Probability),
                High(below.Probability)
            ),
            LaboratoriesDiffer differ => Kind(
                reason,
                ("sample", differ.Sample),
                ("laboratories", differ.Laboratories.Count),
                ("lowest_kg_per_m3", Found(differ).Min()),
                ("highest_kg_per_m3", Found(differ).Max()),
                ("below_kg_per_m3", differ.Laboratories.OfType<NothingFound>().Min(each => (double?)each.LimitKgPerM3)),
                ("contradicts_limit", differ.ContradictsLimit),
                ("birge_ratio", differ.Scatter?.Ratio),
                ("most_by_chance", differ.Scatter?.MostByChance)
            ),
            _ => Kind(reason),
        };

    private static IEnumerable<double> Found(LaboratoriesDiffer differ) =>
        differ.Laboratories.OfType<ContentFound>().Select(each => each.KgPerM3.Value);

    private static JsonObject Of(VariablesReason reason) =>
        reason switch
        {
            DemandUsed used => Kind(
                reason,
                ("limit", used.Demand.Limit),
                ("unit", used.Demand.Unit),
                ("share", Share(used.Demand.Share)),
                ("confidence", Share(used.Demand.Confidence))
            ),
            ValuesRead read => Kind(
                reason,
                ("pieces", read.Pieces),
                ("least", read.Values?.Least),
                ("greatest", read.Values?.Greatest),
                ("below_detection", CutOffs(read.BelowDetection)),
                ("cut_off_above", CutOffs(read.CutOffAbove))
            ),
            ToleranceLimits limits => Kind(
                reason,
                ("lower", limits.Lower),
                ("upper", limits.Upper),
                ("is_exact", limits.IsExact)
            ),
            ShareBounds bounds => Kind(
                reason,
                ("lower_share", Share(bounds.LowerShare)),
                ("upper_share", Share(bounds.UpperShare))
            ),
            LotMeasured whole => Kind(
                reason,
                ("reaching", whole.Reaching),
                ("failing", whole.Failing),
                ("pieces", whole.Pieces)
            ),
            CountedAlone counted => Kind(
                reason,
                ("reaching", counted.Reaching),
                ("pieces", counted.Pieces),
                ("share_lower_bound", Share(counted.ShareLowerBound)),
                ("lot", counted.LotSize)
            ),
            PopulationAssumed assumed => Kind(reason, ("population", DocumentNames.Of(assumed.Population))),
            PopulationDoubted doubted => Kind(reason, ("population", DocumentNames.Of(doubted.Population))),
            _ => Kind(reason),
        };

    private static JsonObject Of(CaseReason reason) =>
        reason switch
        {
            CodeAsksForNone none => Kind(reason, ("code_says", none.Answer.Reason)),
            CodeForbids forbids => Kind(reason, ("code_says", forbids.Answer.Reason)),
            TwoDemands two => Kind(
                reason,
                ("contract", two.ByContract.Name),
                ("by_contract", DocumentNames.OfRule(two.ByContract.Penetration.Verdict)),
                ("code", two.ByCode.Name),
                ("by_code", DocumentNames.OfRule(two.ByCode.Penetration.Verdict))
            ),
            CodeOnlyRecommends advised => Kind(reason, ("demand", advised.Answer.Requirement.PenetrationName)),
            LeastOfCode least => Kind(reason, ("demand", least.Demand.Requirement.PenetrationName)),
            OnlyContractDemands only => Kind(reason, ("contract", only.Contract.Name)),
            RetentionsJudged several => Kind(
                reason,
                (
                    "each",
                    new JsonArray([
                        .. several.Each.Select(each =>
                            (JsonNode?)
                                new JsonObject
                                {
                                    ["by"] = DocumentNames.Of(each.Demand.By),
                                    ["class"] = each.Demand.Class,
                                    ["kg_per_m3"] = each.Demand.KgPerM3,
                                    ["zone"] = each.Demand.Zone?.Name,
                                    ["verdict"] = DocumentNames.OfRule(each.Judgement.Verdict),
                                    ["is_judged"] = !each.Judgement.Reasons.Any(part => part is RetentionNotJudged),
                                }
                        ),
                    ])
                )
            ),
            ZoneTakenForGranted { Zone: var zone } => Kind(reason, ("zone", zone)),
            RetentionOfClassNotKnown unknown => Kind(reason, ("stated_class", unknown.Class)),
            ContractNotJudged stated => Kind(reason, ("stated_class", stated.Class.Name)),
            UseNotJudged { Of: var odd } => Kind(
                reason,
                ("stated_class", odd.Contract!.StatedClass),
                ("for_use_class", odd.Contract.For.Label),
                (
                    "use_classes",
                    new JsonArray([.. odd.Other.Classes.Select(each => (JsonNode?)JsonValue.Create(each.Label()))])
                )
            ),
            MoistureNotStated moisture => Kind(reason, ("max_percent", moisture.MaxPercent)),
            _ => Kind(reason),
        };

    private static JsonArray CutOffs(IEnumerable<CutOffReadings> readings) =>
        new([.. readings.Select(cut => (JsonNode?)new JsonObject { ["limit"] = cut.Limit, ["pieces"] = cut.Pieces })]);

    private static JsonObject Kind(Reason reason, params ReadOnlySpan<(string Name, JsonNode? Value)> fields)
    {
        JsonObject document = new() { ["kind"] = JsonNamingPolicy.SnakeCaseLower.ConvertName(reason.GetType().Name) };
        foreach (var (name, value) in fields)
            document.Add(name, value);
        return document;
    }

    private static JsonArray Numbers(IEnumerable<int> numbers) =>
        new([.. numbers.Select(number => (JsonNode?)JsonValue.Create(number))]);

    private static JsonArray Texts(IEnumerable<string> texts) =>
        new([.. texts.Select(text => (JsonNode?)JsonValue.Create(text))]);

    private static (string, JsonNode?) Rule(DepthRule rule) => ("rule", RequirementWords.Current.Depths.Say(rule));

    private static (string, JsonNode?) Low(ProbabilityRange probability) =>
        ("probability_low", FindingsMapping.Chance(probability.Low));

    private static (string, JsonNode?) High(ProbabilityRange probability) =>
        ("probability_high", FindingsMapping.Chance(probability.High));

    private static string Name<T>(T value)
        where T : struct, Enum => DocumentNames.Of(value);

    private static double Mm(double length) => Math.Round(length, 2);

    private static double Share(double share) => Math.Round(share, 6);
}
