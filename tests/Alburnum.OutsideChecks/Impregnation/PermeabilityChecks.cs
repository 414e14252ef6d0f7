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

    public static TheoryData<string> OfCharges => ["tank", "zones", "tank and zones"];

    [Theory]
    [MemberData(nameof(OfCharges))]
    [IndependentProgram(Program, Script)]
    public void What_was_read_of_whole_charges_tells_of_wood_and_walls_as_the_grid_does(string name)
    {
        var row = ReferenceTable.Rows("permeability.csv", name).Single().Data;
        var fit = PermeabilityFit.Of(
            Believed,
            [],
            seed: 5,
            rounds: 60_000,
            evidence:
            [
                .. name == "zones" ? [] : Tanks.Select(charge => Tank(charge.Charge, charge.Gone)),
                .. name == "tank" ? [] : Assays.Select(charge => Zones(charge.Charge, charge.KgPerM3)),
            ]
        );

        // The grids step by a tenth of a standard deviation or less, and the chain leaves a fiftieth open.
        Assert.Equal(row[0], fit.LnMedian.Value - Math.Log(Median), 0.02);
        Assert.Equal(row[1], fit.LnMedian.StandardUncertainty, 0.02);
        Assert.Equal(row[2], fit.Plants.Average(plant => plant.BatchLnSpread), 0.02);
        Assert.Equal(row[3], fit.Plants.Average(plant => plant.LnUptakeFactor), 0.006);
        Assert.Equal(row[4], Deviation([.. fit.Plants.Select(plant => plant.LnUptakeFactor)]), 0.006);
        Assert.Equal(row.Length - 5, name == "tank" ? 1 : fit.WallShares.Count);
        for (var law = 0; law < fit.WallShares.Count; law++)
            Assert.Equal(row[5 + law], fit.WallShares[law], 0.03);
    }

    [Fact]
    [IndependentProgram(Program, Script)]
    public void Places_that_lie_apart_tell_what_all_places_of_a_section_do()
    {
        var exact = ReferenceTable.Rows("permeability.csv", "section").Single().Data;
        List<FitPoint> points = [];
        for (var piece = 1; piece <= 3; piece++)
        {
            var ln = ReferenceTable.Rows("permeability.csv", $"section {piece}").Single().Data;
            // Any depth that rises with permeability has the same places apart: here its root.
            var apart = PlacesApart.Of([
                .. ln.Select((value, i) => new MeasuredPlace(1 + i / 100, i % 100, 5 * Math.Exp(value / 2))),
            ]);
            points.AddRange(apart.Counted.Select(i => Point("a", $"{piece}", ln[i])));
            // The field's correlation falls off within 8 mm; so short a perimeter tells that to a factor of two.
            Assert.InRange(apart.DistanceMm, 12, 60);
        }
        var fit = PermeabilityFit.Of(Believed, points, seed: 5, rounds: 60_000);

        // Fewer places are counted than there are: a tenth of a standard deviation, and spreads to a tenth of themselves and the chain's error.
        Assert.Equal(exact[0], fit.LnMedian.Value - Math.Log(Median), 0.1 * exact[1]);
        Assert.Equal(exact[1], fit.LnMedian.StandardUncertainty, 0.03 * exact[1]);
        Assert.Equal(exact[2], fit.After.WithinLnSpread, 0.12 * exact[2]);
        Assert.Equal(exact[3], fit.After.PieceLnSpread, 0.06 * exact[3]);
    }

    private static readonly double[] Minutes = [5, 15, 40, 90, 180];
    private static readonly (double From, double To)[] Bands = [(0, 4), (4, 10), (10, 20)];
    private static readonly double[] WallShares = [0, 0.25, 1, 4];
    private static readonly (string Charge, double[] Gone)[] Tanks =
    [
        ("a", [110, 142, 196, 250, 288]),
        ("b", [30, 84, 170, 249, 310]),
    ];
    private static readonly (string Charge, double[] KgPerM3)[] Assays =
    [
        ("a", [9.1, 4.3, 1.2]),
        ("b", [10.6, 7.0, 3.4]),
    ];

    private static TankReadings Tank(string charge, double[] gone) =>
        new(
            charge,
            [
                .. Minutes.Select(
                    (at, i) =>
                        new TankReading(
                            gone[i],
                            3,
                            new UptakeCurve(ln =>
                                (Math.Log(600 * Math.Tanh(Math.Sqrt(Math.Exp(ln) * at / 5e-16))), 0.05 * 0.05)
                            )
                        )
                ),
            ]
        );

    private static ZoneAssays Zones(string charge, double[] kgPerM3) =>
        new(
            charge,
            [.. Bands.Select((band, i) => new ZoneAssay(kgPerM3[i], 0.2, (ln, law) => Expected(ln, law, band)))],
            12,
            WallShares.Length
        );

    private static double Expected(double ln, int law, (double From, double To) band)
    {
        var reach = 40 * Math.Sqrt(Math.Exp(ln) / 1e-17) / (1 + WallShares[law]);
        double Within(double mm) => reach * (1 - Math.Exp(-mm / reach));
        return 12 * (1 + WallShares[law]) * (Within(band.To) - Within(band.From)) / (band.To - band.From);
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
