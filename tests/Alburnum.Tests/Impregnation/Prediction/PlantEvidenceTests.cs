using Alburnum.Impregnation.Prediction;
using Alburnum.Measures;
using MathNet.Numerics.Distributions;

namespace Alburnum.Tests.Impregnation.Prediction;

/// <summary>Plants drawn from what is believed of all plants, with readings of each kind drawn from their wood: what is found must hold the truth as often as stated.</summary>
public class PlantEvidenceTests
{
    private const int Plants = 200;
    private const int Charges = 3;
    private const double WayMm = 50;
    private const double Voids = 0.6;
    private const double FullKgPerM3 = 12;
    private const double UAtOnce = 3;
    private static readonly double[] Minutes = [5, 15, 40, 90, 180];
    private static readonly (double From, double To)[] Bands = [(0, 4), (4, 10), (10, 20)];
    private static readonly double[] WallShares = [0, 0.25, 1, 4];
    private static readonly PermeabilityLaw Believed = PermeabilityFitTests.Law(1e-18, 0.9, 0.4, 0.3);
    private static readonly double Prior = Math.Sqrt(0.75) * Believed.BatchLnSpread;
    private static readonly FrontTable Front = new(way =>
        new(Math.Min(1, Math.Sqrt(way.Scaled * 4e13)), 0, [0, 1], [0, 0])
    );

    [Theory]
    [InlineData("tank")]
    [InlineData("zones")]
    [InlineData("sections")]
    [InlineData("all")]
    public void The_interval_holds_the_truth_as_often_as_is_stated(string kinds)
    {
        var held = Enumerable
            .Range(0, Plants)
            .AsParallel()
            .Count(seed =>
            {
                var plant = Plant.Drawn(seed);
                double[] medians = [.. Fit(plant, kinds).Plants.Select(drawn => drawn.LnMedianM2).Order()];
                return plant.LnMedianM2 >= medians[medians.Length / 20]
                    && plant.LnMedianM2 <= medians[medians.Length - 1 - medians.Length / 20];
            });

        // 99 % of what chance does with nine of ten.
        Assert.InRange(held, (int)(0.9 * Plants - 11), (int)(0.9 * Plants + 11));
    }

    [Fact]
    public void Each_kind_narrows_what_is_known_and_all_together_most()
    {
        var (tank, zones, sections, all) = (Mean("tank"), Mean("zones"), Mean("sections"), Mean("all"));

        Assert.InRange(tank, 0, 0.75 * Prior);
        Assert.InRange(zones, 0, 0.85 * Prior);
        Assert.InRange(sections, 0, 0.75 * Prior);
        Assert.True(all < Math.Min(tank, Math.Min(zones, sections)));
        // Were it known what the walls take, the zones would say more of the wood.
        Assert.True(zones > Mean("zones, walls known"));

        static double Mean(string kinds) =>
            Enumerable.Range(0, 20).Average(seed => Fit(Plant.Drawn(seed), kinds).LnMedian.StandardUncertainty);
    }

    [Fact]
    public void Readings_of_the_tank_count_by_their_differences_alone()
    {
        var plant = Plant.Drawn(4);
        var fuller = plant with
        {
            Tank =
            [
                .. plant.Tank.Select(charge =>
                    charge with
                    {
                        Readings =
                        [
                            .. charge.Readings.Select(reading =>
                                reading with
                                {
                                    GoneLPerM3 = reading.GoneLPerM3 - 500,
                                }
                            ),
                        ],
                    }
                ),
            ],
        };

        Assert.Equal(Fit(plant, "tank").LnMedian.Value, Fit(fuller, "tank").LnMedian.Value, 1e-6);
    }

    [Theory]
    [InlineData("tank")]
    [InlineData("zones")]
    public void What_contradicts_the_depths_is_said_and_left_out(string kind)
    {
        var (plant, other) = (Plant.Drawn(7), Plant.Drawn(7, shift: 3));
        var evidence = new PlantEvidence(
            [.. Enumerable.Range(0, Charges).Select(charge => $"{charge}")],
            plant.Sections,
            [.. Evidence(other, kind)]
        );
        var calibration = PlantCalibration.Of(Believed, evidence, seed: 1);

        var conflict = Assert.Single(calibration.Conflicts);
        Assert.True(conflict.KindMedianM2 > 3 * conflict.ByTrusted.LateralMedianM2);
        Assert.Empty(calibration.Fit.Evidence);
        Assert.Null(calibration.Fit.UptakeFactor);
    }

