using Alburnum.Timber;

namespace Alburnum.Impregnation.Prediction;

/// <summary>A place on the face of a section, and what lies on the way straight in from it.</summary>
/// <param name="Face">Face number from 1, clockwise from the top; a round section has one, a half-round one the round and the flat.</param>
/// <param name="AlongMm">Distance from the start of the face, mm.</param>
/// <param name="SapwoodMm">Depth at which heartwood begins, mm; 0 where it reaches the face, the whole way where there is none.</param>
/// <param name="RadialShare">Share of radial direction in the way inwards at the face: 1 along the rays, 0 along the rings.</param>
/// <param name="WayMm">Where the way ends, mm: half the thickness, the radius, or where the front from the other face of a half-round piece meets it.</param>
/// <param name="Own">The strip of the section that is filled from here.</param>
public readonly record struct SectionPosition(
    int Face,
    double AlongMm,
    double SapwoodMm,
    double RadialShare,
    double WayMm,
    SectionStrip Own
);

/// <summary>The strip of a section nearer to a place on its face than to any other: where fronts from all faces meet, it ends.</summary>
/// <param name="BreadthMm">Breadth at the face, mm.</param>
/// <param name="EndMm">Depth at which it ends, mm.</param>
/// <param name="RadiusMm">Radius towards whose middle it narrows, mm; infinite where it does not.</param>
public readonly record struct SectionStrip(double BreadthMm, double EndMm, double RadiusMm)
{
    /// <summary>Area of the strip, mm².</summary>
    public double AreaMm2 => AreaWithin(EndMm);

    /// <summary>Area of the strip within a depth, mm².</summary>
    /// <param name="depthMm">Depth, mm, 0 or more; beyond the strip's end all of it counts.</param>
    public double AreaWithin(double depthMm)
    {
        var depth = Math.Min(depthMm, EndMm);
        return BreadthMm * (depth - depth * depth / (2 * RadiusMm));
    }

    /// <summary>Its breadth at a depth, mm.</summary>
    /// <param name="depthMm">Depth, mm. 0 to its end.</param>
    internal double BreadthAtMm(double depthMm) => BreadthMm * (1 - depthMm / RadiusMm);
}

/// <summary>Even places around a section.</summary>
public static class SectionPositions
{
    /// <summary>Places in the middle of even pieces of each face.</summary>
    /// <param name="section">The section.</param>
    /// <param name="log">Where it lay in the log.</param>
    /// <param name="perFace">Places on each face of a sawn section; a round one gets four times as many, each face of a half-round one twice as many. 1 to 1000.</param>
    public static IReadOnlyList<SectionPosition> Around(Section section, LogGeometry log, int perFace)
    {
        Require.InRange(perFace, 1, 1000, "places");
        return section switch
        {
            RectangularSection sawn => [.. Sawn(sawn, log, perFace)],
            RoundSection round => [.. Round(round, log, 4 * perFace)],
            HalfRoundSection half => [.. HalfRound(half, log, 2 * perFace)],
            _ => throw new ArgumentOutOfRangeException(nameof(section), section, "Not a section with faces."),
        };
    }

    private static IEnumerable<SectionPosition> Sawn(RectangularSection sawn, LogGeometry log, int perFace)
    {
        var (w, h) = (sawn.WidthMm / 2, sawn.HeightMm / 2);
        for (var face = 1; face <= 4; face++)
        {
            var isLevel = face is 1 or 3;
            var length = isLevel ? sawn.WidthMm : sawn.HeightMm;
            var way = isLevel ? h : w;
            for (var i = 0; i < perFace; i++)
            {
                var along = (i + 0.5) * length / perFace;
                var (x, y, dx, dy) = face switch
                {
                    1 => (along - w, h, 0.0, -1.0),
                    2 => (w, h - along, -1.0, 0.0),
                    3 => (w - along, -h, 0.0, 1.0),
                    _ => (-w, along - h, 1.0, 0.0),
                };
                // Near a corner the other face is nearer than the middle; the way still counts straight in.
                var end = Math.Min(Math.Min(along, length - along), Math.Min(w, h));
                var strip = new SectionStrip(length / perFace, end, double.PositiveInfinity);
                var (sapwood, radial) = (SapwoodMm(log, x, y, dx, dy, way), log.RadialShare(x, y, (dx, dy)));
                yield return new(face, along, sapwood, radial, way, strip);
            }
        }
    }

    private static IEnumerable<SectionPosition> Round(RoundSection round, LogGeometry log, int places)
    {
        var radius = round.DiameterMm / 2;
        for (var i = 0; i < places; i++)
        {
            var angle = 2 * Math.PI * (i + 0.5) / places;
            var (s, c) = Math.SinCos(angle);
            var sapwood = SapwoodMm(log, radius * s, radius * c, -s, -c, radius);
            var strip = new SectionStrip(2 * Math.PI * radius / places, radius, radius);
            var radial = log.RadialShare(radius * s, radius * c, (-s, -c));
            yield return new(1, angle * radius, sapwood, radial, radius, strip);
        }
    }

    // Fronts from the round and from the flat meet half-way between the two: each way ends there.
    private static IEnumerable<SectionPosition> HalfRound(HalfRoundSection half, LogGeometry log, int places)
    {
        var radius = half.DiameterMm / 2;
        var centre = SectionBox.CentreYMm(half);
        for (var i = 0; i < places; i++)
        {
            var angle = Math.PI * ((i + 0.5) / places - 0.5);
            var (s, c) = Math.SinCos(angle);
            var way = radius * c / (1 + c);
            var sapwood = SapwoodMm(log, radius * s, centre + radius * c, -s, -c, way);
            var strip = new SectionStrip(Math.PI * radius / places, way, radius);
            var radial = log.RadialShare(radius * s, centre + radius * c, (-s, -c));
            yield return new(1, (angle + Math.PI / 2) * radius, sapwood, radial, way, strip);
        }
        for (var i = 0; i < places; i++)
        {
            var along = (i + 0.5) * half.DiameterMm / places;
            var x = radius - along;
            var way = (radius * radius - x * x) / (2 * radius);
            var strip = new SectionStrip(half.DiameterMm / places, way, double.PositiveInfinity);
            var (sapwood, radial) = (SapwoodMm(log, x, centre, 0, 1, way), log.RadialShare(x, centre, (0, 1)));
            yield return new(2, along, sapwood, radial, way, strip);
        }
    }

    // Way from a point of the face to the heartwood's circle, straight in.
    private static double SapwoodMm(LogGeometry log, double x, double y, double dx, double dy, double way)
    {
        var (px, py) = (x - log.PithXMm, y - log.PithYMm);
        var along = px * dx + py * dy;
        var c = px * px + py * py - log.HeartwoodRadiusMm * log.HeartwoodRadiusMm;
        if (c < 0)
            return 0;
        var root = along * along - c;
        if (root <= 0 || log.HeartwoodRadiusMm <= 0)
            return way;
        var near = -along - Math.Sqrt(root);
        return near < 0 ? way : Math.Min(way, near);
    }
}
