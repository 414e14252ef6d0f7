using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Timber;

namespace Alburnum.Imaging.Tests.Accuracy;

/// <summary>How a photograph of the test set is read.</summary>
internal static class PhotographReading
{
    /// <summary>What is asked of it where nothing but the section's size is given.</summary>
    public static ReadingRequest Asked(this TestPhotograph photograph) =>
        new()
        {
            Section = photograph.Truth.SectionMm is [var width, var height]
                ? new RectangularSection(width, height)
                : new RoundSection(photograph.Truth.SectionMm[0]),
            Candidates = KnownIndicators.All,
        };

    /// <summary>The same with its true corners, or points of its rim, given.</summary>
    public static ReadingRequest AskedWithCorners(this TestPhotograph photograph) =>
        photograph.Asked() with
        {
            OutlinePx = [.. photograph.Truth.OutlinePx.Select(p => new PointPx(p.X, p.Y))],
        };

    /// <summary>Reads it.</summary>
    public static SectionReading Read(
        this TestPhotograph photograph,
        ReadingRequest request,
        CancellationToken ct = default
    ) => SectionReader.Read(photograph.Truth.Name + ".jpg", photograph.Jpeg, request, ct);
}