    [Fact]
    public void Charges_in_which_nothing_penetrated_promise_nothing()
    {
        PlantCalibration With(double? depthMm)
        {
            var depths = Plant.Drawn(7).Sections.ToList();
            string[] charges = [.. Enumerable.Range(0, Charges + 2).Select(charge => $"{charge}")];
            if (depthMm is { } mm)
                foreach (var charge in charges[Charges..])
                    for (var piece = 0; piece < 8; piece++)
                        depths.Add(new(charge, $"{piece}", mm, WayMm, Front, (Voids, 1)));
            return PlantCalibration.Of(Believed, new(charges, depths, []), seed: 1);
        }

        var (without, bare) = (With(null), With(0));
        Assert.Empty(without.Untaken);
        Assert.Equal([$"{Charges}", $"{Charges + 1}"], bare.Untaken.Select(charge => charge.Charge));
        Assert.All(bare.Untaken, charge => Assert.True(charge.ForetoldLeastMm > 0.3));
        // The law is that of the charges that took, and the forecasts that failed are on record.
        Assert.Equal(without.Fit.After.LateralMedianM2, bare.Fit.After.LateralMedianM2);
        Assert.Equal(without.Fit.After.BatchLnSpread, bare.Fit.After.BatchLnSpread);
        Assert.All(bare.DepthsMm!.Charges.TakeLast(2), forecast => Assert.False(forecast.Held));
        // Where so little was foretold that none is no wonder, it counts as evidence.
        Assert.Empty(With(WayMm).Untaken);
    }

    [Fact]
    public void Zones_that_fall_off_steeply_speak_for_walls_that_take_much()
    {
        var shares = Enumerable
            .Range(0, 40)
            .Select(seed => Plant.Drawn(seed))
            .Where(plant => plant.Walls == WallShares.Length - 1)
            .Select(plant => Fit(plant, "all").WallShares)
            .ToList();

        Assert.InRange(shares.Count, 4, 40);
        Assert.All(shares, laws => Assert.Equal(1, laws.Sum(), 1e-12));
        Assert.True(shares.Average(laws => laws[^1]) > 0.5);
    }

    [Fact]
    public void Places_of_one_section_count_that_lie_apart()
    {
        var random = new SeededRandom(5);
        var smooth = PlacesApart.Of(Field(random, ln: -41, sd: 0.5, lengthMm: 10));
        var rough = PlacesApart.Of(Field(random, ln: -41, sd: 0.5, lengthMm: 0.01));

        // A field that falls off within 10 mm: three lengths.
        Assert.InRange(smooth.DistanceMm, 12, 60);
        Assert.InRange(smooth.Counted.Count, 8, 36);
        Assert.InRange(rough.Counted.Count, 200, 400);
        Assert.Equal(4, PlacesApart.Of([.. Field(random, -41, 0, 10)]).Counted.Count);
        Assert.Equal([0], PlacesApart.Of([new(1, 20, 3)]).Counted);
    }

    private static PermeabilityFit Fit(Plant plant, string kinds)
    {
        IReadOnlyList<FitPoint> points = kinds is "sections" or "all"
            ? [.. plant.Sections.Select(depth => depth.Point())]
            : [];
        return PermeabilityFit.Of(Believed, points, seed: 1, rounds: 2000, evidence: [.. Evidence(plant, kinds)]);
    }

    private static IEnumerable<ChargeEvidence> Evidence(Plant plant, string kinds) =>
        kinds switch
        {
            "tank" => plant.Tank,
            "zones" => plant.Zones,
            "zones, walls known" => plant.Zones.Select(charge =>
                charge with
                {
                    WallLaws = 1,
                    Zones =
                    [
                        .. charge.Zones.Select(zone => zone with { Curve = (ln, _) => zone.Curve(ln, plant.Walls) }),
                    ],
                }
            ),
            "all" => [.. plant.Tank, .. plant.Zones],
            _ => [],
        };

    // A front goes in as the root of permeability and time, and comes to a stand where the wood is full.
    private static double Uptake(double lnM2, double minutes)
    {
        var share = Math.Sqrt(Math.Exp(lnM2) * minutes / 5e-16);
        return 1000 * Voids * Math.Tanh(share);
    }

