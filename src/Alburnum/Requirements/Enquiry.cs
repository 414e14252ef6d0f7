using Alburnum.Timber;

namespace Alburnum.Requirements;

/// <summary>How the piece was brought to its shape.</summary>
public enum TimberForm
{
    /// <summary>Sawn or planed: heartwood may reach a face.</summary>
    Sawn,

    /// <summary>Round: the sapwood runs all the way round.</summary>
    Round,
}

/// <summary>Unit in which a preservative's amount is stated.</summary>
public enum AmountUnit
{
    /// <summary>Mass in the volume of the analytical zone, kg/m³.</summary>
    KgPerM3,

    /// <summary>Mass on the treated surface, g/m².</summary>
    GramPerM2,
}

/// <summary>An amount of preservative in its unit: a critical value or a retention.</summary>
public readonly record struct PreservativeAmount
{
    /// <summary>kg/m³ in 1 lb/ft³, which is 0.45359237 kg in 0.028316846592 m³, both exact by definition.</summary>
    public const double KgPerM3InPcf = 0.45359237 / 0.028316846592;

    /// <summary>Checks the value.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not above 0.</exception>
    public PreservativeAmount(double value, AmountUnit unit)
    {
        Value = Require.Positive(value, unit == AmountUnit.KgPerM3 ? "kg/m³" : "g/m²");
        Unit = unit;
    }

    /// <summary>The number, in <see cref="Unit"/>.</summary>
    public double Value { get; }

    /// <summary>The unit.</summary>
    public AmountUnit Unit { get; }

    /// <summary>For instance "9.61 kg/m³".</summary>
    public string Label =>
        $"{Value.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture)} {(Unit == AmountUnit.KgPerM3 ? "kg/m³" : "g/m²")}";
}

/// <summary>What is known of the piece that a requirement is sought for. Null or empty means "not known".</summary>
public sealed record Enquiry
{
    /// <summary>What the piece is for, as codes of practice speak of it.</summary>
    public Component? Component { get; init; }

    /// <summary>The name by which it was asked for, with what goes with it.</summary>
    public ComponentName? CalledAs { get; init; }

    /// <summary>Nominal section.</summary>
    public Section? Section { get; init; }

    /// <summary>Sawn or round; follows the section where not said.</summary>
    public TimberForm? Form { get; init; }

    /// <summary>The timber.</summary>
    public Species? Species { get; init; }

    /// <summary>What was named in place of a species where it is none: glued, a board, modified wood or a mixture.</summary>
    public TimberName? NotOneSpecies { get; init; }

    /// <summary>Where the piece stands, as far as it was said.</summary>
    public Exposure Exposure { get; init; } = new();

    /// <summary>Use class; two where only "class 3" is known; empty to take the code's class for the component.</summary>
    public IReadOnlyList<UseClass> UseClasses { get; init; } = [];

    /// <summary>The use class as it was written, for instance "3c"; null where none was.</summary>
    public string? UseClassAsWritten { get; init; }

    /// <summary>Desired service life; null to take the code's usual life for the component.</summary>
    public DesiredServiceLife? Life { get; init; }

    /// <summary>Heartwood reaches a lateral face.</summary>
    public bool? HasExposedHeartwood { get; init; }

    /// <summary>The faces are incised before treatment.</summary>
    public bool? IsIncised { get; init; }

    /// <summary>What the use class as written says of a coating: true for the British 3c, false for 3u; null for any other.</summary>
    public bool? IsCoatedByClass { get; init; }

    /// <summary>Moisture content before treatment, % of the oven-dry mass, 0 to 250.</summary>
    public double? MoisturePercent { get; init; }

    /// <summary>Penetration class or treatment class that a contract or code already names, for instance "NP3".</summary>
    public string? StatedClass { get; init; }

    /// <summary>What that class means where it is a mark of some system; null where it is none.</summary>
    public ClassMeant? StatedClassMeans { get; init; }

