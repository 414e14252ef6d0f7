using Alburnum.Impregnation.Prediction;

namespace Alburnum.OutsideChecks.Impregnation;

/// <summary>A wood's permeability after depths and uptakes, against the same posterior summed over a grid in another language.</summary>
[Computed]
public sealed class PermeabilityChecks
{
    private const string Program = "SciPy 1.10.1 (Debian 12)";
    private const string Script = "tests/Alburnum.OutsideChecks/reference/permeability.py, output stored beside it";
    private const double Median = 1e-18;

    // The data of the script.
    private static readonly FitPoint[] Depths =
    [
        Point("a", "1", 0.50),
        Point("a", "1", 0.90),
        Point("a", "2", 0.10),
        Point("a", "2", -0.20),
        Point("b", "1", 1.40),
        Point("b", "1", 1.10),
        Point("b", "2", 1.90),
        Point("b", "2", 1.55),
        Point("c", "1", 0.70),
        Point("c", "1", 0.35),
        Point("c", "2", 0.95),
        Point("c", "2", 1.30),
    ];

    private static readonly FitPoint Full = Point("b", "3", 1.60) with { MostM2 = double.PositiveInfinity };
    private static readonly UptakeCurve Curve = new(ln => (26 + 0.5 * ln, 0.05 * 0.05));
    private static readonly PlantUptake[] Uptakes = [Uptake("a", 0.30), Uptake("b", 0.85), Uptake("d", 0.65)];

    public static TheoryData<string> Cases => ["depths", "uptakes", "both", "full"];

    [Theory]
    [MemberData(nameof(Cases))]
    [IndependentProgram(Program, Script)]
    public void A_wood_s_permeability_is_the_one_found_by_summing_over_a_grid(string name)
    {
        var row = ReferenceTable.Rows("permeability.csv", name).Single().Data;
        var fit = PermeabilityFit.Of(
            Believed,
            name switch
            {
                "uptakes" => [],
                "full" => [.. Depths, Full],
                _ => Depths,
            },
            seed: 5,
            rounds: 100_000,
            evidence: name == "depths" ? [] : Uptakes
        );

        // A chain of 75 000 rounds leaves about a hundredth of a standard deviation open, and the grid ends where less than a thousandth lies beyond.
        Assert.Equal(row[0], fit.LnMedian.Value - Math.Log(Median), 0.012);
        Assert.Equal(row[1], fit.LnMedian.StandardUncertainty, 0.012);
        Assert.Equal(row[2], fit.After.WithinLnSpread, 0.012);
        Assert.Equal(row[3], fit.After.PieceLnSpread, 0.012);
        Assert.Equal(double.Hypot(row[4], row[1]), fit.After.BatchLnSpread, 0.015);
        if (name == "depths")
            return;
        Assert.Equal(row[5], fit.Plants.Average(plant => plant.LnUptakeFactor), 0.005);
        Assert.Equal(row[6], Deviation([.. fit.Plants.Select(plant => plant.LnUptakeFactor)]), 0.005);
    }

    private static PermeabilityLaw Believed { get; } =
        new()
        {
            Name = "test wood",
            LateralMedianM2 = Median,
            Directions = new("drawn", 1, 6000, new(Standing.FromMemory, "drawn", "", "", "")),
            BatchLnSpread = 0.9,
            PieceLnSpread = 0.4,
            WithinLnSpread = 0.3,
            IsInference = true,
            Provenance = new Provenance(Standing.FromMemory, "", "", "", ""),
        };

    private static FitPoint Point(string charge, string piece, double ln) =>
        new(charge, piece, Median * Math.Exp(ln), Median * Math.Exp(ln));

    private static PlantUptake Uptake(string charge, double ln) =>
        new(charge, Math.Exp(26 + 0.5 * Math.Log(Median) + ln), Curve);

    private static double Deviation(double[] values)
    {
        var mean = values.Average();
        return Math.Sqrt(values.Average(value => Squared(value - mean)));
    }

    private static double Squared(double value) => value * value;
}
