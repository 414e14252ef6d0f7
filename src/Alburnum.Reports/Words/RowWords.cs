using Alburnum.Requirements;

namespace Alburnum.Reports.Words;

/// <summary>What the rows of a rulebook ask and demand, in words.</summary>
/// <param name="wording">The language.</param>
/// <param name="depths">How depth rules are said.</param>
public sealed class RowWords(Wording wording, DepthRuleWords depths)
{
    /// <summary>A subject, for instance "penetration".</summary>
    public string Say(Subject subject) =>
        subject switch
        {
            Subject.UseClass => wording.Say("rows.subject.use-class"),
            Subject.Life => wording.Say("rows.subject.life"),
            Subject.Penetration => wording.Say("rows.subject.penetration"),
            Subject.Retention => wording.Say("rows.subject.retention"),
            Subject.Moisture => wording.Say("rows.subject.moisture"),
            Subject.Acceptance => wording.Say("rows.subject.acceptance"),
            Subject.Advice => wording.Say("rows.subject.advice"),
            _ => throw new ArgumentOutOfRangeException(nameof(subject), subject, "Not a subject."),
        };

    /// <summary>A field, for instance "thickness (mm)".</summary>
    public string Say(Field field) =>
        field switch
        {
            Field.Component => wording.Say("rows.field.component"),
            Field.Form => wording.Say("rows.field.form"),
            Field.UseClass => wording.Say("rows.field.use-class"),
            Field.Life => wording.Say("rows.field.life"),
            Field.SpeciesGroup => wording.Say("rows.field.species-group"),
            Field.SapwoodTreatability => wording.Say("rows.field.sapwood-treatability"),
            Field.HeartwoodTreatability => wording.Say("rows.field.heartwood-treatability"),
            Field.Durability => wording.Say("rows.field.durability"),
            Field.ExposedHeartwood => wording.Say("rows.field.exposed-heartwood"),
            Field.Incised => wording.Say("rows.field.incised"),
            Field.Coated => wording.Say("rows.field.coated"),
            Field.Thickness => wording.Say("rows.field.thickness"),
            Field.Moisture => wording.Say("rows.field.moisture"),
            Field.StatedClass => wording.Say("rows.field.stated-class"),
            Field.Preservative => wording.Say("rows.field.preservative"),
            Field.Insects => wording.Say("rows.field.insects"),
            Field.GroundContact => wording.Say("rows.field.ground-contact"),
            _ => throw new ArgumentOutOfRangeException(nameof(field), field, "Not a field."),
        };

    /// <summary>Some fields, one after the other.</summary>
    public string Say(IEnumerable<Field> fields) => string.Join(", ", fields.Select(Say));

    /// <summary>A condition, without its field: "from 5 below 10".</summary>
    public string Say(Condition condition) =>
        condition switch
        {
            OneOf words => wording.Joined("rows.either", words.Allowed),
            Between range => Range(range),
            _ => throw new ArgumentOutOfRangeException(nameof(condition), condition, "Not a condition."),
        };

    /// <summary>What is known of a field.</summary>
    public string Say(Known known) =>
        known switch
        {
            { IsKnown: false } => wording.Say("rows.not-known"),
            { Words.Count: 0 } => wording.Say("rows.none"),
            { Words: { } words, AnyWillDo: true } => string.Join(", ", words),
            { Words: { } words } => wording.Joined("rows.either", words),
            _ when known.Low.Equals(known.High) => Figures.Digits(known.Low),
            _ => wording.Say(
                "rows.low-to-high",
                ("low", Figures.Digits(known.Low)),
                ("high", Figures.Digits(known.High))
            ),
        };

    /// <summary>What is taken to be so of a field, without the field.</summary>
    public string Say(Assumption taken) =>
        taken switch
        {
            { IsSo: true, Words.Count: > 0 } => wording.Joined("rows.either", taken.Words),
            { IsSo: false, Words.Count: > 0 } => wording.Say("rows.any-other"),
            { IsSo: true } => wording.Say("rows.yes"),
            _ => wording.Say("rows.no"),
        };

    /// <summary>A set of like cases.</summary>
    public string Say(CaseBox box)
    {
        ArgumentNullException.ThrowIfNull(box);
        return box.Fields.Count == 0
            ? wording.Say("rows.every-case")
            : Each(
                box.Fields.Select(each =>
                    (each.Field, string.Join(", ", each.Values.Select(value => Say(each.Field, value))))
                )
            );
    }

    /// <summary>When a row holds, for instance "use class: 4; desired service life (years): 30".</summary>
    public string When(Row row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return row.When.Count == 0
            ? wording.Say("rows.always")
            : Each(row.When.Select(condition => (condition.Field, Say(condition))));
    }

    /// <summary>When a cell that is to be read holds.</summary>
    public string When(WorksheetCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return cell is { Zone: not null, Row.Demand: PenetrationDemand { DefinedBy: not null } depth }
            ? wording.Say("rows.wherever-named", ("name", depth.Name))
            : When(cell.Row);
    }

