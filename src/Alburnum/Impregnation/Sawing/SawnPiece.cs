using Alburnum.Timber;

namespace Alburnum.Impregnation.Sawing;

/// <summary>A piece where it lies in the log, and where heartwood comes to its faces.</summary>
public sealed record SawnPiece
{
    private const int Lattice = 200;

    /// <summary>Looks at one piece.</summary>
    /// <param name="section">The piece; its sides lie level and upright.</param>
    /// <param name="xMm">Middle of the piece to the right of the pith, mm.</param>
    /// <param name="yMm">Middle of the piece above the pith, mm.</param>
    /// <param name="heartwoodRadiusMm">Radius of the heartwood, mm. 0 or more.</param>
    /// <param name="logRadiusMm">Radius of the log under bark, mm.</param>
    public SawnPiece(RectangularSection section, double xMm, double yMm, double heartwoodRadiusMm, double logRadiusMm)
    {
        Section = section;
        Log = new LogGeometry(-xMm, -yMm, Require.InRange(heartwoodRadiusMm, 0, logRadiusMm, "mm"), logRadiusMm);
        var (w, h) = (section.WidthMm / 2, section.HeightMm / 2);
        HeartwoodOnFace =
        [
            Chord(yMm + h, xMm - w, xMm + w) / section.WidthMm,
            Chord(xMm + w, yMm - h, yMm + h) / section.HeightMm,
            Chord(yMm - h, xMm - w, xMm + w) / section.WidthMm,
            Chord(xMm - w, yMm - h, yMm + h) / section.HeightMm,
        ];
        HeartwoodShare = Share();
    }

    /// <summary>The piece.</summary>
    public RectangularSection Section { get; }

    /// <summary>Pith, heartwood and log as seen from the piece.</summary>
    public LogGeometry Log { get; }

    /// <summary>Share of each face that is heartwood, 0 to 1: top, right, bottom, left.</summary>
    public IReadOnlyList<double> HeartwoodOnFace { get; }

    /// <summary>Share of the section that is heartwood, 0 to 1.</summary>
    public double HeartwoodShare { get; }

    /// <summary>Faces that show heartwood, numbered from 1 clockwise from the top.</summary>
    public IEnumerable<int> FacesWithHeartwood =>
        Enumerable.Range(1, 4).Where(face => HeartwoodOnFace[face - 1] > 1e-9);

    /// <summary>True where two pieces differ only by a turn or a mirror, so that one answer serves both.</summary>
    public bool IsLike(SawnPiece other)
    {
        var mine = Places(Section, Log);
        var theirs = Places(other.Section, other.Log);
        return mine.Zip(theirs).All(pair => Math.Abs(pair.First - pair.Second) < 0.05);
    }

    // Size and pith with sides in order, so that turned and mirrored pieces come out alike.
    private static double[] Places(RectangularSection section, LogGeometry log)
    {
        var (x, y) = (Math.Abs(log.PithXMm), Math.Abs(log.PithYMm));
        var turned = section.WidthMm < section.HeightMm || (section.WidthMm == section.HeightMm && x < y);
        return turned
            ? [section.HeightMm, section.WidthMm, y, x, log.HeartwoodRadiusMm]
            : [section.WidthMm, section.HeightMm, x, y, log.HeartwoodRadiusMm];
    }

    // Length of a straight face within the heartwood's circle about the origin.
    private double Chord(double distance, double from, double to)
    {
        var square = Log.HeartwoodRadiusMm * Log.HeartwoodRadiusMm - distance * distance;
        if (square <= 0)
            return 0;
        var half = Math.Sqrt(square);
        return Math.Max(0, Math.Min(to, half) - Math.Max(from, -half));
    }

    private double Share()
    {
        var inside = 0;
        for (var i = 0; i < Lattice; i++)
        for (var j = 0; j < Lattice; j++)
            if (
                Log.IsHeartwood(
                    ((i + 0.5) / Lattice - 0.5) * Section.WidthMm,
                    ((j + 0.5) / Lattice - 0.5) * Section.HeightMm
                )
            )
                inside++;
        return (double)inside / (Lattice * Lattice);
    }
}
