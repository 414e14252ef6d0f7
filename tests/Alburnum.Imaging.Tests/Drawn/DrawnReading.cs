using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;
using Alburnum.Timber;

namespace Alburnum.Imaging.Tests.Drawn;

/// <summary>Plain drawings read with what is known of them.</summary>
internal static class DrawnReading
{
    /// <summary>Size and shape as drawn, outline given, copper with chrome azurol S.</summary>
    public static ReadingRequest Request(PlainSection drawn) =>
        new()
        {
            Section = drawn.Kind is DrawnOutline.Sawn or DrawnOutline.Core
                ? new RectangularSection(drawn.WidthMm, drawn.HeightMm)
                : new RoundSection(drawn.WidthMm),
            Shape = drawn.Kind switch
            {
                DrawnOutline.Round => SectionShape.Round,
                DrawnOutline.Half => SectionShape.HalfRound,
                DrawnOutline.Quarter => SectionShape.Quartered,
                DrawnOutline.Core => SectionShape.CoreStrip,
                _ => SectionShape.Rectangle,
            },
            OutlinePx = drawn.Outline,
            Indicator = KnownIndicators.Sharp("copper-blue"),
            Candidates = KnownIndicators.All,
        };

    public static SectionReading Of(PlainSection drawn) => Of(drawn, Request(drawn));

    public static SectionReading Of(PlainSection drawn, ReadingRequest request) => Of(drawn.Draw(), request);

    public static SectionReading Of(byte[] photograph, ReadingRequest request) =>
        SectionReader.Read("drawn.jpg", photograph, request, TestContext.Current.CancellationToken);

    /// <summary>The depth read, which must be there.</summary>
    public static Read Read(SectionReading reading) =>
        reading.Outcome as Read ?? throw new Xunit.Sdk.XunitException($"Nothing was read: {reading.Outcome}");

    /// <summary>Its profile.</summary>
    public static DepthProfile Profile(SectionReading reading) => Read(reading).Profile;

    /// <summary>Where and why the reading ended, which it must have done.</summary>
    public static NotDetermined Ended(SectionReading reading) => Assert.IsType<NotDetermined>(reading.Outcome);
}
