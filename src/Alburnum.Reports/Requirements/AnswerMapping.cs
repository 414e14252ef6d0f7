using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;
using Alburnum.Requirements;
using Alburnum.Workflows.Impregnation;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Reports.Requirements;

/// <summary>From an answer to its document.</summary>
public static class AnswerMapping
{
    private const int NearMissesShown = 3;

    private static RequirementWords Words => RequirementWords.Current;

    /// <summary>The document of a requirement found.</summary>
    public static AnswerDocument From(FoundRequirement found)
    {
        ArgumentNullException.ThrowIfNull(found);
        var answer = found.Answer;
        var trace = answer is NotNeeded ? answer.Trace.WithoutTreatment : answer.Trace;
        return new()
        {
            Format = "alburnum requirement",
            Version = 1,
            Outcome = answer.Outcome,
            Reason = Words.Answers.Reason(answer),
            ReasonStanding = answer is NotNeeded or NotPermitted ? answer.Trace.PenetrationStanding : null,
            Missing = answer is NotCovered { Missing: var missing } ? missing : [],
            Rulebook = trace.RulebookName,
            RulebookTitle = trace.RulebookTitle,
            RulebookCopy = RulebookCopyDocument.Of(trace.Copy),
            Enquiry = Asked(trace.Enquiry),
            Requirement = answer is Required required ? From(required) : null,
            Contract = ContractDocument.Of(found.Contract, answer),
            WeakestStanding = trace.WeakestStanding,
            Trace = [.. trace.Steps.Select(From)],
            FactsUsed =
            [
                .. trace.FactsUsed.Select(fact => new FactDocument
                {
                    Fact = Words.Answers.Say(fact),
                    Standing = fact.Provenance.Standing,
                    Source = fact.Provenance.Citation,
                }),
            ],
            Untreated = From(found.Untreated),
            Unless = [.. found.Insects.Select(Words.Answers.Say)],
            Expected = From(found.Expected),
            Routes = [.. found.Ways.Select(From)],
            WouldNotDo = [.. found.Failing.Select(From)],
            Clause = CanBeOrdered(found) && HeldUp(found) is null ? Clause(found) : null,
            ClauseHeldUp = CanBeOrdered(found) ? HeldUp(found) : null,
            AskNext =
                answer is NotCovered { Missing: var open } && open.Contains(Field.UseClass)
                    ? trace.NextQuestion is { } next
                        ? Words.Exposure.Say(next)
                        : null
                    : null,
            Warnings = [.. found.Warnings.Select(Words.Say)],
            Remarks = [.. Words.Answers.Beside(answer), .. found.Remarks.Select(Words.Say)],
        };
    }

    // Nobody is to be given an order for what will not do.
    private static bool CanBeOrdered(FoundRequirement found) =>
        found.Answer is NotNeeded || found is { Answer: Required } && !found.Warnings.Any(IsRuledOut);

    private static string? HeldUp(FoundRequirement found) =>
        found switch
        {
            { IsHeldUpByContract: true } => SpecificationClause.HeldUpByContract,
            { Answer: Required, HeldUpByLaw: { } forbidden } => SpecificationClause.HeldUpByLaw(forbidden),
            _ => null,
        };

    private static string? Clause(FoundRequirement found) =>
        found.Answer switch
        {
            Required demand => SpecificationClause.Write(demand, found.Contract),
            NotNeeded none => SpecificationClause.Write(none, found.Insects, found.Contract),
            _ => null,
        };

    private static bool IsRuledOut(RequirementRemark remark) => remark is OfPreservative { Finding.IsRuledOut: true };

    /// <summary>The few rows nearest to matching: none where the enquiry itself gave the answer, and none of other components.</summary>
    internal static IReadOnlyList<MissDocument> Nearest(StepDocument step) =>
        IsGiven(step) ? [] : [.. step.NearMisses.Where(miss => miss.Field != Field.Component).Take(NearMissesShown)];

    /// <summary>True for conditions and advice, of which no single row governs.</summary>
    internal static bool IsAdvice(StepDocument step) => step.Subject == Subject.Advice;

    /// <summary>True where the enquiry itself gave what the step was about.</summary>
    internal static bool IsGiven(StepDocument step) =>
        step.Finding.StartsWith(Words.Answers.GivenLead, StringComparison.Ordinal);

    /// <summary>What was asked.</summary>
    internal static AskedDocument Asked(Enquiry enquiry) =>
        new()
        {
            Component = enquiry.Component?.Name,
            CalledAs = enquiry.CalledAs?.Name,
            Section = enquiry.Section?.Label,
            Form = enquiry.FormOrFromSection,
            Species = enquiry.Species?.Name ?? enquiry.NotOneSpecies?.Name,
            UseClasses = [.. enquiry.StatedUse.Classes.Select(each => each.Label())],
            UseClassAsWritten = enquiry.UseClassAsWritten,
            SaltWater = enquiry.Exposure.IsInSaltWater,
            GroundContact = enquiry.Exposure.TouchesGroundOrFreshWater,
            Weather = enquiry.Exposure.IsExposedToWeather,
            WaterStays = enquiry.Exposure.LetsWaterStay,
            Damp = enquiry.Exposure.MayGetDamp,
            ServiceLifeYears = enquiry.Life?.Years,
            ExposedHeartwood = enquiry.HasExposedHeartwood,
            Incised = enquiry.IsIncised,
            Coated = enquiry.Exposure.IsCoated,
            MoisturePercent = enquiry.MoisturePercent,
            StatedClass = enquiry.StatedClass,
            Preservative = enquiry.Preservative,
            CriticalValue = enquiry.CriticalValue?.Label,
            Insects = enquiry.Exposure.Insects is { } insects ? [.. insects.Select(insect => insect.Name)] : null,
        };

