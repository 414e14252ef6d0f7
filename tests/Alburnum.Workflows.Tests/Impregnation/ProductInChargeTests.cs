using Alburnum.Impregnation.Charging;
using Alburnum.Impregnation.Sorbing;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Workflows.Tests.Impregnation;

/// <summary>Where the product of a planned charge is expected, by what must hold whatever the walls take.</summary>
public sealed class ProductInChargeTests
{
    private static readonly FactLibrary Facts = new(Repository.At("data"));

    private static readonly ChargeOrder Posts = new()
    {
        Name = "posts",
        Treatment = new()
        {
            File = "posts.yaml",
            Species = Facts.Species.Get("Scots pine"),
            All = Alburnum.Impregnation.WoodThroughout.Sapwood,
            MoisturePercent = 26,
            Schedule = "empty cell",
            DepthMm = 12,
        },
        Pieces = [new(new RectangularSection(75, 75), 1800, 200)],
        DryingCelsius = 20,
        DryingHumidity = 0.65,
        RetentionKgPerM3 = 6,
        SolutionDensityKgPerM3 = 1000,
        TankL = 9000,
    };

    private static readonly Lazy<PlannedCharge> Unknown = new(() => Plan(Posts));

    private static PlannedCharge Plan(ChargeOrder order) =>
        PlanCharge.Run(order, Facts, TestContext.Current.CancellationToken);

    [Fact]
    public void Where_nobody_knows_what_walls_take_the_bounds_are_nothing_and_everything() =>
        Assert.Equal(
            [WallsBasis.Nothing, WallsBasis.ForComparison, WallsBasis.Everything],
            Unknown.Value.Product.Select(product => product.Basis)
        );

    [Fact]
    public void The_strength_planned_gives_the_retention_with_walls_that_take_nothing() =>
        Assert.Equal(6, Unknown.Value.Product[0].ZoneKgPerM3.Value, 1e-6);

    [Fact]
    public void The_more_the_walls_take_the_more_product_stays_and_the_weaker_is_the_tank()
    {
        var products = Unknown.Value.Product;

        Rising(product => product.ZoneKgPerM3.Value);
        Rising(product => product.MeanKgPerM3.Value);
        Rising(product => -product.DepthMm);
        Rising(product => product.SelectiveShare);
        Rising(product => -product.StrengthAfterPercent!.Value.Value);
        Assert.Equal(0, products[0].SelectiveShare);
        // An empty-cell charge gives back much of what was in it at peak pressure.
        Assert.InRange(products[2].SelectiveShare, 0.2, 2);

        void Rising(Func<ProductInCharge, double> of)
        {
            double[] values = [.. products.Select(of)];
            Assert.Equal(values.Order(), values);
        }
    }

    [Fact]
    public void What_the_tank_loses_is_what_the_timber_keeps() =>
        Assert.All(
            Unknown.Value.Product,
            product =>
            {
                var plan = Unknown.Value.Plan;
                var left = 9000 - plan.SolutionL.Value;
                Assert.Equal(
                    90 * plan.StrengthPercent.Value - product.MeanKgPerM3.Value * Posts.VolumeM3,
                    left / 100 * product.StrengthAfterPercent!.Value.Value,
                    1e-6
                );
            }
        );

    [Fact]
    public void The_shallower_the_zone_the_more_it_holds_where_the_walls_take_product()
    {
        double[] assays = [.. Unknown.Value.Product[1].Bands.Select(band => band.ToFace.Middle)];
        var front = Array.IndexOf(assays, assays.Max());

        Assert.Equal(assays[front..].OrderDescending(), assays[front..]);
        Assert.True(assays[0] > 1.5 * assays[^1], string.Join(", ", assays));
    }

    [Fact]
    public void The_profile_is_that_of_the_middle_of_a_face_and_ends_with_the_sapwood_there()
    {
        var treatment = Posts.Treatment with { All = null, HeartwoodRadiusMm = 27.5 };

        var bands = Plan(Posts with { Treatment = treatment }).Product[0].Bands;

        // 75 mm less twice 27.5 mm: 10 mm of sapwood on either side.
        Assert.Equal(10, bands[^1].ToMm, 1e-6);
    }

    [Fact]
    public void A_fall_in_strength_beyond_what_walls_can_take_is_told_and_an_uptake_beyond_the_room()
    {
        ChargeReadings read = new()
        {
            VolumeM3 = Posts.VolumeM3,
            TankBeforeL = 9000,
            TankAtPeakL = null,
            VesselFreeL = null,
            TankAfterL = 8400,
            TankStandardUncertaintyL = 5,
            WeightBeforeKg = null,
            WeightAfterKg = null,
            WeightStandardUncertaintyKg = 1,
            StrengthBeforePercent = 2,
            StrengthAfterPercent = 1.99,
            StrengthStandardUncertaintyPercent = 0.005,
            SolutionDensityKgPerM3 = 1000,
        };

        Assert.Null(Reconciled(read).MostByWalls);
        Assert.NotNull(Reconciled(read with { StrengthAfterPercent = 1 }).MostByWalls);
        Assert.False(Reconciled(read).IsBeyondRoom);
        Assert.True(Reconciled(read with { TankAfterL = 9000 - 950 * Posts.VolumeM3 }).IsBeyondRoom);
    }

    private static ReconciledCharge Reconciled(ChargeReadings read) =>
        ReconcileCharge.Run(Posts with { Readings = read }, Facts, TestContext.Current.CancellationToken);

    [Fact]
    public void What_is_given_stands_in_place_of_the_bounds()
    {
        var little = Plan(Posts with { Sorption = new Sorption(0.05, null) });
        var much = Plan(Posts with { Sorption = new Sorption(5, null) });

        Assert.Equal([WallsBasis.Nothing, WallsBasis.Given], little.Product.Select(product => product.Basis));
        Assert.True(much.Product[1].DepthMm < little.Product[1].DepthMm);
        // A coefficient alone gives back what it took: nothing is kept beyond what the solution carries.
        Assert.InRange(much.Product[1].SelectiveShare, 0, 0.02);
    }
}
