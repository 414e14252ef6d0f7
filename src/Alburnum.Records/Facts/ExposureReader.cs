using Alburnum.Facts;
using Alburnum.Requirements;

namespace Alburnum.Records.Facts;

/// <summary>Reads where a piece stands, wherever it is written.</summary>
public static class ExposureReader
{
    /// <summary>What decides the use class; what is wrong is refused field by field, and left out.</summary>
    /// <param name="fields">What was written.</param>
    public static Exposure Place(IFields fields) =>
        new()
        {
            IsInSaltWater = fields.YesNo(ExposureFields.SaltWater),
            TouchesGroundOrFreshWater = fields.YesNo(ExposureFields.GroundContact),
            IsExposedToWeather = fields.YesNo(ExposureFields.Weather),
            LetsWaterStay = fields.YesNo(ExposureFields.WaterStays),
            MayGetDamp = fields.YesNo(ExposureFields.Damp),
        };

    /// <summary>The same, with the coating and the insects; none of these for "none", null where they were left out or refused.</summary>
    /// <param name="fields">What was written.</param>
    /// <param name="facts">Insects that may be named.</param>
    public static Exposure Read(IFields fields, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return Place(fields) with
        {
            IsCoated = fields.YesNo(ExposureFields.Coated),
            Insects = InsectsOf(fields, facts.Insects),
        };
    }

    private static IReadOnlyList<Insect>? InsectsOf(IFields fields, IReadOnlyList<Insect> known)
    {
        if (fields.Text(ExposureFields.Insects) is not { } text)
            return null;
        var named = Insect.Parse(text, known);
        if (named is null)
            fields.Refuse(
                ExposureFields.Insects,
                text,
                $"{ExposureFields.Insects.Expected}: {string.Join(", ", known.Select(insect => insect.Name))}"
            );
        return named;
    }
}
