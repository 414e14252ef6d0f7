namespace Alburnum.Impregnation.Incising;

/// <summary>How deep treated wood goes under an incised face, place by place: cores taken anywhere, and the border between the cuts.</summary>
/// <remarks>
/// Wood is treated where the front comes to it from the face or from the wall of the nearest cut, and in the corner between the two a little before
/// either does (the cubes of their shares of the way add up: fitted to the solver); a distance along the grain counts √(k along ⁄ k across) times less, as an anisotropic front spreads. The solver on the incised cell is the reference
/// (Alburnum.Flow.Tests).
/// </remarks>
public sealed class IncisedReach
{
    private const int Depths = 24;
    private const int AlongPlaces = 8;
    private const int AcrossPlaces = 64;
    private const int Places = AlongPlaces * AcrossPlaces;
    private const int Fronts = 65;

    // Distance to the nearest cut at even depths down to the cuts' own, for each place, and last the greatest of all places. It never falls
    // with depth, as cuts taper.
    private readonly double[,] _awayMm = new double[Places + 1, Depths + 1];

    // For fronts at even steps, the depths of all places, rising, and the sum of those before each.
    private readonly double[][] _depthsMm = new double[Fronts][];
    private readonly double[][] _sumsMm = new double[Fronts][];
    private readonly double _frontStepMm;

    // How much longer the way from a cut is because its liquid must first spread along the grain, mm.
    private readonly double _spreadingMm;

    /// <summary>Measures the way from every place to the cuts, once.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="alongToAcross">Permeability along the grain over across it, 1 to 1e7.</param>
    public IncisedReach(IncisingPattern pattern, double alongToAcross)
    {
        Pattern = pattern;
        var shrink = 1 / Math.Sqrt(Require.InRange(alongToAcross, 1, 1e7, "(ratio)"));
        for (var place = 0; place < Places; place++)
        {
            var x = pattern.AlongMm * (place % AlongPlaces + 0.5) / AlongPlaces;
            var y = pattern.AcrossMm * (place / AlongPlaces + 0.5) / AcrossPlaces;
            for (var d = 0; d <= Depths; d++)
            {
                var away = AwayMm(pattern, (x, y, d * pattern.DepthMm / Depths), shrink);
                _awayMm[place, d] = d > 0 ? Math.Max(away, _awayMm[place, d - 1]) : away;
                _awayMm[Places, d] = Math.Max(_awayMm[Places, d], _awayMm[place, d]);
            }
        }
        // Slits in a row open a share s of their plane: between them the flow is that from the whole plane, P/π·ln(1/sin(πs/2)) farther off
        // (potential flow, P from slit to slit). A cut's mean length is π/4 of that at the face. Since liquid also spreads downwards, four tenths of
        // that: fitted to the solver.
        var open = Math.PI / 4 * pattern.LengthMm / pattern.AlongMm;
        _spreadingMm = 0.4 * pattern.AlongMm * shrink / Math.PI * Math.Log(1 / Math.Sin(Math.PI * open / 2));
        _frontStepMm = 2 * Math.Max(_awayMm[Places, Depths], pattern.DepthMm) / (Fronts - 1);
        for (var front = 0; front < Fronts; front++)
        {
            var across = front * _frontStepMm;
            _depthsMm[front] = [.. Enumerable.Range(0, Places).Select(place => DepthMm(place, across)).Order()];
            _sumsMm[front] = new double[Places + 1];
            for (var n = 0; n < Places; n++)
                _sumsMm[front][n + 1] = _sumsMm[front][n] + _depthsMm[front][n];
        }
    }

    /// <summary>The pattern.</summary>
    public IncisingPattern Pattern { get; }

    /// <summary>Depth to the first untreated wood where a core is taken, mm: anywhere, between the cuts and at them.</summary>
    /// <param name="acrossMm">How far the front goes across the grain from a wetted surface, mm. 0 or more.</param>
    /// <param name="where">Where: an even draw from 0 up to but not 1.</param>
    public double CoreMm(double acrossMm, double where) => DepthMm((int)(where * Places), acrossMm);

