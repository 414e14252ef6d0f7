namespace Alburnum.Requirements;

/// <summary>From a trace to its answer. The trace alone decides: nothing else is looked at.</summary>
internal static class Conclusion
{
    public static Answer From(Trace trace, IReadOnlyList<int> lives)
    {
        if (trace.Enquiry.NotOneSpecies is { } timber)
            return new NotCovered(new NotOneSpecies(timber), trace);
        var usual = (trace.Step(Subject.Life)?.Finding as UsualLifeOfName)?.Life;
        if (lives.Count > 0 && (trace.Enquiry.Life ?? usual) is { } life && !lives.Contains(life.Years))
            return new NotCovered(new LifeNotKnown(lives, life.Years), trace);
        var step = trace.Step(Subject.Penetration)!;
        return step.Finding switch
        {
            Settled { Demand: PenetrationDemand penetration } => new Required(Requirement(penetration, trace), trace),
            Settled { Demand: Forbidden forbidden } => new NotPermitted(forbidden.Reason, trace),
            Settled { Demand: NoTreatment none } => WithoutTreatment(none, trace),
            Depends when IsLeftToInsects(step, trace.Enquiry) => WithoutTreatment(
                (NoTreatment)step.Matched[0].Demand,
                trace
            ),
            Silent when IsLeftToContract(step, trace.Enquiry) => new NotCovered(new ClassNotStated(), trace),
            _ => new NotCovered(NotCoveredReason.Of(step), trace),
        };
    }

    // Every row that is near asks for a class by name, and nobody named one.
    private static bool IsLeftToContract(TraceStep step, Enquiry enquiry) =>
        enquiry.StatedClass is null
        && step.NearMisses.Count > 0
        && step.NearMisses.All(miss => miss.Field == Field.StatedClass);

    // No preservative is asked for, but where insects live, which nobody has said.
    private static bool IsLeftToInsects(TraceStep step, Enquiry enquiry) =>
        !enquiry.Insects.IsSaid
        && step.Matched.Count > 0
        && step.Matched.All(row => row.Demand is NoTreatment)
        && step.Open.All(miss => miss.Row.When.Any(condition => condition.Field == Field.Insects));

    private static Answer WithoutTreatment(NoTreatment code, Trace trace) =>
        trace.Enquiry.Insects.Attacking is { Count: > 0 } there
            ? new NotCovered(new InsectsAtWork(there), trace)
            : new NotNeeded(code.Reason, [.. Conditions(trace, moisture: null)], trace);

    private static Requirement Requirement(PenetrationDemand penetration, Trace trace)
    {
        var moisture = (trace.Step(Subject.Moisture)?.Finding as Settled)?.Demand as MoistureLimit;
        var step = trace.Step(Subject.Retention)!;
        var retention = (step.Finding as Settled)?.Demand;
        return new Requirement(
            penetration.Name,
            penetration.Depth,
            penetration.Zone?.Value,
            retention is RetentionFactor factor ? new RetentionRule(factor.Factor) : null,
            moisture?.MaxPercent,
            [.. Conditions(trace, moisture)]
        )
        {
            IsRecommended = penetration.IsRecommended,
            RequiredRetention = trace.RequiredRetention,
            RetentionOpen = retention is RetentionFactor or FixedRetention ? null : NotCoveredReason.Of(step),
        };
    }

    private static IEnumerable<RequirementCondition> Conditions(Trace trace, MoistureLimit? moisture)
    {
        foreach (var row in trace.Step(Subject.Advice)!.Matched)
            yield return new RowAdvises(row);
        if (moisture is not null && trace.Enquiry.MoisturePercent is { } percent && percent > moisture.MaxPercent)
            yield return new TooWet(percent, moisture.MaxPercent);
    }
}