    /// <summary>Code of the preservative as a rulebook's retention table names it, for instance "CA-C"; otherwise the name that was written.</summary>
    public string? Preservative { get; init; }

    /// <summary>True where it is none of those that rows name, whichever it is.</summary>
    internal bool IsOtherPreservative { get; init; }

    /// <summary>What is known of the preservative; null where it is known to the rulebook alone.</summary>
    public Preservative? PreservativeKind { get; init; }

    /// <summary>The preservative's own critical value for the use class, from its maker's data.</summary>
    public PreservativeAmount? CriticalValue { get; init; }

    /// <summary>The use class that it states, where two are meant that which fits where the piece is said to stand; its classes are empty where it states none.</summary>
    public UseClassStated StatedUse =>
        new(
            UseClassAsWritten,
            UseClasses.Count > 1 && UseClasses.Intersect(Exposure.UseClass().Classes).ToList() is [var one]
                ? [one]
                : UseClasses,
            IsCoatedByClass
        );

    /// <summary>The insects that count for the timber.</summary>
    public InsectHazard Insects => InsectHazard.Of(Exposure.Insects, Species);

    /// <summary>Sawn or round as the section shows; null where it is not known.</summary>
    public TimberForm? FormOfSection =>
        Section switch
        {
            null => null,
            RoundSection => TimberForm.Round,
            _ => TimberForm.Sawn,
        };

    /// <summary>Whether heartwood reaches a face: as stated; not in round timber, whose sapwood runs all the way round. Null where that is not known.</summary>
    public bool? HeartwoodAtFace => HasExposedHeartwood ?? (FormOrFromSection == TimberForm.Round ? false : null);

    /// <summary>Sawn or round as said, or as the section shows; null where neither is known.</summary>
    public TimberForm? FormOrFromSection => Form ?? FormOfSection;

    /// <summary>The enquiry with what may be so of an open field, each case in turn; empty for a field that has no few cases.</summary>
    /// <param name="field">The field.</param>
    /// <param name="open">Rows that are open, each with the field that it is open on.</param>
    internal IReadOnlyList<(Assumption Taken, Enquiry Enquiry)> Branches(Field field, IReadOnlyList<Miss> open) =>
        field switch
        {
            Field.ExposedHeartwood => YesAndNo(field, isSo => this with { HasExposedHeartwood = isSo }),
            Field.Incised => YesAndNo(field, isSo => this with { IsIncised = isSo }),
            Field.Coated => YesAndNo(field, isSo => this with { Exposure = Exposure with { IsCoated = isSo } }),
            Field.Preservative when Preservative is null => Preservatives([
                .. open.Select(miss => miss.Asked)
                    .OfType<OneOf>()
                    .Where(asked => asked.Field == field)
                    .SelectMany(asked => asked.Allowed)
                    .Distinct(StringComparer.OrdinalIgnoreCase),
            ]),
            _ => [],
        };

    private static (Assumption, Enquiry)[] YesAndNo(Field field, Func<bool, Enquiry> with) =>
        [(new(field, true, []), with(true)), (new(field, false, []), with(false))];

    private IReadOnlyList<(Assumption, Enquiry)> Preservatives(IReadOnlyList<string> named) =>
        [
            .. named.Select(name =>
                (new Assumption(Field.Preservative, true, [name]), this with { Preservative = name })
            ),
            (new(Field.Preservative, false, named), this with { IsOtherPreservative = true }),
        ];

    /// <summary>Whether it touches the ground or fresh water: as said, as its name settles, or as use class 4 means where nothing names the part. Null where that is not known.</summary>
    public bool? TouchesGround =>
        Exposure.TouchesGroundOrFreshWater
        ?? CalledAs?.Exposure.TouchesGroundOrFreshWater
        ?? (this is { Component: null, CalledAs: null, UseClasses: [UseClass.Four] } ? true : null);

    /// <summary>True where the form said is not the one that the section shows.</summary>
    public bool FormContradictsSection => Form is { } said && FormOfSection is { } shown && said != shown;
}