    // Product stays as far as solution came over what walls and liquid hold.
    private static double Zone(double lnM2, int walls, (double From, double To) band)
    {
        var reach = 40 * Math.Sqrt(Math.Exp(lnM2) / 1e-17) / (1 + WallShares[walls]);
        double Within(double mm) => reach * (1 - Math.Exp(-mm / reach));
        return FullKgPerM3 * (1 + WallShares[walls]) * (Within(band.To) - Within(band.From)) / (band.To - band.From);
    }

    // Four faces of 100 mm, read every millimetre; the logarithm of permeability wanders about that of the piece.
    private static List<MeasuredPlace> Field(SeededRandom random, double ln, double sd, double lengthMm)
    {
        List<MeasuredPlace> places = [];
        var keep = Math.Exp(-1 / lengthMm);
        for (var face = 1; face <= 4; face++)
        {
            var here = random.NextNormal();
            for (var along = 0; along < 100; along++)
            {
                places.Add(new(face, along, Front.DepthMm(Math.Exp(ln + sd * here), Voids, WayMm)));
                here = keep * here + Math.Sqrt(1 - keep * keep) * random.NextNormal();
            }
        }
        return places;
    }

    private sealed record Plant(
        double LnMedianM2,
        int Walls,
        IReadOnlyList<PlantDepth> Sections,
        IReadOnlyList<TankReadings> Tank,
        IReadOnlyList<ZoneAssays> Zones
    )
    {
        /// <summary>Median, spreads, factor and walls as believed of all plants; two measured sections a charge.</summary>
        public static Plant Drawn(int seed, double shift = 0)
        {
            var random = new SeededRandom(seed + 500);
            double Spread(double believed) => believed * Math.Sqrt(4 / ChiSquared.Sample(random, 4));
            var median = Math.Log(Believed.LateralMedianM2) + Prior * random.NextNormal();
            var (batch, piece, within) = (
                Spread(0.5 * Believed.BatchLnSpread),
                Spread(Believed.PieceLnSpread),
                Spread(Believed.WithinLnSpread)
            );
            var factor = Math.Exp(UptakeCurve.AssumedLaws * random.NextNormal());
            var walls = (int)random.Below((ulong)WallShares.Length);
            List<PlantDepth> sections = [];
            List<TankReadings> tank = [];
            List<ZoneAssays> zones = [];
            for (var charge = 0; charge < Charges; charge++)
            {
                var ofCharge = median + shift + batch * random.NextNormal();
                for (var n = 0; n < 2; n++)
                {
                    var places = Field(
                        random,
                        ofCharge + piece * random.NextNormal(),
                        within,
                        lengthMm: 4 + 16 * random.NextDouble()
                    );
                    sections.AddRange(
                        PlacesApart
                            .Of(places)
                            .Counted.Select(i => new PlantDepth(
                                $"{charge}",
                                $"{n}",
                                Math.Min(places[i].DepthMm, WayMm),
                                WayMm,
                                Front,
                                (Voids, 1)
                            ))
                    );
                }
                tank.Add(TankOf($"{charge}", ofCharge, factor, random));
                zones.Add(ZonesOf($"{charge}", ofCharge, factor, walls, random));
            }
            return new(median, walls, sections, tank, zones);
        }

        private static TankReadings TankOf(string charge, double lnM2, double factor, SeededRandom random)
        {
            var ofCharge = 1 + 0.05 * random.NextNormal();
            return new(
                charge,
                [
                    .. Minutes.Select(at =>
                    {
                        var taken = Uptake(lnM2, at) * factor;
                        var read =
                            taken * ofCharge
                            + taken * TankReadings.AtOneMoment * random.NextNormal()
                            + UAtOnce * random.NextNormal();
                        return new TankReading(
                            read,
                            UAtOnce,
                            new UptakeCurve(ln => (Math.Log(Uptake(ln, at)), 0.05 * 0.05))
                        );
                    }),
                ]
            );
        }

        private static ZoneAssays ZonesOf(string charge, double lnM2, double factor, int walls, SeededRandom random)
        {
            var ofCharge = 1 + ZoneAssays.OfCharge * random.NextNormal();
            return new(
                charge,
                [
                    .. Bands.Select(band =>
                    {
                        var held = Zone(lnM2, walls, band) * factor;
                        var own = double.Hypot(ZoneAssays.OfOneZone * held, ZoneAssays.AtLeast * FullKgPerM3);
                        return new ZoneAssay(
                            held * ofCharge + own * random.NextNormal(),
                            0,
                            (ln, law) => Zone(ln, law, band)
                        );
                    }),
                ],
                FullKgPerM3,
                WallShares.Length
            );
        }
    }
}