    private static DemandDocument From(Required required)
    {
        var (requirement, trace) = (required.Requirement, required.Trace);
        return new()
        {
            Penetration = requirement.PenetrationName,
            IsRecommended = requirement.IsRecommended,
            PenetrationInWords = Words.Depths.Say(requirement.Penetration),
            PenetrationStanding = trace.PenetrationStanding,
            AnalyticalZone = requirement.Zone?.Name,
            AnalyticalZoneStanding = trace.ZoneStanding,
            ZoneFromMm = requirement.Zone?.FromMm,
            ZoneDepthMm = requirement.Zone?.DepthMm,
            RetentionFactor = requirement.Retention?.Factor,
            Retention = requirement.RequiredRetention?.Label,
            RetentionStanding = requirement.RetentionOpen is null ? trace.StandingOf(Subject.Retention) : null,
            MoistureMaxPercent = requirement.MoistureMaxPercent,
            MoistureStanding = requirement.MoistureMaxPercent is null ? null : trace.StandingOf(Subject.Moisture),
            Conditions = [.. requirement.Conditions.Select(Words.Answers.Say)],
            Open = Words.Answers.Open(requirement),
        };
    }

    private static StepDocument From(TraceStep step) =>
        new()
        {
            Subject = step.Subject,
            Finding = Words.Answers.Say(step),
            Matched = [.. step.Matched.Select(From)],
            SetAside = [.. step.SetAside.Select(From)],
            Open = [.. step.Open.Select(From)],
            NearMisses = [.. step.NearMisses.Select(From)],
        };

    private static RowDocument From(Row row) =>
        new()
        {
            Key = row.Key,
            When = Words.Rows.When(row),
            Demand = Words.Rows.Say(row.Demand),
            Standing = row.Provenance.Standing,
            Source = row.Provenance.Citation,
        };

    private static MissDocument From(Miss miss) =>
        new()
        {
            Row = From(miss.Row),
            Field = miss.Field,
            Asked = Words.Rows.Say(miss.Asked),
            Found = Words.Rows.Say(miss.Found),
        };

    private static UntreatedDocument? From(UntreatedTimber? untreated) =>
        untreated is null
            ? null
            : new()
            {
                Heartwood = untreated.Heartwood is { } heartwood ? Words.Durability.Say(heartwood) : null,
                HeartwoodAtBest = untreated.HeartwoodAtBest is { } best ? Words.Durability.Say(best) : null,
                Sapwood = Words.Durability.Say(untreated.Sapwood),
                InWords = Words.Durability.Say(untreated),
                Standing = untreated.Standing,
            };

    private static ExpectedReachDocument? From(TreatingPrediction? expected) =>
        expected is not { Quick: var quick, Usual: { } usual }
            ? null
            : new()
            {
                PieceShare = quick.PieceShare,
                Part = expected.LesserPart,
                PieceShareWithoutHeartwood = expected.WithoutHeartwoodAtFace?.Quick.PieceShare,
                CoreShare = quick.CoreShare,
                LeastDepthMm = quick.LeastMm,
                Usual = usual.Verdict,
                Differ = expected.DiffersFromUsual,
                InWords = [.. PredictionWords.Current.Outlook(expected)],
            };

    private static RouteDocument From(FoundRoute found)
    {
        var route = found.Route;
        return new()
        {
            Kind = route.Kind,
            Change = Words.Routes.Say(route),
            Reach = found.Reach,
            UsualAgainstPrediction = found.UsualAgainstPrediction,
            ExpectedPieceShare = found.Expected?.Quick.PieceShare.Value,
            ExpectedPart = found.Expected?.LesserPart,
            CommonlySold = Words.Routes.Sold(route),
            Lasted = Words.Routes.Lasts(route),
            Reason = Words.Answers.Reason(route.Answer),
            Requirement = route.Answer is Required required ? From(required) : null,
            StatedClass = route.Contract
                is ContractDemand { Stricter: not (StricterDemand.Code or StricterDemand.Neither) } decides
                ? decides.Name
                : null,
            Untreated = From(route.Untreated),
            Standing = route.Answer?.Trace.WeakestStanding ?? route.Untreated!.Standing,
            Trace = route.Answer is null
                ? []
                : [.. route.Answer.Trace.Steps.Select(step => From(step with { NearMisses = [] }))],
        };
    }
}
