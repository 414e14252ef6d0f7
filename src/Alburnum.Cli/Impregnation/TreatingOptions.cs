using System.Globalization;
using Alburnum.Acceptance;
using Alburnum.Impregnation;
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
            : throw Refused(TreatingField.Section, text, SectionText.Expected);

    public static SawingPosition? Position(string? text) =>
        text is null
            ? null
            : TreatedWoodText.Position(text)
                ?? throw Refused(TreatingField.Position, text, TreatedWoodText.PositionsExpected);

    public static WoodThroughout? All(string? text) =>
        text is null
            ? null
            : TreatedWoodText.Throughout(text)
                ?? throw Refused(TreatingField.All, text, TreatedWoodText.ThroughoutExpected);

    public static WoodZone Zone(string text) =>
        text switch
        {
            "lateral" => WoodZone.Lateral,
            "sapwood" => WoodZone.Sapwood,
            "heartwood" => WoodZone.ExposedHeartwood,
            _ => throw Refused(TreatingField.Zone, text, "lateral, sapwood or heartwood"),
        };

    public static PithPlace? Pith(string? text)
    {
        if (text is null)
            return null;
        var parts = text.Split(',');
        return parts.Length == 2 && Number(parts[0], out var x) && Number(parts[1], out var y)
            ? new(x, y)
            : throw Refused(TreatingField.Pith, text, "two numbers such as -20,15");
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
            : throw Refused(TreatingField.Plan, text, "cores and acceptance number, such as 20,2");
    }

    public static bool Number(string text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);

    private static InputRefusedException Refused(TreatingField field, string found, string expected) =>
        field.Refused(file: null, found, expected);
}