    /// <summary>What a rulebook says now of a cell that is to be read; null where it says nothing.</summary>
    public string? Now(WorksheetCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return cell switch
        {
            { Zone: { Value: var zone, Provenance: var source } } => wording.Say(
                "rows.zone-to-confirm",
                ("zone", zone.Name),
                ("document", source.Document),
                ("edition", source.Edition)
            ),
            { Row.Demand: UnknownCell { Reason: "" } } => null,
            // As codes in imperial units print it, for whoever holds one against the cell.
            { Row.Demand: FixedRetention { Amount: { Unit: AmountUnit.KgPerM3 } amount } } => wording.Say(
                "rows.amount-or-pcf",
                ("amount", amount.Label),
                ("pcf", Figures.Digits(amount.Value / PreservativeAmount.KgPerM3InPcf))
            ),
            _ => Say(cell.Row.Demand),
        };
    }

    /// <summary>When a row holds, and what it then demands.</summary>
    public string WhenAndDemand(Row row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return wording.Say("rows.when-and-demand", ("when", When(row)), ("demand", Say(row.Demand)));
    }

    /// <summary>That a row applies.</summary>
    public string Applies => wording.Say("rows.applies");

    /// <summary>That a row would apply, were there no exception to it.</summary>
    public string GivesWay => wording.Say("rows.gives-way");

    /// <summary>That a row may apply: a field is not known.</summary>
    public string Open(Field field) => wording.Say("rows.open", ("field", Say(field)));

    /// <summary>On which field a row fails.</summary>
    public string Fails(Field field, Condition asked, Known found) =>
        wording.Say("rows.fails", ("field", Say(field)), ("asked", Say(asked)), ("found", Say(found)));

    /// <summary>What a row demands.</summary>
    public string Say(Demand demand) =>
        demand switch
        {
            UseClassDemand use => wording.Say("rows.use-class", ("classes", use.Label)),
            LifeDemand life => Say(life.Life),
            PenetrationDemand { IsRecommended: true } penetration => wording.Say(
                "rows.recommended-depth",
                ("name", penetration.Name),
                ("depth", depths.Say(penetration.Depth))
            ),
            PenetrationDemand penetration => wording.Say(
                "rows.named-depth",
                ("name", penetration.Name),
                ("depth", depths.Say(penetration.Depth))
            ),
            Forbidden forbidden => wording.Say("rows.forbidden", ("reason", forbidden.Reason)),
            NoTreatment none => wording.Say("rows.no-treatment", ("reason", none.Reason)),
            OutsideScope outside => wording.Say("rows.outside-scope", ("covers", outside.Covers)),
            UnknownCell unknown => wording.Say("rows.unknown-cell", ("reason", unknown.Reason)),
            RetentionFactor multiple => wording.Say("rows.factor", ("factor", Figures.Digits(multiple.Factor))),
            FixedRetention fixedRetention => fixedRetention.Amount.Label,
            MoistureLimit limit => wording.Say("rows.moisture-limit", ("percent", Figures.Digits(limit.MaxPercent))),
            AcceptableQuality quality => wording.Say("rows.aql", ("aql", Figures.Digits(quality.AqlPercent))),
            Advice advice => advice.Sentence,
            _ => throw new ArgumentOutOfRangeException(nameof(demand), demand, "Not a demand."),
        };

    /// <summary>A desired service life: "30 years".</summary>
    public string Say(DesiredServiceLife life) => wording.Say("rows.years", ("years", Figures.Whole(life.Years)));

    /// <summary>One use class, or those possible: "use class 3.1 or 3.2".</summary>
    public string Say(IEnumerable<UseClass> classes) =>
        wording.Say("rows.use-class", ("classes", wording.Joined("rows.either", classes.Select(each => each.Label()))));

    /// <summary>A use class as it is named by whoever or whatever gave it; one that was stated, with what it is taken to mean: "3c (taken as 3.1 or 3.2)".</summary>
    public string Label(UseClassGiven given)
    {
        ArgumentNullException.ThrowIfNull(given);
        var classes = given.Classes.Select(each => each.Label());
        return given is UseClassStated or { Label: null } ? AsWritten(given.Label, classes) : given.Label;
    }

    /// <summary>The same of a class that was stated.</summary>
    /// <param name="written">As it was written; null where that is not kept.</param>
    /// <param name="classes">What it is taken to mean.</param>
    internal string AsWritten(string? written, IEnumerable<string> classes)
    {
        var meant = wording.Joined("rows.either", classes);
        return written is null || written == meant
            ? meant
            : wording.Say("rows.use-class-as-written", ("written", written), ("classes", meant));
    }

    // A contract may name no class; of every other field the empty value stands for whatever no row names.
    private string Say(Field field, Known value) =>
        value is { Words.Count: 0 } && field != Field.StatedClass ? wording.Say("rows.any-other") : Say(value);

    private string Each(IEnumerable<(Field Field, string Says)> fields) =>
        string.Join(
            "; ",
            fields.Select(each => wording.Say("rows.condition", ("field", Say(each.Field)), ("asked", each.Says)))
        );

    private string Range(Between range)
    {
        if (range.Low.Equals(range.High))
            return Figures.Digits(range.Low);
        List<string> ends = [];
        if (!double.IsInfinity(range.Low))
            ends.Add(
                wording.Say(range.IncludesLow ? "rows.from" : "rows.above", ("number", Figures.Digits(range.Low)))
            );
        if (!double.IsInfinity(range.High))
            ends.Add(
                wording.Say(range.IncludesHigh ? "rows.up-to" : "rows.below", ("number", Figures.Digits(range.High)))
            );
        return string.Join(" ", ends);
    }
}
