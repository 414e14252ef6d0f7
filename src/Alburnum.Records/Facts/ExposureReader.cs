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
}
