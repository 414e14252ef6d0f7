using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;
using Alburnum.Requirements;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Reports.Requirements;

/// <summary>The parts of an answer, each as it is said, for whoever lays them out: the lines of a terminal, a page.</summary>
public static class AnswerParts
{
    /// <summary>What was asked, in one line.</summary>
    public static string Asked(AskedDocument asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        var parts = new List<string?>
        {
            RequirementWords.Current.Answers.Component(asked.CalledAs, asked.Component),
            asked.Section,
            asked.Form is { } form ? RequirementWords.Current.Say(form) : null,
            asked.Species,
            asked.UseClasses.Count > 0
                ? Said(
                    "rows.use-class",
                    ("classes", RequirementWords.Current.Rows.AsWritten(asked.UseClassAsWritten, asked.UseClasses))
                )
                : null,
            asked.ServiceLifeYears is { } years ? Said("rows.years", ("years", Figures.Whole(years))) : null,
            asked.StatedClass is { } stated ? Said("answers.sheet.asked-as", ("class", stated)) : null,
        };
        return string.Join(", ", parts.Where(part => part is not null));
    }

    /// <summary>The outcome in a word or two, and what is said of it: the penetration required, or why there is none.</summary>
    public static (string Outcome, string Says) Headline(AnswerDocument answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var outcome = RequirementWords.Current.Answers.Say(answer.Outcome, answer.Unless.Count > 0);
        var says = answer.Requirement is { } demand
            ? Named(demand.Penetration, demand.PenetrationInWords, demand.PenetrationStanding)
            : Worn(answer.Reason ?? "", answer.ReasonStanding);
        if (
            answer.Contract
            is not { PenetrationInWords: { } depth, StatedClass: var contractsName, Stricter: var stricter } contract
        )
            return (outcome, says);
        var byContract = Said("answers.required-by-contract");
        var contracts = Named(contractsName, depth, contract.Standing);
        return (answer.Outcome, stricter) switch
        {
            (_, StricterDemand.Contract) => (byContract, contracts),
            (_, StricterDemand.NotComparable) => (
                outcome,
                Said("answers.both", ("code", says), ("contract", contracts))
            ),
            (AnswerOutcome.NotNeeded, null) => (
                byContract,
                Said("answers.none-by-code", ("contract", contracts), ("reason", says))
            ),
            _ => (outcome, says),
        };
    }

    private static string Named(string name, string inWords, Standing? standing) =>
        Worn(name == inWords ? name : Said("rows.named-depth", ("name", name), ("depth", inWords)), standing);

    private static string Worn(string what, Standing? standing) =>
        RequirementWords.Current.Answers.WithStanding(what, standing);

    /// <summary>The clause for a specification, or when it is written; null where there is nothing to order.</summary>
    public static string? Clause(AnswerDocument answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return answer.Clause ?? answer.ClauseHeldUp;
    }

    /// <summary>The code of practice, with the user's own file of it.</summary>
    public static string Code(AnswerDocument answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return RulebookCopyDocument.Title(answer.RulebookTitle, answer.RulebookCopy);
    }

    /// <summary>The question that would narrow the use class down; null where the answer does not depend on it.</summary>
    public static string? AskNext(AnswerDocument answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return answer.AskNext is { } next ? Said("requirements.use-class.ask-next", ("question", next)) : null;
    }

    /// <summary>What is required beside penetration, by name: zone, retention, moisture; what is not known is left out.</summary>
    public static IEnumerable<(string Name, string Says)> Amounts(AnswerDocument answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        if (
            answer.Outcome != AnswerOutcome.NotPermitted
            && ContractDocument.Zone(CodesZone(answer.Requirement), answer.Contract) is { } zone
        )
            yield return (Said("answers.sheet.zone"), zone);
        if (answer.Requirement is not { } demand)
        {
            // The code asks for none: what the contract orders all the same is its own.
            if (answer is { Outcome: AnswerOutcome.NotNeeded, Contract: { Retention: { } ordered } contract })
                yield return (
                    Said("answers.sheet.retention"),
                    Said("answers.from-contract", ("what", ordered), ("class", contract.StatedClass))
                );
            yield break;
        }
        if (demand.Retention is { } amount)
            yield return (Said("answers.sheet.retention"), Worn(amount, demand.RetentionStanding));
        else if (demand.RetentionFactor is { } factor)
            yield return (
                Said("answers.sheet.retention"),
                Worn(Said("answers.sheet.factor", ("factor", Figures.Digits(factor))), demand.RetentionStanding)
            );
        if (demand.MoistureMaxPercent is { } moisture)
            yield return (
                Said("answers.sheet.moisture"),
                Worn(
                    Said("answers.sheet.moisture-max", ("percent", Figures.Digits(moisture, 1))),
                    demand.MoistureStanding
                )
            );
    }

    private static string? CodesZone(DemandDocument? demand) =>
        demand?.AnalyticalZone is { } zone ? Worn(zone, demand.AnalyticalZoneStanding) : null;

    /// <summary>Whether the timber will do untreated, in one sentence.</summary>
    public static string Untreated(UntreatedDocument untreated)
    {
        ArgumentNullException.ThrowIfNull(untreated);
        return Said("answers.sheet.with-standing", ("what", untreated.InWords), Standing(untreated.Standing));
    }

