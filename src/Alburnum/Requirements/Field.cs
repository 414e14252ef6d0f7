namespace Alburnum.Requirements;

/// <summary>What a rulebook row may ask about an enquiry.</summary>
public enum Field
{
    /// <summary>The component.</summary>
    Component,

    /// <summary>Sawn or round.</summary>
    Form,

    /// <summary>Use class: 1, 2, 3.1, 3.2, 4 or 5.</summary>
    UseClass,

    /// <summary>Desired service life, years.</summary>
    Life,

    /// <summary>A group of species that the rulebook itself defines.</summary>
    SpeciesGroup,

    /// <summary>Treatability of the sapwood, 1 to 4.</summary>
    SapwoodTreatability,

    /// <summary>Treatability of the heartwood, 1 to 4.</summary>
    HeartwoodTreatability,

    /// <summary>Natural durability of the heartwood, 1 to 5.</summary>
    Durability,

    /// <summary>Whether heartwood reaches a face.</summary>
    ExposedHeartwood,

    /// <summary>Whether the faces are incised.</summary>
    Incised,

    /// <summary>Whether a coating is applied and kept up.</summary>
    Coated,

    /// <summary>The smaller side or the diameter, mm.</summary>
    Thickness,

    /// <summary>Moisture content before treatment, %.</summary>
    Moisture,

    /// <summary>The class that a contract or code already names.</summary>
    StatedClass,

    /// <summary>Code of the preservative.</summary>
    Preservative,

    /// <summary>Insects that attack dry timber and live where it is used.</summary>
    Insects,

    /// <summary>Whether it touches the ground or fresh water.</summary>
    GroundContact,
}

/// <summary>How fields are named in rulebook files.</summary>
public static class FieldWords
{
    /// <summary>Every field.</summary>
    public static IReadOnlyList<Field> All { get; } = Enum.GetValues<Field>();

    /// <summary>True where the field is a number and a condition is a range.</summary>
    public static bool IsNumeric(this Field field) =>
        field
            is Field.Life
                or Field.SapwoodTreatability
                or Field.HeartwoodTreatability
                or Field.Durability
                or Field.Thickness
                or Field.Moisture;

    /// <summary>Name of the field in a rulebook file.</summary>
    public static string Key(this Field field) =>
        field switch
        {
            Field.Component => "component",
            Field.Form => "form",
            Field.UseClass => "useClass",
            Field.Life => "lifeYears",
            Field.SpeciesGroup => "speciesGroup",
            Field.SapwoodTreatability => "sapwoodTreatability",
            Field.HeartwoodTreatability => "heartwoodTreatability",
            Field.Durability => "durability",
            Field.ExposedHeartwood => "exposedHeartwood",
            Field.Incised => "incised",
            Field.Coated => "coated",
            Field.Thickness => "thicknessMm",
            Field.Moisture => "moisturePercent",
            Field.StatedClass => "statedClass",
            Field.Preservative => "preservative",
            Field.Insects => "insects",
            Field.GroundContact => "groundContact",
            _ => throw new ArgumentOutOfRangeException(nameof(field), field, "Not a field."),
        };
}
