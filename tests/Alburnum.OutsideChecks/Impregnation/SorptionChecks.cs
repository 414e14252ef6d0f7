using Alburnum.Impregnation.Prediction;
using Alburnum.Impregnation.Sorbing;

namespace Alburnum.OutsideChecks.Impregnation;

/// <summary>Product that stays behind in the walls while the liquid goes on, against finite volumes and the theory of chromatography.</summary>
[Computed]
public sealed class SorptionChecks
{
    private const int Cells = 80;
    private static readonly double[] Depths = [0.05, 0.1, 0.2, 0.4, 1];

    public static TheoryData<double[]> Rows => ReferenceTable.Rows("sorption.csv", "product");

    [Theory]
    [MemberData(nameof(Rows))]
    [IndependentProgram("SciPy 1.10.1", "tests/Alburnum.OutsideChecks/reference/sorption.py, output stored beside it")]
    public void Product_is_where_finite_volumes_put_it(double[] row)
    {
        var narrowing = row[0];
        var way = ProductWay.Of(
            Filled(narrowing, row[1], row[2]),
            Filled(narrowing, row[3], row[4]),
            new WallShare(row[5], row[6]),
            narrowing
        );

        Assert.All(Depths.Index(), depth => Assert.Equal(row[7 + depth.Index], way.KeptWithin(depth.Item), 1e-3));
    }

    [Theory]
    [WorkedOut("a front of linear sorption moves 1/R as far as the liquid, R = 1 + walls over liquid (chromatography)")]
    [InlineData(0.8, 0.4, 0)]
    [InlineData(0.8, 1.6, 0)]
    [InlineData(0.5, 5.0, 0)]
    public void The_front_is_retarded_by_R(double filled, double share, double bend) =>
        AssertRetarded(filled, share, bend);

    [Theory]
    [WorkedOut(
        "a shock of Langmuir's isotherm moves by the chord q/c, not by the slope, of the isotherm (Rankine and Hugoniot)"
    )]
    [InlineData(0.8, 0.8, 4)]
    [InlineData(0.6, 2.4, 50)]
    [InlineData(0.9, 0.3, double.PositiveInfinity)]
    public void A_shock_moves_by_the_chord(double filled, double share, double bend) =>
        AssertRetarded(filled, share, bend);

    [Theory]
    [WorkedOut(
        "walls that fill on contact keep theirs: product is lost only with the liquid behind the front, then water comes out alone"
    )]
    [InlineData(0.8, 0.6)]
    [InlineData(0.8, 0.5)]
    [InlineData(0.8, 0.1)]
    public void What_fills_on_contact_is_not_given_back(double full, double end)
    {
        const double share = 0.8;
        var way = ProductWay.Of(
            Filled(0, full, 0),
            Filled(0, end, 0),
            new WallShare(share, double.PositiveInfinity),
            0
        );
        var front = full / (full + share);

        Assert.Equal(full - Math.Min(full - end, full * front), way.Net, 2e-4);
        Assert.Equal(front, way.Reached, 1e-3);
    }

    [Theory]
    [WorkedOut(
        "conservation: what stays is what came in less what went out, whose strength falls as the fan of strengths comes to the face"
    )]
    [InlineData(0.8, 0.4, 1, 4)]
    [InlineData(0.8, 0.1, 1, 30)]
    [InlineData(0.9, 0.2, 0.5, 2)]
    public void Nothing_is_lost_on_the_way_out(double full, double end, double share, double bend)
    {
        var walls = new WallShare(share, bend);
        var way = ProductWay.Of(Filled(0, full, 0), Filled(0, end, 0), walls, 0);
        var front = full / (full + share);
        const int parts = 200_000;
        var lost = 0.0;
        for (var i = 0; i < parts; i++)
        {
            var given = (full - end) * (i + 0.5) / parts;
            lost += (full - end) / parts * walls.StrengthAtSlope((given - full * front) / front);
        }

        Assert.Equal(full - lost, way.Net, 5e-4);
    }

    private static void AssertRetarded(double filled, double share, double bend)
    {
        var way = Filled(0, filled, 0);
        var product = ProductWay.Of(way, way, new WallShare(share, bend), 0);
        var front = 1 / (1 + share / filled);

        Assert.Equal(front, product.Reached, 1e-6);
        Assert.Equal(filled, product.Net, 1e-6);
        Assert.Equal((filled + share) * front / 2, product.KeptWithin(front / 2), 1e-6);
    }

    // Filled to a + b·x of the voids.
    private static FilledWay Filled(double narrowing, double a, double b)
    {
        double[] depths = [.. Enumerable.Range(0, Cells + 1).Select(i => (double)i / Cells)];
        double Kept(double x) =>
            (a * (x - narrowing * x * x / 2) + b * (x * x / 2 - narrowing * x * x * x / 3)) / (1 - narrowing / 2);
        return new(1, Kept(1), depths, [.. depths.Select(Kept)]);
    }
}
