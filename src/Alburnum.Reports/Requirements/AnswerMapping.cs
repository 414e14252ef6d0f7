using Alburnum.Reports.Words;
using Alburnum.Requirements;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Reports.Requirements;

/// <summary>From an answer to its document.</summary>
public static class AnswerMapping
{
    private const string GivenLead = "given: ";
    private const int NearMissesShown = 3;

    /// <summary>The document of a requirement found.</summary>
    public static AnswerDocument From(FoundRequirement found)
    {
        ArgumentNullException.ThrowIfNull(found);
        var (answer, trace) = (found.Answer, found.Answer.Trace);
        return new()
        {
            Format = "alburnum requirement",
            Version = 1,
            Outcome = Outcome(answer),
            Reason = Reason(answer),
            Missing = answer is NotCovered { Missing: var missing }
                ? [.. missing.Select(field => field.InWords())]
                : [],
            Rulebook = trace.RulebookName,
            RulebookTitle = trace.RulebookTitle,
            Enquiry = From(trace.Enquiry),
            Requirement = answer is Required required ? From(required.Requirement) : null,
            WeakestStanding = trace.WeakestStanding.InWords(),
            Trace = [.. trace.Steps.Select(From)],
            FactsUsed =
            [
                .. trace.FactsUsed.Select(fact => new FactDocument
                {
                    Fact = fact.InWords,
                    Standing = fact.Provenance.Standing.InWords(),
                    Source = fact.Provenance.Citation,
                }),
            ],
            Untreated = From(found.Untreated),
            Routes = [.. found.Routes.Select(From)],
            Clause = answer is Required demand ? SpecificationClause.Write(demand) : null,
            Remarks = [.. found.Remarks.Select(RequirementWords.Say)],
        };
    }

    /// <summary>"required", "not permitted" or "not covered".</summary>
    public static string Outcome(Answer answer) =>
        answer switch
        {
            Required => "required",
            NotPermitted => "not permitted",
            NotCovered => "not covered",
            _ => throw new ArgumentOutOfRangeException(nameof(answer), answer, "Not an answer."),
        };

    private static string? Reason(Answer? answer) =>
        answer switch
        {
            NotPermitted no => no.Reason,
            NotCovered open => open.Reason,
            _ => null,
        };

    /// <summary>A finding in words.</summary>
    public static string InWords(Finding finding) =>
        finding switch
        {
            Settled settled => settled.Demand.InWords,
            Given given => GivenLead + given.InWords,
            Silent => "no row",
            Contradicted => "the rows contradict each other",
            Depends depends => $"depends on: {string.Join(", ", depends.Fields.Select(field => field.InWords()))}",
            _ => throw new ArgumentOutOfRangeException(nameof(finding), finding, "Not a finding."),
        };

    /// <summary>The few rows nearest to matching: none where the enquiry itself gave the answer, and none of other components.</summary>
    internal static IReadOnlyList<MissDocument> Nearest(StepDocument step) =>
        IsGiven(step)
            ? []
            : [.. step.NearMisses.Where(miss => miss.Field != Field.Component.InWords()).Take(NearMissesShown)];

    /// <summary>True for conditions and advice, of which no single row governs.</summary>
    internal static bool IsAdvice(StepDocument step) => step.Subject == InWords(Subject.Advice);

    /// <summary>True where the enquiry itself gave what the step was about.</summary>
    internal static bool IsGiven(StepDocument step) => step.Finding.StartsWith(GivenLead, StringComparison.Ordinal);

    /// <summary>A subject in words.</summary>
    public static string InWords(Subject subject) =>
        subject switch
        {
            Subject.UseClass => "use class",
            Subject.Life => "service life",
            Subject.Penetration => "penetration",
            Subject.Retention => "retention",
            Subject.Moisture => "moisture",
            Subject.Advice => "conditions",
            _ => throw new ArgumentOutOfRangeException(nameof(subject), subject, "Not a subject."),
        };

