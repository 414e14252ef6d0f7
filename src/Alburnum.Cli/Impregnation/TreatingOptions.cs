using System.Globalization;
using Alburnum.Acceptance;
using Alburnum.Facts;
using Alburnum.Impregnation;
using Alburnum.Records.Charges;
using Alburnum.Requirements;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Cli.Impregnation;

/// <summary>What is said of timber to be treated, from options as people write them.</summary>
internal static class TreatingOptions
{
    public static Section Section(string text) =>
        SectionText.TryParse(text, out var section)
            ? section
            : throw Refused(TreatmentFields.Section, text, SectionText.Expected);

    public static SawingPosition? Position(string? text) =>
        text is null
            ? null
            : TreatedWoodText.Position(text)
                ?? throw Refused(TreatmentFields.Position, text, TreatedWoodText.PositionsExpected);

    public static WoodThroughout? All(string? text) =>
        text is null
            ? null
            : TreatedWoodText.Throughout(text)
                ?? throw Refused(TreatmentFields.All, text, TreatedWoodText.ThroughoutExpected);

    public static WoodZone Zone(string text) =>
        text switch
        {
            "lateral" => WoodZone.Lateral,
            "sapwood" => WoodZone.Sapwood,
            "heartwood" => WoodZone.ExposedHeartwood,
            _ => throw Refused(TreatmentFields.Zone, text, TreatmentFields.Zone.Expected),
        };

    public static PithPlace? Pith(string? text)
    {
        if (text is null)
            return null;
        var parts = text.Split(',');
        return parts.Length == 2 && Number(parts[0], out var x) && Number(parts[1], out var y)
            ? new(x, y)
            : throw Refused(TreatmentFields.Pith, text, "two numbers such as -20,15");
    }

    public static SingleSamplingPlan? Plan(string? text)
    {
        if (text is null)
            return null;
        var parts = text.Split(',');
        return
            parts.Length == 2
            && int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var n)
            && int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var c)
            && n >= 1
            && c < n
            ? new(n, c)
            : throw Refused(TreatmentFields.Plan, text, TreatmentFields.Plan.Expected);
    }

    public static bool Number(string text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);

    private static InputRefusedException Refused(AskedField field, string found, string expected) =>
        field.Refused(file: null, found, expected);
}