    /// <summary>Mean over the face of the depth, or of as much of it as lies above a limit, mm.</summary>
    /// <param name="acrossMm">How far the front goes across the grain from a wetted surface, mm. 0 or more.</param>
    /// <param name="withinMm">The limit, mm; infinite for the whole depth.</param>
    public double MeanMm(double acrossMm, double withinMm)
    {
        Require.InRange(acrossMm, 0, 1e4, "mm");
        var at = acrossMm / _frontStepMm;
        // Past all cuts the front goes on as from a plain face.
        if (at >= Fronts - 1)
            return Math.Min(
                withinMm,
                MeanAt(Fronts - 1, double.PositiveInfinity) + acrossMm - (Fronts - 1) * _frontStepMm
            );
        var front = (int)at;
        var (low, high) = (MeanAt(front, withinMm), MeanAt(front + 1, withinMm));
        return low + (at - front) * (high - low);
    }

    /// <summary>Depth of the unbroken treated border between the cuts, mm: never less than what the plain face lets in.</summary>
    /// <param name="acrossMm">How far the front goes across the grain from a wetted surface, mm. 0 or more.</param>
    public double UnbrokenMm(double acrossMm) => DepthMm(Places, acrossMm);

    private double MeanAt(int front, double withinMm)
    {
        var depths = _depthsMm[front];
        var shallower = Array.BinarySearch(depths, withinMm);
        shallower = shallower < 0 ? ~shallower : shallower;
        return shallower == Places
            ? _sumsMm[front][Places] / Places
            : (_sumsMm[front][shallower] + (Places - shallower) * withinMm) / Places;
    }

    private double DepthMm(int place, double acrossMm)
    {
        Require.InRange(acrossMm, 0, 1e4, "mm");
        var fromCutMm = Math.Sqrt(acrossMm * acrossMm + _spreadingMm * _spreadingMm) - _spreadingMm;
        if (Lacks(Depths) <= 1)
            return Math.Max(acrossMm, Pattern.DepthMm + BelowTipMm(fromCutMm, _awayMm[place, Depths]));
        int low = 0,
            high = Depths;
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            if (Lacks(middle) <= 1)
                low = middle;
            else
                high = middle;
        }
        if (low == 0)
            return acrossMm;
        var (near, far) = (Lacks(low), Lacks(high));
        return Math.Max(acrossMm, (low + (1 - near) / (far - near)) * Pattern.DepthMm / Depths);

        // How many times as far both fronts would have to go to meet there; nothing at a cut itself.
        double Lacks(int depth)
        {
            var awayMm = _awayMm[place, depth];
            var belowMm = depth * Pattern.DepthMm / Depths;
            return awayMm > 0 ? 1 / Math.Cbrt(Cubed(fromCutMm / awayMm) + Cubed(acrossMm / belowMm)) : 0;
        }
    }

    private static double Cubed(double x) => x * x * x;

    // Below the tips the front flattens out the farther it has gone, and lags behind that of a plane by up to half the way between two rows: the
    // wood between them takes liquid too. The lag and the fourth power are fitted to the solver, for cuts of 6 to 19 mm and rows 4.5 to 10 mm apart.
    private double BelowTipMm(double fromCutMm, double awayMm)
    {
        if (fromCutMm <= 0)
            return 0;
        var share = awayMm / fromCutMm;
        return (1 - share * share * share * share) * fromCutMm * fromCutMm / (fromCutMm + Pattern.AcrossMm / 2);
    }

    // The nearest point of any cut, by the shrunk distance. It lies at the same depth or above, where the cut is longer and wider.
    private static double AwayMm(IncisingPattern pattern, (double X, double Y, double Z) from, double shrink)
    {
        var nearest = double.MaxValue;
        for (var row = -2; row <= 3; row++)
        {
            var along = from.X - (row % 2 == 0 ? 0 : pattern.Stagger * pattern.AlongMm);
            along = Math.Abs(along - Math.Round(along / pattern.AlongMm) * pattern.AlongMm);
            var dy = Math.Abs(from.Y - row * pattern.AcrossMm);
            for (var d = 0; d <= Depths; d++)
            {
                var z = d * pattern.DepthMm / Depths;
                if (z > from.Z + 1e-9)
                    break;
                var dx = Math.Max(0, along - pattern.HalfLengthMm(z)) * shrink;
                var off = Math.Max(0, dy - pattern.HalfWidthMm(z));
                nearest = Math.Min(nearest, dx * dx + off * off + (from.Z - z) * (from.Z - z));
            }
        }
        return Math.Sqrt(nearest);
    }
}
