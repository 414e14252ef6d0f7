using MathNet.Numerics.Distributions;

namespace Alburnum.Impregnation.Prediction;

/// <summary>Product that is expected in one zone of a charge's pieces, by the median permeability of its wood and by what the walls take.</summary>
public sealed class ZoneCurve
{
    private const double LeastLn = -47;
    private const double MostLn = -22;
    private const double Step = 0.25;
    private const int Nodes = (int)((MostLn - LeastLn) / Step) + 1;

    // Pieces and places about the median, as many below as above: the mean over them is what cores of many pieces hold together.
    private const int Pieces = 15;
    private readonly double[][] _kgPerM3;
    private readonly double _lnRatio;

    /// <summary>The curve of one zone.</summary>
    /// <param name="charge">The charge's pieces, schedule and moisture; its laws are those believed at that moisture.</param>
    /// <param name="products">The table of the product by each law of the walls.</param>
    /// <param name="zoneMm">Where the zone begins and ends, mm from the face.</param>
    /// <param name="strengthKgPerM3">Product in the solution, kg/m³.</param>
    /// <param name="permeabilityRatio">Permeability at the charge's moisture over that at the moisture asked about. Above 0.</param>
    public ZoneCurve(
        PredictionQuestion charge,
        IReadOnlyList<FrontTable> products,
        (double FromMm, double ToMm) zoneMm,
        double strengthKgPerM3,
        double permeabilityRatio
    )
    {
        ArgumentNullException.ThrowIfNull(products);
        Require.InRange(zoneMm.FromMm, 0, zoneMm.ToMm, "mm");
        _lnRatio = Math.Log(Require.Positive(permeabilityRatio, "(ratio)"));
        var way = MiddleWay.Of(charge);
        var spread = double.Hypot(way.Law.PieceLnSpread, way.Law.WithinLnSpread);
        double[] factors =
        [
            .. Enumerable.Range(0, Pieces).Select(i => Math.Exp(spread * Normal.InvCDF(0, 1, (i + 0.5) / Pieces))),
        ];
        _kgPerM3 =
        [
            .. products.Select(table =>
                Enumerable.Range(0, Nodes).Select(node => Mean(table, Math.Exp(LeastLn + node * Step))).ToArray()
            ),
        ];

        double Mean(FrontTable table, double medianM2) =>
            strengthKgPerM3
            / 1000
            * factors.Average(factor => way.LPerM3(way.In(table, medianM2 * factor), zoneMm.FromMm, zoneMm.ToMm));
    }

    /// <summary>Product expected, kg/m³.</summary>
    /// <param name="lnM2">Logarithm of the charge's median permeability at the moisture asked about, m².</param>
    /// <param name="walls">Number of the law of the walls, from 0.</param>
    public double KgPerM3(double lnM2, int walls)
    {
        var at = Math.Clamp((lnM2 + _lnRatio - LeastLn) / Step, 0, Nodes - 1.001);
        var (i, between) = ((int)at, at - (int)at);
        return _kgPerM3[walls][i] + between * (_kgPerM3[walls][i + 1] - _kgPerM3[walls][i]);
    }
}
