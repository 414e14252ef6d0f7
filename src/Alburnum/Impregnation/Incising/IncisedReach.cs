namespace Alburnum.Impregnation.Incising;

/// <summary>How deep the treated border runs unbroken between the cuts of a pattern: by distances.</summary>
/// <remarks>
/// At each depth the wood farthest from any cut decides. Distances are measured across the grain; a distance along the grain
/// counts √(k along ⁄ k across) times less, as an anisotropic front spreads. The solver on the incised cell is the reference.
/// </remarks>
public sealed class IncisedReach
{
    private const int Depths = 40;
    private const int Grid = 24;
    private readonly double[] _gapMm = new double[Depths];

    /// <summary>Measures the widest gap at each depth, once.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="alongToAcross">Permeability along the grain over across it, 1 to 1e7.</param>
    public IncisedReach(IncisingPattern pattern, double alongToAcross)
    {
        Pattern = pattern;
        var shrink = 1 / Math.Sqrt(Require.InRange(alongToAcross, 1, 1e7, "(ratio)"));
        for (var d = 0; d < Depths; d++)
        {
            _gapMm[d] = WidestGap(pattern, d * pattern.DepthMm / Depths, shrink);
            // A deeper gap never narrows: cuts taper. Kept rising against the grid's own roughness.
            if (d > 0)
                _gapMm[d] = Math.Max(_gapMm[d], _gapMm[d - 1]);
        }
    }

    /// <summary>The pattern.</summary>
    public IncisingPattern Pattern { get; }

    /// <summary>Depth of the unbroken treated border, mm: never less than what the plain face lets in.</summary>
    /// <param name="acrossMm">How far the front goes across the grain from a wetted surface, mm. 0 or more.</param>
    public double UnbrokenMm(double acrossMm)
    {
        Require.InRange(acrossMm, 0, 1e4, "mm");
        if (acrossMm < _gapMm[0])
            return acrossMm;
        if (acrossMm >= _gapMm[^1])
            return Math.Max(acrossMm, Pattern.DepthMm);
        var d = Array.FindIndex(_gapMm, gap => gap > acrossMm);
        var share = (acrossMm - _gapMm[d - 1]) / (_gapMm[d] - _gapMm[d - 1]);
        return Math.Max(acrossMm, (d - 1 + share) * Pattern.DepthMm / Depths);
    }

    // The point of the repeating cell farthest from a cut, by the shrunk distance.
    private static double WidestGap(IncisingPattern pattern, double belowMm, double shrink)
    {
        var (halfLength, halfWidth) = (pattern.HalfLengthMm(belowMm), pattern.HalfWidthMm(belowMm));
        double widest = 0;
        for (var i = 0; i <= Grid; i++)
        {
            var x = pattern.AlongMm * i / Grid;
            for (var j = 0; j <= Grid; j++)
            {
                var y = pattern.AcrossMm * j / Grid;
                var nearest = double.MaxValue;
                for (var row = -2; row <= 3; row++)
                {
                    var shift = row % 2 == 0 ? 0 : pattern.Stagger * pattern.AlongMm;
                    var along = x - shift;
                    along = Math.Abs(along - Math.Round(along / pattern.AlongMm) * pattern.AlongMm);
                    var dx = Math.Max(0, along - halfLength) * shrink;
                    var dy = Math.Max(0, Math.Abs(y - row * pattern.AcrossMm) - halfWidth);
                    nearest = Math.Min(nearest, dx * dx + dy * dy);
                }
                widest = Math.Max(widest, nearest);
            }
        }
        return Math.Sqrt(widest);
    }
}
