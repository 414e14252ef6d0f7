using Alburnum.Facts;
using Alburnum.Timber;

namespace Alburnum.Impregnation;

/// <summary>Where the heartwood of a piece probably lies when nobody has looked, and what was assumed for that.</summary>
/// <param name="Log">Pith, heartwood and log.</param>
/// <param name="Assumptions">What was assumed; empty where nothing was.</param>
public sealed record UsualLog(LogGeometry Log, IReadOnlyList<LogAssumption> Assumptions)
{
    /// <summary>Places a piece in its log.</summary>
    /// <param name="section">The piece.</param>
    /// <param name="position">Where it was sawn; round and half-round pieces have their pith in the middle of the round.</param>
    /// <param name="sapwoodMm">Width of the sapwood, mm. 0 or more.</param>
    /// <param name="logDiameterMm">Diameter of the log under bark, mm; null for the smallest that holds the piece.</param>
    /// <exception cref="LogFaultException">The log does not hold the piece, or its diameter is needed.</exception>
    public static LogGeometry Place(Section section, SawingPosition position, double sapwoodMm, double? logDiameterMm)
    {
        Require.Within(sapwoodMm, Ranges.SapwoodMm);
        if (section is not RectangularSection sawn)
        {
            var own = SectionBox.Of(section).WidthMm / 2;
            return new LogGeometry(0, SectionBox.CentreYMm(section), Math.Max(0, own - sapwoodMm), own);
        }
        var (w, h) = (sawn.WidthMm / 2, sawn.HeightMm / 2);
        var least = position switch
        {
            SawingPosition.Boxed => Far(w, h),
            SawingPosition.Quartered => Far(2 * w, 2 * h),
            // A side piece sits as far out as the log allows, and needs no more log than a halved one.
            _ => Far(w, 2 * h),
        };
        if (logDiameterMm is null && position == SawingPosition.Side)
            throw new LogFaultException(new SideWithoutDiameter());
        var radius = logDiameterMm / 2 ?? least;
        if (radius < least - 1e-9)
            throw new LogFaultException(new LogTooSmall(2 * least));
        var (x, y) = position switch
        {
            SawingPosition.Boxed => (0.0, 0.0),
            SawingPosition.Halved => (0.0, -h),
            SawingPosition.Quartered => (-w, -h),
            _ => (0.0, h - Math.Sqrt(radius * radius - w * w)),
        };
        return new LogGeometry(x, y, Math.Max(0, radius - sapwoodMm), radius);
    }

    /// <summary>Where the heartwood lies by what is known of the species, with every assumption.</summary>
    /// <param name="section">The piece.</param>
    /// <param name="species">The species.</param>
    /// <param name="position">Where it was sawn; null where nobody said.</param>
    /// <param name="sapwoodMm">Width of the sapwood, mm; null where nobody measured.</param>
    /// <param name="logDiameterMm">Diameter of the log, mm; null where nobody said.</param>
    /// <exception cref="LogFaultException">The log does not hold the piece, or its diameter is needed.</exception>
    /// <returns>Null where the width of the sapwood is not known.</returns>
    public static UsualLog? Of(
        Section section,
        Species species,
        SawingPosition? position,
        double? sapwoodMm,
        double? logDiameterMm
    )
    {
        if (sapwoodMm is null && species.SapwoodWidth is { Value.IsDistinct: false } alike)
            return new(LogGeometry.AllSapwood, [new SapwoodNotDistinct(species, alike.Provenance.Standing)]);
        if (sapwoodMm is null && species.SapwoodWidth is null)
            return null;
        var assumptions = new List<LogAssumption>();
        if (sapwoodMm is null && species.SapwoodWidth is { } band)
        {
            var usual = UsualSapwood.Of(band.Value);
            sapwoodMm = usual.Mm;
            assumptions.Add(new SapwoodAsUsual(usual, band.Provenance.Standing));
        }
        // Our own choice: hardwoods grow large, and posts of them are sawn free of the pith; with the pith in the middle of the smallest log they would
        // show far more sapwood than they do.
        var usually =
            species.Type == WoodType.Hardwood && HoldsFour(section, logDiameterMm)
                ? SawingPosition.Quartered
                : SawingPosition.Boxed;
        if (section is RectangularSection)
        {
            if (position is null)
                assumptions.Add(usually == SawingPosition.Boxed ? new PithInTheMiddle() : new PithAtACorner());
            if (logDiameterMm is null)
                assumptions.Add(new SmallestLog());
        }
        return new(Place(section, position ?? usually, sapwoodMm!.Value, logDiameterMm), assumptions);
    }

    private static bool HoldsFour(Section section, double? logDiameterMm) =>
        section is RectangularSection sawn
        && (logDiameterMm is null || logDiameterMm >= 2 * Far(sawn.WidthMm, sawn.HeightMm));

    private static double Far(double x, double y) => Math.Sqrt(x * x + y * y);
}
