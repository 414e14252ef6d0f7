using Alburnum.Requirements;

namespace Alburnum.Reports.Requirements;

/// <summary>From an answer to its document.</summary>
public static class AnswerMapping
{
    private const string GivenLead = "given: ";
    private const int NearMissesShown = 3;

    /// <summary>The document of an answer.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="untreated">Whether the timber will do untreated; null where that is not known.</param>
    /// <param name="routes">What would make it possible.</param>
    /// <param name="remarks">What else a reader should know.</param>
    public static AnswerDocument From(
        Answer answer,
        UntreatedTimber? untreated,
        IReadOnlyList<Route> routes,
        IReadOnlyList<string> remarks
    ) =>
        new(
            "alburnum requirement",
            1,
            Outcome(answer),
            Reason(answer),
            answer is NotCovered { Missing: var missing } ? [.. missing.Select(field => field.InWords())] : [],
            answer.Trace.RulebookName,
            answer.Trace.RulebookTitle,
            From(answer.Trace.Enquiry),
            answer is Required required ? From(required.Requirement) : null,
            answer.Trace.WeakestStanding.InWords(),
            [.. answer.Trace.Steps.Select(From)],
            [
                .. answer.Trace.FactsUsed.Select(fact => new FactDocument(
                    fact.InWords,
                    fact.Provenance.Standing.InWords(),
                    fact.Provenance.Citation
                )),
            ],
            From(untreated),
            [.. routes.Select(From)],
            answer is Required demand ? SpecificationClause.Write(demand) : null,
            remarks
        );

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
        new(
            enquiry.Component?.Name,
            enquiry.Section?.Label,
            enquiry.FormOrFromSection switch
            {
                TimberForm.Sawn => "sawn",
                TimberForm.Round => "round",
                _ => null,
            },
            enquiry.Species?.Name,
            [.. enquiry.UseClasses.Select(each => each.Label())],
            enquiry.Life?.Years,
            enquiry.HasExposedHeartwood,
            enquiry.IsIncised,
            enquiry.IsCoated,
            enquiry.MoisturePercent,
            enquiry.StatedClass,
            enquiry.Preservative,
            enquiry.CriticalValue?.Label
        );

    private static DemandDocument From(Requirement requirement) =>
        new(
            requirement.PenetrationName,
            requirement.Penetration.InWords,
            requirement.Zone?.InWords,
            requirement.Retention?.Factor,
            requirement.RequiredRetention?.Label,
            requirement.MoistureMaxPercent,
            requirement.Conditions,
            requirement.Open
        );

    private static StepDocument From(TraceStep step) =>
        new(
            InWords(step.Subject),
            step is { Subject: Subject.Advice, Matched.Count: > 0 }
                ? FormattableString.Invariant($"{step.Matched.Count} that hold")
                : InWords(step.Finding),
            [.. step.Matched.Select(From)],
            [.. step.SetAside.Select(From)],
            [.. step.Open.Select(From)],
            [.. step.NearMisses.Select(From)]
        );

    private static RowDocument From(Row row) =>
        new(row.Key, row.WhenInWords, row.Demand.InWords, row.Provenance.Standing.InWords(), row.Provenance.Citation);

    private static MissDocument From(Miss miss) => new(From(miss.Row), miss.Field.InWords(), miss.Asked, miss.Found);

    private static UntreatedDocument? From(UntreatedTimber? untreated) =>
        untreated is null
            ? null
            : new UntreatedDocument(
                untreated.Heartwood?.InWords(),
                untreated.Sapwood.InWords(),
                untreated.InWords,
                untreated.Standing.InWords()
            );

    private static RouteDocument From(Route route) =>
        new(
            InWords(route.Kind),
            route.InWords,
            InWords(route.Reach),
            Reason(route.Answer),
            route.Answer is Required required ? From(required.Requirement) : null,
            From(route.Untreated),
            (route.Answer?.Trace.WeakestStanding ?? route.Untreated!.Standing).InWords(),
            route.Answer is null
                ? []
                : [.. route.Answer.Trace.Steps.Select(step => From(step with { NearMisses = [] }))]
        );

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
