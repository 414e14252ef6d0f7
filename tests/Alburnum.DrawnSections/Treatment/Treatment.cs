namespace Alburnum.DrawnSections;

/// <summary>A stretch of a face where less went in: a stuck sticker, bark, a skid mark, dense wood.</summary>
/// <param name="Share">Share of the usual depth reached in its middle.</param>
public sealed record ShallowPatch(int Face, double CentreMm, double WidthMm, double Share);

/// <summary>Slits made by toothed rollers before treatment.</summary>
/// <param name="SpacingMm">Distance between slits as a cross-section meets them.</param>
/// <param name="DepthMm">How deep liquid goes along a slit.</param>
/// <param name="WidthMm">Width of the finger of treated wood about a slit.</param>
public sealed record Incising(double SpacingMm, double DepthMm, double WidthMm);

/// <summary>How deep preservative went into one piece, before the wood's own features have their say.</summary>
/// <param name="DepthMm">Usual depth below the faces in sapwood.</param>
/// <param name="SlowMm">Amplitude of depth changes over centimetres.</param>
/// <param name="FineMm">Amplitude of depth changes over millimetres.</param>
/// <param name="HeartwoodDepthMm">Depth to which heartwood takes it.</param>
public sealed record Treatment(double DepthMm, double SlowMm, double FineMm, double HeartwoodDepthMm, int Seed)
{
    /// <summary>Depth of each face against the usual one.</summary>
    public IReadOnlyList<double> FaceShares { get; init; } = [];

    /// <summary>Least depth anywhere in sapwood that is not a patch, mm.</summary>
    public double FloorMm { get; init; } = 0.2;

    /// <summary>How far the front steps forward in latewood (where pits stay open), mm.</summary>
    public double RingStepMm { get; init; } = 0.15;

    /// <summary>Length of the streaks by which the front follows rays, mm.</summary>
    public double StreakMm { get; init; } = 0.4;

    /// <summary>Extra depth where two treated faces meet, mm.</summary>
    public double CornerMm { get; init; } = 1.5;

    public IReadOnlyList<ShallowPatch> Patches { get; init; } = [];

    public Incising? Incising { get; init; }

    /// <summary>Bays and fingers of the front; null for one that is even but for its waves.</summary>
    public RaggedFront? Ragged { get; init; }

    /// <summary>Single bays and fingers beside those.</summary>
    public IReadOnlyList<Tongue> Tongues { get; init; } = [];

    /// <summary>The depth a face would have in plain sapwood, mm, at a distance along it.</summary>
    public double FaceDepthMm(SectionShape shape, int face, double alongMm)
    {
        var side = shape.Faces[face];
        var share = face < FaceShares.Count ? FaceShares[face] : 1;
        var closed = side.IsClosed;
        var depth = DepthMm * share;
        if (closed)
        {
            var turn = alongMm / side.LengthMm;
            depth += SlowMm * Noise.Wrapped(turn * 7, 0, 7, Seed + 3);
            depth += 0.6 * SlowMm * Noise.Wrapped(turn * 19, 3, 19, Seed + 4);
            var many = (int)(side.LengthMm / 2.6);
            depth += FineMm * Noise.Wrapped(turn * many, 5, many, Seed + 5);
        }
        else
        {
            depth += SlowMm * Noise.Along(alongMm / 31 + 50 * face, Seed + 3);
            depth += 0.6 * SlowMm * Noise.Along(alongMm / 11 + 50 * face, Seed + 4);
            depth += FineMm * Noise.Along(alongMm / 2.6 + 50 * face, Seed + 5);
        }
        depth += 0.3 * FineMm * Noise.Along(alongMm / 1.1 + 70 * face, Seed + 6);
        // Rays and cracks let it run ahead in narrow streaks.
        depth += StreakMm * Smooth.Step(0.45, 0.95, Noise.Along(alongMm / 1.7 + 90 * face, Seed + 7));
        if (!closed && shape.Faces.Count > 1)
        {
            var fromEnd = Math.Min(alongMm, side.LengthMm - alongMm);
            depth += CornerMm * Math.Exp(-Math.Max(fromEnd, 0) / Math.Max(2, 1.3 * DepthMm));
        }
        depth = Math.Max(depth, FloorMm);
        foreach (var patch in Patches)
        {
            if (patch.Face != face)
                continue;
            var off = Math.Abs(alongMm - patch.CentreMm) / (patch.WidthMm / 2);
            depth *= 1 - (1 - patch.Share) * (1 - Smooth.Step(0.3, 1.2, off));
        }
        return Incising is null ? Math.Max(depth, 0) : Math.Max(Fingered(Incising, depth, alongMm, face), 0);
    }

    private double Fingered(Incising incising, double depth, double alongMm, int face)
    {
        var place = alongMm / incising.SpacingMm;
        var number = (int)Math.Round(place);
        var sideways = 0.22 * (Noise.Even(number, face, Seed + 8) - 0.5);
        var off = (place - number - sideways) * incising.SpacingMm / (incising.WidthMm / 2);
        // A slit is met at a random point of its length, so fingers differ in depth.
        var reach = incising.DepthMm * (0.72 + 0.36 * Noise.Even(number, face, Seed + 9));
        return depth + Math.Max(0, reach - depth) * Math.Exp(-off * off);
    }
}