    private static AskedDocument From(Enquiry enquiry) =>
        new()
        {
            Component = enquiry.Component?.Name,
            Section = enquiry.Section?.Label,
            Form = enquiry.FormOrFromSection switch
            {
                TimberForm.Sawn => "sawn",
                TimberForm.Round => "round",
                _ => null,
            },
            Species = enquiry.Species?.Name,
            UseClasses = [.. enquiry.UseClasses.Select(each => each.Label())],
            LifeYears = enquiry.Life?.Years,
            ExposedHeartwood = enquiry.HasExposedHeartwood,
            Incised = enquiry.IsIncised,
            Coated = enquiry.IsCoated,
            MoisturePercent = enquiry.MoisturePercent,
            StatedClass = enquiry.StatedClass,
            Preservative = enquiry.Preservative,
            CriticalValue = enquiry.CriticalValue?.Label,
        };

    private static DemandDocument From(Requirement requirement) =>
        new()
        {
            Penetration = requirement.PenetrationName,
            PenetrationInWords = requirement.Penetration.InWords,
            AnalyticalZone = requirement.Zone?.InWords,
            RetentionFactor = requirement.Retention?.Factor,
            Retention = requirement.RequiredRetention?.Label,
            MoistureMaxPercent = requirement.MoistureMaxPercent,
            Conditions = requirement.Conditions,
            Open = requirement.Open,
        };

    private static StepDocument From(TraceStep step) =>
        new()
        {
            Subject = InWords(step.Subject),
            Finding = step is { Subject: Subject.Advice, Matched.Count: > 0 }
                ? FormattableString.Invariant($"{step.Matched.Count} that hold")
                : InWords(step.Finding),
            Matched = [.. step.Matched.Select(From)],
            SetAside = [.. step.SetAside.Select(From)],
            Open = [.. step.Open.Select(From)],
            NearMisses = [.. step.NearMisses.Select(From)],
        };

    private static RowDocument From(Row row) =>
        new()
        {
            Key = row.Key,
            When = row.WhenInWords,
            Demand = row.Demand.InWords,
            Standing = row.Provenance.Standing.InWords(),
            Source = row.Provenance.Citation,
        };

    private static MissDocument From(Miss miss) =>
        new()
        {
            Row = From(miss.Row),
            Field = miss.Field.InWords(),
            Asked = miss.Asked,
            Found = miss.Found,
        };

    private static UntreatedDocument? From(UntreatedTimber? untreated) =>
        untreated is null
            ? null
            : new()
            {
                Heartwood = untreated.Heartwood is { } heartwood ? RequirementWords.Say(heartwood) : null,
                Sapwood = RequirementWords.Say(untreated.Sapwood),
                InWords = RequirementWords.Say(untreated),
                Standing = untreated.Standing.InWords(),
            };

    private static RouteDocument From(Route route) =>
        new()
        {
            Kind = InWords(route.Kind),
            Change = route.InWords,
            Reach = InWords(route.Reach),
            Reason = Reason(route.Answer),
            Requirement = route.Answer is Required required ? From(required.Requirement) : null,
            Untreated = From(route.Untreated),
            Standing = (route.Answer?.Trace.WeakestStanding ?? route.Untreated!.Standing).InWords(),
            Trace = route.Answer is null
                ? []
                : [.. route.Answer.Trace.Steps.Select(step => From(step with { NearMisses = [] }))],
        };

    private static string InWords(RouteKind kind) =>
        kind switch
        {
            RouteKind.Incise => "incise",
            RouteKind.Dry => "dry",
            RouteKind.UseRound => "round timber",
            RouteKind.OtherSpecies => "other species",
            RouteKind.DurableHeartwood => "durable heartwood",
            RouteKind.ShorterLife => "shorter life",
            RouteKind.LowerUseClass => "lower use class",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a route."),
        };

    private static string InWords(ReachVerdict reach) =>
        reach switch
        {
            ReachVerdict.Likely => "usually reached",
            ReachVerdict.NotKnown => "not known whether reached",
            ReachVerdict.Unlikely => "usually not reached",
            _ => throw new ArgumentOutOfRangeException(nameof(reach), reach, "Not a verdict."),
        };
}
