using Alburnum.Acceptance;
using CsCheck;

namespace Alburnum.Tests.Acceptance;

public class DistributionTests
{
    [Fact]
    public void Binomial_probabilities_add_up_to_their_sum() =>
        Gen.Select(Gen.Int[1, 200], Gen.Double[0, 1])
            .Sample(
                (n, p) =>
                {
                    var sum = 0.0;
                    for (var k = 0; k <= n; k++)
                    {
                        sum += Binomial.Probability(k, n, p);
                        Assert.Equal(sum, Binomial.AtMost(k, n, p), 1e-12);
                    }
                },
                iter: 300
            );

    [Fact]
    public void Hypergeometric_probabilities_are_ratios_of_counts() =>
        Gen.Select(Gen.Int[1, 30], Gen.Int[0, 30], Gen.Int[0, 30])
            .Where((lot, failing, n) => failing <= lot && n <= lot)
            .Sample(
                (lot, failing, n) =>
                {
                    for (var k = 0; k <= n; k++)
                        Assert.Equal(
                            Choose(failing, k) * Choose(lot - failing, n - k) / Choose(lot, n),
                            Hypergeometric.Probability(k, lot, failing, n),
                            1e-12
                        );
                },
                iter: 500
            );

    [Fact]
    public void Hypergeometric_sums_are_the_sums_of_their_probabilities() =>
        Gen.Select(Gen.Int[1, 400], Gen.Int[0, 400], Gen.Int[0, 400])
            .Where((lot, failing, n) => failing <= lot && n <= lot)
            .Sample(
                (lot, failing, n) =>
                {
                    var sum = 0.0;
                    for (var k = 0; k <= n; k++)
                    {
                        sum += Hypergeometric.Probability(k, lot, failing, n);
                        Assert.Equal(sum, Hypergeometric.AtMost(k, lot, failing, n), 1e-11);
                    }
                },
                iter: 200
            );

    [Fact]
    public void Sample_and_failing_pieces_may_change_places() =>
        Gen.Select(Gen.Int[1, 500], Gen.Int[0, 500], Gen.Int[0, 500], Gen.Int[0, 60])
            .Where((lot, failing, n, _) => failing <= lot && n <= lot)
            .Sample(
                (lot, failing, n, k) =>
                    Assert.Equal(
                        Hypergeometric.AtMost(k, lot, failing, n),
                        Hypergeometric.AtMost(k, lot, n, failing),
                        1e-11
                    ),
                iter: 1000
            );

    [Fact]
    public void The_hypergeometric_tends_to_the_binomial_as_the_lot_grows() =>
        Gen.Select(Gen.Int[1, 60], Gen.Int[0, 20], Gen.Int[1, 99])
            .Sample(
                (n, c, percent) =>
                {
                    var process = Binomial.AtMost(c, n, percent / 100.0);
                    double Off(int lot) => Math.Abs(Hypergeometric.AtMost(c, lot, lot / 100 * percent, n) - process);

                    Assert.True(Off(10_000_000) < 1e-4);
                    Assert.True(Off(10_000_000) <= Off(100_000) + 1e-9);
                },
                iter: 300
            );

    [Fact]
    public void Equal_pieces_make_the_Poisson_binomial_a_binomial() =>
        Gen.Select(Gen.Int[1, 60], Gen.Double[0, 1], Gen.Int[0, 60])
            .Sample(
                (n, p, k) =>
                    Assert.Equal(
                        Binomial.AtMost(k, n, p),
                        PoissonBinomial.AtMost(k, [.. Enumerable.Repeat(p, n)]),
                        1e-12
                    ),
                iter: 500
            );

    [Fact]
    public void The_exact_bound_covers_the_truth_at_least_as_often_as_stated() =>
        Gen.Select(Gen.Int[2, 40], Gen.Double[0.01, 0.99])
            .Sample(
                (n, share) =>
                {
                    var covered = Enumerable
                        .Range(0, n + 1)
                        .Where(x => ClopperPearson.Lower(x, n, 0.95) <= share)
                        .Sum(x => Binomial.Probability(x, n, share));

                    Assert.True(covered >= 0.95 - 1e-9);
                },
                iter: 200
            );

    [Fact]
    public void The_bound_of_a_lot_covers_every_lot_at_least_as_often_as_stated() =>
        Gen.Select(Gen.Int[2, 60], Gen.Int[1, 60], Gen.Int[0, 60])
            .Where((lot, n, failing) => n <= lot && failing <= lot)
            .Sample(
                (lot, n, failing) =>
                {
                    var truth = (double)(lot - failing) / lot;
                    var covered = Enumerable
                        .Range(0, n + 1)
                        .Where(x => Hypergeometric.Probability(n - x, lot, failing, n) > 0)
                        .Where(x => LotShare.LowerBound(x, n, lot, 0.9) <= truth + 1e-12)
                        .Sum(x => Hypergeometric.Probability(n - x, lot, failing, n));

                    Assert.True(covered >= 0.9 - 1e-9);
                },
                iter: 200
            );

    private static double Choose(int n, int k)
    {
        if (k < 0 || k > n)
            return 0;
        var product = 1.0;
        for (var i = 0; i < k; i++)
            product = product * (n - i) / (i + 1);
        return Math.Round(product);
    }
}
