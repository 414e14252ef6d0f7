using Alburnum.Facts;
using Alburnum.Requirements;

namespace Alburnum.Records.Facts;

/// <summary>Reads what a rulebook row demands.</summary>
/// <param name="classes">Penetration classes that the rulebook names.</param>
internal sealed class DemandReader(IReadOnlyDictionary<string, PenetrationDemand> classes)
{
    private static readonly (string, bool)[] YesNo = [("yes", true), ("no", false)];

    public Demand Read(FactRow row, Subject subject)
    {
        if (row.Has("unknown"))
            return new UnknownCell(row.Text("unknown"));
        return subject switch
        {
            Subject.UseClass => UseClass(row),
            Subject.Life => new LifeDemand(new DesiredServiceLife(row.Whole("years", Ranges.LifeYears))),
            Subject.Penetration => row.Has("isRecommended")
                ? Recommended(row, Penetration(row), row.Word("isRecommended", YesNo))
                : Penetration(row),
            Subject.Retention => Retention(row),
            Subject.Moisture => new MoistureLimit(row.Number("maxPercent", Ranges.MoisturePercent)),
            Subject.Acceptance => new AcceptableQuality(row.Number("aqlPercent", 0.01, 50)),
            _ => new Advice(row.Text("advice")),
        };
    }

    private static Demand Recommended(FactRow row, Demand demand, bool isRecommended)
    {
        if (demand is PenetrationDemand penetration)
            return penetration with { IsRecommended = isRecommended };
        row.Refuse("isRecommended", isRecommended ? "yes" : "no", "no such field beside what requires no depth");
        return demand;
    }

    private static UseClassDemand UseClass(FactRow row)
    {
        var label = row.Text("is");
        if (UseClassWords.Read(label) is { } read)
            return read;
        row.Refuse("is", label, "1, 2, 3, 3c (coated), 3u (uncoated), 3.1, 3.2, 4 or 5");
        return new UseClassDemand(label, [], IsCoated: null);
    }

    private Demand Penetration(FactRow row)
    {
        if (row.Has("notPermitted"))
            return new Forbidden(row.Text("notPermitted"));
        if (row.Has("outsideScope"))
            return new OutsideScope(row.Text("outsideScope"));
        if (row.Has("notNeeded"))
            return new NoTreatment(row.Text("notNeeded"));
        if (row.IsText("require"))
        {
            var name = row.Text("require");
            if (classes.TryGetValue(name, out var known))
                return known;
            if (DepthRuleText.Read(name, classes) is { } depth)
                return new PenetrationDemand(name, depth, null, null);
            row.Refuse("require", name, $"a class of this rulebook ({string.Join(", ", classes.Keys)})");
            return new UnknownCell("");
        }
        var demand = row.OptionalRow("require");
        if (demand is not null)
            return DepthReader.ReadDemand(demand);
        row.Refuse("require", "nothing", "require, notNeeded, notPermitted, outsideScope or unknown");
        return new UnknownCell("");
    }

    private static Demand Retention(FactRow row) =>
        row.Has("outsideScope") ? new OutsideScope(row.Text("outsideScope"))
        : row.Has("amount")
            ? new FixedRetention(
                new PreservativeAmount(
                    row.Quantity("amount", Units.MassInVolume, Ranges.RetentionKgPerM3),
                    AmountUnit.KgPerM3
                )
            )
        : new RetentionFactor(row.Number("factor", 0.01, 20));
}
