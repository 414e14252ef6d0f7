using Alburnum.Acceptance;
using Alburnum.Acceptance.History;
using Alburnum.Impregnation.Prediction;
using Alburnum.Measures;
using MathNet.Numerics.Distributions;

namespace Alburnum.Tests.Impregnation.Prediction;

/// <summary>Plants drawn from what is believed of all plants: forecasts must hold as often as stated, and the alarm sound as rarely.</summary>
public class PlantCalibrationTests
{
    private const int Plants = 200;
    private const int Charges = 10;
    private const double WayMm = 50;
    private const double Voids = 0.6;

    // A front that goes in as the root of the permeability; what a schedule does to it is told by one number.
    private static readonly FrontTable Front = new(way =>
        new(Math.Min(1, Math.Sqrt(way.Scaled * 4e13)), 0, [0, 1], [0, 0])
    );

    private static readonly UptakeCurve Curve = new(ln => (26 + 0.5 * ln, 0.0025));
    private static readonly PermeabilityLaw Believed = PermeabilityFitTests.Law(1e-18, 0.9, 0.4, 0.3);
    private static readonly Lazy<IReadOnlyList<PlantCalibration>> Calibrated = new(() =>
        [.. Enumerable.Range(0, Plants).AsParallel().AsOrdered().Select(seed => Of(Plant(seed)))]
    );

    [Fact]
    public void Forecasts_of_depth_hold_as_often_as_is_stated() =>
        HoldAsStated([.. Calibrated.Value.Select(plant => plant.DepthsMm!)]);

    [Fact]
    public void Forecasts_of_uptake_hold_as_often_as_is_stated() =>
        HoldAsStated([.. Calibrated.Value.Select(plant => plant.UptakesLPerM3).OfType<ForecastRecord>()]);

    [Fact]
    public void Depths_and_uptakes_of_one_wood_rarely_seem_to_contradict_each_other() =>
        // Beyond two standard deviations: one plant in twenty-two, if what each leaves open were all there is to it; both start from one belief.
        Assert.InRange(Calibrated.Value.Count(plant => plant.Conflicts.Count > 0), 0, Plants / 15);

    [Fact]
    public void The_alarm_sounds_falsely_as_rarely_as_is_stated()
    {
        var forecasts = Calibrated.Value.Sum(plant => plant.DepthsMm!.Charges.Count);
        var alarms = Calibrated.Value.Sum(plant => plant.DepthsMm!.Drifts.Count);
        // A chart that begins at rest signals later than one that has run long; the rate in so few charges is counted on the same chart.
        var expected = forecasts * RateFromRest(Charges - 1);

        Assert.InRange(alarms, Poisson99(expected).Low, Poisson99(expected).High);
        Assert.True(alarms <= 1.5 * forecasts / AverageRunLength.Of(ForecastRecord.Chart, 0));
    }

    [Fact]
    public void A_plant_whose_wood_changes_is_found_soon_after_it_did()
    {
        const int before = 20;
        List<int> late = [];
        for (var seed = 0; seed < 20; seed++)
        {
            var record = Of(Plant(seed, before + 14, shiftFrom: before, shift: 1.2) with { OfCharges = [] }).DepthsMm!;
            if (record.Drifts.FirstOrDefault(drift => drift.IsUp && At(drift.SignalledAt) >= before) is { } drift)
            {
                late.Add(At(drift.SignalledAt) - before);
                Assert.InRange(At(drift.From), 0, At(drift.SignalledAt));
            }
        }

        Assert.True(late.Count >= 14, $"{late.Count} of 20 found");
        Assert.InRange(late.Order().ElementAt(late.Count / 2), 1, 10);

        static int At(string charge) => int.Parse(charge, System.Globalization.CultureInfo.InvariantCulture);
    }

    [Fact]
    public void Uptakes_narrow_what_depths_leave_open()
    {
        var plant = Plant(3, charges: 6);
        var (with, without) = (Of(plant), Of(plant with { OfCharges = [] }));

        Assert.Empty(with.Conflicts);
        Assert.Equal((6, 0), (with.Fit.Read(PlantEvidenceKind.Uptakes), without.Fit.Read(PlantEvidenceKind.Uptakes)));
        Assert.Null(without.Fit.UptakeFactor);
        Assert.True(with.Fit.UptakeFactor!.Value.StandardUncertainty < UptakeCurve.AssumedLaws);
        Assert.True(
            Of(plant with { Depths = [] }).Fit.LnMedian.StandardUncertainty
                < 0.6 * Math.Sqrt(0.75) * Believed.BatchLnSpread
        );
    }

