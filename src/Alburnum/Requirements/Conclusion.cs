using System.Globalization;

namespace Alburnum.Requirements;

/// <summary>From a trace to its answer. The trace alone decides: nothing else is looked at.</summary>
internal static class Conclusion
{
    private const string ConsultTheCode = "the code must be consulted: this cell is not in the rulebook";

    public static Answer From(Trace trace, IReadOnlyList<int> lives)
    {
        if (UnknownLife(trace, lives) is { } reason)
            return new NotCovered(reason, [], trace);

        var step = trace.Step(Subject.Penetration)!;
        switch (step.Finding)
        {
            case Settled { Demand: PenetrationDemand penetration }:
                return new Required(Requirement(penetration, trace), trace);
            case Settled { Demand: Forbidden forbidden }:
                return new NotPermitted(forbidden.Reason, trace);
            case Settled { Demand: UnknownCell unknown }:
                return new NotCovered(Sentence(ConsultTheCode) + " " + unknown.Reason, [], trace);
            case Depends depends:
                var fields = string.Join(", ", depends.Fields.Select(field => field.InWords()));
                return new NotCovered(
                    $"The answer depends on what is not known of the piece: {fields}.",
                    depends.Fields,
                    trace
                );
            case Contradicted:
                var rows = string.Join(", ", step.Matched.Select(row => $"\"{row.Key}\""));
                return new NotCovered(
                    $"The rulebook contradicts itself in rows {rows}; the code must be consulted.",
                    [],
                    trace
                );
            default:
                return new NotCovered(Sentence(ConsultTheCode) + Nearest(step), [], trace);
        }
    }

    private static string? UnknownLife(Trace trace, IReadOnlyList<int> lives)
    {
        if (lives.Count == 0 || trace.Enquiry.Life is not { } life || lives.Contains(life.Years))
            return null;
        var known = string.Join(", ", lives.Select(years => years.ToString(CultureInfo.InvariantCulture)));
        var next = lives.Where(years => years > life.Years).Select(years => (int?)years).FirstOrDefault();
        return string.Create(
                CultureInfo.InvariantCulture,
                $"The code knows desired service lives of {known} years, not {life.Years}"
            ) + (next is null ? "." : string.Create(CultureInfo.InvariantCulture, $"; ask for {next} years."));
    }

    private static Requirement Requirement(PenetrationDemand penetration, Trace trace)
    {
        var enquiry = trace.Enquiry;
        var moisture = (trace.Step(Subject.Moisture)?.Finding as Settled)?.Demand as MoistureLimit;
        var conditions = new List<string>();
        conditions.AddRange(trace.Remarks);
        conditions.AddRange(trace.Step(Subject.Advice)!.Matched.Select(row => row.Demand.InWords));
        if (moisture is not null && enquiry.MoisturePercent > moisture.MaxPercent)
        {
            conditions.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Too wet to treat: {enquiry.MoisturePercent:0.#} % moisture, at most {moisture.MaxPercent:0.#} % allowed; dry it first."
                )
            );
        }

        var open = new List<string>();
        var retention = Retention(trace, open);
        return new Requirement(
            penetration.Name,
            penetration.Depth,
            penetration.Zone?.Value,
            retention is RetentionFactor factor ? new RetentionRule(factor.Factor) : null,
            moisture?.MaxPercent,
            conditions
        )
        {
            RequiredRetention = retention switch
            {
                FixedRetention fixedRetention => fixedRetention.Amount,
                RetentionFactor multiple when enquiry.CriticalValue is { } critical => new PreservativeAmount(
                    multiple.Factor * critical.Value,
                    critical.Unit
                ),
                _ => null,
            },
            Open = open,
        };
    }

    private static Demand? Retention(Trace trace, List<string> open)
    {
        switch (trace.Step(Subject.Retention)!.Finding)
        {
            case Settled { Demand: RetentionFactor or FixedRetention } settled:
                return settled.Demand;
            case Settled { Demand: UnknownCell unknown }:
                open.Add($"Retention: {ConsultTheCode}. {unknown.Reason}");
                return null;
            case Depends depends:
                open.Add(
                    $"Retention depends on what is not known: {string.Join(", ", depends.Fields.Select(field => field.InWords()))}."
                );
                return null;
            case Contradicted:
                open.Add("Retention: the rulebook contradicts itself; the code must be consulted.");
                return null;
            default:
                open.Add($"Retention: {ConsultTheCode}.");
                return null;
        }
    }

    private static string Nearest(TraceStep step)
    {
        if (step.NearMisses.Count == 0)
            return "";
        var fields = step.NearMisses.Select(miss => miss.Field.InWords()).Distinct(StringComparer.Ordinal);
        return $" The nearest rows fail on: {string.Join(", ", fields)}.";
    }

    private static string Sentence(string text) => char.ToUpperInvariant(text[0]) + text[1..] + ".";
}
