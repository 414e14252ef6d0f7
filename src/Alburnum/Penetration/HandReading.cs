using Alburnum.Facts;
using Alburnum.Measures;
using Alburnum.Timber;

namespace Alburnum.Penetration;

/// <summary>One depth read with a rule on a cut end, or on an increment core.</summary>
/// <param name="Face">Face number from 1; a core from a pole is on face 1.</param>
/// <param name="PositionMm">Distance from the start of the face, mm, 0 or more.</param>
/// <param name="DepthMm">Depth to the first untreated wood, mm, 0 or more.</param>
/// <param name="StandardUncertaintyMm">Standard uncertainty of what is read there, mm, 0 or more: of the depth, and of the border of the sapwood.</param>
/// <param name="SapwoodDepthMm">Depth at which heartwood begins, mm; 0 where it reaches the face; null where not known.</param>
public sealed record HandReading(
    int Face,
    double PositionMm,
    double DepthMm,
    double StandardUncertaintyMm,
    double? SapwoodDepthMm
);

/// <summary>Makes a depth profile of readings taken by hand, so that a ruler and a photograph are judged by the same rules.</summary>
public static class HandReadings
{
    /// <summary>The profile of one piece.</summary>
    /// <param name="section">Nominal section.</param>
    /// <param name="readings">One reading or more, in any order.</param>
    /// <remarks>
    /// The errors of one reader move together, so a statistic carries the uncertainty of the readings it stands on, not one
    /// shrunk by their number. The treated area is that of an even border of the mean depth: an estimate for want of better.
    /// </remarks>
    /// <exception cref="ArgumentException">No readings.</exception>
    public static DepthProfile Profile(Section section, IReadOnlyList<HandReading> readings)
    {
        if (readings.Count == 0)
            throw new ArgumentException("At least one reading is needed.", nameof(readings));
        foreach (var reading in readings)
            Check(reading);
        FaceProfile[] faces =
        [
            .. readings
                .GroupBy(reading => reading.Face)
                .OrderBy(face => face.Key)
                .Select(face =>
                    Face(face.Key, [.. face.OrderBy(reading => reading.PositionMm)]) with
                    {
                        LengthMm = LengthMm(section, face.Key, readings),
                    }
                ),
        ];
        double[] depths = [.. readings.Select(reading => reading.DepthMm).Order()];
        var least = readings.MinBy(reading => reading.DepthMm)!;
        var greatest = readings.MaxBy(reading => reading.DepthMm)!;
        var meanU = readings.Average(reading => reading.StandardUncertaintyMm);
        var mean = depths.Average();
        var statistics = new DepthStatistics(
            new(least.DepthMm, least.StandardUncertaintyMm),
            new(Quantiles.Of(depths, 0.05), meanU),
            new(Quantiles.Of(depths, 0.5), meanU),
            new(mean, meanU),
            new(greatest.DepthMm, greatest.StandardUncertaintyMm)
        );
        var treated = SectionBorder.Share(section, mean);
        var treatedU =
            (SectionBorder.Share(section, mean + meanU) - SectionBorder.Share(section, Math.Max(0, mean - meanU))) / 2;
        return new(section, faces, statistics, new(treated, treatedU), null);
    }

    private static FaceProfile Face(int number, IReadOnlyList<HandReading> readings) =>
        new(
            number,
            readings.Count > 1 ? (readings[^1].PositionMm - readings[0].PositionMm) / (readings.Count - 1) : 0,
            [.. readings.Select(reading => reading.PositionMm)],
            [.. readings.Select(reading => reading.DepthMm)],
            [.. readings.Select(reading => reading.StandardUncertaintyMm)],
            [.. readings.Select(_ => false)],
            [.. readings.Select(reading => reading.SapwoodDepthMm)]
        )
        {
            SapwoodUncertaintyMm = readings
                .Where(reading => reading.SapwoodDepthMm is not null)
                .Select(reading => reading.StandardUncertaintyMm)
                .DefaultIfEmpty()
                .Max(),
        };

    // Faces 1 and 3 are as long as the piece is wide, unless a reading lies beyond the end of its face so: then the piece was turned. 0 where no face is a side.
    private static double LengthMm(Section section, int face, IReadOnlyList<HandReading> readings)
    {
        if (section is not RectangularSection sawn)
            return 0;
        double Side(int number) => number % 2 == 1 ? sawn.WidthMm : sawn.HeightMm;
        var isTurned = readings.Any(reading => reading.PositionMm > Side(reading.Face));
        return Side(isTurned ? face + 1 : face);
    }

    private static void Check(HandReading reading)
    {
        Require.InRange(reading.Face, 1, 4, "");
        Require.Within(reading.PositionMm, Ranges.PositionMm);
        Require.Within(reading.DepthMm, Ranges.MeasuredDepthMm);
        Require.Within(reading.StandardUncertaintyMm, Ranges.RulerUncertaintyMm with { Low = 0 });
        Require.Within(reading.SapwoodDepthMm ?? 0, Ranges.SapwoodMm);
    }
}
