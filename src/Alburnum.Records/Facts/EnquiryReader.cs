using System.Globalization;
using Alburnum.Facts;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Records.Facts;

/// <summary>Reads an enquiry, wherever it is written.</summary>
public static class EnquiryReader
{
    private static readonly (string Unit, AmountUnit Kind, double InKind)[] AmountUnits =
    [
        .. Units.MassInVolume.Select(unit => (unit.Unit, AmountUnit.KgPerM3, unit.InFirst)),
        ("kg/m³", AmountUnit.KgPerM3, 1),
        ("g/m2", AmountUnit.GramPerM2, 1),
        ("g/m²", AmountUnit.GramPerM2, 1),
    ];

    /// <summary>What an amount of preservative looks like, for messages.</summary>
    internal static string AmountExpected { get; } =
        $"an amount, {Ranges.RetentionKgPerM3.InWords} or {Ranges.RetentionGPerM2.InWords}, with its unit, kg/m3, pcf or g/m2";

    /// <summary>Reads every field; what is wrong is refused field by field, and left out of the enquiry.</summary>
    /// <param name="fields">What was written.</param>
    /// <param name="facts">Names of components, species and preservatives.</param>
    /// <param name="rulebooks">Rulebooks that are asked: a preservative may go by a code of theirs, a class by their name for it.</param>
    public static Enquiry Read(IFields fields, FactLibrary facts, params IReadOnlyList<Rulebook> rulebooks)
    {
        ArgumentNullException.ThrowIfNull(fields);
        ArgumentNullException.ThrowIfNull(facts);
        var use = fields.Part(EnquiryFields.UseClass, UseClassWords.Read);
        var exposure = ExposureReader.Read(fields, facts);
        var calledAs = fields.Named(EnquiryFields.Component, facts.Components.Find);
        var (species, notOne) = Timber(fields, facts);
        var (preservative, kind) = Preserved(fields, facts, rulebooks);
        var enquiry = new Enquiry
        {
            Component = calledAs?.Component,
            CalledAs = calledAs,
            Species = species,
            NotOneSpecies = notOne,
            Section = fields.Part(
                EnquiryFields.Section,
                text => SectionText.TryParse(text, out var section) ? section : null
            ),
            Form = fields.Read(EnquiryFields.Form, FormOf),
            UseClasses = use?.Classes ?? [],
            UseClassAsWritten = use?.Label,
            Exposure = exposure with { IsCoated = exposure.IsCoated ?? use?.IsCoated },
            Life = fields.Number(EnquiryFields.Life) is { } years ? new DesiredServiceLife((int)years) : null,
            HasExposedHeartwood = fields.YesNo(EnquiryFields.ExposedHeartwood),
            IsIncised = fields.YesNo(EnquiryFields.Incised),
            IsCoatedByClass = use?.IsCoated,
            MoisturePercent = fields.Number(EnquiryFields.Moisture),
            StatedClass = fields.Text(EnquiryFields.StatedClass) is { } stated
                ? facts.Marks.AsRulebooksWrite(stated, rulebooks)
                : null,
            StatedClassMeans = fields.Text(EnquiryFields.StatedClass) is { } mark ? facts.Marks.Meant(mark) : null,
            Preservative = preservative,
            PreservativeKind = kind,
            CriticalValue = fields.Read(EnquiryFields.CriticalValue, Amount),
        };
        if (enquiry.FormContradictsSection)
            fields.Refuse(
                EnquiryFields.Form,
                fields.Text(EnquiryFields.Form)!,
                $"{(enquiry.FormOfSection == TimberForm.Round ? "round" : "sawn")}, as the section {enquiry.Section!.Label} is"
            );
        return enquiry;
    }

    /// <summary>Reads the timber alone: its species and form.</summary>
    /// <param name="fields">What was written.</param>
    /// <param name="facts">Names of species.</param>
    public static Enquiry ReadTimber(IFields fields, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(fields);
        ArgumentNullException.ThrowIfNull(facts);
        var (species, notOne) = Timber(fields, facts);
        return new()
        {
            Species = species,
            NotOneSpecies = notOne,
            Form = fields.Read(EnquiryFields.Form, FormOf),
        };
    }

    // What is no species is no mistake: the answer says what it is.
    private static (Species? Species, TimberName? NotOne) Timber(IFields fields, FactLibrary facts)
    {
        if (
            fields.Text(EnquiryFields.Species) is { } name
            && facts.Species.Find(name) is NoSpecies { Timber: var timber }
        )
            return (null, timber);
        return (fields.Named(EnquiryFields.Species, facts.Species.Find), null);
    }

    // A code that a rulebook names is good whatever else is known of it; the rows match it as the rulebook writes it.
    private static (string? Name, Preservative? Kind) Preserved(
        IFields fields,
        FactLibrary facts,
        IReadOnlyList<Rulebook> rulebooks
    )
    {
        if (fields.Text(EnquiryFields.Preservative) is not { } text)
            return (null, null);
        var codes = rulebooks.SelectMany(rulebook => rulebook.WordsOf(Field.Preservative)).ToList();
        string? AsWritten(string name) =>
            codes.Find(code => string.Equals(code, name, StringComparison.OrdinalIgnoreCase));
        var kind = (facts.Preservatives.Find(text) as Found<Preservative>)?.Value;
        if (AsWritten(text) is { } own)
            return (own, kind);
        if (kind is null)
            return (null, fields.Named(EnquiryFields.Preservative, facts.Preservatives.Find));
        if (
            kind.Codes.FirstOrDefault(code => string.Equals(code, text, StringComparison.OrdinalIgnoreCase)) is
            { } known
        )
            return (known, kind);
        var named = kind.Codes.Append(kind.Name).Concat(kind.AlsoCalled).Select(AsWritten).OfType<string>();
        return (named.Distinct(StringComparer.Ordinal).ToList() is [var one] ? one : kind.Name, kind);
    }

    private static TimberForm? FormOf(string text) =>
        text switch
        {
            "sawn" => TimberForm.Sawn,
            "round" => TimberForm.Round,
            _ => null,
        };

    private static PreservativeAmount? Amount(string text)
    {
        foreach (var (unit, kind, inKind) in AmountUnits)
        {
            if (
                text.EndsWith(unit, StringComparison.Ordinal)
                && double.TryParse(
                    text[..^unit.Length],
                    NumberStyles.AllowDecimalPoint | NumberStyles.AllowTrailingWhite,
                    CultureInfo.InvariantCulture,
                    out var value
                )
                && RangeOf(kind).Holds(Math.Round(value * inKind, 9))
            )
                return new PreservativeAmount(value * inKind, kind);
        }
        return null;
    }

    private static NumberRange RangeOf(AmountUnit unit) =>
        unit == AmountUnit.KgPerM3 ? Ranges.RetentionKgPerM3 : Ranges.RetentionGPerM2;
}