    [Theory]
    [InlineData(4)]
    [InlineData(8)]
    [InlineData(20)]
    public void Depths_and_uptakes_that_contradict_each_other_are_not_averaged(double times)
    {
        var plant = Plant(3);
        var doubled = plant with
        {
            OfCharges =
            [
                .. plant
                    .OfCharges.OfType<PlantUptake>()
                    .Select(uptake => uptake with { LPerM3 = times * uptake.LPerM3 }),
            ],
        };
        var calibration = Of(doubled);

        var conflict = Assert.Single(calibration.Conflicts);
        Assert.Equal(PlantEvidenceKind.Uptakes, conflict.Kind);
        Assert.True(conflict.KindMedianM2 > 4 * conflict.ByTrusted.LateralMedianM2);
        Assert.Equal(Of(plant with { OfCharges = [] }).Fit.After, calibration.Fit.After);
        Assert.Null(calibration.UptakesLPerM3);
    }

    [Fact]
    public void A_plant_of_one_charge_has_no_forecasts() => Assert.Null(Of(Plant(1, charges: 1)).DepthsMm);

    [Fact]
    public void A_depth_that_filled_its_way_or_cannot_be_read_is_a_bound()
    {
        var (full, none, read) = (Depth("a", "1", WayMm), Depth("a", "1", 0.1), Depth("a", "1", 7));

        Assert.Equal(double.PositiveInfinity, full.Point().MostM2);
        Assert.Equal(0, none.Point().LeastM2);
        Assert.Equal(7, read.Foretold(read.Point().LeastM2), 1e-3);
    }

    // The last forecast of each plant, so that they are independent; and all of them.
    private static void HoldAsStated(IReadOnlyList<ForecastRecord> records)
    {
        var held = records.Count(record => record.Charges[^1].Held);
        Assert.InRange(
            ForecastRecord.Stated,
            ClopperPearson.Lower(held, records.Count, 0.975),
            1 - ClopperPearson.Lower(records.Count - held, records.Count, 0.975)
        );
        Assert.InRange(records.Average(record => (double)record.Held / record.Charges.Count), 0.88, 0.92);
    }

    private static double RateFromRest(int charges)
    {
        const int series = 20_000;
        var random = new SeededRandom(11);
        var alarms = 0;
        for (var n = 0; n < series; n++)
        {
            double up = 0,
                down = 0;
            for (var i = 0; i < charges; i++)
            {
                (up, down) = ForecastRecord.Chart.Next(up, down, random.NextNormal());
                if (Math.Max(up, down) <= ForecastRecord.Chart.Interval)
                    continue;
                alarms++;
                break;
            }
        }
        return (double)alarms / series / charges;
    }

    private static (int Low, int High) Poisson99(double expected)
    {
        var poisson = new MathNet.Numerics.Distributions.Poisson(expected);
        var low = 0;
        while (poisson.CumulativeDistribution(low) < 0.005)
            low++;
        var high = low;
        while (poisson.CumulativeDistribution(high) < 0.995)
            high++;
        return (low, high);
    }

    private static PlantCalibration Of(PlantEvidence evidence) => PlantCalibration.Of(Believed, evidence, seed: 1);

    // Median, spreads and factor on uptakes as believed of all plants; three pieces a charge, two places each.
    private static PlantEvidence Plant(int seed, int charges = Charges, int shiftFrom = int.MaxValue, double shift = 0)
    {
        var random = new SeededRandom(seed + 1000);
        double Spread(double believed) => believed * Math.Sqrt(4 / ChiSquared.Sample(random, 4));
        var median =
            Math.Log(Believed.LateralMedianM2) + Math.Sqrt(0.75) * Believed.BatchLnSpread * random.NextNormal();
        var (batch, piece, within) = (
            Spread(0.5 * Believed.BatchLnSpread),
            Spread(Believed.PieceLnSpread),
            Spread(Believed.WithinLnSpread)
        );
        var factor = UptakeCurve.AssumedLaws * random.NextNormal();
        List<PlantDepth> depths = [];
        List<PlantUptake> uptakes = [];
        for (var charge = 0; charge < charges; charge++)
        {
            var ofCharge = median + batch * random.NextNormal() + (charge >= shiftFrom ? shift : 0);
            uptakes.Add(new($"{charge}", Math.Exp(26 + 0.5 * ofCharge + factor + 0.05 * random.NextNormal()), Curve));
            for (var i = 0; i < 3; i++)
            {
                var ofPiece = ofCharge + piece * random.NextNormal();
                for (var place = 0; place < 2; place++)
                    depths.Add(
                        Depth(
                            $"{charge}",
                            $"{i}",
                            Front.DepthMm(Math.Exp(ofPiece + within * random.NextNormal()), Voids, WayMm)
                        )
                    );
            }
        }
        return new([.. Enumerable.Range(0, charges).Select(charge => $"{charge}")], depths, uptakes);
    }

    private static PlantDepth Depth(string charge, string piece, double depthMm) =>
        new(charge, piece, Math.Min(depthMm, WayMm), WayMm, Front, (Voids, 1));
}
