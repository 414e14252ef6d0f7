using Alburnum.Impregnation.Prediction;
using Alburnum.Measures;

namespace Alburnum.Tests.Impregnation.Prediction;

/// <summary>Depths drawn from a known law: the fit must find it again, and be surer the more charges it sees.</summary>
public class PermeabilityFitTests
{
    private const double TrueMedian = 1e-18;
    private static readonly int[] Charges = [2, 8, 32];
    private static readonly PermeabilityLaw Believed = Law(2.5e-19, 0.9, 0.7, 0.4);

    [Fact]
    public void Many_charges_bring_back_the_law_that_made_them()
    {
        var fit = PermeabilityFit.Of(Believed, Points(charges: 40, pieces: 6, seed: 3), seed: 1, rounds: 2000);

        Assert.InRange(fit.After.LateralMedianM2 / TrueMedian, 0.85, 1.18);
        Assert.InRange(fit.After.BatchLnSpread, 0.2, 0.42);
        Assert.InRange(fit.After.PieceLnSpread, 0.33, 0.48);
        Assert.InRange(fit.After.WithinLnSpread, 0.17, 0.23);
        Assert.Equal((40, 240, 960), (fit.Charges, fit.Pieces, fit.Depths));
    }

    [Fact]
    public void The_spread_narrows_as_charges_are_added()
    {
        double[] spreads =
        [
            Believed.PieceToPieceLnSpread,
            .. Charges.Select(charges =>
                PermeabilityFit
                    .Of(Believed, Points(charges, pieces: 5, seed: 9), seed: 1, rounds: 2000)
                    .After.PieceToPieceLnSpread
            ),
        ];

        Assert.Equal(spreads.OrderDescending(), spreads);
        Assert.True(spreads[^1] < 0.65 * spreads[0]);
    }

    [Fact]
    public void Pieces_filled_through_count_as_more_permeable_than_the_way_shows()
    {
        var cut = Points(charges: 20, pieces: 6, seed: 5)
            .Select(point =>
                point.LeastM2 > TrueMedian
                    ? point with
                    {
                        LeastM2 = TrueMedian,
                        MostM2 = double.PositiveInfinity,
                    }
                    : point
            )
            .ToList();
        var taken = cut.Select(point => point with { MostM2 = point.LeastM2 }).ToList();

        var honest = PermeabilityFit.Of(Believed, cut, seed: 1, rounds: 2000).After;
        var naive = PermeabilityFit.Of(Believed, taken, seed: 1, rounds: 2000).After;
        Assert.InRange(honest.LateralMedianM2 / TrueMedian, 0.75, 1.33);
        Assert.True(honest.LateralMedianM2 > 1.1 * naive.LateralMedianM2);
        Assert.True(honest.PieceLnSpread > naive.PieceLnSpread);
    }

    [Fact]
    public void The_same_seed_gives_the_same_law() =>
        Assert.Equal(
            PermeabilityFit.Of(Believed, Points(3, 3, 1), seed: 4, rounds: 500).After,
            PermeabilityFit.Of(Believed, Points(3, 3, 1), seed: 4, rounds: 500).After
        );

    [Fact]
    public void A_negative_permeability_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            PermeabilityFit.Of(Believed, [new FitPoint("1", "1", -1e-18, 1e-18)], seed: 1)
        );

    // Four places on each piece; spreads 0.3 between charges, 0.4 between pieces, 0.2 within.
    private static List<FitPoint> Points(int charges, int pieces, int seed)
    {
        var random = new SeededRandom(seed);
        var points = new List<FitPoint>();
        for (var charge = 0; charge < charges; charge++)
        {
            var ofCharge = Math.Log(TrueMedian) + 0.3 * random.NextNormal();
            for (var piece = 0; piece < pieces; piece++)
            {
                var ofPiece = ofCharge + 0.4 * random.NextNormal();
                for (var place = 0; place < 4; place++)
                {
                    var k = Math.Exp(ofPiece + 0.2 * random.NextNormal());
                    points.Add(new FitPoint($"{charge}", $"{piece}", k, k));
                }
            }
        }
        return points;
    }

    private static PermeabilityLaw Law(double median, double batch, double piece, double within) =>
        new PermeabilityLaw
        {
            Name = "test wood",
            LateralMedianM2 = median,
            Directions = new("test", 1, 6000, new(Standing.FromMemory, "test", "", "", "")),
            BatchLnSpread = batch,
            PieceLnSpread = piece,
            WithinLnSpread = within,
            IsInference = true,
            Provenance = new Provenance(Standing.FromMemory, "", "", "", ""),
        };
}