    /// <summary>A route: its kind, and what it comes to.</summary>
    public static (string Kind, string Says) Route(RouteDocument route)
    {
        ArgumentNullException.ThrowIfNull(route);
        var says = string.Join(
            ", ",
            new[]
            {
                Then(route),
                route.ExpectedPieceShare is { } share
                    ? RequirementWords.Current.Routes.Expected(share, route.ExpectedPart)
                    : null,
                route.Lasted,
                route.CommonlySold,
            }.Where(part => part is not null)
        );
        return (RequirementWords.Current.Routes.Say(route.Kind), says);
    }

    /// <summary>Weakest standing of the rows that a step rests on; null where it rests on none.</summary>
    public static Standing? StandingOf(StepDocument step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return step.Matched.Count > 0 ? step.Matched.Max(row => row.Standing) : null;
    }

    /// <summary>The rows of a step, each with its sign: = it holds, - it gives way, ? it could hold, ≠ it fails on one field.</summary>
    /// <param name="step">The step.</param>
    /// <param name="withAllRows">Every row that failed on one field, in place of the first few.</param>
    public static IEnumerable<(string Sign, string Says)> Rows(StepDocument step, bool withAllRows)
    {
        ArgumentNullException.ThrowIfNull(step);
        return
        [
            .. step.Matched.Select(row => ("=", Matched(row))),
            .. step.SetAside.Select(row => ("-", Said("answers.sheet.gives-way", ("row", row.Key)))),
            // Advice that could hold, if more were known, decides nothing.
            .. withAllRows || !AnswerMapping.IsAdvice(step) ? step.Open.Select(miss => ("?", Open(miss))) : [],
            .. Shown(step, withAllRows).Select(miss => ("≠", Failed(miss))),
        ];
    }

    /// <summary>How many rows that failed on one field are not among those shown.</summary>
    internal static int NotShown(StepDocument step, bool withAllRows) =>
        step.NearMisses.Count - Shown(step, withAllRows).Count;

    /// <summary>A fact outside the rows, with its standing and source.</summary>
    public static string Fact(FactDocument fact)
    {
        ArgumentNullException.ThrowIfNull(fact);
        return Said("answers.sheet.fact-used", ("fact", fact.Fact), Standing(fact.Standing), ("source", fact.Source));
    }

    /// <summary>Heading of the reasons.</summary>
    public static string Why(AnswerDocument answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return Said("answers.sheet.why", Standing(answer.WeakestStanding));
    }

    /// <summary>Every source that the answer rests on, once, in the order in which they are first used.</summary>
    public static IEnumerable<string> Sources(AnswerDocument answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return answer
            .Trace.SelectMany(step => step.Matched)
            .Select(row => row.Source)
            .Concat(answer.FactsUsed.Select(fact => fact.Source))
            .Distinct(StringComparer.Ordinal);
    }

    /// <summary>A row that failed on one field, and on what.</summary>
    internal static string Failed(MissDocument miss) =>
        Said(
            "answers.sheet.failed-row",
            ("row", miss.Row.Key),
            ("field", RequirementWords.Current.Rows.Say(miss.Field)),
            ("asked", miss.Asked),
            ("found", miss.Found)
        );

    private static IReadOnlyList<MissDocument> Shown(StepDocument step, bool withAllRows) =>
        withAllRows ? step.NearMisses : AnswerMapping.Nearest(step);

    private static string Matched(RowDocument row) =>
        Said("answers.sheet.row", ("row", row.Key), ("when", row.When), Standing(row.Standing), ("source", row.Source));

    private static string Open(MissDocument miss) =>
        Said(
            "answers.sheet.open-row",
            ("row", miss.Row.Key),
            ("field", RequirementWords.Current.Rows.Say(miss.Field)),
            ("asked", miss.Asked),
            ("found", miss.Found),
            ("demand", miss.Row.Demand)
        );

    private static string Then(RouteDocument route) =>
        route switch
        {
            { Requirement: { IsRecommended: true } advised } => Said(
                "answers.sheet.recommended-route",
                ("change", route.Change),
                ("penetration", Demanded(route, advised)),
                Standing(advised.PenetrationStanding),
                ("reach", RequirementWords.Current.Routes.Reach(route.Reach, route.UsualAgainstPrediction))
            ),
            { Requirement: { } demand } => Said(
                "answers.sheet.route",
                ("change", route.Change),
                ("penetration", Demanded(route, demand)),
                Standing(demand.PenetrationStanding),
                ("reach", RequirementWords.Current.Routes.Reach(route.Reach, route.UsualAgainstPrediction))
            ),
            { Untreated: { Heartwood: { } worst, HeartwoodAtBest: { } best } } when best != worst => Said(
                "answers.sheet.untreated-route-range",
                ("change", route.Change),
                ("heartwood", worst),
                ("best", best),
                Standing(route.Standing)
            ),
            { Untreated.Heartwood: { } heartwood } => Said(
                "answers.sheet.untreated-route",
                ("change", route.Change),
                ("heartwood", heartwood),
                Standing(route.Standing)
            ),
            { Untreated: not null } => Said("answers.sheet.untreated-route-open", ("change", route.Change)),
            { Reach: ReachVerdict.Likely, Reason: { } reason } => Said(
                "answers.sheet.free-route",
                ("change", route.Change),
                ("reason", reason)
            ),
            _ => Said("answers.sheet.silent-route", ("change", route.Change)),
        };

    private static string Demanded(RouteDocument route, DemandDocument code) =>
        route.StatedClass is { } named
            ? Said("answers.sheet.with-contract", ("code", code.Penetration), ("class", named))
            : code.Penetration;

    private static (string, string) Standing(Standing standing) => ("standing", Wording.Current.Say(standing));
}
