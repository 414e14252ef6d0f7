namespace Alburnum.Impregnation.Prediction;

/// <summary>One depth of a plant's own charge, and what it takes to foretell it.</summary>
public sealed class PlantDepth
{
    // Shallower than this a depth cannot be told from none; deeper than this share of the way, the way is full.
    private const double LeastReadMm = 0.3;
    private const double FullShare = 0.97;
    private const double MostM2 = 1e-9;
    private readonly FrontTable _front;
    private readonly double _voidFraction;
    private readonly double _ratio;
    private readonly double _wayMm;
    private readonly double _fullMm;

    /// <summary>A depth as it was measured, on a way in wood as it was treated.</summary>
    /// <param name="charge">The charge.</param>
    /// <param name="piece">The piece within it.</param>
    /// <param name="depthMm">Depth, mm. 0 to the length of the way.</param>
    /// <param name="wayMm">Depth at which the wood of that kind, or half the piece, ends, mm. Above 0.</param>
    /// <param name="front">The table of the charge's schedule, solution and moisture.</param>
    /// <param name="cavities">Share of the volume that is cavity, above 0, and permeability at the charge's moisture over that at the moisture asked about.</param>
    public PlantDepth(
        string charge,
        string piece,
        double depthMm,
        double wayMm,
        FrontTable front,
        (double Share, double PermeabilityRatio) cavities
    )
    {
        ArgumentNullException.ThrowIfNull(front);
        (Charge, Piece) = (charge, piece);
        _wayMm = Require.Positive(wayMm, "mm");
        Require.InRange(depthMm, 0, wayMm, "mm");
        _front = front;
        _voidFraction = Require.InRange(cavities.Share, 0.01, 0.95, "(share)");
        _ratio = Require.Positive(cavities.PermeabilityRatio, "(ratio)");
        // Air left behind stops a front short of the end; wood filled so far counts as full.
        _fullMm = FullShare * Math.Min(wayMm, front.DepthMm(MostM2, _voidFraction, wayMm));
        DepthMm = Read(depthMm);
    }

    /// <summary>The charge: wood treated together counts as one batch.</summary>
    public string Charge { get; }

    /// <summary>The piece within the charge.</summary>
    public string Piece { get; }

    /// <summary>Depth as it counts, mm: 0 where it is too small to be told from none, the whole way where that is full.</summary>
    public double DepthMm { get; }

    /// <summary>The depth as the permeability that explains it, at the moisture asked about.</summary>
    public FitPoint Point()
    {
        if (DepthMm <= 0)
            return new(Charge, Piece, 0, Permeability(LeastReadMm));
        if (DepthMm >= _wayMm)
            return new(Charge, Piece, Permeability(_fullMm), double.PositiveInfinity);
        var k = Permeability(DepthMm);
        return new(Charge, Piece, k, k);
    }

    /// <summary>Depth that would be read in wood of a permeability, mm.</summary>
    /// <param name="permeabilityM2">Permeability at the moisture asked about, m². Above 0.</param>
    public double Foretold(double permeabilityM2) =>
        Read(_front.DepthMm(permeabilityM2 * _ratio, _voidFraction, _wayMm));

    private double Read(double depthMm) =>
        depthMm < LeastReadMm ? 0
        : depthMm >= _fullMm ? _wayMm
        : depthMm;

    private double Permeability(double depthMm) => _front.PermeabilityM2(depthMm, _voidFraction, _wayMm) / _ratio;
}
