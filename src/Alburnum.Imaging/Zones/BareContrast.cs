using Alburnum.Imaging.Geometry;
using Alburnum.Measures;

namespace Alburnum.Imaging.Zones;

/// <summary>
/// How far each place of bare wood lies towards heartwood's colour from its surroundings': what is left of its colour when a smooth change over the
/// section is taken off. Three channels, light and two hues, each in its own standard deviations and positive towards heartwood.
/// </summary>
internal sealed class BareContrast
{
    public const int Channels = 3;

    /// <summary>Terms of the smooth change: level, two slopes, three curvatures.</summary>
    public const int Terms = 6;

    /// <summary>The first curvature among them.</summary>
    private const int FirstCurvature = 3;

    /// <summary>How strongly slope and curvature are held towards none, as a share of all cells. Our own choice.</summary>
    private const double SlopeHold = 0.05;

    private const double CurvatureHold = 0.3;

    /// <summary>Beyond this many standard deviations a place is a crack, a knot or glare, and counts as that far only. Our own choice.</summary>
    private const double Most = 2.5;

    /// <summary>Half of a normal distribution lies within so many standard deviations of its middle.</summary>
    private const double HalfWithin = 0.6745;

    /// <summary>No wood varies less than this, a standard deviation of logarithms of light. Our own choice.</summary>
    private const double LeastDeviation = 1e-4;

    private readonly double[,] _inverse;
    private readonly double[][] _basis;

    private BareContrast(BareWood wood, double[][] basis, double[,] inverse, double[][] off) =>
        (Wood, _basis, _inverse, Off) = (wood, basis, inverse, off);

    public BareWood Wood { get; }

    /// <summary>By channel, then by cell.</summary>
    public double[][] Off { get; }

    public static BareContrast Of(BareWood wood, SectionPlan plan, HeartwoodSigns signs)
    {
        var n = wood.At.Count;
        var basis = new double[n][];
        var normal = new double[Terms, Terms];
        for (var i = 0; i < n; i++)
        {
            var (x, y) = ((2 * wood.At[i].X / plan.WidthMm) - 1, (2 * wood.At[i].Y / plan.HeightMm) - 1);
            basis[i] = [1, x, y, x * x, x * y, y * y];
            for (var j = 0; j < Terms; j++)
            for (var k = 0; k < Terms; k++)
                normal[j, k] += basis[i][j] * basis[i][k];
        }
        // The smooth change is small: it is held towards none, so that it cannot take the place of a heartwood in the middle.
        for (var j = 1; j < Terms; j++)
            normal[j, j] += n * (j < FirstCurvature ? SlopeHold : CurvatureHold);
        // Held towards none, the system is never singular.
        if (!LinearSystem.Inverse(normal).Has(out var inverse, out var singular))
            throw new InvalidOperationException($"The smooth change's term {singular.Column} is not determined.");
        var off = new double[Channels][];
        for (var c = 0; c < Channels; c++)
        {
            var value = new double[n];
            for (var i = 0; i < n; i++)
                value[i] = c switch
                {
                    0 => signs.Light * wood.Colour[i].L,
                    1 => signs.RedOverGreen * wood.Colour[i].U,
                    _ => signs.BlueOverGreen * wood.Colour[i].V,
                };
            off[c] = Residual(value, basis, inverse);
        }
        return new(wood, basis, inverse, off);
    }

    /// <summary>Length of a step's own column after the smooth change is taken off, from the sums over its inside.</summary>
    /// <param name="inside">Sums of the smooth terms over the cells inside.</param>
    public double Freedom(ReadOnlySpan<double> inside)
    {
        var taken = 0.0;
        for (var j = 0; j < Terms; j++)
        for (var k = 0; k < Terms; k++)
            taken += inside[j] * _inverse[j, k] * inside[k];
        return inside[0] - taken;
    }

    public ReadOnlySpan<double> Basis(int cell) => _basis[cell];

    private static double[] Residual(double[] value, double[][] basis, double[,] inverse)
    {
        var right = new double[Terms];
        for (var i = 0; i < value.Length; i++)
        for (var j = 0; j < Terms; j++)
            right[j] += basis[i][j] * value[i];
        var solution = new double[Terms];
        for (var j = 0; j < Terms; j++)
        for (var k = 0; k < Terms; k++)
            solution[j] += inverse[j, k] * right[k];
        var off = new double[value.Length];
        for (var i = 0; i < off.Length; i++)
        {
            off[i] = value[i];
            for (var j = 0; j < Terms; j++)
                off[i] -= basis[i][j] * solution[j];
        }
        var deviation = Math.Max(LeastDeviation, Quantiles.UpperMedian(off.Select(Math.Abs)) / HalfWithin);
        for (var i = 0; i < off.Length; i++)
            off[i] = Math.Clamp(off[i] / deviation, -Most, Most);
        return off;
    }
}
